using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>
/// Every sentence that depends on direction, way of working, stitch or hand, case by case. The expected words are written from the
/// work: sides of a panel worked upwards are row ends and are sewn row to row; worked sideways they are its first and last row, and are
/// sewn stitch to stitch.
/// </summary>
public sealed class SectionWordsTests
{
    public static TheoryData<string, string> Ways => new()
    {
        { "tunic", "Front, back and sleeves are worked sideways, from one side to the other: stitches run up the body, rows run round it; row 1 begins at the lower edge." },
        { "worked up", "Front, back and sleeves are worked upwards: stitches run round the body, rows run up it; the foundation is the lower edge." },
        { "sewn cowl, up", "Worked upwards, back and forth: stitches run round the cowl, rows run up it; the foundation is the lower edge." },
        { "sideways cowl", "Worked sideways, back and forth: stitches run up the cowl, rows run round it; row 1 begins at the lower edge." },
        { "blanket, up", "Worked upwards, back and forth: stitches run across the width, rows run along the length." },
        { "blanket, sideways", "Worked sideways, back and forth: stitches run along the length, rows run across the width." },
        { "cowl in rounds", "Worked in joined rounds from the lower edge up, right side always facing." },
        { "cowl turned round", "Worked in joined rounds from the lower edge up, and turned after every join." },
        { "spiral cowl", "Worked in one spiral from the lower edge up, right side always facing; the rounds are not joined." },
        { "sleeveless, up", "Front and back are worked upwards: stitches run round the body, rows run up it; the foundation is the lower edge." },
        { "sleeveless, sideways", "Front and back are worked sideways, from one side to the other: stitches run up the body, rows run round it; row 1 begins at the lower edge." },
    };

    public static TheoryData<string, string> Turns => new()
    {
        { "tunic", "Pull every turning chain close, so that the turn takes no yarn that shows in the colours." },
        { "cowl in rounds", "Pull every beginning chain and joining stitch close, so that the join takes no yarn that shows in the colours." },
        { "free", "Leave every turning chain at its natural size: a turn takes about half a stitch of yarn, and the picture counts on it." },
        { "free rounds", "Leave every beginning chain and joining stitch at its natural size: a join takes about half a stitch of yarn, and the picture counts on it." },
        { "free double crochet", "Work every turning chain alike: the picture counts on the yarn that it takes." },
    };

