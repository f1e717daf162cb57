using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>Which sizes the pattern is written for.</summary>
/// <param name="Chart">Id of a shipped chart; missing when <paramref name="Own"/> is given. A cowl or wrap may have neither.</param>
/// <param name="Sizes">Names from the chart, smallest first; empty, all of them.</param>
/// <param name="Own">The designer's own chart.</param>
/// <param name="Base">The size that was made as the sample; missing, the middle one.</param>
/// <param name="Locked">Numbers of the base size as made; the other sizes follow them.</param>
/// <param name="Overrides">Numbers of any size that the designer sets against the plan's.</param>
public sealed record SizeSelection(
    string? Chart,
    ImmutableArray<string> Sizes,
    ImmutableArray<OwnSize> Own,
    string? Base,
    ImmutableArray<FixedNumber> Locked,
    ImmutableArray<FixedNumber> Overrides)
{
    /// <summary>What the size of a garment that is not made to the body is called where none is named.</summary>
    public const string OnlySize = "One size";

    /// <summary>Names of the pattern's sizes, smallest first; empty where a garment that is made to the body has no chart.</summary>
    /// <param name="toBody">Whether the garment is made to the body's measures.</param>
    public ImmutableArray<string> Names(bool toBody) => !toBody && Own.IsEmpty && Sizes.IsEmpty ? [OnlySize] : Called;

    /// <summary>What its size tables call the girth round the chest: the bust of women; own sizes as they name it.</summary>
    public string BustWord => Own.IsEmpty
        ? SizeCharts.TryFind(Chart ?? "", out var chart) && chart is { Wearer: Wearers.Adult, IsForMen: false } ? "bust" : "chest"
        : Own.Any(o => o.Measures.ContainsKey("chest")) ? "chest" : "bust";

    /// <summary>As findings about the pattern's sizes call a measure, in its size tables' words.</summary>
    public string Words(BodyMeasure measure) => measure == BodyMeasure.Bust ? BustWord : BodyMeasures.Words(measure);

    /// <summary>A text that speaks of the bust, as these sizes call it.</summary>
    public string InWords(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return BustWord == "bust" ? text : Bust.Replace(text, BustWord);
    }

    private static readonly Regex Bust = new(@"\bbust\b", RegexOptions.CultureInvariant);

    /// <summary>What to do where a size is not one of these, without a full stop.</summary>
    public static string SayChoice(IEnumerable<string> sizes)
    {
        var all = sizes.ToArray();
        return all.Length == 1 ? $"it has one size only, {all[0]}" : $"choose one of {string.Join(", ", all)}";
    }

    /// <summary>What sizes are called, own ones, named ones or all of the chart; empty where there is none of these.</summary>
    public ImmutableArray<string> Called =>
        !Own.IsEmpty ? [.. Own.Select(o => o.Name)]
        : !Sizes.IsEmpty ? Sizes
        : SizeCharts.TryFind(Chart ?? "", out var chart) ? [.. chart.Sizes.Select(s => s.Name)]
        : [];
}

/// <summary>A size of the designer's own; keys are the measures' names in the shipped charts.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Measures">By name, such as <c>bust</c> or <c>upperArm</c>.</param>
public sealed record OwnSize(string Name, ImmutableSortedDictionary<string, Length> Measures);

/// <summary>A number that the designer sets herself.</summary>
/// <param name="Size">Name of the size.</param>
/// <param name="What">
/// Which number: a finished measure (<c>width</c>, <c>length</c>, …) or a count (<c>panelStitches</c>, <c>panelRows</c>, …).
/// </param>
/// <param name="Length">For a measure.</param>
/// <param name="Count">For a count.</param>
/// <param name="Reason">Why; printed in the designer's notes, never empty for an override.</param>
public sealed record FixedNumber(string Size, string What, Length? Length, int? Count, string Reason);
