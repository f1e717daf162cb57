using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Shaping;
using Dyepath.Core.Tests.Constructions;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>
/// Every row of shaped pieces in words, against the columns that its stitches and those below it have: where it ends, over what it goes on,
/// and on which stitch of which colour.
/// </summary>
public sealed class ShapedRowLawTests
{
    private static readonly Dictionary<(string, string, Direction), Plan> Plans = [];

    public static TheoryData<string, string, Direction> Shapes => new()
    {
        { "vest, round", "sc", Direction.Sideways }, { "vest, v", "dc", Direction.Up }, { "vest, round", "dc", Direction.Sideways },
        { "pullover, square", "hdc", Direction.Up }, { "cardigan, v", "sc", Direction.Sideways }, { "cardigan, round", "dc", Direction.Up },
        { "skirt", "dc", Direction.Sideways }, { "skirt", "sc", Direction.Sideways }, { "hat", "dc", Direction.Sideways }, { "shawl", "sc", Direction.Up },
    };

    private static Plan PlanOf(string name, string stitch, Direction direction)
    {
        if (Plans.TryGetValue((name, stitch, direction), out var plan))
            return plan;
        var (garment, form) = name.Split(", ") is [var kind, var word]
            ? (kind, Neck.Forms.First(f => f.Word == word).Form) : (name, NeckForm.Slit);
        var project = GarmentTrials.WithCompanion(Begun(garment, stitch, even: true, direction)).With(g => g with
        {
            Shape = g.Shape switch
            {
                BoxyTop top => top with { Neck = top.Neck with { Form = form } },
                Vest vest => vest with { Neck = vest.Neck with { Form = form } },
                Cardigan cardigan => cardigan with { Neck = cardigan.Neck with { Form = form } },
                Skirt skirt => skirt with { Flare = Cm(24) },
                Hat hat => hat with { Gored = true },
                var other => other,
            },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        if (project.Garment.Shape.IsToBody)
            project = project with { Sizes = project.Sizes with { Sizes = [.. project.Sizes.Names(toBody: true).Take(2)], Base = null } };
        return Plans[(name, stitch, direction)] = project.Planned();
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_row_is_told_by_the_columns_that_it_has(string name, string stitch, Direction direction)
    {
        var plan = PlanOf(name, stitch, direction);
        var context = new PatternContext(plan);
        var isChain = stitch == "dc";
        var (turn, each) = stitch switch
        {
            "sc" => ("Ch 1, ", "sc in each st to end"),
            "hdc" => ("Ch 2 (does not count as a st), ", "hdc in each st to end"),
            _ => ("Ch 3 (counts as the first st), ", "skip first st, dc in each st to end, the last in the top of the turning ch"),
        };
        var shaped = 0;
        foreach (var (size, at) in plan.Sizes.Select((s, i) => (s, i)))
        {
            foreach (var (piece, index) in size.Pieces.Select((p, i) => (p, i)).Where(p => p.p.Shape is { Bias: 0 }))
            {
                var words = new ShapedRowInstructions(context, new SizedPiece(context, index).Only(at));
                var shape = piece.Shape!;
                // What short rows leave is worked on over; what is cut out is gone on over by chains.
                var isGored = plan.Construction.GroupOf(piece.Id).Gores is not null;
                // Which row worked a column last, and at which of its ends it began.
                var standing = new Dictionary<int, (int Row, int Begins)>();
                foreach (var part in shape.Parts)
                {
                    for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
                    {
                        var run = part.Outline.At(row - part.FirstRow);
                        var columns = Enumerable.Range(run.First, run.Last - run.First + 1).ToArray();
                        var said = Say(plan, size.Name, words.Of(part, row).Text);
                        var before = row > part.FirstRow ? part : part.Continues ? shape.Parts[part.Below!.Value] : null;
                        var below = before is null ? []
                            : standing.Where(s => s.Value.Row == row - 1 && before.Outline.At(row - 1 - before.FirstRow) is var r
                            && s.Key >= r.First && s.Key <= r.Last).Select(s => s.Key).ToHashSet();
                        var (ends, st) = (part.EndsAt(row), stitch);
                        if (before is not null)
                        {
                            var right = part.EndOf(row) == RowEdge.Right;
                            var left = below.Count(c => right ? c < ends : c > ends);
                            var over = columns.Where(c => !below.Contains(c)).ToArray();
                            var expected = (left, over.Length) switch
                            {
                                (0, 0) => turn + each,
                                (1, 0) => $"{turn}{(isChain ? $"skip first st, {st} in each st to last st (the turning ch)" : $"{st} in each st to last st")}, leave it unworked",
                                ( > 1, 0) => $"{turn}{(isChain ? $"skip first st, {st} in each st to last {left} sts (the turning ch counts as one)" : $"{st} in each st to last {left} sts")}, leave these unworked",
                                (0, _) when isGored => $"{turn}{each}, then {st} in {(over.Length == 1 ? "the next st" : $"each of the next {over.Length} sts")} left unworked"
                                    + (isChain && over.Any(c => standing[c].Begins == c) ? " (a turning ch counts as one)" : ""),
                                (0, 1) => $"{turn}{each}, then {st} in the first ch",
                                _ => $"{turn}{each}, then {st} in each of the {over.Length} ch",
                            };
                            Assert.StartsWith($"{expected}, turn. {(columns.Length == 1 ? "1 st" : $"{columns.Length} sts")}", said, StringComparison.Ordinal);
                            if (left > 0 || over.Length > 0)
                            {
                                shaped++;
                                Assert.Contains($" sts, the last at {Last(plan, context, part, row)}.", said, StringComparison.Ordinal);
                            }
                            else
                                Assert.EndsWith(columns.Length == 1 ? " 1 st." : $" {columns.Length} sts.", said, StringComparison.Ordinal);
                        }
                        foreach (var column in columns)
                            standing[column] = (row, part.BeginsAt(row));
                    }
                }
            }
        }
        Assert.True(shaped > 3, $"{name}: {shaped} rows are shaped.");
    }

    /// <summary>Along the yarn from the sequence's beginning, colour by colour, to just before the stitch's middle.</summary>
    private static string Last(Plan plan, PatternContext context, ShapedPart part, int row)
    {
        var middle = (double)part.Path.SpanAt(row - part.FirstRow, part.EndsAt(row)).From / ColourRing.Unit + 0.5 - 1e-6;
        var lengths = Enumerable.Range(0, context.Key.Length).Select(plan.Sequence.UnitsIn).ToArray();
        var into = (middle % lengths.Sum() + lengths.Sum()) % lengths.Sum();
        var section = 0;
        while (into >= lengths[section])
            into -= lengths[section++];
        return context.Key[section].Symbol + ((int)Math.Floor(into) + 1).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>What a piece holds is what its rows say, added up: told row by row, or that so many are worked as another.</summary>
    [Theory]
    [MemberData(nameof(Shapes))]
    public void The_rows_that_are_told_add_up_to_the_piece(string name, string stitch, Direction direction)
    {
        var plan = PlanOf(name, stitch, direction);
        var context = new PatternContext(plan);
        foreach (var (size, at) in plan.Sizes.Select((s, i) => (s, i)))
        {
            foreach (var (piece, index) in size.Pieces.Select((p, i) => (p, i)).Where(p => p.p.Shape is { Bias: 0 }))
            {
                var steps = new ShapedRowInstructions(context, new SizedPiece(context, index).Only(at)).Write().Items
                    .Select(s => (Label: Say(plan, size.Name, s.Label), Text: Say(plan, size.Name, s.Text))).ToArray();
                var (stitches, rows, next, fastened) = (0, 0, 1, 0);
                foreach (var (label, text) in steps)
                {
                    var row = Regex.Match(label, @"^Rows? (\d+)(?: to (\d+))?");
                    if (!row.Success)
                        continue;
                    var (from, to) = (int.Parse(row.Groups[1].Value, CultureInfo.InvariantCulture),
                        int.Parse(row.Groups[2].Success ? row.Groups[2].Value : row.Groups[1].Value, CultureInfo.InvariantCulture));
                    Assert.Equal(row.Groups[2].Success, to > from);
                    // A side that is joined on begins beside one that is worked.
                    Assert.True(from == next || Begins(piece, from), $"{name}, {piece.Name}: row {from} after {next - 1}.");
                    next = to + 1;
                    var each = int.Parse(Regex.Match(text, @"(\d+) sts?(?=\.|, the last at| each[.,])").Groups[1].Value, CultureInfo.InvariantCulture);
                    (stitches, rows) = (stitches + each * (to - from + 1), rows + to - from + 1);
                    fastened += text.Contains("asten off.", StringComparison.Ordinal) ? 1 : 0;
                }
                Assert.Equal(piece.Shape!.Parts.Sum(p => p.Rows), rows);
                Assert.Equal(piece.Shape.Parts.Sum(p => p.Outline.ByRow().Sum(r => r.Last - r.First + 1)), stitches);
                Assert.Equal(piece.Shape.Parts.Count(p => p.Index + 1 == piece.Shape.Parts.Length
                    || !piece.Shape.Parts[p.Index + 1].Continues), fastened);
            }
        }

        static bool Begins(PiecePlan piece, int row) => piece.Shape!.Parts.Any(p => p.FirstRow + 1 == row);
    }

    private static string Say(Plan plan, string size, Phrase phrase) => string.Concat(
        new Wording([size], plan.Project.Edition with { Terms = Terms.Us, Units = Units.Centimetres, Size = null })
            .Say(phrase).Select(s => s.Text));
}
