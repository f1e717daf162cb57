using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

public sealed class FitEditsTests
{
    private static readonly string[] Pinned = ["size", "what", "count", "reason"];

    [Fact]
    public void A_pinned_count_fixes_the_direction_and_is_planned()
    {
        var document = FitBench.Demo();
        FitEdits.Pin(document, Direction.Sideways, "L", "panelStitches", 96, "as swatched");
        FitEdits.Pin(document, Direction.Sideways, "L", "panelStitches", 93, "shorter");
        Assert.Equal("sideways", document.Typed("garment.direction"));
        Assert.Equal(1, document.Count(FitEdits.Overrides));
        var plan = FitBench.Plan(document).Plan!;
        Assert.Equal(93, plan.Sizes.Single(s => s.Name == "L").Pieces[0].Stitches);
        FitEdits.Release(document, FitEdits.Overrides, 0);
        Assert.False(document.Has(FitEdits.Overrides));
    }

    /// <summary>The direction was fixed for the counts' sake: it goes with the last of them, and one that was chosen stays.</summary>
    [Fact]
    public void A_direction_that_only_a_count_asked_for_goes_with_the_last_count()
    {
        var document = FitBench.Demo();
        FitEdits.Pin(document, Direction.Sideways, "L", "panelStitches", 96, "as swatched");
        FitEdits.Lock(document, Direction.Sideways, "M", "panelRows", JsonValue.Create(94));
        FitEdits.Release(document, FitEdits.Overrides, 0);
        Assert.Equal("sideways", document.Typed("garment.direction"));
        FitEdits.Release(document, FitEdits.Locked, 0);
        Assert.False(FitEdits.HasDirection(document));

        FitEdits.Pin(document, Direction.Sideways, "L", "panelStitches", 96, "as swatched");
        document.Set("garment.direction", null);
        document.Set(FitEdits.Overrides, null);
        document.Set("garment.direction", "sideways");
        FitEdits.Pin(document, Direction.Sideways, "L", "panelStitches", 96, "as swatched");
        FitEdits.ReleaseCounts(document, FitEdits.Overrides);
        Assert.Equal("sideways", document.Typed("garment.direction"));
    }

    [Fact]
    public void A_pin_keeps_a_direction_that_was_chosen()
    {
        var document = FitBench.Uneven();
        document.Set("garment.direction", "up");
        FitEdits.Pin(document, Direction.Up, "L", "panelRows", 120, "longer");
        Assert.Equal("up", document.Typed("garment.direction"));
        Assert.Equal(120, FitBench.Plan(document).Plan!.Sizes.Single(s => s.Name == "L").Pieces[0].Rows);
    }

    [Fact]
    public void Another_direction_releases_counts_and_keeps_measures()
    {
        var document = FitBench.Uneven();
        FitEdits.Pin(document, Direction.Sideways, "L", "panelStitches", 93, "shorter");
        var cropped = new JsonObject { ["size"] = "S", ["what"] = "length", ["length"] = "66 cm", ["reason"] = "cropped" };
        document.Add(FitEdits.Overrides, cropped);
        FitEdits.Lock(document, Direction.Sideways, "M", "panelStitches", JsonValue.Create(94));
        Assert.True(FitEdits.HasCounts(document));
        FitEdits.Direct(document, "up");
        Assert.False(FitEdits.HasCounts(document));
        Assert.Equal("length", document.Typed($"{FitEdits.Overrides}[0].what"));
        Assert.Equal(Direction.Up, FitBench.Plan(document).Plan!.Direction);
        FitEdits.Direct(document, "best");
        Assert.False(FitEdits.HasDirection(document));
    }

    [Fact]
    public void A_locked_number_names_its_base_size()
    {
        var document = FitBench.Demo();
        document.Set("sizes.base", null);
        FitEdits.Lock(document, Direction.Sideways, "1X", "width", JsonValue.Create("130 cm"));
        Assert.Equal("1X", document.Typed("sizes.base"));
        Assert.False(FitEdits.HasDirection(document));
        Assert.Equal(130, FitBench.Plan(document).Plan!.Sizes.Single(s => s.Name == "1X").Target[GarmentMeasure.Width].Centimetres, 1e-6);
    }

    [Theory]
    [InlineData(1.2, "1.2 cm over")]
    [InlineData(-12.26, "12.3 cm under")]
    [InlineData(0.04, "as asked")]
    public void Errors_say_over_or_under(double centimetres, string words) =>
        Assert.Equal(words, FitWords.Error(Length.FromCentimetres(centimetres), Units.Centimetres));

