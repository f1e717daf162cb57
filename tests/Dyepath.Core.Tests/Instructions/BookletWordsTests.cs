using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Constructions;
using Dyepath.Core.Tests.Edgings;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>
/// Sentences that a garment alone has, from its notes to its making up, as a maker of one would write them; # stands for a number of the
/// plan, which other tests hold.
/// </summary>
public sealed class BookletWordsTests
{
    private static readonly Dictionary<string, string> Texts = [];

    public static TheoryData<string, string[]> MakingUp => new()
    {
        { "bag", [
            "4: Gusset: lay one long edge of the gusset down one side of the front, along its lower edge and up its other side, outsides in, and sew, eased evenly. Sew the other long edge to the back in the same way.",
            "5: Strap: turn what is sewn outside out. Lay each end of the strap inside it, as deep as the strap is wide, one in the middle of each end of the gusset, and sew all round the end. 6: Weave the ends in, each under its own colour."] },
        { "bag, edged", [
            "5: Turn what is sewn outside out.",
            "AFTER THE EDGINGS ----------------- 1: Strap: lay each end of the strap inside what is sewn, as deep as the strap is wide, one in the middle of each end of the gusset, and sew all round the end.",
            "joined with the right side facing at the seam of gusset and front."] },
        { "bag without gusset", [
            "4: Sides and lower edge: lay front and back together, outsides in. Sew these three sides, and leave the upper edge open.",
            "one over the top of each side seam, and sew all round the end."] },
        { "cushion", [
            "4: Sides and lower edge: lay front and back together, outsides in. Sew these three sides, and leave the upper edge open. 5: Turn the cover outside out, put the insert in, and sew the upper edge. 6: Weave",
            "Turn the back over before you sew: the side that faces you in even-numbered rows becomes its outside, so that its colours mirror the front's at the seams. Fabric worked back and forth looks alike on both sides.",
            "Outside: the side that faces you in even-numbered rows, once it is sewn."] },
        { "hat", [
            "Back seam: lay the first row and the last row together, outsides in, and sew stitch to stitch into a tube.",
            "Crown: run a doubled length of yarn along the upper edge, draw it tight, sew over the hole, and fasten off inside."] },
        { "tabard", [
            "Shoulders: lay front and back together, outsides in. Sew from each outer edge to the marks of the neck opening. Both ends of the opening take strain: sew there twice. 5: Tabs: sew one side of a tab to the front, between the marks of its side, and the other to the back in the same way, outsides in, stitch to stitch. Sew the other tab on at the other side.",
            "counted from the hem edge, where odd-numbered rows begin: side tabs begin here.", ": side tabs end here.",
            "top edge, where odd-numbered rows end: neck opening begins here.", ": neck opening ends here.",
            "joined with the outside facing at a seam of tab and back.",
            "left side of the back below the tab: ", "- lower edge of the back: ", "- right side of the back below the tab: ", "- lower edge of the right tab: ",
            "- right side of the front below the tab: ", "- lower edge of the front: ", "- left side of the front below the tab: ", "- lower edge of the left tab: ",
            "As the front, marks included."] },
        { "pet-tabard", [
            "of the first row and the last row, counted from the hem edge, where odd-numbered rows begin: leg openings begin here. The seams end before it."] },
        { "off-shoulder top", [
            "4: Sides: sew stitch to stitch from the hem up to the sleeve join marks. 5: Sleeves: sew stitch to stitch from the cuff edge up to the sleeve join marks. 6: Sleeves to body: sew the top of each sleeve's sides, above its own seam, to front and back above the side seams, stitch to stitch.",
            "Mark: stitch # of the first row and the last row, counted from the hem edge, where odd-numbered rows begin: from here up the sleeves are sewn on.",
            "Mark: stitch # of the first row and the last row, counted from the cuff edge, where odd-numbered rows begin: from here up the sleeve is sewn to the body.",
            "joined with the outside facing at the seam of the wearer's left sleeve and the front.", "Cuff: the edge where odd-numbered rows begin.",
            "the left side, the right side", "the underside of the left sleeve"] },
        { "off-shoulder top with vents", [
            "Mark: stitch # of the first row and the last row, counted from the hem edge, where odd-numbered rows begin: from here up the sides are sewn, below they stay open as vents."] },
        { "vest with inserts", [
            "Shoulders: lay front and back together, outsides in. Sew each from its outer edge to the neck. Both ends take strain: sew there twice. #: Inserts: lay the lower edge of the left insert along the neck's lower edge, from its middle to its corner at the wearer's left, and its upright edge along the neck's upright edge there up to the shoulder, its tip at the shoulder seam, outsides in; sew both, eased evenly. Sew the right insert into the corner at the wearer's right in the same way. They meet in the middle of the lower edge: the slanted edges are the neck's edge. #: Sides: sew stitch to stitch from the hem up to the armholes.",
            "A triangle for the lower corner of the front neck at the wearer's left, in rows of sc from its lower edge up to a tip of one stitch. Rows become shorter where odd-numbered rows end: that is its slanted edge; the opposite edge stays upright. It is ",
            " tall before it is sewn in; if yours is not, change the hook for it. Both its sides look alike: the outside is the one with which its upright edge meets the neck's.",
            "A triangle for the lower corner of the front neck at the wearer's right, in rows of sc from its lower edge up to a tip of one stitch. Rows become shorter where odd-numbered rows begin: that is its slanted edge;",
            "Plain row: Ch 1, sc in each st to end, turn.", ", 1 st in row #. Then: Fasten off after row #.", "Rows 2 to #: Decrease"] },
        { "pullover with a buttoned shoulder", [
            "4: Shoulders: lay front and back together, outsides in. Sew the right shoulder from its outer edge to the mark of the neck opening, where it takes strain: sew there twice. 5: Wearer's left shoulder: work the shoulder's band now, as under Edgings. Lay it on the outside of the back, and at the armhole sew its end down through both layers for 1 cm. 6: Sides",
            "joined with the outside facing at the left shoulder's end of the front neck.",
            "joined with the outside facing at the armhole end of the wearer's left shoulder of the front, along its rows # to #.",
            " in from middle to middle. The outermost begins ", " from the armhole end, the innermost ends ", "from the neck end. The band lies on the back, which takes the buttons; sew its inner end to the end of the neck edging.",
            "Row 2: Ch 1, sc in each st and in each ch of a buttonhole, turn. Row 3: Ch 1, sc in each of the first # sts, * ch 2, skip 2 sts, sc in each of the next # sts; work from * once; ch 2, skip 2 sts, sc in each of the last # sts, turn. Rows 4 to 5: ",
            "Buttons: Sew a button opposite the middle of each buttonhole, fast enough that no pull takes it off.",
            "- Buttons: #, # mm across, so that they pass a buttonhole of 2 stitches; sewing thread."] },
        { "pullover with a buttoned shoulder, up", ["the armhole end of the wearer's left shoulder of the front, over # stitches of its last row."] },
        { "cardigan", [
            "On the band for the buttons work this row as the others."] },
    };

