using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>A vest has every neck but the one whose shoulder is buttoned.</summary>
public sealed class VestNeckTests
{
    public static TheoryData<NeckForm, string, bool, Direction> Ways => new()
    {
        { NeckForm.Slit, "sc", true, Direction.Up },
        { NeckForm.Boat, "hdc", true, Direction.Sideways },
        { NeckForm.Square, "dc", true, Direction.Sideways },
        { NeckForm.Round, "sc", true, Direction.Up },
        { NeckForm.Round, "sc", false, Direction.Sideways },
        { NeckForm.V, "sc", true, Direction.Up },
        { NeckForm.V, "hdc", true, Direction.Sideways },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Plan_and_words_agree_and_it_can_be_worn(NeckForm form, string stitch, bool even, Direction direction)
    {
        var project = Begun("vest", stitch, even, direction).With(g => g with
        {
            Shape = ((Vest)g.Shape) with { Neck = new Neck(form, null) },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        var plan = GarmentTrials.Check(GarmentTrials.Edged(project, direction, EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes));
        Assert.All(plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{s.Name}: {fit}")));
    }

    /// <summary>The page offers what the document takes, form by form.</summary>
    [Theory]
    [InlineData("vest", "square")]
    [InlineData("pullover", "slit")]
    [InlineData("cardigan", "slit")]
    public void Every_form_that_is_offered_is_read(string garment, string usual)
    {
        var kind = Repertoire.All.First(k => k.Name == garment);
        var form = kind.Fields.Single(f => f.Name == "neck");
        Assert.Equal(usual, form.Usual);
        Assert.All(form.Choices, c => Assert.Empty(GarmentTrials.Faults($"\"shape\": \"{garment}\", \"neck\": \"{c.Name}\"")));
        Assert.Equal(garment == "pullover", form.Choices.Any(c => c.Name == "buttoned"));
    }

    /// <summary>A depth is asked for where something is cut, and what holds otherwise is said in centimetres.</summary>
    [Theory]
    [InlineData("neckDepth", "slit", null)]
    [InlineData("neckDepth", "square", "12 cm")]
    [InlineData("neckDepth", "round", "10 cm")]
    [InlineData("neckDepth", "v", "20 cm")]
    [InlineData("backNeckDepth", "boat", null)]
    [InlineData("backNeckDepth", "v", null)]
    [InlineData("backNeckDepth", "round", "2.5 cm")]
    [InlineData("letOff", "slit", null)]
    [InlineData("letOff", "v", "3 cm, less where a size would come out poorly")]
    [InlineData("neckDepth", "v-insert", "20 cm")]
    [InlineData("backNeckDepth", "v-insert", null)]
    [InlineData("letOff", "v-insert", "3 cm, less where a size would come out poorly")]
    [InlineData("neckWidth", "v-insert", "20 cm")]
    [InlineData("neckWidth", "slit", "26 cm, or by the head")]
    [InlineData("neckWidth", "round", "20 cm")]
    public void Only_what_the_form_has_is_asked_for(string field, string form, string? usual)
    {
        var by = Repertoire.All.First(k => k.Name == "pullover").Fields.Single(f => f.Name == field).By!;
        Assert.Equal("neck", by.Field);
        Assert.Equal(usual, by.Usual.GetValueOrDefault(form));
    }

    private static readonly GarmentMeasure[] Depths = [GarmentMeasure.NeckDepth, GarmentMeasure.BackNeckDepth];

    /// <summary>In part, several laws are held to the same vests, which are planned once.</summary>
    private const ulong Shared = 8137;

    private static ulong SeedOf(ulong own) => Extent.IsWhole ? own : Shared;

    /// <summary>By what vests of this class differ in; tests of one class run one after another.</summary>
    private static readonly Dictionary<(string Sections, NeckForm Form, Direction? Direction, Length? LetOff), PlanResult> Results = [];

    private static PlanResult Tried(Project project, Length? letOff)
    {
        var key = (string.Join(' ', project.Fabric.SectionStitches!.Value), ((Vest)project.Garment.Shape).Neck.Form, project.Garment.Direction, letOff);
        if (!Results.TryGetValue(key, out var result))
            Results.Add(key, result = LetOff(project, letOff).Tried());
        return result;
    }

    private static Gen<Plan> Vests { get; } = VestsLetOff(null);

    /// <param name="letOff">Missing: as far as every size comes out well.</param>
    private static Gen<Plan> VestsLetOff(Length? letOff) =>
        from sections in Gen.Int[3, 8].Array[3, 5]
        from form in Gen.OneOf(Gen.Const(NeckForm.Square), Gen.Const(NeckForm.Round))
        from direction in Gen.OneOf(Gen.Const(Direction.Up), Gen.Const(Direction.Sideways))
        let result = Tried(Of(sections, form, direction), letOff)
        where result.Plan is not null
        select result.Plan;

    /// <summary>A cut that one size has and another has not is no one design; one that none has says from which depth on all have it.</summary>
    [Fact]
    public void Sizes_are_cut_alike() => Vests.Holds(plan =>
    {
        foreach (var depth in Depths)
        {
            var cut = plan.Sizes.Where(s => s.Finished[depth] > Length.Zero).Select(s => s.Name).ToArray();
            Assert.True(cut.Length == 0 || cut.Length == plan.Sizes.Length, $"{depth} in {string.Join(" ", cut)} alone");
            var note = plan.Findings.SingleOrDefault(f => f.Level == FindingLevel.Note && f.Text.Contains("neck is not cut", StringComparison.Ordinal));
            Assert.Equal(cut.Length == 0, note is not null && depth == GarmentMeasure.BackNeckDepth);
            if (note is null || cut.Length > 0 || Regex.Match(note.Text, @"Ask for ([\d.]+) cm: it is then cut in every size") is not { Success: true } from)
                continue;
            var deeper = plan.Project.With(g => g with
            {
                Shape = (Vest)g.Shape with { Neck = ((Vest)g.Shape).Neck with { BackDepth = Cm(double.Parse(from.Groups[1].Value, CultureInfo.InvariantCulture)) } },
            }).Planned();
            Assert.All(deeper.Sizes, s => Assert.True(s.Finished[depth] > Length.Zero, $"{s.Name} at {from.Value}"));
        }
    }, seed: SeedOf(8131), cases: 12);

    /// <summary>What letting cut edges off by less is said to bring comes out when it is done.</summary>
    [Fact]
    public void What_is_advised_of_cut_edges_holds()
    {
        var seen = 0;
        VestsLetOff(Cm(3)).Holds(plan =>
        {
            foreach (var advice in plan.Findings.Select(f => Regex.Match(f.Text, @"let cut edges lie off by ([\d.]+) cm at most, so that the motif gives way there instead: (.+?) is then off by ([\d.]+) cm")).Where(m => m.Success))
            {
                seen++;
                var changed = Tried(plan.Project, Cm(double.Parse(advice.Groups[1].Value, CultureInfo.InvariantCulture))).Plan!;
                var measure = changed.Sizes[0].Target.Keys.Single(m => GarmentMeasures.Words(m) == advice.Groups[2].Value);
                double Off(Plan of) => of.Sizes.Max(s => Math.Abs((s.Finished[measure] - s.Target[measure]).Centimetres));
                Assert.Equal(double.Parse(advice.Groups[3].Value, CultureInfo.InvariantCulture), Off(changed), 0.06);
                Assert.True(Off(changed) < Off(plan) - 0.4, $"{advice.Value}: from {Off(plan)}");
            }
        }, seed: 8132, cases: 12);
        Assert.True(seen > 3, $"{seen} pieces of advice");
    }

    /// <summary>
    /// Where the document leaves it to the plan, a size whose cuts come out more than an inch off is let off by less: no way of letting
    /// its edges off would have brought it nearer.
    /// </summary>
    [Fact]
    public void Left_to_the_plan_cuts_come_out_well_wherever_they_can()
    {
        var mended = 0;
        Vests.Holds(plan =>
        {
            if (plan.Project.Garment.Shape is not Vest { Neck.LetOff: null })
                return;
            var tried = new[] { 3.0, 2, 1, 0 }.Select(cm => Tried(plan.Project, Cm(cm)).Plan).OfType<Plan>().ToArray();
            for (var i = 0; i < plan.Sizes.Length; i++)
            {
                var own = Off(plan.Sizes[i]);
                Assert.True(own <= Math.Max(2.54, tried.Min(t => Off(t.Sizes[i]))) + 0.01, $"{plan.Sizes[i].Name}: {own}");
                mended += own <= 2.54 && Off(tried[0].Sizes[i]) > 2.54 ? 1 : 0;
            }
        }, seed: SeedOf(8134), cases: 10);
        Assert.True(mended > 3, $"{mended}");

        static double Off(SizePlan size) => new[]
            {
                GarmentMeasure.NeckWidth, GarmentMeasure.NeckDepth, GarmentMeasure.BackNeckDepth, GarmentMeasure.ArmholeDepth, GarmentMeasure.ArmholeInset,
            }
            .Where(m => size.Target.TryGetValue(m, out var wanted) && wanted > Length.Zero && size.Finished[m] > Length.Zero)
            .Max(m => Math.Abs((size.Finished[m] - size.Target[m]).Centimetres));
    }

    /// <summary>
    /// A curve that has come down to one step is square: what the top of the front leaves out, column by column, has one depth. What is
    /// said to mend it does.
    /// </summary>
    [Fact]
    public void A_round_neck_that_looks_square_is_said_to()
    {
        var (square, mended) = (0, 0);
        var longSequences =
            from sections in Gen.Int[6, 12].Array[3, 4]
            from direction in Gen.OneOf(Gen.Const(Direction.Up), Gen.Const(Direction.Sideways))
            let result = Tried(Of(sections, NeckForm.Round, direction), Cm(6))
            where result.Plan is not null
            select result.Plan;
        longSequences.Holds(plan =>
        {
            var said = plan.Findings.SingleOrDefault(f => f.Text.StartsWith("The front's neck looks square", StringComparison.Ordinal));
            var are = plan.Sizes.Where(s => DepthsOf(plan, s[PieceId.Front]).Length == 1).Select(s => s.Name).ToArray();
            Assert.Equal(are.Length > 0, said is not null);
            if (said is null)
                return;
            square++;
            Assert.Equal(are.Length < plan.Sizes.Length, said.Text.Contains(" looks square in ", StringComparison.Ordinal));
            Assert.All(are, name => Assert.True(are.Length == plan.Sizes.Length || Regex.IsMatch(said.Text, $@"\b{name}\b"), said.Text));
            if (LetOffIn(said) is not { } letOff)
                return;
            mended++;
            var stepped = Tried(plan.Project, letOff).Plan!;
            Assert.All(stepped.Sizes, s => Assert.NotEqual(1, DepthsOf(stepped, s[PieceId.Front]).Length));
        }, seed: 8135, cases: Extent.Of(16, 24));
        Assert.True(square > 2 && mended > 0, $"{square}, {mended}");
    }

    /// <summary>How deep the neck is, from its middle to either side, each depth once; of a piece that is not cut, none.</summary>
    private static int[] DepthsOf(Plan plan, PiecePlan piece)
    {
        if (piece.Shape is not { } shape)
            return [];
        var cells = shape.Parts.SelectMany(p => p.Outline.ByRow().SelectMany(
            r => Enumerable.Range(r.First, r.Last - r.First + 1).Select(column => (Row: p.FirstRow + r.FromRow, Column: column)))).ToHashSet();
        var (columns, rows) = (cells.Select(c => c.Column).Order().ToArray(), shape.Rows);
        var (first, last) = (columns[0], columns[^1]);
        var up = plan.Direction == Direction.Up;
        int Depth(int at) => up
            ? Enumerable.Range(0, rows).TakeWhile(i => !cells.Contains((rows - 1 - i, first + at))).Count()
            : Enumerable.Range(0, last - first + 1).TakeWhile(i => !cells.Contains((at, last - i))).Count();
        var wide = up ? last - first + 1 : rows;
        var (down, on) = (Enumerable.Range(0, wide / 2).Select(i => wide / 2 - 1 - i), Enumerable.Range(wide / 2, wide - wide / 2));
        return [.. new[] { down, on }.SelectMany(half => half.Select(Depth).TakeWhile(d => d > 0)).Distinct()];
    }

    /// <summary>What lies farther off than is expected of a cut edge is said, also where it is no cause for alarm.</summary>
    [Fact]
    public void Cuts_that_come_out_nearly_poorly_are_said()
    {
        var seen = 0;
        Vests.Holds(plan =>
        {
            var said = plan.Findings.SingleOrDefault(f => f.Text.StartsWith("Cut edges lie where the colours let rows end", StringComparison.Ordinal));
            foreach (var measure in new[] { GarmentMeasure.NeckWidth, GarmentMeasure.NeckDepth, GarmentMeasure.ArmholeDepth })
            {
                var off = plan.Sizes.Where(s => s.Finished[measure] > Length.Zero)
                    .Select(s => (s.Finished[measure] - s.Target[measure]).Centimetres).Where(cm => Math.Abs(cm) is > 1.5 and <= 2.54).ToArray();
                foreach (var way in off.GroupBy(cm => cm > 0))
                {
                    seen++;
                    var far = way.Max(Math.Abs);
                    Assert.Contains(
                        FormattableString.Invariant($"{GarmentMeasures.Words(measure)} comes out up to {far:0.0} cm {(way.Key ? "over" : "under")}"),
                        said?.Text, StringComparison.Ordinal);
                }
            }
        }, seed: SeedOf(8136), cases: 8);
        Assert.True(seen > 5, $"{seen}");
    }

    private static Project LetOff(Project project, Length? letOff) => project.With(g => g with
    {
        Shape = (Vest)g.Shape with { Neck = ((Vest)g.Shape).Neck with { LetOff = letOff } },
    });

    /// <summary>An edge that may not lie off at all lies on the nearest stitch, and is not left out.</summary>
    [Theory]
    [InlineData(NeckForm.Square)]
    [InlineData(NeckForm.Round)]
    [InlineData(NeckForm.V)]
    public void Edges_let_off_by_nothing_lie_on_the_nearest_stitch(NeckForm form)
    {
        var plan = LetOff(Of([4, 5, 3, 4], form, Direction.Sideways), Length.Zero).Planned();
        var wide = plan.StitchWidth.Centimetres + 0.001;
        Assert.All(plan.Sizes, s =>
        {
            Assert.InRange((s.Finished[GarmentMeasure.NeckDepth] - s.Target[GarmentMeasure.NeckDepth]).Centimetres, -wide, wide);
            Assert.InRange((s.Finished[GarmentMeasure.ArmholeDepth] - s.Target[GarmentMeasure.ArmholeDepth]).Centimetres, -wide, wide);
        });
    }

    /// <summary>What leaps is said though every size is near enough, and what is advised has it grow evenly.</summary>
    [Fact]
    public void Cuts_that_leap_between_sizes_are_said_with_what_evens_them()
    {
        var (seen, mended) = (0, 0);
        Vests.Holds(plan =>
        {
            foreach (var measure in new[] { GarmentMeasure.NeckDepth, GarmentMeasure.ArmholeDepth })
            {
                var words = GarmentMeasures.Words(measure);
                var said = plan.Findings.SingleOrDefault(
                    f => f.Text.StartsWith($"{char.ToUpperInvariant(words[0])}{words[1..]} is not graded evenly", StringComparison.Ordinal));
                Assert.Equal(Leaps(plan, measure), said is not null && said.Text.Contains(" where it is to ", StringComparison.Ordinal));
                if (said is null)
                    continue;
                seen++;
                if (LetOffIn(said) is not { } letOff)
                    continue;
                mended++;
                Assert.False(Leaps(Tried(plan.Project, letOff).Plan!, measure), said.Text);
            }
        }, seed: Shared, cases: 12);
        Assert.True(seen > 2 && mended > 1, $"{seen}, {mended}");

        // Common practice, no source: 1.5 cm otherwise than asked is seen, and a centimetre less in a larger size.
        static bool Leaps(Plan plan, GarmentMeasure measure) => plan.Sizes.Zip(plan.Sizes.Skip(1)).Any(s =>
        {
            var made = (s.Second.Finished[measure] - s.First.Finished[measure]).Centimetres;
            var asked = (s.Second.Target[measure] - s.First.Target[measure]).Centimetres;
            return Math.Abs(made - asked) > 1.5 || (asked >= 0 && made < -1);
        });
    }

    private static Length? LetOffIn(Finding finding) => finding.Remedies.SingleOrDefault(r => r.Place == "garment.letOff") is { } remedy
        ? Cm(double.Parse(Regex.Match(remedy.Value!, @"[\d.]+").Value, CultureInfo.InvariantCulture)) : null;

    /// <summary>A motif that gives way is said in every plan that has it, and what is said to keep it does.</summary>
    [Fact]
    public void A_motif_that_gives_way_is_said_with_what_keeps_it()
    {
        var mended = 0;
        // Colours that come round soon enough for edges within an inch to keep the motif, let off by less than that takes.
        var soon =
            from sections in Gen.Int[3, 4].Array[3, 4]
            from form in Gen.OneOf(Gen.Const(NeckForm.Square), Gen.Const(NeckForm.Round))
            let result = Tried(Of(sections, form, Direction.Sideways), Cm(1))
            where result.Plan is not null
            select result.Plan;
        Gen.OneOf(Vests, soon).Holds(plan =>
        {
            var breaks = plan.Sizes.Any(s => s.Pieces.Any(p => p.Shape is { KeepsMotif: false }));
            var said = plan.Findings.SingleOrDefault(f => f.Text.StartsWith("The motif gives way from the cut on", StringComparison.Ordinal));
            Assert.Equal(breaks, said is not null);
            if (said is null || LetOffIn(said) is not { } letOff)
                return;
            mended++;
            var kept = Tried(plan.Project, letOff).Plan!;
            Assert.All(kept.Sizes.SelectMany(s => s.Pieces), p => Assert.True(p.Shape is not { KeepsMotif: false }, p.Name));
        }, seed: 8133, cases: 16);
        Assert.True(mended > 1, $"{mended}");
    }

    private static Project Of(int[] sections, NeckForm form, Direction direction)
    {
        var project = Begun("vest", "sc", true, direction);
        return project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. sections.Select((n, i) => project.Yarn.Sections[i % 4] with { Name = $"colour {i}", Length = Cm(6.2 * n) })],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
            },
            Fabric = project.Fabric with { SectionStitches = [.. sections] },
            Garment = project.Garment with { Shape = (Vest)project.Garment.Shape with { Neck = new Neck(form, null) } },
        };
    }
}
