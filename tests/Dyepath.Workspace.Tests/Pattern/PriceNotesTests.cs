using Dyepath.Core.Planning;
using Dyepath.Core.Pricing;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Pattern;

namespace Dyepath.Workspace.Tests.Pattern;

/// <summary>Prices as they are typed, and what stays of them on a device.</summary>
public sealed class PriceNotesTests
{
    private static readonly PriceNotes Typed = new()
    {
        Slow = "10",
        Fast = "18",
        Currency = "€",
        Ball = "9,50",
        CompanionBall = "6",
        Wage = "15",
        Sample = "60",
        TestRound = "100",
        Editing = "200",
        Photos = "40",
        Copy = "7",
        Fee = "10 %",
        FeePerCopy = "0.30",
        People = "8",
    };

    [Fact]
    public void What_is_typed_is_what_the_sheet_gets()
    {
        var inputs = Typed.Inputs(out var faults);
        Assert.Empty(faults);
        Assert.Equal((10, 14, 18), (inputs.Pace.Low, inputs.Pace.Median, inputs.Pace.High));
        Assert.Equal(("€", 9.50m, 6m, 15m), (inputs.Currency, inputs.Ball, inputs.CompanionBall, inputs.Wage));
        Assert.Equal((400m, 7m, 0.1m, 0.30m, 8), (inputs.Fixed, inputs.Copy, inputs.Fee, inputs.FeePerCopy, inputs.People));
        Assert.Empty(Typed.FixedLeftOut);
    }

    [Fact]
    public void Nothing_typed_is_nothing_given()
    {
        var inputs = new PriceNotes { Ball = "  " }.Inputs(out var faults);
        Assert.Empty(faults);
        Assert.Equal(new PriceInputs(), inputs);
        Assert.Empty(new PriceNotes().FixedLeftOut);
    }

    [Fact]
    public void Of_the_fixed_costs_those_without_a_number_are_told()
    {
        var notes = Typed with { TestRound = "", Photos = " " };
        Assert.Equal(260m, notes.Inputs(out _).Fixed);
        Assert.Equal(["the test round", "photos"], notes.FixedLeftOut);
    }

    public static TheoryData<PriceNotes, string> Amiss => new()
    {
        { Typed with { Ball = "nine" }, nameof(PriceNotes.Ball) },
        { Typed with { Ball = "-1" }, nameof(PriceNotes.Ball) },
        { Typed with { CompanionBall = "1e9" }, nameof(PriceNotes.CompanionBall) },
        { Typed with { Wage = "1000001" }, nameof(PriceNotes.Wage) },
        { Typed with { Wage = "NaN" }, nameof(PriceNotes.Wage) },
        { Typed with { Sample = "999999", Editing = "2" }, nameof(PriceNotes.Sample) },
        { Typed with { Fee = "100" }, nameof(PriceNotes.Fee) },
        { Typed with { FeePerCopy = "0.3.3" }, nameof(PriceNotes.FeePerCopy) },
        { Typed with { People = "2.5" }, nameof(PriceNotes.People) },
        { Typed with { People = "0" }, nameof(PriceNotes.People) },
        { Typed with { People = "1001" }, nameof(PriceNotes.People) },
        { Typed with { Currency = "=1+1" }, nameof(PriceNotes.Currency) },
        { Typed with { Slow = "0" }, nameof(PriceNotes.Slow) },
        { Typed with { Fast = "9" }, nameof(PriceNotes.Fast) },
    };

    /// <summary>The field is told; the sheet is worked out without it, never refused.</summary>
    [Theory]
    [MemberData(nameof(Amiss), DisableDiscoveryEnumeration = true)]
    public void What_may_not_stand_there_is_told_at_its_field(PriceNotes notes, string field)
    {
        var inputs = notes.Inputs(out var faults);
        Assert.Contains(field, faults.Keys);
        PriceSheet.Of(GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!, TestContext.Current.CancellationToken).Plan!, inputs);
    }

    [Fact]
    public void A_pace_from_a_log_takes_the_place_of_what_is_typed()
    {
        var notes = Typed with { Own = new LogPace(9, 11, 14, 62, "the log of size M") };
        var pace = notes.Inputs(out _).Pace;
        Assert.Equal((9, 11, 14), (pace.Low, pace.Median, pace.High));
        Assert.Equal("9 to 14 single crochet a minute, 11 in the middle, over 62 rows of the log of size M", notes.PaceWords(pace));
        Assert.EndsWith(", as you said", Typed.PaceWords(Typed.Inputs(out _).Pace), StringComparison.Ordinal);
        Assert.EndsWith(" (common practice, no source)", new PriceNotes().PaceWords(Pace.Usual), StringComparison.Ordinal);
    }

    /// <summary>A pace that is told to be amiss is not said to be hers, nor is half of it.</summary>
    [Fact]
    public void A_pace_that_cannot_be_is_not_hers()
    {
        foreach (var notes in new[] { new PriceNotes { Slow = "0", Fast = "18" }, new PriceNotes { Slow = "30" }, new PriceNotes { Fast = "quick" } })
        {
            var pace = notes.Inputs(out var faults).Pace;
            Assert.NotEmpty(faults);
            Assert.Equal(Pace.Usual, pace);
            Assert.EndsWith(" (common practice, no source)", notes.PaceWords(pace), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Notes_come_back_as_they_were_written()
    {
        var notes = Typed with { Own = new LogPace(9, 11, 14, 62, "the log of size M") };
        Assert.Equal(notes, PriceNotes.Read(notes.Write()));
        Assert.NotEqual(PriceNotes.NameFor("a"), PriceNotes.NameFor("b"));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("?")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("""{ "ball": null }""")]
    [InlineData("""{ "ball": 9.5 }""")]
    [InlineData("""{ "ball": "0000000000000000000000000000000000000000000000000009" }""")]
    [InlineData("""{ "own": { "low": 0, "median": 5, "high": 9, "rows": 20, "from": "x" } }""")]
    [InlineData("""{ "own": { "low": 9, "median": 5, "high": 9, "rows": 20, "from": "x" } }""")]
    [InlineData("""{ "own": { "low": 9, "median": 10, "high": 11, "rows": 20 } }""")]
    public void What_cannot_be_read_is_empty(string? json) => Assert.Equal(new PriceNotes(), PriceNotes.Read(json));
}