    public static TheoryData<string, string[]> Notes => new()
    {
        { "hat with gores", [
            "Upper edge, round, cm / in", "Finished head, cm / in",
            "- Gores: some rows stop short of the crown and turn. What they leave stays as it is, and the next longer row goes on over it, so that there are fewer rows at the crown than below. No stitch is decreased or increased. At the turn, draw the yarn close, so that no hole stays where the longer row goes on.",
            "- Where a row goes on over what shorter rows left, its lines of colour lie 2 or 4 or 6 stitches to one side of those below. That is the gore's own line, from its tip up to the crown; it is no fault, and everywhere else the picture goes on."] },
        { "skirt with gores", [
            "Hem, round, cm / in", "Waist at rest, cm / in", "Waist stretched, cm / in",
            "so that there are fewer rows at the waist than below.", "its lines of colour lie 2 stitches to one side of those below. That is the gore's own line, from its tip up to the waist;",
            "Gore, first row (RS): Ch 1, sc in each st to last N sts, leave these unworked, turn. Gore, second row (WS): Ch 1, sc in each st to end, turn. Gore, third row (RS): Ch 1, sc in each st to end, then sc in each of the next N sts left unworked, turn. # sts.",
            "Gores: the first row of each, the stitches that it leaves unworked (N) and those that it has, and where the first and the third row end.",
            "As row 2, # sts each, but for the gores in the table, then fasten off. The last row is the edge of the back seam.",
            "sides run together where gores close.", "drawn over 6 rounds, its fold halfway: work as many as are said. The steps above say the same in words.",
            "Casing: Fold the band to the inside along the round named, then sl st in each sc of the last round and in the foot of the sc of round 1 behind it together, all around but for the last 3 cm / 1¼ in.",
            "Elastic: Draw it through the casing, overlap its ends by 2.5 cm / 1 in, sew them together, and close the casing."] },
        { "vest", [
            "Neck depth, front, cm / in", "Armhole depth, cm / in", "Armhole inset, cm / in",
            "- Pieces are shaped by rows that stop short, go on over a chain, or are joined on: no stitch is decreased or increased, so that the colours go on. Where a row stops short, the rest stays unworked; an edging or a seam holds it.",
            "- A chain to go on over is made before the row that needs it: leave the row's own loop on a marker, and chain away from the piece. The stitches worked into it follow the last stitch of the row without a gap, in the colours as they come.",
            "- The chain stays in the piece, so let its yarn match one of the colours of Variegated yarn. Where an edging runs, pick up its stitches in the free loops of the chain; where a seam runs, sew through those loops.",
            "Smooth yarn of similar thickness, for chains that rows are worked on over: ",
            "steps are where rows stop short or go on.", "Where rows stop short nothing is drawn. The table before it says the same in words.",
            "in the order of work, by the symbols of the key. The last column says how many stitches the row has; “now” marks where that changes.",
            "The right side is the side that faces you in odd-numbered rows; of a piece that is turned over it comes to lie inside, as stands beside its chart.",
            "What this chart and this table call the right side is inside there; seen from outside, the colours lie as this chart in a mirror."] },
        { "vest, unedged", [
            "Where a row stops short, the rest stays unworked; where a seam runs, it holds it.",
            "- The chain stays in the piece, so let its yarn match one of the colours of Variegated yarn. Where a seam runs, sew through its free loops."] },
        { "vest with inserts", [
            "- Pieces of Variegated yarn are shaped by rows that stop short,", "- The chain stays in the piece. Where an edging runs,",
            "- The neck is cut square, so that the colours go on, and made into a V by two plain inserts in Solid Cream: triangles that are sewn into its lower corners. They alone are worked with decreases.",
            "sc2tog: insert the hook in the next st, yarn over and draw a loop through, and again in the st after it; yarn over and draw it through all 3 loops. 2 sts have become one."] },
        { "tabard", [
            "Front or back, across, cm / in", "Tab, front to back, cm / in",
            "- Hem: deeper in some sizes than in others, to make up the measurement; see Edgings.",
            "No swatch was made of the edgings: they are taken to come out a little closer than the fabric, with 16.5 sc over 10 cm / 4 in. They are picked up by the simple rule that comes nearest, such as 1 in each row end. Where yours pulls the edge in, pick up more stitches, where it ripples, fewer, and keep to the edging's multiple.",
            "stitches in all, as said below. What lies inside a seam is not counted.",
            "Corners: Work what is extra at each of the 4", "In every round of sc after the first work 3 sc in it, so that the corner lies flat, and mark the middle one of them: ", " stitches more each time.",
            " stitches in the last round."] },
        { "shawl", ["Where a row stops short, the rest stays unworked; an edging holds it."] },
        { "shawl, unedged", ["Where a row stops short, the rest stays unworked. - "] },
        { "bias-wrap", [
            "sts, each row 3 over a new chain: draw the loop of ", " up, sl st in the first st of the row just worked, ch 2. Then fasten off both yarns.",
            "Width, along a row, ", "Length, from the first row to the last, ", "Slanted edge, ", "Straight across, between the slanted edges, ",
            ": the lines of one lean otherwise than those of the other."] },
        { "pullover, square", [
            "Mark the stitch picked up last before each of the 4 inner corners. In every round of sc after the first work sc3tog over it and the stitches beside it, so that the corner lies flat, and mark that: # stitches fewer each time. Count: # stitches in the last round.",
            "sc3tog: insert the hook in the next st, yarn over and draw a loop through, and again in each of the 2 sts after it; yarn over and draw it through all 4 loops. 3 sts have become one.",
            "sc3tog: single crochet 3 together"] },
        { "pullover", [
            "Size lists give the smallest size first and the others in parentheses; a number that stands alone is for every size.",
            "Shoulder width, cm / in", "Neck opening, flat, cm / in", "Finished bust, cm / in", "Ease at the bust, cm / in", "To fit bust, cm / in", "To fit head, cm / in",
            "a ball. Balls to buy: # (", "), which serve 19 makers of 20.", "Makers of 20 whom one ball fewer serves ", "Balls that serve 99 makers of 100 ",
            "Yarn by size, with restarts, joins, edgings, seams, tails and swatch. The balls allow for a ball that begins anywhere in the sequence, and for makers who take more or less yarn than the plan: two in three within 6 % of it.",
            "Where each ball is expected to end while the pieces are worked: the piece, its row, and the place of the colours (R1 is the first stitch of first colour). The swatch, edgings and what is kept in reserve come from the balls to buy besides. Yours may end some rows from there: join the next ball at the same place of the colours at which the old one ends.",
            "- Locking stitch markers, tapestry needle, tape measure.", "Do not buy or work by this pattern.", "and all counts and amounts of yarn follow from them.",
            "Dimensions lettered in the drawing, before seams and edgings.", "to scale, before seams and edgings.",
            "Buy all balls of one dye lot, and count one sequence from each before it is joined: hand-dyed sequences drift. Balls cannot be alternated row by row in pooled work.",
            "find the first row that disagrees with its table: a colour there was given a stitch too many or too few. If you must strain to keep the numbers, change the hook: a larger one where the colours run on, a smaller one where they end too soon."] },
        { "bag", ["Gusset, depth, cm / in", "Strap with its ends, cm / in"] },
        { "cardigan", ["Back, width, cm / in", "Neck opening, each front, cm / in", "Back, fronts and sleeves are worked sideways"] },
        { "cardigan without sleeves", ["Back and fronts are worked sideways"] },
        { "off-shoulder top with vents", ["Side vent, cm / in", "Sleeve join, cm / in"] },
        { "pet-tabard", ["Leg opening, depth, cm / in"] },
        { "poncho", ["Wrist to wrist, cm / in", "- left side of the back: pick up ", "- on each of right side of the back and right side of the front: pick up ", "- left side of the front: pick up "] },
    };

