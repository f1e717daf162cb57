using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Counts, side bands and unequal panels that are chosen, against every one that could be, each charged by hand.</summary>
public sealed class CountChoiceLawTests
{
    /// <summary>What an error costs: its square, four times as much where it takes ease away.</summary>
    private static double Error(double finished, double target) =>
        (finished - target) * (finished - target) * (finished < target ? 4 : 1);

    private static SharedFabric Shared(Func<GradingChoice, GradingChoice> change)
    {
        var project = GarmentTrials.WithCompanion(Begun("pullover", "sc", even: true, Direction.Up)).With(g => g with
        {
            Grading = change(g.Grading with { UnevenWidths = true, SeveralLeans = true, ForgivenessWeight = 3, ClarityWeight = 2 }),
        });
        Assert.True(SharedFabric.TryCreate(project, null, new Effort(), out var shared, out _), "No fabric.");
        return shared;
    }

    /// <summary>Both panels, 14 stitches to 10 cm, of which a seam takes one at either side.</summary>
    private static double Wide(CountFinding front, CountFinding back) => (front.Stitches - 2 + back.Stitches - 2) * 10 / 14.0;

    private static double Charged(CountFinding count) =>
        3 / (1 + Math.Max(0, Math.Min(-(count.Forgiveness?.Tighter ?? 0), count.Forgiveness?.Looser ?? 0)) / 0.01)
        + 2 * (1 - count.Reading.RelativeClarity)
        + (count.Task.HasFlag(CountTask.ExtraEdgeStitch) ? 1 : 0) + (count.Task.HasFlag(CountTask.HalfStitchTurn) ? 1 : 0);

    private static Core.Planning.Grading Chosen(SharedFabric shared, params double[] targets) => PieceCounts.Choose(
        shared, Direction.Up, Working.Turned,
        new StitchMeasure(
            GarmentMeasure.Width, new Axis(true, Cm(10 / 14.0), 1), 2, null, [.. targets.Select((_, i) => $"{i}")], [.. targets.Select(Cm)],
            [.. targets.Select(_ => (int?)null)])
        {
            Panels = 2,
            MayDiffer = true,
            IsGirth = true,
        }, rows: 96);

    /// <summary>
    /// With one count for both sizes, bands of up to six rows make up what it leaves: four bands, each row as high as a single crochet.
    /// </summary>
    [Fact]
    public void Law_of_one_count_bands_make_up_what_is_cheapest()
    {
        var shared = Shared(g => g with { SideBands = true, MostCounts = 1 });
        var high = shared.SingleCrochetHeight.Centimetres;
        var most = new HashSet<int>();
        Gen.Select(Gen.Double[75, 130], Gen.Double[0, 22]).Holds(
            (first, more) =>
            {
                double[] targets = [first, first + more];
                var grading = Chosen(shared, targets);
                var counts = grading.Offer!.Counts.Select(c => c.Front).ToArray();
                var cheapest = counts.Min(c => targets.Sum(t => Enumerable.Range(0, 7).Min(bands => Cost(c, bands, t))));
                var chosen = targets.Select((t, i) => Cost(grading.Chosen[i].Front, grading.Chosen[i].Bands, t)).Sum();
                Assert.Equal(cheapest, chosen, 1e-4);
                Assert.Single(grading.Chosen.Select(c => c.Front.Stitches).Distinct());
                for (var i = 0; i < 2; i++)
                {
                    var (own, wide) = (grading.Chosen[i],
                        Wide(grading.Chosen[i].Front, grading.Chosen[i].Back) + 4 * grading.Chosen[i].Bands * high);
                    Assert.Equal(wide, own.Measure.Centimetres, 1e-4);
                    most.Add(own.Bands);
                }
            },
            seed: 61, cases: 60);
        Assert.Equal(6, most.Max());

        double Cost(CountFinding count, int bands, double target) => Error(Wide(count, count) + 4 * bands * high, target) + Charged(count)
            + (bands == 0 ? 0 : 4 + 0.5 * bands);
    }

    /// <summary>
    /// Panels may differ by half rounds of the colours, 11 stitches of 22, the wider one in front, up to one whole round: each count more
    /// is a quarter of a square centimetre and has to save half a centimetre, differing at all is two, and each stitch a tenth.
    /// </summary>
    [Fact]
    public void Law_unequal_panels_are_taken_where_they_are_cheapest()
    {
        var shared = Shared(g => g with { UnequalPanels = true });
        var differed = new HashSet<int>();
        Gen.Double[60, 140].Holds(
            target =>
            {
                var grading = Chosen(shared, target);
                var counts = grading.Offer!.Counts.Select(c => c.Front).ToArray();
                var alike = counts.MinBy(c => Cost(c, c))!;
                var pairs = from back in counts
                            from front in counts
                            where front.Stitches - back.Stitches is 11 or 22 && Off(front, back) <= Off(alike, alike) - 0.5
                            select Cost(front, back);
                var cheapest = pairs.Append(Cost(alike, alike)).Min();
                var chosen = Assert.Single(grading.Chosen);
                Assert.Equal(cheapest, Cost(chosen.Front, chosen.Back), 1e-4);
                Assert.Equal(Wide(chosen.Front, chosen.Back), chosen.Measure.Centimetres, 1e-4);
                differed.Add(chosen.Front.Stitches - chosen.Back.Stitches);

                double Off(CountFinding front, CountFinding back) => Math.Abs(Wide(front, back) - target);

                double Cost(CountFinding front, CountFinding back) =>
                    Error(Wide(front, back), target) + (Charged(front) + Charged(back)) / 2
                    + (front.Stitches == back.Stitches ? 0.25 : 0.5 + 2 + 0.1 * (front.Stitches - back.Stitches));
            },
            seed: 67, cases: 60);
        Assert.True(differed.Count > 1 && differed.All(d => d is 0 or 11 or 22), string.Join(' ', differed));
    }

    /// <summary>Counts are looked for up to 20 cm beyond what sizes ask for, and every one of them is offered, narrow ones first.</summary>
    [Fact]
    public void Counts_within_twenty_centimetres_are_offered()
    {
        var grading = Chosen(Shared(g => g), 80, 100);
        var offered = grading.Offer!;
        // (80 − 20) / 2 and (100 + 20) / 2 cm of 14 stitches to 10 cm, and a stitch more for either seam.
        Assert.Equal((44, 86), (offered.Options.From, offered.Options.To));
        Assert.Equal(offered.Counts.OrderBy(c => c.Measure), offered.Counts);
        Assert.Equal(
            offered.Search.Counts.Where(c => c.RowStitches.Length == 1).Select(c => c.Stitches).Distinct().Order(),
                offered.Counts.Select(c => c.Front.Stitches).Order());
        Assert.All(offered.Counts, c => Assert.Equal(Charged(c.Front), c.Penalty, 1e-9));
    }
}
