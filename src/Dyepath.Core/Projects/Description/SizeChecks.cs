using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Projects.Description;

/// <summary>What the sizes must agree on.</summary>
internal static class SizeChecks
{
    public static void OneChart(Place sizes, string? chart, ImmutableArray<string> names, ImmutableArray<OwnSize> own, FaultList faults)
    {
        if (chart is not null && !own.IsEmpty)
            faults.Meaning(sizes.Member("own"), "either chart or own", "Leave one of the two out.");
        if (chart is null && !names.IsEmpty)
            faults.Meaning(sizes.Member("names"), "only with a chart", "Name the chart, or leave the names out.");
        Distinctness.Check(sizes.Member("names"), names, faults);
        Distinctness.Check(sizes.Member("own"), [.. own.Select(o => o.Name)], faults);
    }

    public static void LockedIsBase(Place sizes, string? @base, ImmutableArray<FixedNumber> locked, FaultList faults)
    {
        for (var i = 0; i < locked.Length; i++)
        {
            var size = sizes.Member("locked").Item(i).Member("size");
            if (@base is null)
                faults.Meaning(size, "the base size", "Name the base size in sizes.base.");
            else if (locked[i].Size != @base)
                faults.Meaning(size, $"the base size, {Shown.Text(@base)}", "Lock numbers of the base size only; override the others.");
        }
        FixedOnce(sizes.Member("locked"), locked, faults);
    }

    public static void FixedOnce(Place list, ImmutableArray<FixedNumber> numbers, FaultList faults) =>
        Distinctness.Check(list, [.. numbers.Select(n => $"{n.What} of {n.Size}")], faults);

    /// <summary>Every size that is named must be among the pattern's sizes, and a garment for the body needs some.</summary>
    public static void NamesAreKnown(Place document, SizeSelection selection, GarmentSpec? garment, string? editionSize, FaultList faults)
    {
        var place = document.Member("sizes");
        if (garment?.Shape.IsToBody == true && selection.Chart is null && selection.Own.IsEmpty)
            faults.Meaning(place, "a chart or own sizes", "Add \"chart\": \"women\", or another chart.", "no sizes");
        ImmutableArray<string> ofChart = SizeCharts.TryFind(selection.Chart ?? "", out var chart)
            ? [.. chart.Sizes.Select(s => s.Name)]
            : [];
        for (var i = 0; i < selection.Sizes.Length && chart is not null; i++)
            Among(place.Member("names").Item(i), selection.Sizes[i], ofChart, $"chart \"{chart.Id}\"", faults);

        var sizes = selection.Names(garment?.Shape.IsToBody == true);
        if (garment is null || sizes.IsEmpty)
            return;
        if (selection.Base is { } @base)
            Among(place.Member("base"), @base, sizes, "pattern", faults);
        for (var i = 0; i < selection.Overrides.Length; i++)
            Among(place.Member("overrides").Item(i).Member("size"), selection.Overrides[i].Size, sizes, "pattern", faults);
        if (editionSize is not null)
            Among(document.Member("edition").Member("size"), editionSize, sizes, "pattern", faults);
    }

    public static void Among(Place place, string size, ImmutableArray<string> sizes, string whose, FaultList faults)
    {
        if (!sizes.Contains(size))
        {
            faults.Meaning(
                place, $"a size of the {whose}: {string.Join(", ", sizes)}", Nearest.Suggest(size, sizes, "Choose one of these."),
                Shown.Text(size));
        }
    }
}