    [Theory]
    [MemberData(nameof(MakingUp))]
    public void It_is_made_up_as_its_pieces_lie(string name, string[] said) => Says(name, said);

    [Theory]
    [MemberData(nameof(Notes))]
    public void What_a_maker_has_to_know_is_told(string name, string[] said) => Says(name, said);

    /// <summary>
    /// The right front's band begins at its lower end, where the holes lie nearer to the edge than above, below the corner that folds back:
    /// there its odd rows begin and its even ones end; the left front's begins at the neck.
    /// </summary>
    [Theory]
    [InlineData(5, 3, false, true)]
    [InlineData(6, 4, false, false)]
    [InlineData(7, 4, false, false)]
    [InlineData(8, 5, false, true)]
    [InlineData(5, 3, true, false)]
    [InlineData(7, 4, true, true)]
    public void The_row_of_the_holes_begins_where_it_is_worked_from(int rows, int row, bool left, bool fromBelow)
    {
        var plan = Single(Begun("cardigan")).With(g => g with
        {
            Direction = Direction.Sideways,
            Shape = (Cardigan)g.Shape with { HolesAtLeft = left, Neck = new Neck(NeckForm.Slit, null) { InFront = true } },
            Edgings = [new(EdgingPlace.Fronts, "button-band", rows)],
        }).Planned();
        var said = Regex.Match(
            GarmentTrials.Text(plan),
            $@"Row {row}: Ch 1, sc in each of the first (\d+) sts, (?:\* ch 2, skip 2 sts, sc in each of the next (\d+) sts; work from \* (?:once|(\d+) times in all); )?ch 2, skip 2 sts, sc in each of the last (\d+) sts, turn\.");
        Assert.True(said.Success, $"Row {row} is not told.");
        var (first, last) = (int.Parse(said.Groups[1].Value), int.Parse(said.Groups[4].Value));
        Assert.Equal(fromBelow, first < last);
        var again = !said.Groups[2].Success ? 0 : said.Groups[3].Success ? int.Parse(said.Groups[3].Value) : 1;
        Assert.Equal(plan.Sizes[0].Edgings[0].PickUp, first + again * (2 + (again == 0 ? 0 : int.Parse(said.Groups[2].Value))) + 2 + last);
    }

