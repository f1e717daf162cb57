using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects.Description;

/// <summary>What the numbers of a fabric must agree on, among themselves and with the yarn.</summary>
internal static class FabricChecks
{
    private static readonly Length SmallestStitch = Length.FromMillimetres(0.5);
    private static readonly Length LargestStitch = Length.FromCentimetres(30);

    public static void StitchSize(Place place, Length size, string way, FaultList faults)
    {
        if (size < SmallestStitch || size > LargestStitch)
            faults.Meaning(place, $"a stitch 0.05 to 30 cm {way}", "Check the count and the length it is over.", $"a stitch {size} {way}");
    }

    /// <summary>A swatch is measured in one of its states at least.</summary>
    public static void GaugeIsThere(Place swatch, Gauge? any, FaultList faults)
    {
        if (any is null)
            faults.Meaning(swatch.Member("worked"), "a gauge off the hook, washed, or after hanging", "Add one of the three.", "no gauge");
    }

    public static void YarnPerStitch(Place used, int stitches, Length? length, Mass? mass, FaultList faults)
    {
        if (length is null && mass is null)
            faults.Meaning(used, "a length, a mass, or both", "Measure or weigh the yarn of these stitches.", "neither length nor mass");
        else if (length is { } measured)
            InOneStitch(used.Member("length"), measured / stitches, faults);
    }

    private static void InOneStitch(Place place, Length each, FaultList faults)
    {
        var allowed = Measuring.YarnPerStitch.OfStitch;
        if (!allowed.Holds(each.Centimetres))
        {
            faults.Meaning(
                place, FormattableString.Invariant($"{allowed.Smallest} to {allowed.Largest} cm of yarn in a stitch"),
                "Check the count, and what was measured or weighed.", $"{each} in a stitch");
        }
    }

    public static void CountingChainTakesYarn(Place fabric, FabricStitch stitch, bool? said, double? turnCost, FaultList faults)
    {
        if (turnCost is { } cost && PathOptions.TakesNoChain(cost) && FabricChoice.ChainCounts(stitch, said))
        {
            faults.Meaning(
                fabric.Member("turnCost"), FormattableString.Invariant($"more than {PathOptions.CountingChainOver} stitches, since the turning chain counts as a stitch and takes yarn"),
                "Check the number, or say that the turning chain does not count.");
        }
    }

    public static void TwoHooks(Place fabric, Swatch first, Swatch? second, FaultList faults)
    {
        if (second is not null && second.HookMillimetres == first.HookMillimetres)
            faults.Meaning(
                fabric.Member("otherSwatch").Member("hook"), "another hook than that of fabric.swatch",
                "Leave one of the two swatches out.");
    }

    public static void KeepingUsesStitches(Place fabric, ColourKeeping keeping, ImmutableArray<int>? sectionStitches, FaultList faults)
    {
        if (keeping == ColourKeeping.Free && sectionStitches is not null)
        {
            faults.Meaning(
                fabric.Member("sectionStitches"), "only with \"keeping\": \"counted\"", "Leave it out, or work counted.");
        }
    }

    /// <summary>The length of the sequence must be known in stitches by at least one way, and every way must lead to 1 to 4,096.</summary>
    public static void SequenceIsKnown(Place document, Yarn yarn, FabricChoice fabric, FaultList faults)
    {
        var place = document.Member("fabric");
        if (fabric.SectionStitches is { } stitches)
            YarnChecks.Sequence(place.Member("sectionStitches"), stitches, yarn.Sections.Length, faults);
        var sequence = YarnChecks.SequenceLength(yarn.Sections);
        if (sequence is null && yarn.Counted.IsEmpty && fabric.SectionStitches is null)
        {
            faults.Meaning(
                document.Member("yarn").Member("sections"),
                "a length for every section, or stitches in yarn.counted or fabric.sectionStitches",
                "Count the stitches of a few repeats; that is the surest.", "sections without lengths, and no stitches");
        }
        Each(place.Member("swatch"), fabric.Swatch);
        if (fabric.OtherSwatch is { } other)
            Each(place.Member("otherSwatch"), other);

        void Each(Place swatch, Swatch measured)
        {
            for (var i = 0; i < measured.YarnUsed.Length; i++)
            {
                var yarnPerUnit = YarnPerUnit(measured.YarnUsed[i], yarn.Ball, fabric.Stitch.StitchesPerUnit);
                if (measured.YarnUsed[i] is { Mass: { } mass } weighed)
                    InOneStitch(swatch.Member("yarnUsed").Item(i).Member("mass"), yarn.Ball.Length * (mass / yarn.Ball.Mass) / weighed.Stitches, faults);
                if (sequence is { } length && yarnPerUnit is { } each && each > Length.Zero)
                    YarnChecks.SequenceStitches(swatch.Member("yarnUsed").Item(i), length / each, faults);
            }
        }
    }

    private static Length? YarnPerUnit(YarnUsed used, Ball ball, int stitchesPerUnit)
    {
        var yarn = used.Length ?? (used.Mass is { } mass ? ball.Length * (mass / ball.Mass) : null);
        return yarn * stitchesPerUnit / used.Stitches;
    }
}
