using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Yarns;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Draft;

/// <summary>One section of the sequence as it is typed, whatever else is wrong with the document.</summary>
/// <param name="Index">In the yarn's own order.</param>
/// <param name="Name">Never empty: unnamed ones are called by their place.</param>
/// <param name="Colour">Grey where what is typed is no colour.</param>
/// <param name="Symbol">As charts show it.</param>
/// <param name="Length">Missing where nothing readable is typed.</param>
/// <param name="Spread">Missing where nothing readable is typed.</param>
/// <param name="Blend">Missing where nothing readable is typed.</param>
public sealed record SectionView(int Index, string Name, Srgb Colour, string Symbol, Length? Length, Length? Spread, Length? Blend)
{
    /// <summary>A grey of its own for each colour that is not picked yet, so that each has a symbol of its own too.</summary>
    private static Srgb Unknown(int index) => new((byte)(0x70 + index), 0x80, 0x80);

    /// <summary>In the document.</summary>
    public string Place => string.Create(CultureInfo.InvariantCulture, $"yarn.sections[{Index}]");

    /// <summary>At most as many as a yarn may have; missing figures stay missing.</summary>
    public static ImmutableArray<SectionView> Read(ProjectDocument document)
    {
        var count = Math.Min(document.Count("yarn.sections"), ColourRing.MostSections);
        ImmutableArray<YarnSection> sections =
            [.. Enumerable.Range(0, count).Select(i => Typed(document, string.Create(CultureInfo.InvariantCulture, $"yarn.sections[{i}]"), i))];
        return [.. SequenceColour.Of(sections, document.Is("yarn.fromOtherEnd"), Called(document)).Select((key, i) => new SectionView(
            i, key.Name, key.Colour, key.Symbol, sections[i].Length, sections[i].Spread, sections[i].Blend))];
    }

    /// <summary>What the document's sizes are called; a colour's symbol is none of these.</summary>
    public static ImmutableArray<string> Called(ProjectDocument document) => new SizeSelection(
        document.Typed("sizes.chart"),
        [.. Enumerable.Range(0, document.Count("sizes.names")).Select(i => document.Typed(string.Create(CultureInfo.InvariantCulture, $"sizes.names[{i}]")))],
        [
            .. Enumerable.Range(0, document.Count("sizes.own")).Select(i => new OwnSize(
                document.Typed(string.Create(CultureInfo.InvariantCulture, $"sizes.own[{i}].name")), ImmutableSortedDictionary<string, Length>.Empty)),
        ],
        null, [], []).Called;

    private static YarnSection Typed(ProjectDocument document, string place, int index)
    {
        var name = document.Typed(place + ".name").Trim();
        return new YarnSection(
            name.Length > 0 ? name : string.Create(CultureInfo.InvariantCulture, $"section {index + 1}"),
            Srgb.TryParse(document.Typed(place + ".colour"), out var colour) ? colour : Unknown(index),
            Long(document, place + ".length"), Long(document, place + ".spread"), Long(document, place + ".blend"));
    }

    private static Length? Long(ProjectDocument document, string place) =>
        TypedQuantity.TryLength(document.Typed(place), out var length) && length > Core.Quantities.Length.Zero ? length : null;
}
