using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Shaping;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What a maker reads of a shaped garment in many sizes: half double crochet, thirty stitches a sequence, no companion yarn.</summary>
public sealed class ShapedWordsTests
{
    private static readonly int[] Counts = [7, 4, 9, 4, 6];

    public static TheoryData<Direction> Directions => [Direction.Up, Direction.Sideways];

    [Theory]
    [MemberData(nameof(Directions))]
    public void The_words_agree_with_the_plan(Direction direction)
    {
        var plan = Vest(direction).Planned();
        Assert.Empty(PlanCheck.Verify(plan));
        Assert.Empty(PatternCheck.Run(plan));
    }

    /// <summary>
    /// The yarn is followed stitch by stitch: what lies on a stitch, and what on the one two rows below it, so many stitches of yarn apart.
    /// </summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void Every_row_is_told_how_far_its_colours_go_against_the_row_two_below(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var lines = Lines(plan);
        var seen = new HashSet<string>();
        foreach (var size in plan.Sizes)
        {
            foreach (var piece in size.Pieces)
            {
                var said = ChartOf(lines, piece.Name, size.Name);
                foreach (var (part, row, yarn) in Walk(piece))
                {
                    if (row < 2)
                        continue;
                    // Of the sides of a neck, both stand on the body.
                    var below = Walk(piece).Where(w => w.Row == row - 2 && w.Yarn.Keys.Any(yarn.ContainsKey) && (w.Part == part || w.Part.Below is null)).ToArray();
                    var further = below.SelectMany(b => b.Yarn.Where(at => yarn.ContainsKey(at.Key)).Select(at => ((yarn[at.Key] - at.Value) % 30 + 30) % 30)).Distinct().ToArray();
                    // What lies further along the yarn comes sooner.
                    var by = Assert.Single(further) switch
                    {
                        0 => "exactly above itself",
                        1 => "1 stitch earlier",
                        29 => "1 stitch later",
                        <= 15 and var n => $"{n} stitches earlier",
                        var n => $"{30 - n} stitches later",
                    };
                    Assert.Equal(by, SaidOf(said, part.Below is null ? "" : PartNames.Of(part), row + 1));
                    seen.Add(by);
                }
            }
        }
        Assert.True(seen.Count > 2, string.Join(", ", seen));
        Assert.Contains(lines, l => l == "How much earlier or later each colour begins than it did two rows below is not the same everywhere: it stands with the row starts of each chart.");
    }

    [Theory]
    [MemberData(nameof(Directions))]
    public void Where_rows_differ_they_are_held_against_the_row_two_below(Direction direction) => Assert.Contains(
        Lines(Vest(direction).Planned()), l => l.EndsWith("In the order of work, each colour begins, against the row two below:", StringComparison.Ordinal));


    [Theory]
    [InlineData("stitches later.", "stitches earlier.")]
    [InlineData("- rows 3 to ", "- rows 3 to 1")]
    [InlineData("- rows 3 to ", "- rows 4 to ")]
    public void A_shift_that_is_wrong_is_found(string said, string other)
    {
        var plan = Vest(Direction.Sideways).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        var at = text.IndexOf(said, StringComparison.Ordinal);
        Assert.NotEmpty(PatternCheck.Text(plan, text[..at] + other + text[(at + said.Length)..]));
    }

    /// <summary>Which chart a size has is nobody's concern before she begins: sizes and pieces that begin alike are said together.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void The_test_strip_speaks_of_pieces_and_sizes_and_says_what_is_alike_once(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var strip = Lines(plan).SkipWhile(l => l != "## Test strip").TakeWhile(l => !l.StartsWith("If it does not", StringComparison.Ordinal)).Where(l => l.StartsWith("- ", StringComparison.Ordinal)).ToArray();
        Assert.DoesNotContain(strip, l => l.Contains("chart", StringComparison.Ordinal));
        // The sixth row runs back: its first stitch is the last one of the five rows before and its own.
        foreach (var alike in plan.Sizes.SelectMany(s => s.Pieces, (s, p) => (Size: s.Name, Piece: p.Name, Ends: SixthRow(plan, p))).GroupBy(p => p.Ends))
        {
            var lines = strip.Where(l => l.EndsWith($": {alike.Key}", StringComparison.Ordinal)).ToArray();
            foreach (var (size, piece, _) in alike)
                Assert.Contains(lines, l => Names(l, piece, size));
            Assert.True(lines.Length <= alike.Select(p => p.Piece).Distinct().Count(), string.Join("\n", lines));
        }

        static bool Names(string line, string piece, string size) =>
            line.Split(':')[0] is var who && who.Contains(piece, StringComparison.Ordinal)
            && (who.EndsWith(", all sizes", StringComparison.Ordinal) || who.Split(" in ")[^1].Split(", ").Contains(size));
    }

    [Fact]
    public void The_test_strip_of_one_size_names_the_pieces_alone()
    {
        var strip = Lines(Vest(Direction.Sideways).Planned(), "M").SkipWhile(l => l != "## Test strip").Skip(2).First();
        Assert.StartsWith("- front and back: begins with ", strip, StringComparison.Ordinal);
    }

    /// <summary>The title of a chart says what its caption says: how wide it is drawn.</summary>
    [Fact]
    public void A_shaped_chart_is_titled_by_its_widest_row()
    {
        var plan = Vest(Direction.Sideways).Planned();
        var lines = Lines(plan);
        foreach (var piece in plan.Sizes.SelectMany(s => s.Pieces))
        {
            var widest = Walk(piece).Max(row => row.Yarn.Count);
            Assert.True(widest > piece.Stitches);
            Assert.Contains(lines, l => Regex.IsMatch(l, $"^## Chart [0-9]+: [0-9]+ to {widest} stitches, shaped [(]"));
        }
        Assert.DoesNotContain(lines, l => Regex.IsMatch(l, "^## Chart [0-9]+: [0-9]+ stitches, shaped"));
    }

    /// <summary>A shaped piece does not repeat: who has the text alone has nothing else for its last rows.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void Row_starts_go_to_the_last_row(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var lines = Lines(plan);
        foreach (var size in plan.Sizes)
        {
            foreach (var piece in size.Pieces)
            {
                var chart = ChartOf(lines, piece.Name, size.Name);
                foreach (var (part, row, yarn) in Walk(piece))
                {
                    var label = $"  {row + 1} ({(row % 2 == 0 ? "RS" : "WS")}){(part.Below is null || part.Continues ? "" : $", {PartNames.Of(part)}")} ";
                    var worked = yarn.OrderBy(cell => cell.Value).Select(cell => ColourAt(cell.Value)).ToArray();
                    var begins = $"{worked.TakeWhile(c => c == worked[0]).Count()} {plan.Sequence.Colours[worked[0]].Symbol}";
                    Assert.Contains(chart, l => l.StartsWith(label, StringComparison.Ordinal) && l[label.Length..].TrimStart().StartsWith($"{begins} ", StringComparison.Ordinal));
                }
            }
        }
        Assert.DoesNotContain(lines, l => l.Contains("The chart goes on", StringComparison.Ordinal));
    }

    /// <summary>Chains that rows go on over are of another yarn, which has to be bought where the design has none.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void What_a_row_goes_on_over_is_a_yarn_of_the_materials(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var lines = Lines(plan);
        Assert.DoesNotContain(lines, l => l.Contains("companion yarn", StringComparison.Ordinal));
        var chains = plan.Sizes.Select(s => s.Pieces.SelectMany(GrowsBy).ToArray()).ToArray();
        Assert.Equal(chains.Sum(c => c.Length), lines.Count(l => l.StartsWith("Chain: Join the smooth yarn with sl st in the first st of row ", StringComparison.Ordinal)));
        Assert.Equal(chains.Sum(c => c.Length), lines.Count(l => l.StartsWith("Chain: ", StringComparison.Ordinal)));
        // A chain takes 0.48 of a single crochet and a half double crochet 1.45 of one; two ends of 15 cm to each chain.
        var metres = chains.Select(c => Math.Ceiling(c.Sum(n => n * plan.Sequence.YarnPerUnit.Metres * Foundation.ChainInUnits(FabricStitch.HalfDoubleCrochet) + 0.3) - 1e-6)).ToArray();
        if (chains.All(c => c.Length == 0))
            Assert.DoesNotContain(lines, l => l.Contains("mooth yarn", StringComparison.Ordinal));
        else
            Assert.Contains(lines, l => l.StartsWith($"- Smooth yarn of similar thickness, for chains that rows are worked on over: {(metres.Distinct().Count() == 1 ? metres[0] : $"{metres[0]} ({string.Join(", ", metres[1..])})")} m / ", StringComparison.Ordinal));
        if (direction == Direction.Sideways)
        {
            Assert.All(chains, c => Assert.NotEmpty(c));
            var steps = MakingOrder.Of(plan, "M").Parts.SelectMany(p => p.Steps).Where(s => Words(s.Label) == "Chain").ToArray();
            Assert.NotEmpty(steps);
            Assert.All(steps, s => Assert.StartsWith("Join the smooth yarn with ", Words(s.Text), StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_companion_yarn_serves_for_the_chains_and_says_so()
    {
        var plan = (Vest(Direction.Sideways) with { Companion = Tideline.Companion! with { Name = "Plain", Uses = [CompanionUse.Seams] } }).Planned();
        var lines = Lines(plan);
        Assert.Contains(lines, l => l.StartsWith("- Plain, the companion yarn for seams and chains that rows are worked on over: ", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("Chain: Join Plain with sl st", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("mooth yarn", StringComparison.Ordinal));
        Assert.Empty(PatternCheck.Run(plan));
    }

    /// <summary>By how much a row goes on beyond the one below, at the end at which it ends.</summary>
    private static IEnumerable<int> GrowsBy(PiecePlan piece)
    {
        (ShapedPart Part, int Row, Dictionary<int, int> Yarn)? before = null;
        foreach (var row in Walk(piece))
        {
            if (before is { } below && below.Row == row.Row - 1 && row.Yarn.Keys.Except(below.Yarn.Keys).Count() is > 0 and var chains)
                yield return chains;
            before = row;
        }
    }

    private static string Words(Phrase phrase) => string.Concat(phrase.Leaves.Select(part => part switch
    {
        Dyepath.Core.Booklets.Words words => words.Text,
        Term term => term.Us,
        _ => "",
    }));

    /// <summary>Nobody cuts a neck that the shoulder seam takes, or of which it leaves less than a centimetre: it stays straight, and is marked.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void What_a_seam_would_take_is_not_cut(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var step = direction == Direction.Up ? 10.0 / 11 : 10.0 / 15;
        foreach (var piece in plan.Sizes.SelectMany(s => s.Pieces))
        {
            // A shoulder seam takes one stitch or row.
            foreach (var neck in piece.Openings.Where(o => o is { Id: OpeningId.Neck, Into: > 0 }))
                Assert.True((neck.Into - 1) * step >= 1, $"{piece.Name}: {neck.Into}");
            var grown = GrowsBy(piece).ToArray();
            Assert.All(grown, n => Assert.True(n > 1));
        }
        var straight = plan.Sizes.Where(s => s.Pieces[1].Opening(OpeningId.Neck).Into == 0).Select(s => s.Name).ToArray();
        var notes = plan.Findings.Where(f => f.Text.StartsWith("The back's neck is not cut", StringComparison.Ordinal)).ToArray();
        if (straight.Length == 0)
        {
            Assert.Empty(notes);
            return;
        }
        Assert.Equal(plan.Sizes.Length, straight.Length);
        Assert.StartsWith("The back's neck is not cut: where the colours let rows end, under 1 cm of it would be seen beside the seam", Assert.Single(notes).Text, StringComparison.Ordinal);
        var lines = Lines(plan);
        Assert.Contains(lines, l => l.EndsWith(": neck opening begins here.", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("each of the 1 ch", StringComparison.Ordinal) || l.Contains("last 1 st", StringComparison.Ordinal));
    }

    [Fact]
    public void Sideways_a_shallow_back_neck_is_straight() =>
        Assert.Contains(Vest(Direction.Sideways).Planned().Sizes, s => s.Pieces[1].Opening(OpeningId.Neck).Into == 0);

    /// <summary>Who works a row has to know what it is: where she is to look for it on the drawing, and what is sewn there.</summary>
    [Fact]
    public void Worked_sideways_each_step_says_what_begins_and_ends()
    {
        var text = string.Join('\n', PieceOf(Lines(Vest(Direction.Sideways).Planned()), "Front, size M"));
        Assert.Matches(
            @"^Foundation: Ch [0-9]+\. The chain becomes the edge of the side seam, between the hem and the armhole: its end is at the hem, where row 1 begins\.\n(?:.*\n)*?"
                + @"Row [0-9]+ \(RS\): .* ch, turn\. [0-9]+ sts, the last at [A-Z][0-9]+\. Here the armhole ends and the shoulder seam begins\.\n(?:.*\n)*?"
                + @"Row [0-9]+ \(RS\): .* unworked, turn\. [0-9]+ sts, the last at [A-Z][0-9]+\. Here the shoulder seam ends and the neck begins\.\n(?:.*\n)*?"
                + @"Row [0-9]+ \(RS\): .* ch, turn\. [0-9]+ sts, the last at [A-Z][0-9]+\. Here the neck ends and the shoulder seam begins\.\n(?:.*\n)*?"
                + @"Row [0-9]+ \(RS\): .* unworked, turn\. [0-9]+ sts, the last at [A-Z][0-9]+\. Here the shoulder seam ends and the armhole begins\.\n(?:.*\n)*?"
                + @"Rows? [0-9]+(?: to [0-9]+)?: As row .*, then fasten off\. The last row is the edge of the side seam\.$", text[text.IndexOf("Foundation", StringComparison.Ordinal)..].TrimEnd());
    }

    [Fact]
    public void Worked_up_each_step_says_what_begins_and_ends()
    {
        var text = string.Join('\n', PieceOf(Lines(Vest(Direction.Up).Planned()), "Front, size M"));
        Assert.Matches(
            @"^Foundation: Ch [0-9]+\. The chain is the hem\.\n(?:.*\n)*?"
                + @"Row [0-9]+ .* unworked, turn\. [0-9]+ sts, the last at [A-Z][0-9]+\. Here the side seam ends and the armhole begins\.\n"
                + @"(?:.*\n)*?(?:Row|Motif).*\n(?:.*\n)*?.*Here the neck begins\.\n(?:.*\n)*?"
                + @".*then fasten off\. The last row is the edge of the shoulder seam\.\n"
                + @"Second side: .* The stitches left are the lower edge of the neck\.\n(?:.*\n)*?"
                + @".*The last row is the edge of the shoulder seam\.$", text[text.IndexOf("Foundation", StringComparison.Ordinal)..].TrimEnd());
        Assert.Equal(2, Regex.Count(text, "Here the side seam ends and the armhole begins[.]"));
    }

    [Theory]
    [InlineData(Direction.Sideways, "Here the armhole ends and", "Here the neck ends and")]
    [InlineData(Direction.Sideways, "Here the armhole ends and the shoulder seam begins", "Here the shoulder seam ends and the armhole begins")]
    [InlineData(Direction.Sideways, "and the neck begins", "and the armhole begins")]
    [InlineData(Direction.Up, "Here the neck begins", "Here the armhole begins")]
    [InlineData(Direction.Up, "the lower edge of the neck", "the lower edge of the armhole")]
    public void A_step_that_names_another_opening_is_found(Direction direction, string said, string other)
    {
        var plan = Vest(direction).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition).Replace("\n    ", " ", StringComparison.Ordinal);
        Assert.Empty(PatternCheck.Text(plan, text));
        var at = text.IndexOf(said, StringComparison.Ordinal);
        Assert.NotEmpty(PatternCheck.Text(plan, text[..at] + other + text[(at + said.Length)..]));
    }

    [Fact]
    public void Beside_the_hook_the_steps_say_the_same()
    {
        var front = MakingOrder.Of(Vest(Direction.Sideways).Planned(), "M").Parts[0];
        Assert.EndsWith(" The chain becomes the edge of the side seam, between the hem and the armhole: its end is at the hem, where row 1 begins.", string.Concat(front.Steps.Where(s => Words(s.Label) == "Foundation").Select(s => Words(s.Text))), StringComparison.Ordinal);
        Assert.Contains(front.Steps, s => Words(s.Text).EndsWith(" Here the armhole ends and the shoulder seam begins.", StringComparison.Ordinal));
        Assert.Equal("Then fasten off. The last row is the edge of the side seam.", Words(front.Steps.OfType<RowStep>().Last().Notes[^1]));
    }

    private static string[] PieceOf(string[] lines, string heading) =>
        [.. lines.SkipWhile(l => l != $"## {heading}").Skip(1).TakeWhile(l => !l.StartsWith("## ", StringComparison.Ordinal))];

    /// <summary>A maker has never seen the piece that is not shaped: she is told what she sees against the row two below.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void Where_colours_go_otherwise_from_a_row_on_a_step_says_so(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var lines = Lines(plan);
        Assert.DoesNotContain(lines, l => l.Contains("unshaped", StringComparison.Ordinal));
        var changes = 0;
        foreach (var (size, piece) in plan.Sizes.SelectMany(s => s.Pieces, (s, p) => (s.Name, p)))
        {
            var said = PieceOf(lines, $"{char.ToUpperInvariant(piece.Name[0])}{piece.Name[1..]}, size {size}").Where(l => l.StartsWith("Motif: ", StringComparison.Ordinal)).ToArray();
            var rows = Walk(piece).ToArray();
            // What the first rows show, where it is not what the piece shows, is said before them.
            if (said is [var begin, ..] && begin.StartsWith("Motif: up to row ", StringComparison.Ordinal))
            {
                var alike = rows.Where(r => r.Part.Below is null && r.Row > 1).TakeWhile(r => Further(rows, r.Part, r.Row) == Further(rows, rows[0].Part, 2)).Count();
                Assert.StartsWith($"Motif: up to row {alike + 2} the picture: ", begin, StringComparison.Ordinal);
                Assert.Contains(" It is planned so", begin, StringComparison.Ordinal);
                said = said[1..];
            }
            var expected = new List<string>();
            foreach (var (part, row, yarn) in rows.Where(r => r.Row > 2))
            {
                var (now, then) = (Further(rows, part, row), Further(rows, row > part.FirstRow ? part : piece.Shape!.Parts[part.Below!.Value], row - 1));
                if (now != then)
                    expected.Add($"row {row + 1} on each colour begins {Of(now)}{(now == 0 ? "" : " than")} two rows below; before that, {Of(then)}");
            }
            changes += expected.Count;
            Assert.Equal(expected.Count, said.Length);
            foreach (var (line, words) in said.Zip(expected).Where(p => p.First.Contains(" from ", StringComparison.Ordinal)))
                Assert.StartsWith($"Motif: from {words}", line, StringComparison.Ordinal);
        }
        Assert.True(changes > 0);

        static string Of(int further) => further switch
        {
            0 => "exactly above itself",
            1 => "1 stitch earlier",
            29 => "1 stitch later",
            <= 15 => $"{further} stitches earlier",
            _ => $"{30 - further} stitches later",
        };
    }

    /// <summary>Worked up, this vest's narrower part leans too far for diamonds: two rows of 53 stitches are 14 short of four sequences.</summary>
    [Fact]
    public void What_the_colours_make_where_they_lean_otherwise_is_said()
    {
        var lines = Lines(Vest(Direction.Up).Planned());
        Assert.Contains(lines, l => l.StartsWith("Motif: from row ", StringComparison.Ordinal) && l.Contains("; the picture there: scattered colours, not argyle diamonds.", StringComparison.Ordinal));
        // A piece is told so once, at its first change.
        var told = lines.Where(l => l.StartsWith("Motif: ", StringComparison.Ordinal)).Select(l => l.Contains("undo nothing", StringComparison.Ordinal)).ToArray();
        Assert.InRange(told.Count(t => t), 1, told.Length - 1);
        Assert.Contains(lines, l => Regex.IsMatch(l, "^Motif: in row [0-9]+ each colour begins [0-9]+ stitches earlier than two rows below: the picture is broken there[.]( It is planned so: go on, and undo nothing[.])?$"));
        var sideways = Lines(Vest(Direction.Sideways).Planned()).Where(l => l.StartsWith("Motif: ", StringComparison.Ordinal)).ToArray();
        Assert.True(sideways.Any(l => l.Contains("; the picture: argyle diamonds again.", StringComparison.Ordinal)), string.Join('\n', sideways));
    }

    /// <summary>Of the yarn, from the stitch two rows below on.</summary>
    private static int Further((ShapedPart Part, int Row, Dictionary<int, int> Yarn)[] rows, ShapedPart part, int row)
    {
        var here = rows.Single(r => r.Part == part && r.Row == row).Yarn;
        var below = rows.Where(r => r.Row == row - 2 && (r.Part == part || r.Part.Below is null)).SelectMany(r => r.Yarn).First(at => here.ContainsKey(at.Key));
        return ((here[below.Key] - below.Value) % 30 + 30) % 30;
    }

    /// <summary>Colours that stand exactly above themselves make columns, whatever the rest of the piece makes.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void A_chart_says_what_its_rows_make(Direction direction)
    {
        var plan = Vest(direction).Planned();
        var lines = Lines(plan);
        foreach (var (size, piece) in plan.Sizes.SelectMany(s => s.Pieces, (s, p) => (s.Name, p)))
        {
            var rows = Walk(piece).ToArray();
            var straight = rows.Where(r => r.Row >= 2 && Further(rows, r.Part, r.Row) == 0).Select(r => (r.Part, r.Row)).ToHashSet();
            // Two rows are no picture.
            var columns = straight.Any(r => straight.Contains((r.Part, r.Row + 1)) && straight.Contains((r.Part, r.Row + 2)));
            var caption = ChartOf(lines, piece.Name, size).Single(l => l.StartsWith("[Picture: ", StringComparison.Ordinal));
            Assert.Equal(columns, caption.Contains("columns in row", StringComparison.Ordinal));
        }
    }

    /// <summary>Beside the hook too, a row is held against what lies straight below it, also where it begins elsewhere.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void Beside_the_hook_a_row_is_held_against_what_lies_below_it(Direction direction)
    {
        var plan = Vest(direction).Planned();
        foreach (var size in plan.Sizes)
        {
            var order = MakingOrder.Of(plan, size.Name);
            foreach (var piece in size.Pieces)
            {
                var rows = Walk(piece).ToArray();
                var at = 0;
                foreach (var part in order.Parts.Where(p => p.Piece == piece))
                {
                    var first = rows[at].Part.Index;
                    for (var row = 0; row < part.Rows; row++, at++)
                    {
                        var earlier = Core.Making.Work.RowWords.Earlier(part.Fabric!, row);
                        if (row < 2)
                            Assert.Null(earlier);
                        else
                            Assert.Equal(Further([.. rows.Where(r => r.Part == rows[at].Part || (r.Part.Below is null && first == 0))], rows[at].Part, rows[at].Row), ((int)earlier!.Value % 30 + 30) % 30);
                    }
                }
                Assert.Equal(rows.Length, at);
            }
        }
    }

    private static string SixthRow(Plan plan, PiecePlan piece)
    {
        var (_, row, yarn) = Walk(piece).ElementAt(5);
        Assert.Equal(5, row);
        var worked = yarn.OrderBy(cell => cell.Value).Select(cell => ColourAt(cell.Value)).ToArray();
        return $"begins with {worked.TakeWhile(c => c == worked[0]).Count()} of {Named(worked[0])}, ends with {worked.Reverse().TakeWhile(c => c == worked[^1]).Count()} of {Named(worked[^1])}.";

        string Named(int colour) => $"colour {colour + 1} ({plan.Sequence.Colours[colour].Symbol})";
    }

    /// <summary>The counts of the colours one after the other, for ever.</summary>
    private static int ColourAt(int yarn)
    {
        var (at, colour) = (yarn % Counts.Sum(), 0);
        while (at >= Counts[colour])
            at -= Counts[colour++];
        return colour;
    }

    /// <summary>What the chart's own words say of a row, whether once or row by row.</summary>
    private static string SaidOf(string[] chart, string part, int row)
    {
        var once = chart.Select(l => Regex.Match(l, "^In the order of work, each colour begins (.*?)(?: than it did)? two rows below[.]$")).Where(m => m.Success).ToArray();
        if (once.Length == 1)
            return once[0].Groups[1].Value;
        var rows = chart.Select(l => Regex.Match(l, "^- (?:(?<part>[a-z]+ side), )?rows? (?<a>[0-9]+)(?: (?:to|and) (?<b>[0-9]+))?: (?<by>.*)[.]$"))
            .Where(m => m.Success && m.Groups["part"].Value == part && Number(m, "a") <= row && row <= (m.Groups["b"].Success ? Number(m, "b") : Number(m, "a")));
        return Assert.Single(rows).Groups["by"].Value;
    }

    private static int Number(Match match, string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    /// <summary>The lines under the chart that a piece's own words name.</summary>
    private static string[] ChartOf(string[] lines, string piece, string size)
    {
        var heading = $"## {char.ToUpperInvariant(piece[0])}{piece[1..]}, size {size}";
        var chart = Regex.Match(lines.SkipWhile(l => l != heading).First(l => l.StartsWith("Chart: ", StringComparison.Ordinal)), "^Chart: ([0-9]+);").Groups[1].Value;
        return [.. lines.SkipWhile(l => !l.StartsWith($"## Chart {chart}:", StringComparison.Ordinal)).Skip(1).TakeWhile(l => !l.StartsWith("## ", StringComparison.Ordinal))];
    }

    /// <summary>Every row, stitch by stitch: which stitch of yarn, counted from the sequence's beginning, lies in which column.</summary>
    private static IEnumerable<(ShapedPart Part, int Row, Dictionary<int, int> Yarn)> Walk(PiecePlan piece)
    {
        var yarn = 0;
        foreach (var part in piece.Shape!.Parts)
        {
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
            {
                var run = part.Outline.At(row - part.FirstRow);
                if (row == part.FirstRow && !part.Continues)
                    // Joined on where a piece that was never cut would have its stitch.
                    yarn = (int)piece.Start + row * piece.Stitches + (row % 2 == 0 ? run.First : piece.Stitches - 1 - run.Last);
                var cells = new Dictionary<int, int>();
                for (var stitch = 0; stitch < run.Units; stitch++)
                    cells.Add(row % 2 == 0 ? run.First + stitch : run.Last - stitch, yarn++);
                yield return (part, row, cells);
            }
        }
    }

    private static string[] Lines(Plan plan, string? size = null) =>
        TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = size }).Replace("\n    ", " ", StringComparison.Ordinal).Split('\n');

    internal static Project Vest(Direction direction)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == "vest"));
        string[] colours = ["1f4e5f", "79a8a9", "f4e9d8", "c0845a", "7a3b69"];
        return project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. Counts.Select((n, i) => project.Yarn.Sections[0] with { Name = $"colour {i + 1}", Colour = Core.Colours.Srgb.Parse($"#{colours[i]}"), Length = Cm(9.2 * n) })],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(Counts.ToImmutableArray(), 3)] }],
            },
            Fabric = project.Fabric with
            {
                Stitch = FabricStitch.HalfDoubleCrochet,
                Swatch = project.Fabric.Swatch with { Worked = new Gauge(15, 11, Cm(10)), YarnUsed = [new YarnUsed(40, Cm(368))] },
                SectionStitches = [.. Counts],
            },
            Garment = project.Garment with
            {
                Direction = direction,
                Shape = (Vest)project.Garment.Shape with { Neck = ((Vest)project.Garment.Shape).Neck with { LetOff = PieceGroup.UsualLetOff } },
            },
            Sizes = project.Sizes with { Sizes = ["S", "M", "L", "1X", "2X", "3X"] },
        };
    }
}
