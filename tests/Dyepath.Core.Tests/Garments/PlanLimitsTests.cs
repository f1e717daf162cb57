using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What can just be planned, and what just cannot: measures taken stitch by stitch over each limit.</summary>
public sealed class PlanLimitsTests
{
    private static Project Top() => StarterDocument.Of(Repertoire.All.First(k => k.Name == "pullover")) is var top
        ? top with { Sizes = top.Sizes with { Sizes = ["M"], Base = "M" }, Garment = top.Garment with { Direction = Direction.Up, Edgings = [] } } : top;

    /// <summary>Beside a neck a seam hides one stitch of each shoulder, and two are left to be seen: six in all.</summary>
    [Fact]
    public void A_neck_leaves_two_stitches_of_each_shoulder_to_be_seen()
    {
        var rests = new Dictionary<bool, List<int>> { [true] = [], [false] = [] };
        var stitches = 0;
        for (var wide = 30.0; wide < 70; wide += 10 / 14.0)
        {
            var tried = Top().WithTop(t => t with { Neck = new Neck(NeckForm.Slit, Cm(wide)) }).Tried();
            if (tried.Plan is { } plan)
            {
                var front = plan.Sizes[0].Pieces[0];
                var neck = front.Opening(OpeningId.Neck);
                stitches = front.Stitches;
                rests[true].Add(stitches - (neck.Last - neck.First + 1));
                continue;
            }
            Assert.Contains(tried.Reasons, r => r.Text == "Worked up: The neck of size M leaves no shoulders: make it narrower.");
            // Centred on its row, it has as many more or fewer as make pairs: of 14 to 10 cm, the nearest such number.
            var count = (int)Math.Round((wide * 1.4 - stitches % 2) / 2, MidpointRounding.AwayFromZero) * 2 + stitches % 2;
            rests[false].Add(stitches - count);
        }
        Assert.Equal((6, 4), (rests[true].Min(), rests[false].Max()));
    }

    /// <summary>Below an armhole four rows are left: rows and armholes come by twos.</summary>
    [Fact]
    public void An_armhole_leaves_four_rows_below_it()
    {
        var rests = new List<int>();
        var refused = 0;
        for (var less = 0.0; less < 30; less += 20 / 16.0)
        {
            var tried = Top().WithTop(t => t with { BelowWaist = Cm(-less) }).Tried();
            if (tried.Plan is { } plan)
            {
                var front = plan.Sizes[0].Pieces[0];
                var armhole = front.Opening(OpeningId.Armhole);
                rests.Add(front.Rows - (armhole.Last - armhole.First + 1));
            }
            else
                refused += tried.Reasons.Count(r => r.Text == "Worked up: Size M is hardly longer than its armholes: make it longer.");
        }
        Assert.Equal(4, rests.Min());
        Assert.True(refused > 0, "No length was too short.");
    }

    /// <summary>A quarter of what is asked for, and four times as much: 14 and 224 stitches of 56 that 40 cm have.</summary>
    [Theory]
    [InlineData(13, "9.3", 56)]
    [InlineData(15, null, 0)]
    [InlineData(223, null, 0)]
    [InlineData(226, "161.4", 56)]
    public void A_fixed_count_far_off_what_is_asked_for_was_mistyped(int count, string? wide, int about)
    {
        var wrap = Begun("wrap", "sc", even: true, Direction.Up)
            .With(g => g with { Edgings = [], Shape = new Wrap(Cm(40), Cm(60), IsBlanket: false) });
        var size = wrap.Planned().Sizes[0].Name;
        var tried = wrap.Fixed([], [new(size, "panelStitches", null, count, "made so")]).Tried();
        var said = (tried.Plan?.Findings ?? tried.Reasons)
            .Where(f => f.Text.Contains(" as fixed make ", StringComparison.Ordinal) && f.Level == FindingLevel.Fault).ToArray();
        Assert.Equal(wide is null ? 0 : 1, said.Length);
        Assert.All(said, f => Assert.StartsWith(
            $"Worked up: Size {size}: {count} as fixed make a width of {wide} cm where 40.0 cm are asked for: fix about {about}, or release it.", f.Text, StringComparison.Ordinal));
        Assert.All(said, f => Assert.Equal("sizes.overrides[0].count", f.Place));
    }