    /// <summary>
    /// The wearer's left shoulder is at the front's right, where it is worked last: its rows begin after the mark at which the neck ends, and
    /// end before the one that the side seam takes.
    /// </summary>
    [Fact]
    public void A_buttoned_shoulder_is_told_by_its_rows()
    {
        var plan = Of("pullover with a buttoned shoulder").Planned();
        var said = Regex.Match(GarmentTrials.Text(plan), @"along its rows (\d+) to (\d+)\.");
        var (front, seams) = (plan.Sizes[0][PieceId.Front], plan.Project.Garment.Seams);
        var neck = front.Marks.Single(m => m.Opening.Id == OpeningId.Neck && !m.Begins).Position;
        Assert.Equal((neck + 1, front.Rows - seams.HiddenRows), (int.Parse(said.Groups[1].Value), int.Parse(said.Groups[2].Value)));
    }

    /// <summary>Of one row alone, and of rows that run on, is told what they are.</summary>
    [Theory]
    [InlineData("vest", Direction.Up)]
    [InlineData("vest", Direction.Sideways)]
    [InlineData("pullover", Direction.Sideways)]
    [InlineData("shawl", Direction.Up)]
    [InlineData("shawl", Direction.Sideways)]
    [InlineData("hat", Direction.Sideways)]
    public void Rows_that_are_told_together_are_more_than_one(string garment, Direction direction)
    {
        foreach (var form in new[] { NeckForm.Round, NeckForm.V })
        {
            var plan = Single(Begun(garment)).With(g => g with
            {
                Direction = direction,
                Shape = g.Shape switch
                {
                    Vest vest => vest with { Neck = vest.Neck with { Form = form } },
                    BoxyTop top => top with { Neck = top.Neck with { Form = form } },
                    Hat hat => hat with { Gored = true },
                    var other => other,
                },
            });
            plan = garment is "shawl" or "hat" ? plan with { Sizes = Begun(garment).Sizes } : plan;
            var told = Regex.Matches(GarmentTrials.Text(plan.Planned()), @"Rows (\d+) to (\d+):");
            Assert.NotEmpty(told);
            Assert.All(told, m => Assert.True(int.Parse(m.Groups[1].Value) < int.Parse(m.Groups[2].Value), m.Value));
        }
    }

