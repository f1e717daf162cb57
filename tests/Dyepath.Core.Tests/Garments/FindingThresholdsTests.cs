using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>
/// What is said of sizes that come out as is written here, and not as they are planned: on both sides of every limit, with every number by
/// hand. Nothing more is tried, so that nothing is advised.
/// </summary>
public sealed class FindingThresholdsTests
{
    private const string Nothing = ": no change to edgings, cuts, hooks, counts or direction that was tried brings it nearer.";

    private static readonly Dictionary<string, Made> All = [];

    private sealed record Made(DirectionPlan Chosen, SizeTargets Targets, Plan Plan)
    {
        /// <summary>Of the plan's sizes, all of them exactly as is asked for, but for a change.</summary>
        public Finding[] Found(Func<SizePlan, int, SizePlan> change) => [.. PlanFindings.Of(
            Chosen, Targets, [.. Plan.Sizes.Select((size, i) => change(
                size with { Finished = size.Finished.SetItems(size.Target), Worn = [], Edgings = [] }, i))], null)];

        public string[] Said(Func<SizePlan, int, SizePlan> change) => [.. Found(change).Select(f => f.Text)];

        /// <summary>What one measure is asked for and comes to, in centimetres by size.</summary>
        public string[] Said(GarmentMeasure measure, double[] asked, double[] made) => Said((size, i) => size with
        {
            Target = size.Target.SetItem(measure, Cm(asked[i])),
            Finished = size.Finished.SetItem(measure, Cm(made[i])),
        });
    }

    /// <summary>In sizes S, M and L.</summary>
    private static Made Of(string garment, Direction direction = Direction.Up)
    {
        if (All.TryGetValue($"{garment}, {direction}", out var made))
            return made;
        // Of 22 stitches a repeat.
        var project = garment == "wrap" ? Begun("wrap", "sc", even: true, direction).With(g => g with { Edgings = [new(EdgingPlace.Border, "sc", null)] })
            : StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
        project = GarmentTrials.WithCompanion(project with { Edition = project.Edition with { Units = Units.Centimetres } })
            .With(g => g with
            {
                Direction = direction,
                Shape = g.Shape is Vest vest ? vest with { Neck = vest.Neck with { Form = NeckForm.Round } } : g.Shape,
                Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
            });
        if (project.Garment.Shape.IsToBody)
            project = project with { Sizes = project.Sizes with { Sizes = ["S", "M", "L"], Base = "M" } };
        var plan = project.Planned();
        Assert.True(SizeTargets.TryFind(project, plan.Construction, out var targets, out _), "No targets.");
        var shared = SharedFabric.Of(plan);
        var chosen = new DirectionPlanner(new Layout(shared, plan.Construction, plan.Direction), targets).Plan();
        shared.Effort.Spend(Effort.MostOfPlan / 4);
        All[$"{garment}, {direction}"] = made = new(chosen, targets, plan);
        return made;
    }

    private static IEnumerable<string> Of(string[] said, string measure) => said.Where(s =>
        s.StartsWith(Wording.Capital(measure), StringComparison.Ordinal) || s.Contains($": {measure} comes out ", StringComparison.Ordinal));

    /// <summary>An inch: 2.54 cm.</summary>
    [Theory]
    [InlineData(2.54, null)]
    [InlineData(-2.54, null)]
    [InlineData(2.56, "Sizes S, M and L: length comes out 2.6 cm over their targets")]
    [InlineData(-2.56, "Sizes S, M and L: length comes out 2.6 cm under their targets")]
    public void More_than_an_inch_off_is_poor(double off, string? told) => Assert.Equal(
        told is null ? [] : [told + Nothing],
        Of(Of("pullover").Said(GarmentMeasure.Length, [60, 62, 64], [60 + off, 62 + off, 64 + off]), "length"));

    [Fact]
    public void Sizes_that_are_off_alike_are_told_together_and_others_by_themselves()
    {
        var top = Of("pullover");
        Assert.Equal(
            ["Sizes S, M and L: length comes out 3.0 to 4.0 cm over their targets" + Nothing],
            Of(top.Said(GarmentMeasure.Length, [60, 62, 64], [63, 65.5, 68]), "length"));
        Assert.Equal(
            [
                "Size S: length comes out 3.0 cm under its target of 60.0 cm" + Nothing, "Size L: length comes out 2.7 cm over its target of 64.0 cm" + Nothing,
                "Length is not graded evenly: from S to M it grows by 5.0 cm where it is to grow by 2.0 cm and from M to L it grows by 4.7 cm where it is to grow by 2.0 cm.",
            ],
            Of(top.Said(GarmentMeasure.Length, [60, 62, 64], [57, 62, 66.7]), "length"));
    }