    /// <summary>
    /// Rounds that a size may have: all that the document leaves open, each as deep as it is along both sides, and charged a fiftieth of a
    /// square centimetre for each more or fewer than are usual.
    /// </summary>
    [Fact]
    public void Rounds_of_an_edging_are_offered_with_what_they_add_and_cost()
    {
        var project = Begun("wrap", "sc", even: true, Direction.Up).With(g => g with { Edgings = [new(EdgingPlace.Border, "sc", null) { Fewest = 1, Most = 6 }] });
        Assert.True(SharedFabric.TryCreate(project, null, new Core.Limits.Effort(), out var shared, out _), "No fabric.");
        var measure = Measure(40) with { Edging = EdgingPlace.Border, EdgingTimes = 2, Further = Cm(3) };
        var usual = EdgingLibrary.Find("sc").Rounds;
        var row = shared.EdgingGaugeFor(Direction.Up).RowHeight.Centimetres;
        var rounds = Grader.Rounds(shared, measure);
        Assert.Equal([1, 2, 3, 4, 5, 6], rounds.Select(r => r.Rounds));
        Assert.All(rounds, r => Assert.Equal(3 + 2 * r.Rounds * row, r.Depth.Centimetres, 1e-5));
        Assert.All(rounds, r => Assert.Equal(0.02 * Math.Abs(r.Rounds - usual), r.Penalty, 1e-12));
        var widest = Grader.Rounds(shared, measure, widest: true).Select(r => r.Rounds).ToArray();
        Assert.Equal((EdgingLibrary.Find("sc").Fewest, EdgingLibrary.Find("sc").Allowed.Largest), (widest[0], widest[^1]));
        Assert.Empty(Grader.Rounds(shared, measure with { Edging = EdgingPlace.Cuffs }));
        Assert.Empty(Grader.Rounds(shared, Measure(40)));
    }

    /// <summary>Nine tenths of a third of 40 cm are 12 cm: rounds that come to more are not offered, but the fewest always are.</summary>
    [Theory]
    [InlineData(12.0, 12.1, "1 2")]
    [InlineData(11.9, 12.0, "1 2 3")]
    [InlineData(12.1, 12.2, "1")]
    public void Rounds_leave_most_of_the_measure_to_the_motif(double second, double third, string offered)
    {
        ImmutableArray<GradingRounds> rounds = [new(1, Cm(30), 0), new(2, Cm(second), 0), new(3, Cm(third), 0)];
        var problem = Grader.Problem(Measure(40), Tideline.Garment.Grading, [], [], rounds);
        Assert.Equal(offered, string.Join(' ', problem.Sizes[0].Rounds.Select(r => r.Rounds)));
    }

    private static StitchMeasure Measure(double target) => new(GarmentMeasure.Width, default, 0, null, ["One"], [Cm(target)], [null]);

    /// <summary>
    /// Rounds that a document asks for, or leaves open: half of the usual ones at least and two more than twice as many at most, within
    /// what the edging allows; wished is the usual number, or what comes nearest to it.
    /// </summary>
    [Theory]
    [InlineData(3, null, null, 3, 3, 3)]
    [InlineData(null, 2, 5, 2, 4, 5)]
    [InlineData(null, 5, 7, 5, 5, 7)]
    [InlineData(null, 1, 3, 1, 3, 3)]
    [InlineData(null, null, null, 2, 4, 10)]
    [InlineData(null, 12, null, 12, 12, 12)]
    [InlineData(null, null, 1, 1, 1, 1)]
    public void Rounds_that_are_left_open_lie_around_the_usual_ones(int? rounds, int? fewest, int? most, int least, int wished, int largest)
    {
        var edging = EdgingLibrary.Find("sc") with { Rounds = 4, Fewest = 1 };
        Assert.Equal((least, wished, largest),
            new EdgingChoice(EdgingPlace.Hem, "sc", rounds) { Fewest = fewest, Most = most }.RoundsOf(edging));
    }
}
