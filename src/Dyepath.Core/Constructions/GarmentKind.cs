using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Constructions;

/// <summary>A garment as the designer chooses it: its name, its picture, what she can say of it, and its part of the document.</summary>
public sealed class GarmentKind
{
    private readonly Lazy<GarmentSpec> _first;

    /// <summary>Edges that are seldom left as they are worked; their rounds make up what the counts leave of a measure.</summary>
    private static readonly ImmutableArray<EdgingPlace> UsuallyEdged = [EdgingPlace.Hem, EdgingPlace.Cuffs, EdgingPlace.Brim];

    /// <param name="edgings">What it cannot be worn without.</param>
    internal GarmentKind(
        string title, string picture, ObjectShape<GarmentSpec> document, ImmutableArray<GarmentField> fields,
        ImmutableArray<EdgingPlace> edges, ImmutableArray<EdgingChoice> edgings = default)
    {
        NeededEdgings = edgings.IsDefault ? [] : edgings;
        (Title, Picture, Document, Fields, Edges) = (title, picture, document, fields, edges);
        _first = new(ReadFirst);
    }

    /// <summary>The document's word for it.</summary>
    public string Name => Document.Name;

    /// <summary>As the garment is called where it is chosen.</summary>
    public string Title { get; }

    /// <summary>Its outline as an SVG path on a grid of 48.</summary>
    public string Picture { get; }

    /// <summary>The size chart that it is begun with, where it is made to the body.</summary>
    public string Chart { get; init; } = "women";

    /// <summary>Its own fields, in the order in which they are asked for.</summary>
    public ImmutableArray<GarmentField> Fields { get; }

    /// <summary>Places that an edging can go to.</summary>
    public ImmutableArray<EdgingPlace> Edges { get; }

    /// <summary>Whether the ends of an edge do not meet, so that it is edged in rows.</summary>
    /// <param name="typed">What the document says of a field of the garment, by its name; empty where it says nothing.</param>
    public bool IsOpen(EdgingPlace place, Func<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return Neck.OpensWith(typed("neck"), place) || Opens(place, typed)
            || First.Shape.Construct(First).Edgings.Any(e => e.Place == place && e.IsOpen);
    }

    /// <summary>Edges that a field of its own leaves open.</summary>
    internal Func<EdgingPlace, Func<string, string>, bool> Opens { get; init; } = (_, _) => false;

    /// <summary>What the document can say of it, but for where its pieces begin.</summary>
    public IEnumerable<string> DocumentFields => Document.Fields.Select(f => f.Name).Where(name => name != GarmentFields.Starts);

    /// <summary>What it cannot be worn without, such as a casing that holds it up.</summary>
    public ImmutableArray<EdgingChoice> NeededEdgings { get; }

    /// <summary>
    /// As it is begun: what has to be said has its first value, its hem, cuffs and brim are edged plainly, and it has what it cannot
    /// be worn without; all else is left out.
    /// </summary>
    public GarmentSpec First => _first.Value;

    /// <inheritdoc cref="GarmentShape.IsToBody"/>
    public bool IsToBody => First.Shape.IsToBody;

    /// <summary>Rows of it go on over chains of a companion yarn.</summary>
    internal bool NeedsCompanion { get; init; }

    /// <summary>It cannot be made without a companion yarn as it is begun, so that its first document has one.</summary>
    public bool HasCompanion => NeedsCompanion || First.Shape.PlainPiecesField is not null;

    internal ObjectShape<GarmentSpec> Document { get; }

    private GarmentSpec ReadFirst()
    {
        var node = ObjectNode.Of([
            ("shape", new TextNode(Name)),
            .. Fields.Where(f => f.First is not null).Select(f => (f.Name, f.FirstNode)),
        ]);
        return Document.TryRead(Place.Root(node), new FaultList(), out var garment)
            ? garment with { Edgings = [.. NeededEdgings, .. UsualEdgings(garment)] }
            : throw new InvalidOperationException($"The first values of a {Name} are refused.");
    }

    private IEnumerable<EdgingChoice> UsualEdgings(GarmentSpec garment)
    {
        var edges = garment.Shape.Construct(garment with { Edgings = NeededEdgings }).Edgings;
        return UsuallyEdged.Where(place => Edges.Contains(place) && NeededEdgings.All(e => e.Where != place))
            .Select(place => edges.FirstOrDefault(e => e.Place == place)).OfType<EdgingEdge>()
            .Select(edge => new EdgingChoice(edge.Place, edge.IsOpen ? EdgingLibrary.PlainRows : EdgingLibrary.Plain, null));
    }
}

/// <summary>What a field of a garment's form takes.</summary>
public enum FieldKind
{
    /// <summary>A length, with its unit.</summary>
    Length,

    /// <summary>A published category, or a length of the designer's own.</summary>
    Ease,

    /// <summary>None, or in which yarn, and how much shorter than full length.</summary>
    Sleeves,

    /// <summary>How rows or rounds follow each other.</summary>
    Working,

    /// <summary>Of a body measure, in per cent.</summary>
    Share,

    /// <summary>One of <see cref="GarmentField.Choices"/>.</summary>
    Choice,
}

/// <summary>A field of a garment's form.</summary>
/// <param name="Heading">What it stands under.</param>
/// <param name="Name">In the document, within <c>garment</c>.</param>
/// <param name="Label">As the form shows it.</param>
/// <param name="Kind">A length unless said otherwise.</param>
/// <param name="Usual">What holds where it is left out.</param>
/// <param name="First">What a new garment begins with, where it cannot be left out or seldom is.</param>
/// <param name="Hint">A line of explanation below it; missing where the label says enough.</param>
public sealed record GarmentField(
    string Heading, string Name, string Label, FieldKind Kind = FieldKind.Length, string? Usual = null, string? First = null,
    string? Hint = null)
{
    /// <summary>Of a <see cref="FieldKind.Choice"/>, the document's words, each with what the form calls it.</summary>
    public ImmutableArray<(string Name, string Words)> Choices { get; init; } = [];

    /// <summary>The choice that decides whether it is asked for, and what holds where it is left out.</summary>
    public ChosenBy? By { get; init; }

    /// <summary>Where the first value stands within <c>garment</c>: sleeves begin with their yarn.</summary>
    public string FirstPlace => Kind == FieldKind.Sleeves ? $"{Name}.yarn" : Name;

    internal DocumentNode FirstNode => Kind == FieldKind.Sleeves ? ObjectNode.Of([("yarn", new TextNode(First!))]) : new TextNode(First!);
}

/// <param name="Field">A <see cref="FieldKind.Choice"/> of the same form.</param>
/// <param name="Usual">By its words, what holds where the field is left out; a word that is missing here has no such field.</param>
public sealed record ChosenBy(string Field, ImmutableSortedDictionary<string, string> Usual);