    /// <summary>
    /// Half a centimetre is not seen; sizes that are to be alike and fall by more are told, though each is near its target.
    /// </summary>
    [Theory]
    [InlineData(59.5, null)]
    [InlineData(59.4, "Length is not graded evenly: M has 59.4 cm where S has 60.0 cm")]
    public void A_larger_size_that_is_smaller_is_told_beyond_half_a_centimetre(double made, string? told) => Assert.Equal(
        told is null ? [] : [told + Nothing], Of(Of("pullover").Said(GarmentMeasure.Length, [60, 60, 60], [60, made, made]), "length"));

    /// <summary>What opens lies by single stitches, so that a centimetre and a half is not told.</summary>
    [Theory]
    [InlineData(18.5, null)]
    [InlineData(18.4, "Neck width is not graded evenly: M has 18.4 cm where S has 20.0 cm")]
    public void An_opening_that_is_smaller_is_told_beyond_a_centimetre_and_a_half(double made, string? told) => Assert.Equal(
        told is null ? [] : [told + Nothing], Of(Of("pullover").Said(GarmentMeasure.NeckWidth, [20, 20, 20], [20, made, made]), "neck width"));

    [Theory]
    [InlineData(60, 62, 61, 65.54, null)]
    [InlineData(60, 62, 61, 65.56, "from S to M it grows by 4.6 cm where it is to grow by 2.0 cm")]
    [InlineData(60, 60, 61.5, 58.9, "from S to M it shrinks by 2.6 cm where it is to stay as it is")]
    [InlineData(60, 57, 58.5, 58.5, "from S to M it stays as it is where it is to shrink by 3.0 cm")]
    [InlineData(60, 63, 61.5, 61.5, "from S to M it stays as it is where it is to grow by 3.0 cm and S and M both have 61.5 cm where 3.0 cm more are asked for")]
    public void A_leap_is_an_inch_more_or_less_than_is_asked_for(double askedS, double askedM, double madeS, double madeM, string? told)
    {
        var said = Of(Of("pullover").Said(GarmentMeasure.Length, [askedS, askedM, askedM], [madeS, madeM, madeM]), "length").Where(s => s.StartsWith('L'));
        // Where the furthest size is poor, what helps is told there.
        var poor = Math.Max(Math.Abs(madeS - askedS), Math.Abs(madeM - askedM)) > 2.54;
        Assert.Equal(told is null ? [] : [$"Length is not graded evenly: {told}{(poor ? "." : Nothing)}"], said);
    }

    /// <summary>
    /// Of a length worked up rows come by twos, once; of a width worked sideways by twos at front and back: where less than that is asked
    /// for, sizes are alike for nobody's fault. Under a centimetre nobody looks for a difference.
    /// </summary>
    [Theory]
    [InlineData(Direction.Up, GarmentMeasure.Length, 2)]
    [InlineData(Direction.Sideways, GarmentMeasure.Width, 4)]
    public void Sizes_alike_are_told_and_whether_rows_allow_another(Direction direction, GarmentMeasure measure, int rows)
    {
        var top = Of("pullover", direction);
        var word = measure == GarmentMeasure.Length ? "length" : "width";
        var grows = rows * top.Plan.RowHeight;
        Assert.InRange(grows.Centimetres, 1.05, 2.5);
        Assert.Empty(Alike(0.99));
        var least = Wording.Fine(grows, Units.Centimetres);
        Assert.Equal(
            [$"{Wording.Capital(word)} is not graded evenly: S and M both have 90.0 cm where 1.0 cm more are asked for: a piece grows by 2 rows at a time, which makes {least} in all."],
            Alike(1));
        Assert.EndsWith(" in all.", Assert.Single(Alike(grows.Centimetres - 0.001)), StringComparison.Ordinal);
        Assert.Equal(
            [$"{Wording.Capital(word)} is not graded evenly: S and M both have 90.0 cm where {Wording.Fine(grows, Units.Centimetres)} more are asked for{Nothing}"], Alike(grows.Centimetres));

        string[] Alike(double more) => [.. Of(top.Said(measure, [90, 90 + more, 92 + more], [90, 90, 92]), word)];
    }