    /// <summary>N stands for the row's stitches, W for the wider row's, C for the chains and R for the rows.</summary>
    public static TheoryData<string, string[]> Rows => new()
    {
        { "worked up", [
            "Foundation: Ch C. Row 1 (RS): Sc in 2nd ch from hook and in each ch to end, turn. N sts.",
            "Row 2 (WS): Ch 1, sc in each st to end, turn. N sts. Rows 3 to R: As row 2, N sts each, then fasten off."] },
        { "half double crochet", [
            "Row 1 (RS): Hdc in 3rd ch from hook (the 2 skipped ch do not count as a st) and in each ch to end, turn. N sts.",
            "Row 2 (WS): Ch 2 (does not count as a st), hdc in each st to end, turn. N sts. Rows 3 to R: As row 2, N sts each, then fasten off."] },
        { "double crochet", [
            "Row 1 (RS): Dc in 4th ch from hook (the 3 skipped ch count as the first st) and in each ch to end, turn. N sts.",
            "Row 2 (WS): Ch 3 (counts as the first st), skip first st, dc in each st to end, the last in the top of the turning ch, turn. N sts. Rows 3 to R: As row 2, N sts each, then fasten off."] },
        { "single crochet whose chain counts", [
            "Row 1 (RS): Sc in 2nd ch from hook (the 1 skipped ch counts as the first st) and in each ch to end, turn. N sts.",
            "Row 2 (WS): Ch 1 (counts as the first st), skip first st, sc in each st to end, the last in the top of the turning ch, turn. N sts."] },
        { "alternating, sc", [
            "Row 1 (RS): Sc in 2nd ch from hook and in each ch to end, turn. N sts.",
            "Row 2 (WS): Ch 1, 2 sc in first st, sc in each st to end, turn. W sts.",
            "Row 3 (RS): Ch 1, sc in each st to last st, which is left unworked, turn. N sts. Rows 4 to R: As rows 2 and 3 in turn, then fasten off."] },
        { "cowl in rounds", [
            "Foundation: Ch C. Without twisting the chain, join with sl st in its first ch to form a ring. Round 1: Ch 1, sc in each ch around, join with sl st in first st. N sts.",
            "Round 2: Ch 1, sc in each st around, join with sl st in first st. N sts. Rounds 3 to R: As round 2, N sts each, then fasten off."] },
        { "cowl turned round", [
            "Round 1 (RS): Ch 1, sc in each ch around, join with sl st in first st, turn. N sts.",
            "Round 2 (WS): Ch 1, sc in each st around, join with sl st in first st, turn. N sts. Rounds 3 to R: As round 2, N sts each, then fasten off."] },
        { "spiral cowl", [
            "Round 1: Sc in each ch around, do not join; mark the first st. N sts.",
            "Round 2: Sc in each st around, moving the marker up. N sts. Rounds 3 to R: As round 2, N sts each, then fasten off."] },
        { "double crochet cowl", [
            "Round 1: Ch 3 (counts as the first st), skip first ch, dc in each ch around, join with sl st in top of beginning ch. N sts.",
            "Round 2: Ch 3 (counts as the first st), skip first st, dc in each st around, join with sl st in top of beginning ch. N sts. Rounds 3 to R: As round 2, N sts each, then fasten off."] },
        { "linen cowl in rounds", [
            "Round 1: Ch 1, *sc in next ch, ch 1, skip next ch; rep from * around, join with sl st in first st. N sts.",
            "Round 2: Ch 2 (counts as a ch-1 space), skip first sc, sc in next ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * around, join with sl st in first ch. N sts.",
            "Round 3: Ch 1, *sc in next ch-1 space, ch 1, skip next sc; rep from * around, join with sl st in first st. N sts. Rounds 4 to R: As rounds 2 and 3 in turn, then fasten off."] },
        { "linen cowl turned round", [
            "Round 1 (RS): Ch 1, *sc in next ch, ch 1, skip next ch; rep from * around, join with sl st in first st, turn. N sts.",
            "Round 2 (WS): Ch 1, *sc in next ch-1 space, ch 1, skip next sc; rep from * around, join with sl st in first st, turn. N sts. Rounds 3 to R: As round 2, N sts each, then fasten off."] },
        { "linen spiral cowl", [
            "Round 1: *sc in next ch, ch 1, skip next ch; rep from * to last ch, sc in last ch, do not join; mark the first st. N sts.",
            "Round 2: *ch 1, skip next sc, sc in next ch-1 space; rep from * to last sc, ch 1, skip next sc, moving the marker up. N sts.",
            "Round 3: Sc in first ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * around, moving the marker up. N sts. Rounds 4 to R: As rounds 2 and 3 in turn, then fasten off."] },
    };

    public static TheoryData<string, string[]> MakingUp => new()
    {
        { "worked up", [
            "1: Wash the pieces and dry them flat to the measurements of the drawing.",
            "2: Undo the extra chains, if you made any: open the slip knot, draw the tail back out of one chain after the other, stop at the first chain that holds a stitch, and pull the tail close.",
            "3: Sew with Ebbstone Light, solid Slack Water. Every seam takes in one stitch of each edge that is made of row ends and one row of each edge that is made of stitches.",
            "4: Shoulders: lay front and back together, outsides in. Sew from each outer edge to the marks of the neck opening. Both ends of the opening take strain: sew there twice.",
            "5: Sleeves: lay the last row of each sleeve, outsides in, between the two armhole marks, its middle at the shoulder seam, and sew.",
            "6: Sides and sleeves: sew row to row from the hem up to the armhole marks, and on along the underside of the sleeve to the cuff.",
            "1: Weave the ends in, each under its own colour. 2: Damp the edgings, lay them flat, and let them dry."] },
        { "tunic", [
            "5: Sleeves: lay the edge of each sleeve where odd-numbered rows end, outsides in, between the two armhole marks, its middle at the shoulder seam, and sew.",
            "6: Sides and sleeves: sew stitch to stitch from the hem up to the armhole marks, and on along the underside of the sleeve to the cuff."] },
        { "sleeveless, up", ["5: Sides: sew row to row from the hem up to the armhole marks."] },
        { "sleeveless, sideways", ["5: Sides: sew stitch to stitch from the hem up to the armhole marks."] },
        { "sewn cowl, up", [
            "1: Wash the piece and dry it flat to the measurements of the drawing.",
            "4: Back seam: lay the two side edges together, outsides in, and sew row to row into a tube."] },
        { "sideways cowl", ["4: Back seam: lay the first row and the last row together, outsides in, and sew stitch to stitch into a tube."] },
        { "cowl in rounds", ["1: Wash the piece and dry it flat to the measurements of the drawing. 2: Undo the extra chains, if you made any: open the slip knot, draw the tail back out of one chain after the other, stop at the first chain that holds a stitch, and pull the tail close.", "1: Weave the ends in, each under its own colour. 2: Damp the edgings"] },
        { "other end, no waste", ["1: Weave the ends in, each under its own colour. "] },
        { "unedged", ["7: Weave the ends in, each under its own colour. "] },
        { "plain sleeves", ["3: Sew with the variegated yarn, from a length of a colour that hides in the seam."] },
        { "deep seams", ["Every seam takes in no stitch of each edge that is made of row ends and 2 rows of each edge that is made of stitches."] },
    };

