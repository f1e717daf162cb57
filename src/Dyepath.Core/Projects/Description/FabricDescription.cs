using Dyepath.Core.Documents;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects.Description;

/// <summary>The fabric and its swatches in the document.</summary>
internal static class FabricDescription
{
    private static readonly ObjectShape<Gauge> GaugeShape = new("gauge", "Stitches and rows over a measured length.", o =>
    {
        var count = new RealShape(14, Gauge.Counts);
        var stitches = o.Required("stitches", "Stitches over the length, quarters counted.", count, g => g.Stitches);
        var rows = o.Required("rows", "Rows over the length, quarters counted.", count, g => g.Rows);
        var over = o.Optional("over", "The length.", Measured.GaugeLength, g => g.Over, Length.FromCentimetres(10));
        o.Check((v, faults) =>
        {
            if (over.TryFrom(v, out var length) && stitches.TryFrom(v, out var s))
                FabricChecks.StitchSize(v.Place.Member("stitches"), length / s, "wide", faults);
            if (over.TryFrom(v, out length) && rows.TryFrom(v, out var r))
                FabricChecks.StitchSize(v.Place.Member("rows"), length / r, "high", faults);
        });
        return v => new Gauge(stitches.From(v), rows.From(v), over.From(v));
    });

    private static readonly ObjectShape<YarnUsed> YarnUsedShape = new(
        "yarnUsed", "Yarn that a known number of stitches took: unravel a row and measure it, or weigh a piece.", o =>
    {
        var stitches = o.Required(
            "stitches", "How many stitches were unravelled or weighed.", new WholeShape(1, 1_000_000), y => y.Stitches);
        var length = o.Optional("length", "Their yarn, measured relaxed.", Measured.Unravelled, y => y.Length, "not measured");
        var mass = o.Optional("mass", "Their weight.", Measured.Weight, y => y.Mass, "not weighed");
        o.Check((v, faults) =>
        {
            if (length.TryFrom(v, out var l) && mass.TryFrom(v, out var m) && stitches.TryFrom(v, out var s))
                FabricChecks.YarnPerStitch(v.Place, s, l, m, faults);
        });
        return v => new YarnUsed(stitches.From(v), length.From(v), mass.From(v));
    });

    private static readonly ObjectShape<Swatch> SwatchShape = new(
        "swatch", "A measured swatch: everything that changes together when the hook changes.", o =>
    {
        var hook = o.Required("hook", "Hook size.", Measured.Hook, s => s.HookMillimetres);
        var worked = o.OptionalObject(
            "worked", "Gauge as it comes off the hook. One of the three gauges has to be there.", GaugeShape, s => s.Worked, "as the first that is measured");
        var blocked = o.OptionalObject("blocked", "Gauge washed and dried.", GaugeShape, s => s.Blocked, "as worked");
        var hung = o.OptionalObject("hung", "Gauge after hanging, as the garment will hang.", GaugeShape, s => s.Hung, "as blocked");
        var used = o.Optional(
            "yarnUsed", "Unravelled rows or weighed pieces of this swatch.", new ListShape<YarnUsed>("measurements", YarnUsedShape, 0, 40),
            s => s.YarnUsed, [], "yarn per stitch follows from the counted stitches");
        o.Check((v, faults) =>
        {
            if (worked.TryFrom(v, out var first) && blocked.TryFrom(v, out var second) && hung.TryFrom(v, out var third))
                FabricChecks.GaugeIsThere(v.Place, first ?? second ?? third, faults);
        });
        return v => new Swatch(
            hook.From(v), (worked.From(v) ?? blocked.From(v) ?? hung.From(v))!, blocked.From(v), hung.From(v), used.From(v));
    });

    private static readonly ObjectShape<HandSteadiness> HandsShape = new("hands", "The maker's hands, where they are known from earlier work.", o =>
    {
        var spread = o.Required("spread", "Standard deviation of the yarn in one stitch.", Measured.Spread, h => h.Spread);
        var memory = o.Required("memory", "How many stitches a tight or loose stretch lasts.", Measured.Memory, h => h.Memory);
        return v => new HandSteadiness(spread.From(v), memory.From(v));
    });

    public static ObjectShape<FabricChoice> Fabric { get; } = new("fabric", "The fabric that the pattern is worked in.", o =>
    {
        var stitchChoice = new ChoiceShape<FabricStitch>([.. FabricStitch.All.Select(s => (s.Id, s))]);
        var stitch = o.Required("stitch", "The stitch, by its US abbreviation.", stitchChoice, f => f.Stitch);
        var swatch = o.Required("swatch", "The swatch with the hook that the pattern names.", SwatchShape, f => f.Swatch);
        var other = o.OptionalObject(
            "otherSwatch", "A swatch with another hook, so that hooks in between may be interpolated.", SwatchShape, f => f.OtherSwatch,
            "none");
        var keeping = o.Optional(
            "keeping",
            "How colours are kept. counted: each takes exactly its stitches, hand tension is adjusted to make it so; "
            + "free: even tension, they fall where they fall.",
            new ChoiceShape<ColourKeeping>(("counted", ColourKeeping.Counted), ("free", ColourKeeping.Free)), f => f.Keeping,
            ColourKeeping.Counted);
        var sectionStitches = o.Optional(
            "sectionStitches",
            "Stitches that each section shall take in counted work, in the order of the sections "
            + "(in linen stitch: pairs of single crochet and chain).",
            new ListShape<int>("stitch counts", new WholeShape(FabricChoice.SectionCounts), 1, ColourRing.MostSections),
            f => f.SectionStitches, "the counted stitches, rounded");
        var turnCost = o.Optional(
            "turnCost", "Yarn that a turn or join takes beyond the stitches, in stitches; may be negative.", Measured.TurnCost,
            f => f.TurnCost,
            "0 in counted work, else usual for the stitch");
        var chainCounts = o.Optional(
            "turningChainCounts", "The turning chain counts as the row's first stitch.", new FlagShape(), f => f.TurningChainCounts,
            "as is usual for the stitch");
        var hands = o.OptionalObject("hands", "Steadiness of the maker's tension.", HandsShape, f => f.Hands, "hands as of most makers");
        var edging = o.OptionalObject(
            "edging", "Gauge of single crochet as the edgings are worked, with their yarn and hook.",
            GaugeShape, f => f.Edging, "a stitch 0.85 of the fabric's wide, as is usual of edgings");
        o.Check((v, faults) =>
        {
            if (swatch.TryFrom(v, out var first) && other.TryFrom(v, out var second))
                FabricChecks.TwoHooks(v.Place, first, second, faults);
            if (keeping.TryFrom(v, out var k) && sectionStitches.TryFrom(v, out var s))
                FabricChecks.KeepingUsesStitches(v.Place, k, s, faults);
            if (stitch.TryFrom(v, out var way) && turnCost.TryFrom(v, out var turn) && chainCounts.TryFrom(v, out var counts))
                FabricChecks.CountingChainTakesYarn(v.Place, way, counts, turn, faults);
        });
        return v => new FabricChoice(
            stitch.From(v), swatch.From(v), other.From(v), keeping.From(v), sectionStitches.From(v), turnCost.From(v), chainCounts.From(v))
        {
            Hands = hands.From(v),
            Edging = edging.From(v),
        };
    });
}