    [Theory]
    [InlineData(FitPart.Body, BodyMeasure.Bust, "body", "bust")]
    [InlineData(FitPart.Sleeve, BodyMeasure.UpperArm, "sleeve", "upper arm")]
    [InlineData(FitPart.NeckOpening, BodyMeasure.Head, "neck opening, all round and stretched,", "head")]
    public void What_is_too_tight_is_told_with_what_it_has_to_be(FitPart part, BodyMeasure body, string words, string girth)
    {
        Assert.Equal(
            [$"Sizes S and L: the {words} is 90.0 to 90.9 cm; for their {girth} it must be 91.0 to 92.0 cm at least: give more ease."],
            Told((90, 91), null, (90.9, 92)));
        Assert.Equal([$"Size M: the {words} is 91.9 cm; for its {girth} it must be 92.0 cm at least: give more ease."], Told((92, 92), (91.9, 92), null));
        Assert.Empty(Told((92, 92), (92, 92), (92.1, 92)));

        string[] Told(params (double Has, double Wanted)?[] sizes) =>
        [
            .. Of("pullover").Said((s, i) => sizes[i] is var (has, wanted) ? s with { Worn = [Fit(part, body, has, wanted)] } : s)
                .Where(t => t.Contains(" it must be ", StringComparison.Ordinal)),
        ];
    }

    private static WornFit Fit(FitPart part, BodyMeasure body, double has, double wanted) =>
        new(part, Cm(has), body, Cm(wanted), "garment.ease", Mend.Ease);

    [Theory]
    [InlineData(BodyMeasure.Head, 0.0, "0.0")]
    [InlineData(BodyMeasure.Head, 0.9, "0.9")]
    [InlineData(BodyMeasure.Head, 1.0, null)]
    [InlineData(BodyMeasure.Head, -0.1, null)]
    [InlineData(BodyMeasure.Bust, 0.9, null)]
    public void Under_a_centimetre_to_spare_over_the_head_is_told(BodyMeasure body, double spare, string? told) => Assert.Equal(
        told is null ? [] : [$"Sizes S, M and L: the neck opening, all round and stretched, goes over the head with {told} cm to spare, which a firm edging or a larger head takes. For more, give more ease."],
        Of("pullover").Said((s, _) => s with { Worn = [Fit(FitPart.NeckOpening, body, 56 + spare, 56)] }).Where(t => t.Contains("over the head", StringComparison.Ordinal)));

    /// <summary>A third of the length; of a border, which a width has twice, a sixth of it.</summary>
    [Theory]
    [InlineData("pullover", EdgingPlace.Hem, GarmentMeasure.Length, 20.0, 10, null)]
    [InlineData("pullover", EdgingPlace.Hem, GarmentMeasure.Length, 20.1, 10, "of 60.0 cm of length the edging of the hem takes 20.1 cm, so that little of the motif is left. Work 9 rounds or fewer.")]
    [InlineData("pullover", EdgingPlace.Hem, GarmentMeasure.Length, 30.0, 7, "of 60.0 cm of length the edging of the hem takes 30.0 cm, so that little of the motif is left. Work 4 rounds or fewer.")]
    [InlineData("wrap", EdgingPlace.Border, GarmentMeasure.Width, 10.0, 10, null)]
    [InlineData("wrap", EdgingPlace.Border, GarmentMeasure.Width, 10.1, 10, "of 60.0 cm of width the edging of the border takes 20.2 cm, so that little of the motif is left. Work 9 rounds or fewer.")]
    public void An_edging_is_deep_that_takes_more_than_a_third(
        string garment, EdgingPlace place, GarmentMeasure measure, double depth, int rounds, string? told)
    {
        var made = Of(garment);
        Assert.Contains(made.Plan.Project.Garment.Edgings, e => e.Where == place);
        var edging = made.Plan.Sizes[0].Edgings.First(e => e.Where == place);
        var last = made.Plan.Sizes.Length - 1;
        var found = made.Found((s, i) => s with
        {
            Target = s.Target.SetItem(measure, Cm(60)),
            Finished = s.Finished.SetItem(measure, Cm(60)),
            // The deepest is told, and it is the last.
            Edgings = [edging with { Depth = Cm(i == last ? depth : depth - 0.05), Rounds = rounds }],
        }).Where(f => f.Text.Contains(" the edging of the ", StringComparison.Ordinal)).ToArray();
        Assert.Equal(told is null ? [] : [$"Size {made.Plan.Sizes[last].Name}: {told}"], found.Select(f => f.Text));
        var at = made.Plan.Project.Garment.Edgings.ToList().FindIndex(e => e.Where == place);
        Assert.All(found, f => Assert.Equal($"garment.edgings[{at}].rounds", f.Place));
    }