    public static TheoryData<string, string> EdgingBeginnings => new()
    {
        { "tunic", "Hem: sideways rib (sc in the back loop) Yarn: Ebbstone Light, solid Slack Water, joined with the outside facing at the wearer's left side seam." },
        { "tunic", "Neck: corded edge (reverse sc) Yarn: Ebbstone Light, solid Slack Water, joined with the outside facing at the wearer's left shoulder seam." },
        { "tunic", "Cuffs (work 2): sideways rib (sc in the back loop) Yarn: Ebbstone Light, solid Slack Water, joined with the outside facing at the seam under the sleeve." },
        { "tunic", "Work the rounds as for the hem." },
        { "armholes", "Armholes (work 2): plain sc band Yarn: Ebbstone Light, solid Slack Water, joined with the outside facing at the side seam." },
        { "blanket", "Border: shell edge Yarn: Ebbstone Light, colourway Tidemark, joined with the right side facing at the left-hand end of the lower edge." },
        { "cowl in rounds", "Brims (work 2): plain sc band Yarn: Ebbstone Light, solid Slack Water, joined with the right side facing at the place where the rounds begin." },
        { "sewn cowl, up", "Brims (work 2): plain sc band Yarn: Ebbstone Light, solid Slack Water, joined with the right side facing at the back seam." },
        { "cowl in rounds", "Work: 2 rounds, about" },
        { "one round", "Work: 1 round, about" },
    };