    [Fact]
    public void What_a_pin_costs_is_said_against_the_plan_without_it()
    {
        var document = FitBench.Demo();
        document.Set("garment.direction", "sideways");
        var free = FitBench.Plan(document).Plan!;
        FitEdits.Pin(document, Direction.Sideways, "XS", "panelStitches", 96, "longer");
        var pinned = FitBench.Plan(document).Plan!;
        var said = PinCost.Say(pinned, free, 0);
        Assert.Contains($"furthest off of width and length: {Say(pinned)} (without them {Say(free)})", said, StringComparison.Ordinal);
        Assert.Contains("furthest off of width and length: ", PinCost.Say(free, free, 0), StringComparison.Ordinal);
        Assert.Contains(", as without them", PinCost.Say(free, free, 0), StringComparison.Ordinal);

        static string Say(Plan plan) => plan.Chosen.Furthest!.Say(plan.Project.Edition.Units);
    }

    /// <summary>A weight is a square: 4 cm² lets a size be 2 cm off.</summary>
    [Fact]
    public void Weights_are_chosen_as_distances_and_one_of_her_own_stands_among_them()
    {
        Assert.Equal(["nothing", "1 cm", "2 cm", "3 cm", "4 cm"], FitEdits.Weights("", inches: false).Select(c => c.Words));
        Assert.Equal("2 cm", FitEdits.Weights("", inches: false).Single(c => c.Value == FitEdits.UsualWeight).Words);
        Assert.Equal(["nothing", "1 cm", "2 cm", "3 cm", "4 cm", "1.5 cm"], FitEdits.Weights("2.25 cm²", inches: false).Select(c => c.Words));
        Assert.Equal("2.25 cm²", FitEdits.Weights("2.25 cm²", inches: false)[^1].Value);
        Assert.Equal("0.8 in", FitEdits.Weights("", inches: true)[2].Words);
    }

    /// <summary>A number is fixed anew in its own place: that of the size and of what it counts.</summary>
    [Fact]
    public void A_number_takes_the_place_of_its_own_alone()
    {
        var document = FitBench.Demo();
        FitEdits.Pin(document, Direction.Up, "M", "panelRows", 80, "length");
        FitEdits.Pin(document, Direction.Up, "L", "panelRows", 84, "length");
        FitEdits.Pin(document, Direction.Up, "M", "sleeveRows", 40, "length");
        FitEdits.Pin(document, Direction.Up, "L", "panelRows", 86, "seams");
        Assert.Equal(
            ["M panelRows 80 length", "L panelRows 86 seams", "M sleeveRows 40 length"],
            Enumerable.Range(0, document.Count(FitEdits.Overrides)).Select(i => string.Join(
                ' ', Pinned.Select(field => document.Typed($"{FitEdits.Overrides}[{i}].{field}")))));
        Assert.True(FitEdits.HasCounts(document) && FitEdits.HasDirection(document));
        Assert.Equal("up", document.Typed("garment.direction"));
        FitEdits.ReleaseCounts(document, FitEdits.Overrides);
        Assert.Equal((0, false), (document.Count(FitEdits.Overrides), FitEdits.HasCounts(document)));
    }

    /// <summary>A count that is kept holds in one direction, a length in both.</summary>
    [Fact]
    public void A_count_that_is_kept_fixes_the_direction_and_a_length_does_not()
    {
        var document = FitBench.Demo();
        document.Set("sizes.base", null);
        document.Set("garment.direction", null);
        FitEdits.Lock(document, Direction.Sideways, "M", "length", JsonValue.Create("60 cm")!);
        Assert.Equal(("M", false, "60 cm", false), (document.Typed("sizes.base"), FitEdits.HasDirection(document), document.Typed("sizes.locked[0].length"), FitEdits.HasCounts(document)));
        FitEdits.Lock(document, Direction.Sideways, "M", "panelRows", JsonValue.Create(80));
        Assert.Equal(("sideways", "80", 2), (document.Typed("garment.direction"), document.Typed("sizes.locked[1].count"), document.Count("sizes.locked")));
        FitEdits.Lock(document, Direction.Sideways, "L", "length", JsonValue.Create("62 cm")!);
        Assert.Equal("M", document.Typed("sizes.base"));
        FitEdits.Lock(document, Direction.Sideways, "M", "length", JsonValue.Create("61 cm")!);
        Assert.Equal(("61 cm", 3), (document.Typed("sizes.locked[0].length"), document.Count("sizes.locked")));
        // With the count its direction goes, which nobody chose; the lengths stay.
        FitEdits.ReleaseCounts(document, FitEdits.Locked);
        Assert.Equal((false, 2), (FitEdits.HasDirection(document), document.Count("sizes.locked")));
    }
}
