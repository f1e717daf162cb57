using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Documents;

/// <summary>A value that may be missing from its record; in the document it is left out, never null.</summary>
internal sealed class NullableShape<T>(Shape<T> shape) : Shape<T?>
    where T : struct
{
    public override string Allowed => shape.Allowed;

    public override DocumentNode Example => shape.Example;

    public override IEnumerable<Shape> Parts => [shape];

    public override bool TryRead(Place place, FaultList faults, out T? value)
    {
        var isGood = shape.TryRead(place, faults, out var read);
        value = read;
        return isGood;
    }

    public override DocumentNode Write(T? value, Commentary? commentary = null) =>
        shape.Write(value ?? throw new ArgumentNullException(nameof(value)), commentary);

    public override bool Same(T? a, T? b) => a is { } first && b is { } second ? shape.Same(first, second) : a is null && b is null;

    public override ObjectNode Schema(SchemaDefinitions definitions) => shape.Schema(definitions);
}

/// <summary>A value read as another one that says the same.</summary>
internal sealed class MappedShape<TWritten, T>(Shape<TWritten> shape, Func<TWritten, T> from, Func<T, TWritten> to) : Shape<T>
{
    public override string Allowed => shape.Allowed;

    public override DocumentNode Example => shape.Example;

    public override IEnumerable<Shape> Parts => [shape];

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value)
    {
        var isGood = shape.TryRead(place, faults, out var written);
        value = isGood ? from(written!) : default;
        return isGood;
    }

    public override DocumentNode Write(T value, Commentary? commentary = null) => shape.Write(to(value), commentary);

    public override bool Same(T a, T b) => shape.Same(to(a), to(b));

    public override ObjectNode Schema(SchemaDefinitions definitions) => shape.Schema(definitions);
}

/// <summary>A value that is shown by an example of its own.</summary>
internal sealed class ShownShape<T>(Shape<T> shape, DocumentNode example) : Shape<T>
{
    public override string Allowed => shape.Allowed;

    public override DocumentNode Example => example;

    public override IEnumerable<Shape> Parts => [shape];

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value) =>
        shape.TryRead(place, faults, out value);

    public override DocumentNode Write(T value, Commentary? commentary = null) => shape.Write(value, commentary);

    public override bool Same(T a, T b) => shape.Same(a, b);

    public override ObjectNode Schema(SchemaDefinitions definitions) => shape.Schema(definitions);
}

/// <summary>Either a text or an object that says more.</summary>
internal sealed class EitherShape<T>(Shape<T> text, Shape<T> full, Func<T, bool> isText) : Shape<T>
{
    public override string Allowed => $"{text.Allowed}, or {full.Allowed}";

    public override DocumentNode Example => text.Example;

    public override IEnumerable<Shape> Parts => [text, full];

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value)
    {
        switch (place.Node)
        {
            case TextNode:
                return text.TryRead(place, faults, out value);
            case ObjectNode:
                return full.TryRead(place, faults, out value);
            default:
                faults.Form(place, Allowed, "Write one of the two.");
                value = default;
                return false;
        }
    }

    public override DocumentNode Write(T value, Commentary? commentary = null) => (isText(value) ? text : full).Write(value, commentary);

    public override bool Same(T a, T b) => isText(a) == isText(b) && (isText(a) ? text : full).Same(a, b);

    public override ObjectNode Schema(SchemaDefinitions definitions) =>
        ObjectNode.Of(("oneOf", new ListNode([text.Schema(definitions), full.Schema(definitions)])));
}

/// <param name="Names">Values of the deciding property that lead here.</param>
internal sealed record VariantCase<T>(ImmutableArray<string> Names, ObjectShape<T> Shape);

/// <summary>What a page about the document says of objects whose fields depend on one of them.</summary>
internal interface IVariantShape
{
    /// <summary>The deciding property.</summary>
    string Key { get; }

    IEnumerable<(ImmutableArray<string> Names, IObjectShape Shape)> Cases { get; }
}

/// <summary>An object whose other fields depend on the word in one of them.</summary>
internal sealed class VariantShape<T>(string key, Func<T, string> nameOf, params VariantCase<T>[] cases) : Shape<T>, IVariantShape
{
    private readonly ImmutableArray<string> _names = [.. cases.SelectMany(c => c.Names)];

    public string Key => key;

    public override string Allowed => $"an object whose \"{key}\" is {string.Join(", ", _names.Select(n => $"\"{n}\""))}";

    public override DocumentNode Example => cases[0].Shape.Example;

    public override IEnumerable<Shape> Parts => cases.Select(c => c.Shape);

    public IEnumerable<(ImmutableArray<string> Names, IObjectShape Shape)> Cases => cases.Select(c => (c.Names, (IObjectShape)c.Shape));

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (place.Node is not ObjectNode node)
        {
            faults.Form(place, Allowed, "Write an object: { … }.");
            return false;
        }
        var word = (node.Find(key)?.Value as TextNode)?.Text;
        if (word is not null && _names.Contains(word))
            return CaseOf(word).TryRead(place, faults, out value);
        var isMissing = node.Find(key) is null;
        faults.Form(
            place.Member(key),
            string.Join(", ", _names.Select(n => $"\"{n}\"")),
            isMissing
                ? "Add it; what else may stand here depends on it."
                : Nearest.Suggest(word ?? "", _names, "Choose one of these words."),
            isMissing ? "nothing" : null);
        return false;
    }

    public override DocumentNode Write(T value, Commentary? commentary = null) => CaseOf(nameOf(value)).Write(value, commentary);

    public override bool Same(T a, T b) => nameOf(a) == nameOf(b) && CaseOf(nameOf(a)).Same(a, b);

    public override ObjectNode Schema(SchemaDefinitions definitions) =>
        ObjectNode.Of(("oneOf", new ListNode([.. cases.Select(c => c.Shape.Schema(definitions))])));

    private ObjectShape<T> CaseOf(string name) => cases.First(c => c.Names.Contains(name)).Shape;
}