    public static TheoryData<PieceSide, Direction, string> Worked => new()
    {
        { PieceSide.Top, Direction.Up, "the last row of each sleeve" },
        { PieceSide.Bottom, Direction.Up, "the first row of each sleeve" },
        { PieceSide.Left, Direction.Up, "the edge of each sleeve where odd-numbered rows end" },
        { PieceSide.Right, Direction.Up, "the edge of each sleeve where odd-numbered rows begin" },
        { PieceSide.Right, Direction.Sideways, "the last row of each sleeve" },
        { PieceSide.Left, Direction.Sideways, "the first row of each sleeve" },
        { PieceSide.Top, Direction.Sideways, "the edge of each sleeve where odd-numbered rows end" },
        { PieceSide.Bottom, Direction.Sideways, "the edge of each sleeve where odd-numbered rows begin" },
    };

    /// <summary>
    /// Worked up, the first right-side row begins at the right as it is seen; worked sideways from left to right, it begins at the lower edge.
    /// </summary>
    [Theory]
    [MemberData(nameof(Worked))]
    public void A_side_is_called_by_its_rows(PieceSide side, Direction direction, string said) =>
        Assert.Equal(said, EdgingSayings.Say(WorkedEdges.OfEach("sleeve", side, direction == Direction.Up)));

    /// <summary>Under which heading it is sewn, and how one of several is called.</summary>
    [Theory]
    [InlineData(SeamId.LeftSide, "Sides", "side seam")]
    [InlineData(SeamId.RightSide, "Sides", "side seam")]
    [InlineData(SeamId.LeftShoulder, "Shoulders", "shoulder seam")]
    [InlineData(SeamId.RightShoulder, "Shoulders", "shoulder seam")]
    [InlineData(SeamId.LeftArmhole, "Sleeves", "armhole")]
    [InlineData(SeamId.RightArmhole, "Sleeves", "armhole")]
    [InlineData(SeamId.LeftSleeve, "Sleeves", "seam under the sleeve")]
    [InlineData(SeamId.RightSleeve, "Sleeves", "seam under the sleeve")]
    [InlineData(SeamId.BackSeam, "Back seam", "back seam")]
    [InlineData(SeamId.RoundJoin, "Join", "place where the rounds begin")]
    [InlineData(SeamId.LeftSleeveFront, "Sleeves to body", "seam of a sleeve")]
    [InlineData(SeamId.RightSleeveBack, "Sleeves to body", "seam of a sleeve")]
    [InlineData(SeamId.LowerSeam, "Ends", "lower seam")]
    [InlineData(SeamId.UpperSeam, "Ends", "upper seam")]
    [InlineData(SeamId.GussetToFront, "Gusset", "seam of gusset and front")]
    [InlineData(SeamId.GussetToBack, "Gusset", "seam of gusset and back")]
    [InlineData(SeamId.LeftTabFront, "Tabs", "seam of tab and front")]
    [InlineData(SeamId.RightTabFront, "Tabs", "seam of tab and front")]
    [InlineData(SeamId.LeftTabBack, "Tabs", "seam of tab and back")]
    [InlineData(SeamId.RightTabBack, "Tabs", "seam of tab and back")]
    [InlineData(SeamId.FrontOpening, "Front", "front opening")]
    [InlineData(SeamId.LeftInsert, "Inserts", "seam of an insert")]
    [InlineData(SeamId.RightInsert, "Inserts", "seam of an insert")]
    public void A_seam_has_its_name(SeamId seam, string together, string one) =>
        Assert.Equal((together, one), (SeamWords.Together(seam), SeamWords.One(seam)));

