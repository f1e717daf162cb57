using System.Collections.Immutable;
using System.Text.RegularExpressions;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>A V neck whose square cut is filled with plain triangles.</summary>
public sealed class InsertTests
{
    private static readonly PieceId[] Both = [PieceId.LeftInsert, PieceId.RightInsert];

    /// <summary>By garment, stitch and direction: several tests read the same plan, and tests of one class run one after another.</summary>
    private static readonly Dictionary<(string, string, Direction), Plan> Plans = [];

    public static TheoryData<string, string, Direction> Ways => [.. Extent.Half(from garment in new[] { "pullover", "tunic", "vest" }
        from way in new[] { ("sc", Direction.Up), ("sc", Direction.Sideways), ("hdc", Direction.Up), ("dc", Direction.Sideways) }
        select (garment, way.Item1, way.Item2))];

    /// <summary>With every edging, and sleeves where there are any.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void The_plan_and_its_words_agree_and_it_can_be_worn(string garment, string stitch, Direction direction)
    {
        var plan = GarmentTrials.Check(PlanOf(garment, stitch, direction));
        Assert.All(plan.Sizes, s => Assert.Contains(s.Worn, fit => fit.Part == FitPart.NeckOpening));
        Assert.All(plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{s.Name}: {fit}")));
    }

    /// <summary>
    /// A band along both slopes lifts the point of the V to where it is a band's depth from either slope: by more than that depth, and far
    /// more where the V is steep.
    /// </summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_band_lifts_the_point_of_the_V(Direction direction)
    {
        var plan = Of("vest", "sc", direction).With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Neck, "sc", 4)] }).Planned();
        foreach (var size in plan.Sizes)
        {
            var (cut, band) = (size[PieceId.Front].Opening(OpeningId.Neck), size.Edgings.Single().Depth.Centimetres);
            var (across, down) = direction == Direction.Up ? (plan.StitchWidth, plan.RowHeight) : (plan.RowHeight, plan.StitchWidth);
            // The seam of the shoulders takes one of what is cut in.
            var (half, deep) = (cut.Length * across.Centimetres / 2, (cut.Into - 1) * down.Centimetres);
            var (low, high) = (0.0, deep);
            for (var step = 0; step < 60; step++)
            {
                // From the middle of the neck, so far above the point, to the nearest place of the slope.
                var at = (low + high) / 2;
                var nearest = Enumerable.Range(0, 2_001).Min(i => Math.Sqrt(Math.Pow(half * i / 2_000, 2) + Math.Pow(deep * i / 2_000 - at, 2)));
                (low, high) = nearest < band ? (at, high) : (low, at);
            }
            Assert.Equal(deep - low, size.Finished[GarmentMeasure.NeckDepth].Centimetres, 0.03);
            Assert.True(low > 1.2 * band, $"{size.Name}: the band of {band:0.0} cm lifts the point by {low:0.0} cm");
        }
    }

    /// <summary>Whatever edging goes round the neck, and whatever the seams take.</summary>
    [Theory]
    [InlineData(0, 0, "picot", Direction.Up)]
    [InlineData(1, 2, "crab", Direction.Up)]
    [InlineData(2, 1, "rib-1x1", Direction.Sideways)]
    [InlineData(0, 1, "shell", Direction.Sideways)]
    public void Seams_and_edgings_may_differ(int stitches, int rows, string edging, Direction direction)
    {
        var known = EdgingLibrary.All.Where(e => e.Objection(EdgingPlace.Neck, children: false) is null && !e.InRows).ToArray();
        var chosen = known.FirstOrDefault(e => e.Id == edging) ?? known[edging.Length % known.Length];
        GarmentTrials.Check(Of("vest", "sc", direction).With(g => g with
        {
            Seams = g.Seams with { HiddenStitches = stitches, HiddenRows = rows },
            Edgings = [new EdgingChoice(EdgingPlace.Neck, chosen.Id, null)],
        }));
    }

    public static TheoryData<string> NeckEdgings =>
        [.. EdgingLibrary.All.Where(e => e.Objection(EdgingPlace.Neck, children: false) is null && !e.InRows).Select(e => e.Id)];

    [Theory]
    [MemberData(nameof(NeckEdgings))]
    public void Every_edging_goes_round_it(string edging) => GarmentTrials.Check(Of("vest", "sc", Direction.Up).With(g => g with
    {
        Edgings = [new EdgingChoice(EdgingPlace.Neck, edging, null)],
    }));

    /// <summary>Sewn in, a triangle is as wide as half of the cut, which both seams have made wider, and as tall as it is deep.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Inserts_fill_the_corners_of_the_cut(string garment, string stitch, Direction direction)
    {
        var plan = PlanOf(garment, stitch, direction);
        var swatch = plan.Project.Fabric.Swatch.Worked;
        var (stitchWide, rowTall) = (swatch.StitchWidth.Centimetres, swatch.RowHeight.Centimetres);
        var (across, down) = direction == Direction.Up ? (stitchWide, rowTall) : (rowTall, stitchWide);
        var single = stitch == "sc" ? rowTall : 0.9 * stitchWide;
        foreach (var size in plan.Sizes)
        {
            var cut = size[PieceId.Front].Opening(OpeningId.Neck);
            Assert.True(cut.Into > 0);
            Assert.All(size.Seams.Where(s => s.Id is SeamId.LeftInsert or SeamId.RightInsert), IsCorner);
            Assert.All(Both.Select(id => size[id]), insert =>
            {
                // One stitch of the insert and one place of the front lie in the upright seam, one row and one place in the other;
                // the shoulder seam takes one place of the cut's depth again.
                Assert.Equal(across * (cut.Length / 2.0 + 1), stitchWide * (insert.Stitches - 1), stitchWide / 2 + 1e-9);
                Assert.Equal(down * (cut.Into + 1 - 1), single * (insert.Rows - 1), single / 2 + 1e-9);
                Assert.False(insert.Pooled);
                Assert.Equal(insert.Stitches + 1, insert.FoundationChains);
            });
        }
    }

    /// <summary>What they are sewn to is straight along and straight up.</summary>
    private static void IsCorner(SeamPlan seam)
    {
        Assert.Equal(2, seam.First.Length);
        Assert.Equal(PieceSide.Top, seam.First[0].Side);
        Assert.True(seam.First[1].Side.IsUpright());
    }

    private static Gen<Plan> Vests { get; } =
        from sections in Gen.Int[3, 8].Array[3, 5]
        from direction in Gen.OneOf(Gen.Const(Direction.Up), Gen.Const(Direction.Sideways))
        from stitch in Gen.OneOf(Gen.Const("sc"), Gen.Const("hdc"))
        from hidden in Gen.Select(Gen.Int[0, 2], Gen.Int[0, 2])
        from depth in Gen.Int[8, 24]
        from letOff in Gen.Int[0, 6]
        let result = Varied(sections, stitch, direction, hidden, depth, letOff).Tried()
        where result.Plan is not null
        select result.Plan;

    /// <summary>Whatever the colours ask of the cut, and the seams take: of inserts and neck, plan and words agree with other routes.</summary>
    [Fact]
    public void Any_cut_is_filled() => Vests.Holds(plan =>
    {
        var found = PlanCheck.Verify(plan, TestContext.Current.CancellationToken).Concat(PatternCheck.Run(plan));
        Assert.Empty(found.Where(f => Regex.IsMatch($"{f.Place} {f.Text}", "insert|taper|slope|neck|edgings", RegexOptions.IgnoreCase)));
        Assert.All(plan.Sizes, size => Assert.All(size.Seams.Where(s => s.Id is SeamId.LeftInsert or SeamId.RightInsert), IsCorner));
    }, seed: 9103, cases: Extent.Of(10, 20));

    /// <summary>The left one looks in a mirror at the right one.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void One_mirrors_the_other(string garment, string stitch, Direction direction)
    {
        foreach (var size in PlanOf(garment, stitch, direction).Sizes)
        {
            var worn = Both.Select(id => WornPiece.Of(PlanOf(garment, stitch, direction), size[id])).ToArray();
            Assert.Equal((worn[0].Columns, worn[0].Rows), (worn[1].Columns, worn[1].Rows));
            for (var y = 0; y < worn[0].Rows; y++)
            {
                var (left, right) = (Line(worn[0], y), Line(worn[1], y));
                Assert.Equal(left.Reverse(), right);
                Assert.Equal(WornPiece.Plain, left[^1]);
                Assert.Equal(size[PieceId.LeftInsert].Taper!.At(worn[0].Rows - 1 - y), left.Count(c => c == WornPiece.Plain));
            }
        }

        static byte[] Line(WornPiece piece, int y) => piece.Cells.Slice(y * piece.Columns, piece.Columns).ToArray();
    }

    /// <summary>The neck's edge is that of the V: both slopes of the filled cut and the back's slit, each to a stitch.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void The_edge_is_as_long_as_the_slopes_and_the_back(string garment, string stitch, Direction direction)
    {
        var plan = PlanOf(garment, stitch, direction);
        var swatch = plan.Project.Fabric.Swatch.Worked;
        var across = direction == Direction.Up ? swatch.StitchWidth : swatch.RowHeight;
        var down = direction == Direction.Up ? swatch.RowHeight : swatch.StitchWidth;
        foreach (var size in plan.Sizes)
        {
            var (cut, back) = (size[PieceId.Front].Opening(OpeningId.Neck), size[PieceId.Back].Opening(OpeningId.Neck));
            var slope = Math.Sqrt(Math.Pow(across.Centimetres * (cut.Length / 2.0 + 1), 2) + Math.Pow(down.Centimetres * cut.Into, 2));
            var edging = size.Edgings.Single(e => e.Where == EdgingPlace.Neck);
            var along = edging.Spread.Stretches.Select(s => s.Stretch).ToArray();
            Assert.Equal([EdgeId.LeftNeckSlope, EdgeId.RightNeckSlope, EdgeId.BackNeck], along.Select(s => ((StretchId.OfEdge)s.Id).Edge));
            Assert.All(along[..2], s => Assert.Equal(slope, s.Places * s.Own!.Value.Each.Centimetres, swatch.StitchWidth.Centimetres));
            Assert.Equal(along[..2].Sum(s => s.Places * s.Own!.Value.Each.Centimetres) + back.Length * across.Centimetres, edging.Edge.Centimetres, 0.01);
        }
    }

    private static Gen<(int Stitches, int Rows)> Triangles { get; } =
        Gen.Select(Gen.Int[2, 80], Gen.Int[3, 120]).Where((stitches, rows) => Taper.Serves(stitches, rows));

    /// <summary>Each row is the whole number nearest to the line; no two rows in reach differ by more than they must.</summary>
    [Fact]
    public void Rows_lie_on_the_line_to_half_a_stitch() => Triangles.Holds((stitches, rows) =>
    {
        var taper = new Taper(stitches, rows, PieceSide.Left);
        var steep = Math.Max(1, (stitches - 1 + rows - 2) / (rows - 1));
        for (var row = 0; row < rows; row++)
        {
            // By brute force: the count whose distance from the line is least, the larger of two.
            var best = Enumerable.Range(1, stitches)
                .OrderBy(n => Math.Abs((long)(n - 1) * (rows - 1) - (long)(stitches - 1) * (rows - 1 - row))).ThenByDescending(n => n).First();
            Assert.Equal(best, taper.At(row));
            Assert.InRange(taper.Decreases(row), 0, steep);
        }
        Assert.Equal((stitches, 1), (taper.At(0), taper.At(rows - 1)));
        Assert.Equal(stitches - 1, Enumerable.Range(0, rows).Sum(taper.Decreases));
    }, seed: 9101, cases: 300);

    /// <summary>Where it is no wider than tall, at most one decrease a row, and as many plain rows between two as between any others, but one.</summary>
    [Fact]
    public void Decreases_are_spread_evenly() => Triangles.Where((stitches, rows) => stitches <= rows && stitches > 3).Holds((stitches, rows) =>
    {
        var taper = new Taper(stitches, rows, PieceSide.Right);
        var at = Enumerable.Range(1, rows - 1).Where(row => taper.Decreases(row) > 0).ToArray();
        Assert.All(at, row => Assert.Equal(1, taper.Decreases(row)));
        var gaps = at.Zip(at.Skip(1), (a, b) => b - a).ToArray();
        Assert.InRange(gaps.Max() - gaps.Min(), 0, 1);
    }, seed: 9102, cases: 200);

    [Theory]
    [InlineData(1, 9, false)]
    [InlineData(9, 2, false)]
    [InlineData(17, 9, true)]
    [InlineData(18, 9, false)]
    public void A_slope_that_is_too_flat_does_not_serve(int stitches, int rows, bool serves) => Assert.Equal(serves, Taper.Serves(stitches, rows));

    /// <summary>Stitches are worked together at the end of a row whose slope lies at its end.</summary>
    [Theory]
    [InlineData(PieceSide.Left, 2, true)]
    [InlineData(PieceSide.Left, 3, false)]
    [InlineData(PieceSide.Right, 2, false)]
    [InlineData(PieceSide.Right, 3, true)]
    public void Rows_decrease_along_the_slope(PieceSide slope, int row, bool atEnd) => Assert.Equal(atEnd, new Taper(9, 12, slope).IsAtEnd(row));

    [Fact]
    public void Both_edges_of_a_seam_are_laid_together()
    {
        var size = PlanOf("vest", "sc", Direction.Up).Sizes[0];
        var (cut, insert) = (size[PieceId.Front].Opening(OpeningId.Neck), size[PieceId.LeftInsert]);
        var (left, right) = (size.Seams.Single(s => s.Id == SeamId.LeftInsert), size.Seams.Single(s => s.Id == SeamId.RightInsert));
        Assert.Equal(cut.Length, left.First.Where(r => r.Side == PieceSide.Top).Concat(right.First.Where(r => r.Side == PieceSide.Top)).Sum(r => r.Count));
        // The left insert's upright edge lies along what looks to the left, from outside.
        Assert.Equal([PieceSide.Top, PieceSide.Left], left.First.Select(r => r.Side));
        Assert.Equal([PieceSide.Top, PieceSide.Right], right.First.Select(r => r.Side));
        Assert.Equal([PieceSide.Bottom, PieceSide.Right], left.Second.Select(r => r.Side));
        Assert.Equal(cut.Into - 1, left.First[1].Count);
        Assert.Equal([insert.Stitches - 1, insert.Rows - 1], left.Second.Select(r => r.Count));
        Assert.Null(left.Extension);
    }

    [Fact]
    public void The_companion_yarn_is_counted()
    {
        var plan = PlanOf("vest", "sc", Direction.Up);
        foreach (var size in plan.Sizes)
        {
            foreach (var insert in Both.Select(id => size[id]))
            {
                var own = size.Yarn.Uses.Where(u => u.Piece == insert.Id).ToArray();
                Assert.All(own, u => Assert.True(u.Companion));
                // Half a rectangle's stitches, each of a single crochet's yarn, and half of it again at most for turns and decreases.
                var half = insert.Stitches * insert.Rows / 2.0 * plan.Sequence.YarnPerUnit.Metres;
                Assert.InRange(own.Where(u => u.Purpose != YarnPurpose.Ends).Sum(u => u.Length.Metres), half, 1.5 * half);
            }
            Assert.True(size.Yarn.Companion!.Balls > 0);
        }
    }

    [Theory]
    [InlineData(Terms.Us, "sc", "sc2tog")]
    [InlineData(Terms.Uk, "dc", "dc2tog")]
    public void Rows_beside_the_hook_are_those_of_the_plan(Terms terms, string sc, string together)
    {
        var plan = PlanOf("vest", "hdc", Direction.Up);
        var order = MakingOrder.Of(plan, plan.Sizes[0].Name);
        var wording = new Wording([plan.Sizes[0].Name], plan.Project.Edition with { Terms = terms, Size = plan.Sizes[0].Name });
        foreach (var part in order.Parts.Where(p => p.Piece?.Taper is not null))
        {
            var taper = part.Piece!.Taper!;
            var rows = part.Steps.OfType<RowStep>().Select(r => string.Concat(wording.Say(r.Text).Select(s => s.Text))).ToArray();
            Assert.Equal(taper.Rows, rows.Length);
            for (var row = 1; row < rows.Length; row++)
            {
                var (made, less) = (taper.At(row), taper.Decreases(row));
                var sts = made == 1 ? "1 st." : $"{made} sts.";
                var atEnd = (row % 2 == 0) == (part.Piece.Id == PieceId.LeftInsert);
                Assert.Equal(
                    less == 0 ? $"Ch 1, {sc} in each st to end, turn. {sts}"
                    : made == 1 ? $"Ch 1, {together}, turn. {sts}"
                    : atEnd ? $"Ch 1, {sc} in each st to last 2 sts, {together}, turn. {sts}"
                    : $"Ch 1, {together}, {sc} in each st to end, turn. {sts}", rows[row]);
            }
        }
    }

    [Fact]
    public void The_pattern_says_how_they_are_sewn_and_edged()
    {
        var text = GarmentTrials.Text(PlanOf("vest", "sc", Direction.Up));
        Assert.Contains("Inserts: lay the lower edge of the left insert along the neck's lower edge, from its middle to its corner at the wearer's left", text, StringComparison.Ordinal);
        Assert.Contains("Sew the right insert into the corner at the wearer's right in the same way.", text, StringComparison.Ordinal);
        Assert.Matches(new Regex("front neck, slope at the wearer's left: pick up [^-]+- inner corner - front neck, slope at the wearer's right: pick up"), text);
        Assert.True(text.IndexOf("Shoulders: lay", StringComparison.Ordinal) < text.IndexOf("Inserts: lay", StringComparison.Ordinal));
        Assert.Contains("sc2tog: single crochet 2 together", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_companion_yarn_it_is_refused()
    {
        var result = (Of("vest", "sc", Direction.Up) with { Companion = null }).Tried();
        Assert.Null(result.Plan);
        Assert.Contains(result.Reasons, f => f is { Place: "garment.neck", Level: FindingLevel.Fault } && f.Text.Contains("companion yarn", StringComparison.Ordinal));
        Assert.NotEmpty(GarmentTrials.Faults("\"shape\": \"vest\", \"neck\": \"v-insert\"", companion: false));
        Assert.Empty(GarmentTrials.Faults("\"shape\": \"vest\", \"neck\": \"v-insert\""));
        Assert.NotEmpty(GarmentTrials.Faults("\"shape\": \"cardigan\", \"neck\": \"v-insert\""));
    }

    /// <summary>What is hardly cut has no corners.</summary>
    [Theory]
    [InlineData(1, Direction.Up)]
    [InlineData(3, Direction.Sideways)]
    public void A_shallow_neck_is_refused(double depth, Direction direction)
    {
        var result = Of("vest", "sc", direction).With(g => g with
        {
            Shape = (Vest)g.Shape with { Neck = ((Vest)g.Shape).Neck with { Depth = Cm(depth), LetOff = Length.Zero } },
        }).Tried();
        Assert.Null(result.Plan);
        Assert.Contains(result.Reasons, f => f.Text.Contains("too shallow for inserts", StringComparison.Ordinal));
    }

    /// <summary>Wider than tall, some rows leave out two stitches, and some perhaps one.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_flat_slope_decreases_by_two(Direction direction)
    {
        var plan = GarmentTrials.Check(Of("pullover", "sc", direction).With(g => g with
        {
            Shape = (BoxyTop)g.Shape with { Neck = new Neck(NeckForm.VInsert, Cm(28)) { Depth = Cm(8) } },
        }));
        Assert.Contains(plan.Sizes, s => s[PieceId.LeftInsert] is { Taper: { } taper } && Enumerable.Range(0, taper.Rows).Any(row => taper.Decreases(row) == 2));
        var text = GarmentTrials.Text(plan);
        Assert.Matches("ecrease by two in rows? [0-9]", text);
        Assert.Contains("Decrease by two in odd-numbered rows: Ch 1, sc in each st to last 3 sts, sc3tog, turn.", text, StringComparison.Ordinal);
        Assert.Contains("sc3tog: insert the hook in the next st, yarn over and draw a loop through, and again in each of the 2 sts after it; yarn over and draw it through all 4 loops. 3 sts have become one.", text, StringComparison.Ordinal);
    }

    private static Plan PlanOf(string garment, string stitch, Direction direction)
    {
        if (!Plans.TryGetValue((garment, stitch, direction), out var plan))
            Plans.Add((garment, stitch, direction), plan = Of(garment, stitch, direction).Planned());
        return plan;
    }

    private static Project Varied(int[] sections, string stitch, Direction direction, (int Stitches, int Rows) hidden, int depth, int letOff)
    {
        var project = Of("vest", stitch, direction).With(g => g with
        {
            Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.VInsert, null) { Depth = Cm(depth), LetOff = Cm(letOff) } },
            Seams = g.Seams with { HiddenStitches = hidden.Stitches, HiddenRows = hidden.Rows },
            Edgings = [new EdgingChoice(EdgingPlace.Neck, "sc", null)],
        });
        return project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. sections.Select((n, i) => project.Yarn.Sections[i % 4] with { Name = $"colour {i}", Length = Cm(6.2 * n) })],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
            },
            Fabric = project.Fabric with { SectionStitches = [.. sections] },
        };
    }

    private static Project Of(string garment, string stitch, Direction direction)
    {
        var project = GarmentTrials.WithCompanion(Begun(garment, stitch, true, direction)).With(g => g with
        {
            Shape = g.Shape is Vest vest ? vest with { Neck = new Neck(NeckForm.VInsert, null) }
                : ((BoxyTop)g.Shape) with
                {
                    Neck = new Neck(NeckForm.VInsert, null),
                    Sleeves = garment == "tunic" ? new SleeveSpec(true, Cm(4)) : null,
                },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        return GarmentTrials.Edged(project, direction, EdgingPlace.Hem, EdgingPlace.Neck, garment == "tunic" ? EdgingPlace.Cuffs : EdgingPlace.Armholes);
    }
}