    /// <summary>Half as much as half of the back's neck: of 20 cm that is 5.</summary>
    [Theory]
    [InlineData(5.0, null)]
    [InlineData(4.9, "Sizes S and M: # is 4.9 to 5.2 cm, where half of the neck is 10.0 to 10.5 cm")]
    public void Fronts_are_narrow_that_have_half_of_half_a_neck(double has, string? told)
    {
        var cardigan = Of("cardigan");
        var opening = cardigan.Plan.Construction.Groups.SelectMany(g => g.Openings)
            .First(o => o is { BesideAs: not null, Id: OpeningId.Neck });
        var said = cardigan.Said((s, i) => s with
        {
            Finished = s.Finished.SetItem(GarmentMeasure.NeckWidth, Cm(i == 1 ? 21 : 20))
                .SetItem(opening.Measure, Cm(i switch { 0 => has, 1 => has + 0.3, _ => 5 })),
        }).Where(t => t.Contains(" hardly wider than ", StringComparison.Ordinal));
        // A quarter of 21 cm is 5.25 cm: 5.3 cm are enough.
        Assert.Equal(
            told is null ? [] : [$"{told.Replace("#", GarmentMeasures.Words(opening.Measure), StringComparison.Ordinal)}: the fronts are hardly wider than their shoulders, and pull at the neck. Make the neck wider, give more ease, or work it the other way."],
            said);
    }

    /// <summary>Over a centimetre and a half, up to an inch.</summary>
    [Theory]
    [InlineData(1.5, 1.5, 1.5, null)]
    [InlineData(2.0, 1.6, 1.6, "front neck depth comes out up to 2.0 cm over")]
    [InlineData(2.54, 2.54, 2.54, "front neck depth comes out up to 2.5 cm over")]
    [InlineData(2.56, 2.56, 2.56, null)]
    [InlineData(-1.6, 0, 0, "front neck depth comes out up to 1.6 cm under (S)")]
    [InlineData(1.6, 1.7, 0, "front neck depth comes out up to 1.7 cm over (S and M)")]
    [InlineData(1.6, 0.1, -1.8, "front neck depth comes out up to 1.6 cm over (S) and front neck depth comes out up to 1.8 cm under (L)")]
    public void A_cut_edge_that_is_nearly_poor_is_told(double s, double m, double l, string? told)
    {
        double[] off = [s, m, l];
        var said = Of("vest").Said(GarmentMeasure.NeckDepth, [20, 22, 24], [20 + off[0], 22 + off[1], 24 + off[2]])
            .Where(t => t.StartsWith("Cut edges lie ", StringComparison.Ordinal));
        Assert.Equal(told is null ? [] : [$"Cut edges lie where the colours let rows end: {told}."], said);
    }

    [Fact]
    public void A_cut_that_is_not_made_is_off_by_nothing() => Assert.DoesNotContain(
        Of("vest").Said(GarmentMeasure.NeckDepth, [2, 2, 2], [0, 0, 0]), t => t.StartsWith("Cut edges lie ", StringComparison.Ordinal));

    /// <summary>A cut is seen to leap beyond a centimetre and a half, and to fall beyond a centimetre where it is not to.</summary>
    [Theory]
    [InlineData(1, 2.5, false)]
    [InlineData(1, 2.51, true)]
    [InlineData(1, -0.5, false)]
    [InlineData(1, -0.51, true)]
    [InlineData(0, -1, false)]
    [InlineData(0, -1.01, true)]
    [InlineData(-0.1, -1.2, false)]
    [InlineData(-0.1, -1.61, true)]
    public void A_cut_is_uneven_beyond_what_is_noticed(double asked, double made, bool uneven) =>
        Assert.Equal(uneven, CutFindings.IsUneven(Cm(asked), Cm(made)));

    /// <summary>One repeat of the colours in a row is enough; bands show across any width, and plain pieces show nothing.</summary>
    [Fact]
    public void A_piece_is_narrow_whose_shortest_row_is_shorter_than_a_repeat()
    {
        var wrap = Of("wrap");
        var shared = wrap.Chosen.Layout.SharedFabric;
        const int repeat = 22;
        var piece = wrap.Plan.Sizes[0].Pieces[0];
        Assert.False(PlanFindings.IsNarrow(shared, piece with { RowStitches = [repeat] }));
        Assert.True(PlanFindings.IsNarrow(shared, piece with { RowStitches = [repeat - 1] }), "a stitch less");
        Assert.True(PlanFindings.IsNarrow(shared, piece with { RowStitches = [repeat, repeat - 1] }), "by turns");
        Assert.False(PlanFindings.IsNarrow(shared, piece with { RowStitches = [repeat - 1], Pooled = false }));
        Assert.False(PlanFindings.IsNarrow(shared, piece with { RowStitches = [repeat - 1], Motif = Core.Motifs.MotifKind.Bands }));
    }
}