    public static TheoryData<string, string> Keeping => new()
    {
        { "tunic", "The stitch counts of this pattern make the picture as long as every colour takes the same number of stitches whenever it comes:" },
        { "tunic", "Where a colour would run on over the next stitch, work its last stitches a little looser; where it would end too soon, a little tighter." },
        { "tunic", "So look at the two rows below as you go. A colour that comes late was worked too tight: work a little looser until it is back in its place. A colour that comes early was worked too loose: work a little tighter." },
        { "cowl in rounds", "So look at the round below as you go." },
        { "free", "Work evenly and let the colours fall as they come; charts and tables show where they should fall. Check often: no hands are even enough for long." },
        { "free", "If the colours come later than that, you work tighter than the plan: take a larger hook, or work looser. If they come earlier, take a smaller one, or work tighter." },
        { "tunic", "change the hook: a larger one where the colours run on, a smaller one where they end too soon." },
        { "tunic", "Begin any piece and stop after 6 rows. It is right if row 6 begins and ends so:" },
        { "cowl in rounds", "Begin the piece and stop after 6 rounds. It is right if round 6 begins and ends so:" },
        { "tunic", "The foundation chain takes yarn too, so it begins earlier in the sequence. Choose one way:" },
        { "tunic", "Easy: put the slip knot where the colour named begins and make the extra chains first, then the foundation. Nothing is worked into the extra chains; undo them before you sew." },
        { "tunic", "No waste: put the slip knot the length named after that colour begins; no extra chains." },
        { "tunic", "Row 1 of a piece begins at its own place of the colour sequence, said as a colour's symbol and the number of the stitch: D1 is the first stitch of deep water (D), D2 the second." },
        { "linen stitch", "said as a colour's symbol and the number of the pair: D1 is the first pair of deep water (D), D2 the second." },
        { "tunic", "Either way row 1 should come out at its own place. If it is off by a stitch or two, draw the chain up or loosen it." },
        { "other end, no waste", "Make the foundation chain in Ebbstone Light, solid Slack Water. Cut the variegated yarn 15 cm / 6 in before the place named, draw it up at that place through the loop on the hook, and begin row 1 with it; cut the other yarn as far on." },
        { "alternating, sc", "Rows have two stitch counts in turn: every even-numbered row makes one stitch more at its beginning, every odd-numbered row leaves it unworked at its end. The edge wavers by half a stitch, and the seam hides it." },
        { "tunic", "Joins: Where a ball ends, and at a knot, cut both ends at the same place of the colours and leave 15 cm / 6 in of each beyond it." },
        { "tunic", "Tails: Leave 15 cm / 6 in wherever you begin, cut or join, to weave in at the end. Seams are sewn with lengths of their own." },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void The_way_of_working_is_said_as_it_is(string name, string said) => Says(Text(name), said);

    [Theory]
    [MemberData(nameof(Turns))]
    public void A_turn_is_told_by_what_it_takes(string name, string said) => Says(Text(name), said);

    [Theory]
    [MemberData(nameof(Rows))]
    public void Rows_are_told_as_a_leaflet_tells_them(string name, string[] said)
    {
        var plan = Named(name).Planned();
        var size = plan.Sizes[0];
        var text = Text(plan, size.Name);
        var piece = size.Pieces[0];
        Assert.All(said, words => Says(text, words.Replace("Ch C.", $"Ch {piece.FoundationChains}.", StringComparison.Ordinal)
            .Replace("N sts", $"{piece.RowStitches[0]} sts", StringComparison.Ordinal)
            .Replace("W sts", $"{piece.RowStitches[^1]} sts", StringComparison.Ordinal)
            .Replace(" to R:", $" to {piece.Rows}:", StringComparison.Ordinal)));
    }

    /// <summary>Linen needs other words for even counts and for odd ones.</summary>
    [Fact]
    public void Linen_rows_follow_whether_the_count_is_even()
    {
        var plan = Named("linen stitch").Planned();
        string[] even =
        [
            "Sc in 4th ch from hook (the 3 skipped ch count as a ch-1 space), *ch 1, skip next ch, sc in next ch; rep from * to end, turn.",
            "Row 2 (WS): Ch 2 (counts as a ch-1 space), skip first sc, sc in next ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * to end, the last sc in the space of the turning ch, turn.",
        ];
        string[] odd =
        [
            "Row 1 (RS): Sc in 2nd ch from hook, *ch 1, skip next ch, sc in next ch; rep from * to end, turn.",
            "Row 2 (WS): Ch 1, sc in first sc, sc in next ch-1 space, *ch 1, skip next sc, sc in next ch-1 space; rep from * to last sc, sc in last sc, turn.",
            "Row 3 (RS): Ch 1, sc in first sc, *ch 1, skip next sc, sc in next ch-1 space; rep from * to last 2 sc, ch 1, skip next sc, sc in last sc, turn.",
        ];
        foreach (var size in plan.Sizes)
        {
            var text = Text(plan, size.Name);
            Assert.All(size.Pieces[0].Stitches % 2 == 0 ? even : odd, words => Says(text, words));
        }
    }

    [Theory]
    [MemberData(nameof(MakingUp))]
    public void Seams_are_sewn_edge_to_edge_as_the_pieces_lie(string name, string[] said)
    {
        var text = Text(name);
        Assert.All(said, words => Says(text, words));
    }

    [Theory]
    [MemberData(nameof(EdgingBeginnings))]
    public void An_edging_begins_where_the_join_hides(string name, string said) => Says(Text(name), said);

    [Theory]
    [MemberData(nameof(Keeping))]
    public void Keeping_the_colours_is_told_by_what_the_hands_do(string name, string said) => Says(Text(name), said);

    /// <summary>
    /// In turned work the row two below is the one to look at: 2n stitches of yarn further on. Where that is more than whole sequences,
    /// each colour has begun that much too soon; the demo's sequence is 21 stitches.
    /// </summary>
    [Theory]
    [InlineData("tunic", 2, "two rows below")]
    [InlineData("worked up", 2, "two rows below")]
    [InlineData("cowl turned round", 2, "two rounds below")]
    [InlineData("cowl in rounds", 1, "in the round below")]
    [InlineData("spiral cowl", 1, "in the round below")]
    public void Colours_lean_by_what_the_count_misses(string name, int rows, string below)
    {
        var plan = Named(name).Planned();
        var shift = (int)Math.IEEERemainder(rows * plan.Sizes[0].Pieces[0].Stitches, 21);
        var by = Math.Abs(shift) == 1 ? "1 stitch" : $"{Math.Abs(shift)} stitches";
        Says(Text(plan), shift == 0
            ? $"In the order of work, each colour begins exactly above itself {below}."
            : $"In the order of work, each colour begins {by} {(shift > 0 ? "earlier" : "later")} than it did {below}.");
    }

    /// <summary>Odd rows of turned work show the right side; rounds that are not turned show no other.</summary>
    [Fact]
    public void Row_starts_name_the_side_that_is_seen()
    {
        var tunic = Text("tunic");
        foreach (var row in new[] { "1 (RS) ", "2 (WS) ", "3 (RS) ", "4 (WS) ", "5 (RS) ", "6 (WS) " })
            Says(tunic, $" {row}");
        Says(tunic, "Row starts of chart 1, in the order of work, by the symbols of the key. After row 42 they begin again as row 1.");
        Says(tunic, "Row begins with then ends with 1 (RS) 5 D 4 H");
        var round = Text("cowl in rounds");
        Says(round, "Round starts of chart 1, in the order of work, by the symbols of the key.");
        Assert.DoesNotContain("(WS)", round, StringComparison.Ordinal);
    }

    /// <summary>A pattern whose rows have two counts charts both.</summary>
    [Fact]
    public void A_chart_of_two_counts_names_both()
    {
        var plan = Named("alternating, sc").Planned();
        var rows = plan.Sizes[0].Pieces[0].RowStitches;
        Assert.Equal(1, rows[1] - rows[0]);
        Says(Text(plan), $"Chart 1: {rows[0]} and {rows[1]} stitches in turn");
        Says(Text("worked up"), "Chart 1: ");
        Assert.DoesNotContain("in turn", Text("tunic"), StringComparison.Ordinal);
    }

    /// <summary>A stitch more in every other row stands out on the side where the row begins: half the cells of it on neither.</summary>
    [Fact]
    public void A_chart_of_two_counts_sets_its_rows_under_each_other()
    {
        var plan = Named("alternating, sc").Planned();
        var chart = PatternWriter.Write(plan).Sections.SelectMany(s => s.Blocks).SelectMany(b => b is ForSizes some ? some.Blocks : [b])
            .OfType<Figure>().Select(f => f.Picture).OfType<ColourChart>().First();
        var rows = plan.Sizes[0].Pieces[0].RowStitches;
        Assert.Equal(rows[1], chart.Columns);
        Assert.Equal([rows[0], rows[1], rows[0], rows[1]], chart.RowUnits.Take(4));
        // In half columns from the right: all rows of one count begin alike, and lie within the wider ones.
        Assert.Equal(chart.RowOffsets[0], chart.RowOffsets[2]);
        Assert.Equal(chart.RowOffsets[1], chart.RowOffsets[3]);
        Assert.InRange(chart.RowOffsets[0] - chart.RowOffsets[1], 0, 2);
    }

    /// <summary>
    /// 31.8 cm in 5 stitches are 6.36 cm each and 19.4 in 3 are 6.47, against 6.3 of the swatch: looser. 25 in 4 are 6.25 and 30.9 in 5
    /// are 6.18: tighter.
    /// </summary>
    [Fact]
    public void A_colour_with_more_yarn_to_its_stitches_is_worked_looser()
    {
        var text = Text("tunic");
        Says(text, "- deep water (D): 5 stitches, a touch looser. - shallows (H): 4 stitches, a touch tighter. - foam (F): 3 stitches, a touch looser. - wet sand (W): 5 stitches, a touch tighter. - kelp (K): 4 stitches, a touch looser.");
    }

    /// <summary>Plain sleeves of linen, odd in one size and even in another, need words of their own for each size.</summary>
    [Fact]
    public void Sizes_whose_rows_are_worked_otherwise_have_their_own_words()
    {
        var plan = Patterns.Named("linen stitch").Sleeved(pooled: false).Directed(Direction.Up).Fixed([], [new("M", "sleeveStitches", null, 61, "as made"), new("L", "sleeveStitches", null, 64, "as made")]).Planned();
        Assert.Equal(2, plan.Sizes.Select(s => s.Pieces[2].Stitches % 2).Distinct().Count());
        var text = Text(plan);
        foreach (var size in plan.Sizes)
        {
            Says(text, $"Sleeve (make 2), size {size.Name} Plain, in Ebbstone Light, solid Slack Water");
            var sleeve = Text(plan, size.Name).Split("## Sleeve")[1].Split("MAKING UP")[0];
            Says(sleeve, size.Pieces[2].Stitches % 2 == 0 ? $"Rows 3 to {size.Pieces[2].Rows}: As row 2," : $"Rows 4 to {size.Pieces[2].Rows}: As rows 2 and 3 in turn,");
        }
    }

    /// <summary>A right-handed maker works right-side rows from right to left; her left-handed friend the other way round.</summary>
    [Fact]
    public void Charts_are_read_the_way_the_hand_works()
    {
        const string rest = "; the arrows show where each begins.";
        Says(Text("tunic"), $"Charts show the right side, row 1 at the bottom. Read right-side rows from right to left, wrong-side rows from left to right{rest}");
        Says(LeftHanded("tunic"), $"Charts show the right side, row 1 at the bottom. Read right-side rows from left to right, wrong-side rows from right to left{rest}");
        Says(Text("cowl turned round"), $"Charts show the right side, round 1 at the bottom. Read right-side rounds from right to left, wrong-side rounds from left to right{rest}");
        Says(Text("cowl in rounds"), "Charts show the right side, round 1 at the bottom. Read every round from right to left.");
        Says(LeftHanded("spiral cowl"), "Charts show the right side, round 1 at the bottom. Read every round from left to right.");
        Says(Text("tunic"), "Reverse sc: without turning, insert the hook in the next st to the right, draw up a loop, yarn over and draw through both loops.");
        Says(LeftHanded("tunic"), "Reverse sc: without turning, insert the hook in the next st to the left, draw up a loop, yarn over and draw through both loops.");
    }

    /// <summary>Worked upwards the neck lies in the last row and armholes at row ends; sideways both lie the other way about.</summary>
    [Fact]
    public void Marks_are_placed_on_the_edge_where_the_opening_is()
    {
        var up = Named("worked up").Planned();
        var marks = up.Sizes[0].Pieces[0].Marks;
        var text = Text(up, up.Sizes[0].Name);
        Says(text, $"Mark: stitch {marks[0].Position} at the last row: neck opening begins here. Mark: stitch {marks[1].Position} at the last row: neck opening ends here. Mark: row {marks[2].Position} of both side edges: armholes begin here.");
        var sideways = Named("tunic").Planned();
        marks = sideways.Sizes[0].Pieces[0].Marks;
        text = Text(sideways, sideways.Sizes[0].Name);
        Says(text, $"Mark: row {marks[0].Position} at the top edge, where odd-numbered rows end: neck opening begins here.");
        Says(text, $"Mark: row {marks[1].Position} at the top edge, where odd-numbered rows end: neck opening ends here.");
        Says(text, $"Mark: stitch {marks[2].Position} of the first row and the last row, counted from the hem edge, where odd-numbered rows begin: armholes begin here.");
    }

    /// <summary>As many stitches are left on either side of the neck, and the armholes are as deep as the size says.</summary>
    [Theory]
    [InlineData("worked up")]
    [InlineData("tunic")]
    public void Marks_leave_the_neck_in_the_middle(string name)
    {
        var plan = Named(name).Planned();
        var up = plan.Direction == Direction.Up;
        Assert.All(plan.Sizes, size =>
        {
            var front = size.Pieces[0];
            var (across, down) = up ? (front.Stitches, front.Rows) : (front.Rows, front.Stitches);
            Assert.Equal(front.Marks[0].Position - 1, across - front.Marks[1].Position);
            Assert.Equal([up, up, !up], front.Marks.Select(m => m.AlongStitches));
            // One stitch or row of the armhole goes into the shoulder seam.
            var step = up ? plan.RowHeight : plan.StitchWidth;
            Assert.Equal(
                size.Finished[GarmentMeasure.ArmholeDepth].Centimetres, (step * (down - front.Marks[2].Position + 1 - 1)).Centimetres, 1e-6);
        });
    }

    [Fact]
    public void Each_piece_says_its_yarn_its_copies_and_what_it_is_worked_like()
    {
        var text = Text("tunic");
        Says(text, "Front In Ebbstone Light, colourway Tidemark, 5.5 mm hook.");
        Says(text, "Foundation and rows: As the front, marks included.");
        Says(text, "Sleeve (make 2) Plain, in Ebbstone Light, solid Slack Water, 5.5 mm hook.");
        var banded = Named("side bands").Planned();
        var bands = banded.Sizes.First(s => s.Pieces[0].SideBandRows > 0);
        Says(
            Text(banded, bands.Name),
            $"Side bands: In Ebbstone Light, solid Slack Water, along each side edge: pick up and sc {bands.Pieces[0].Rows} stitches evenly along the row ends, then work sc back and forth until the band has {bands.Pieces[0].SideBandRows} rows (0: no band). Mark its last row after stitch {bands.Pieces[0].Opening(OpeningId.Armhole).First - 1}, counted from the hem: the band's own mark for the opening.");
        Says(Text(banded), "row to row (where there are side bands, band to band, stitch to stitch) from the hem");
    }

    [Fact]
    public void Abbreviations_are_those_that_are_used()
    {
        var tunic = Text("tunic");
        Says(tunic, "- ch: chain - sl st: slip stitch - sc: single crochet - st: stitch - RS: right side - WS: wrong side");
        Says(Text("double crochet"), "- dc: double crochet");
        Says(Text("half double crochet"), "- hdc: half double crochet");
        Says(tunic, "- Back loop: the loop of the st that lies farther from you.");
        var linen = Text("linen cowl in rounds");
        Says(linen, "- rep: repeat");
        Says(linen, "Linen stitch: sc and ch 1 in turn; every sc is worked into the ch-1 space below, every ch 1 lies over a sc. A pair is one sc and one ch; both count as stitches.");
        Assert.DoesNotContain("wrong side", Text("spiral cowl").Split("NOTES")[0], StringComparison.Ordinal);
        Says(
            Text(Named("blanket").With(g => g with { Edgings = [new(Core.Edgings.EdgingPlace.Border, "picot", null)] }).Planned()),
            "- Picot: ch 3, sl st in the sc just made.");
    }

    [Fact]
    public void Materials_say_what_the_labels_and_the_swatch_say()
    {
        var text = Text("tunic");
        Says(text, "Ebbstone Light, colourway Tidemark: 70 % wool, 30 % linen, weight category 3; 230 m / 252 yd, 100 g / 3.5 oz a ball.");
        Says(text, "Ebbstone Light, solid Slack Water, the companion yarn for seams, edgings and plain pieces: 230 m / 252 yd, 100 g / 3.5 oz a ball.");
        Says(text, "which serve 19 makers of 20.");
        Says(text, "makers who take more or less yarn than the plan: two in three within 6 % of it.");
        Says(text, "Where each ball is expected to end while the pieces are worked: the piece, its row, and the place of the colours (D1 is the first stitch of deep water). The swatch and what is kept in reserve come from the balls to buy besides.");
        Says(text, "Hook of 5.5 mm (American I-9), or the size that gives the gauge.");
        Says(text, "In the order in which the yarn runs: 5 of deep water (D), 4 of shallows (H), 3 of foam (F), 5 of wet sand (W), 4 of kelp (K); then from the first again.");
        Says(text, "Buy all balls of one dye lot, and count one sequence from each before it is joined: hand-dyed sequences drift. Balls cannot be alternated row by row in pooled work.");
        Says(text, "As worked: 14 stitches and 16 rows over 10 cm / 4 in.");
        Says(text, "Washed and dried: 13.75 stitches and 15.75 rows over 10 cm / 4 in.");
        Says(text, "After hanging: 14 stitches and 15.5 rows over 10 cm / 4 in.");
        // 252 cm in 40 stitches of the swatch.
        Says(text, "Make a swatch of 21 stitches and 24 rows, and count in its middle. Measure it as worked, then wash it, dry it flat and measure it again. Then clip one of its sides, where its rows end, to a hanger, let it hang for a day and measure it hanging.");
        // Worked sideways, hanging says nothing of the size.
        Says(text, "The size depends on the gauge washed and dried, the picture on the yarn that a stitch takes. Check both: unravel 20 stitches of the swatch, and measure the yarn without pulling it. - Yarn in 20 stitches: 126 cm");
        Says(Text("linen stitch"), "the picture on the yarn that a pair of stitches takes. Check both: unravel 20 pairs of the swatch,");
        Says(Text("spiral cowl"), "The colour sequence, in stitches.");
        Says(Text("other end, no waste"), "the companion yarn for foundation chains and seams:");
    }

    /// <summary>Pulled from the other end the yarn brings its colours backwards: kelp, wet sand, foam, shallows, deep water.</summary>
    [Fact]
    public void From_the_other_end_the_colours_and_their_symbols_run_backwards()
    {
        Says(Text("other end, no waste"),
            "In the order in which the yarn runs: 4 of kelp (K), 5 of wet sand (W), 3 of foam (F), 4 of shallows (H), 5 of deep water (D); then from the first again.");
        Says(Text("other end, no waste"), "said as a colour's symbol and the number of the stitch: K1 is the first stitch of kelp (K), K2 the second.");
    }

    [Fact]
    public void Sizes_tell_body_garment_and_ease_apart()
    {
        var text = Text("tunic");
        Says(text, "Measurements of the body and of the finished garment.");
        foreach (var row in new[] { "To fit bust", "Finished bust", "Length", "Armhole depth", "Neck opening, flat", "Sleeve, round", "Sleeve length", "Ease at the bust" })
            Says(text, $"{row}, cm / in");
        var cowl = Text("cowl in rounds");
        Says(cowl, "Finished measurements.");
        Says(cowl, "Circumference, cm / in");
        Says(cowl, "Height, cm / in");
        Says(Text("blanket"), "Width, cm / in");
        Says(text, "The pieces of size M to scale, before seams and edgings. Rectangles: front, back, sleeve. Arrows show which way the rows grow; heavy lines mark the openings.");
        Says(cowl, "The pieces to scale, before seams and edgings.");
    }

    [Fact]
    public void Care_is_told_with_the_cautions()
    {
        var text = Text("tunic");
        Says(text, "Follow the ball band. Where it is silent: wash by hand, 30 °C at most, better cold; press the water out in a towel; dry flat to the measurements.");
        Says(Text("child's pullover"), "Cords: this pattern has none; add none.");
    }

    private static Project Named(string name) => name switch
    {
        "sewn cowl, up" => Patterns.Named("sewn cowl").Directed(Direction.Up),
        "blanket, up" => Patterns.Named("blanket").Directed(Direction.Up),
        "blanket, sideways" => Patterns.Named("blanket").Directed(Direction.Sideways),
        "sleeveless, up" => Tideline.WithoutSleeves().Directed(Direction.Up),
        "sleeveless, sideways" => Tideline.WithoutSleeves().Directed(Direction.Sideways),
        "armholes" => Tideline.WithoutSleeves().With(g => g with { Edgings = g.Edgings.Add(new(Core.Edgings.EdgingPlace.Armholes, "sc", 2)) }),
        "one round" => Patterns.Named("cowl in rounds").With(g => g with { Edgings = [new(Core.Edgings.EdgingPlace.Brims, "sc", 1)] }),
        "deep seams" => Tideline.Directed(Direction.Up).With(g => g with { Seams = new SeamChoice(SeamExtension.Continued, 0, 2) }),
        "free rounds" => Freely(Patterns.Named("cowl in rounds")),
        "free double crochet" => Freely(Patterns.Named("double crochet")),
        "single crochet whose chain counts" => Tideline with { Fabric = Tideline.Fabric with { TurningChainCounts = true } },
        "alternating, sc" => Alternating(),
        _ => Patterns.Named(name),
    };

    /// <summary>A wrap of the first width that is best made of two counts in turn.</summary>
    private static Project Alternating() => Enumerable.Range(30, 60)
        .Select(width => Patterns.Named("blanket").Directed(Direction.Up)
            .With(g => g with { Shape = new Wrap(Cm(width), Cm(40)), Edgings = [], Grading = g.Grading with { AlternatingRows = true } }))
        .First(p => p.Tried().Plan?.Sizes[0].Pieces[0].RowStitches.Length == 2);

    private static Project Freely(Project project) => project with
    {
        Fabric = project.Fabric with { Keeping = ColourKeeping.Free, SectionStitches = null, TurnCost = null },
    };

    private static string LeftHanded(string name)
    {
        var plan = Named(name).Planned();
        return Text(plan, plan.Project.Edition with { Hand = Hand.Left });
    }

    private static string Text(string name) => Text(Named(name).Planned());

    private static string Text(Plan plan, string? size = null) =>
        Text(plan, plan.Project.Edition with { Size = plan.Sizes.Length == 1 ? null : size });

    private static string Text(Plan plan, Edition edition) => string.Join(
        ' ', TextBooklet.Write(PatternWriter.Write(plan), edition).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static void Says(string text, string words) => Assert.Contains(words, text, StringComparison.Ordinal);
}