    private static void Says(string name, string[] said)
    {
        if (!Texts.TryGetValue(name, out var text))
            Texts.Add(name, text = GarmentTrials.Text(Of(name).Planned()));
        Assert.All(said, words => Assert.Matches(Regex.Escape(words).Replace(@"\#", @"\d+", StringComparison.Ordinal), text));
    }

    private static Project Of(string name)
    {
        var project = Begun(name.Split(", ")[0] switch
        {
            "bag" or "bag without gusset" => "bag",
            "hat with gores" => "hat",
            "cardigan without sleeves" => "cardigan",
            "skirt with gores" => "skirt",
            "vest" or "vest with inserts" => "vest",
            "pullover with a buttoned shoulder" => "pullover",
            "off-shoulder top" or "off-shoulder top with vents" => "off-shoulder-top",
            var garment => garment,
        });
        var direction = name.EndsWith(", up", StringComparison.Ordinal) ? Direction.Up : Direction.Sideways;
        return name switch
        {
            "bag" or "bag, edged" => project.With(g => g with { Edgings = name == "bag" ? [] : [new(EdgingPlace.TopEdge, "sc", 3)] }),
            "bag without gusset" => project.With(g => g with { Shape = (Bag)g.Shape with { Gusset = Cm(0) } }),
            "hat with gores" => project.With(g => g with { Direction = direction, Shape = (Hat)g.Shape with { Gored = true } }),
            "skirt with gores" => Single(project).With(g => g with { Direction = direction, Shape = (Skirt)g.Shape with { Flare = Cm(30) } }),
            "vest, unedged" or "shawl, unedged" => project.With(g => g with { Edgings = [] }),
            "shawl" => project.With(g => g with { Edgings = [new(EdgingPlace.Border, "sc", 2)] }),
            "cushion" or "bias-wrap" or "poncho" => project,
            "vest with inserts" => GarmentTrials.WithCompanion(project).With(g => g with { Direction = direction, Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.VInsert, null) } }),
            "pullover with a buttoned shoulder" or "pullover with a buttoned shoulder, up" => Single(project).With(g => g with
            {
                Direction = direction,
                Shape = (BoxyTop)g.Shape with { Neck = new Neck(NeckForm.Buttoned, null) },
                Edgings = [new(EdgingPlace.Neck, "sc-rows", 3), new(EdgingPlace.Shoulder, "button-band", 5)],
                Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
            }),
            "pullover, square" => Single(project).With(g => g with
            {
                Direction = direction,
                Shape = (BoxyTop)g.Shape with { Neck = new Neck(NeckForm.Square, null) },
                Edgings = [new(EdgingPlace.Neck, "sc", 3)],
            }),
            "cardigan without sleeves" => project.With(g => g with { Direction = direction, Edgings = [], Shape = (Cardigan)g.Shape with { Sleeves = null } }),
            "off-shoulder top with vents" => project.With(g => g with { Direction = direction, Edgings = [], Shape = (OffShoulder)g.Shape with { Vent = Cm(12) } }),
            _ => project.With(g => g with { Direction = direction }),
        };
    }

    private static Project Begun(string garment) => StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));

    private static Project Single(Project project) => project with { Sizes = project.Sizes with { Sizes = ["M"], Base = "M" } };
}
