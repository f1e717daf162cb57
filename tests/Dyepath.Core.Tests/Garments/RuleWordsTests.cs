using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>
/// What a plan says that its measures follow: each rule as the trade has it, and its figures held against what is planned.
/// </summary>
public sealed partial class RuleWordsTests
{
    public static TheoryData<string, PlanRule, string> Rules => new()
    {
        { "pullover", PlanRule.Body, "A size is planned for the middle of each body measure's range; a body at either end of the range has half the range less or more ease." },
        { "pullover", PlanRule.Locked, "The base size keeps the numbers it was made with, and every other size is moved by as much as the base was; an override moves its own size alone." },
        { "pullover", PlanRule.Gauge, "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one, since the swatch was hung the other way. The worked gauge is for the hook." },
        { "blanket", PlanRule.Gauge, "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one." },
        { "bag", PlanRule.Seam, "Hidden stitches and rows of each sewn edge, and the depth of edgings, are taken off before counts are chosen." },
        { "pullover", PlanRule.Grading, "Few stitch counts serve all sizes: a further one is taken where it brings the size that fits worst at least half a centimetre nearer (a child's by as much less as it is smaller), and all lean alike unless the designer allows more." },
        { "vest", PlanRule.Widths, "Each size comes out at least 1 cm wider than the one before it, or half of what their targets differ by, and none under the largest body of its range, or, with less ease than the range is wide, half a range under its target. A centimetre too narrow weighs as two too wide." },
        { "cardigan", PlanRule.Edgings, "Where rounds are left open, each size has as many as bring the measure that runs along the stitches nearest to its target." },
        { "cardigan", PlanRule.Fronts, "The two fronts and the band on top make up what the back leaves of the width: the bands overlap by their own width, so that it counts once." },
        { "cardigan", PlanRule.Buttonholes, "A band has buttonholes of 2 stitches with at least 6 between them, in its middle row, from 1.5 cm above its lower end to 1.5 cm below its upper one, or where the neck is a slit below the corner that folds back, which is taken to fold as far down as it is wide (common practice, no source); in women's clothes the right front's band usually has them, in men's the left one's." },
        { "cardigan", PlanRule.SleeveLength, "Sleeve length is centre back neck to cuff, less half of the back's finished width, less what the sleeve is shorter by." },
        { "tunic", PlanRule.SleeveLength, "Sleeve length is centre back neck to cuff, less half of the panel's finished width, less what the sleeve is shorter by: the wider the dropped shoulder, the shorter the sleeve." },
        { "pullover", PlanRule.SleeveWidth, "A rectangular sleeve is twice the armhole depth round; worked up in the variegated yarn its count is limited, and the armhole follows it." },
        { "off-shoulder-top", PlanRule.SleeveWidth, "A sleeve is upper arm plus ease round." },
        { "off-shoulder-top", PlanRule.SleeveJoin, "Each sleeve is sewn to front and back for the first centimetres below the top edge (4 to 6 cm, common practice)." },
        { "off-shoulder-dress", PlanRule.TopEdge, "The round of front, back and both sleeve tops is drawn in to a stated share of the girth of the shoulders, so that it stays on them." },
        { "off-shoulder-dress", PlanRule.Vent, "The sides are left open from the hem up for as long as the document says, and the lower edges of front and back are edged each by itself." },
        { "pullover", PlanRule.ArmholeDepth, "Armhole depth is the larger of the chart's armhole depth and half of upper arm plus ease, on whole even rows, or whole stitches." },
        { "vest", PlanRule.ArmholeDepth, "Armhole depth is the larger of the chart's armhole depth and half of upper arm plus ease, its edging inside." },
        { "poncho", PlanRule.ArmholeDepth, "The sides are joined for the stated length from the lower edge up; what is above it stays open for the arms." },
        { "vest", PlanRule.ArmholeInset, "An armhole's upright edge lies where the cross back ends: what the piece is wider than the cross back is left out, half at either side, edging included, but for what holds it on the shoulders beside the neck." },
        { "pet-tabard", PlanRule.NeckWidth, "The slit neck is never narrower than the head needs; its edging is inside that width." },
        { "pet-tabard", PlanRule.LegOpening, "The sides are left open from the shoulder seam down for the forelegs, as far as the document says; their edging is inside." },
        { "vest", PlanRule.Motif, "A cut edge is moved to the nearest place at which the motif goes on unbroken (whole half periods of the colours); where that is farther off than the document lets it, or a size would come out more than an inch off where the document does not say, the motif gives way there, as little as can be. A neck that the head would not pass then is made wider." },
        { "cardigan", PlanRule.Motif, "A cut edge is moved to the nearest place at which the motif goes on unbroken (whole half periods of the colours); where that is farther off than the document lets it, or a size would come out more than an inch off where the document does not say, the motif gives way there, as little as can be. The fronts' shoulders are as wide as the back's, to a centimetre." },
        { "tabard", PlanRule.PanelWidth, "Front, back and the two tabs between them go round the chest and its ease; no panel is so narrow that its neck leaves no shoulders." },
        { "tabard", PlanRule.Tabs, "A tab of companion yarn holds front and back together in the middle of each side. Children's clothing is tied with no cord." },
        { "poncho", PlanRule.WristToWrist, "From side edge to side edge it is twice the stated share of centre back neck to cuff, edging included; 80 % is usual (common practice), so that hands are free." },
        { "hat", PlanRule.Circumference, "A hat is a little smaller than the head, 5 % unless the document says otherwise (common practice), so that it holds." },
        { "cowl", PlanRule.Circumference, "A cowl's circumference is as the document gives it, for every size its own where its sizes say so." },
        { "hat", PlanRule.Height, "Height is from the edge of the brim to the drawn crown." },
        { "hat", PlanRule.CrownEdge, "A gored crown narrows like a disc as wide across as the brim is round, over 3.14 (common practice). Worked sideways, pairs of rows stop short of it by whole half rounds of the colours, as many as are nearest to that; what is left at the top is drawn together." },
        { "skirt", PlanRule.HemWidth, "The hem is the flare wider than the hip. Worked sideways, pairs of rows stop short of the waist by whole half rounds of the colours, so that every stitch keeps its colour; they end as near to the hip as such steps come, as many at each height as the skirt widens there, spread evenly round." },
        { "shawl", PlanRule.Steps, "Rows grow and shrink at their ends by whole half rounds of the colours, which leaves every stitch its colour; of all such outlines the one with the least area between it and the triangle is taken, where a step has to bring at least four stitches." },
        { "bias-wrap", PlanRule.Bias, "Every second row leaves 2 stitches at its end and every other goes on over 2 chains of companion yarn, so that the piece moves 2 stitches to the left with every two rows. Lines of right-side rows lean by 1 stitch a row less, and those of wrong-side rows by 1 more, than in an upright piece of the mean count; against the slanted edges both lean alike, which is the lean that the count is chosen for." },
        { "bag", PlanRule.GussetLength, "The gusset is as long as both sides and the lower edge of a panel." },
        { "bag", PlanRule.StrapLength, "The strap is as long as the document says, and longer at either end by its own width, which is sewn on inside the bag (common practice)." },
        { "pullover", PlanRule.Width, "Finished width is the larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease." },
        { "vest", PlanRule.Width, "Finished width is the larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease." },
        { "cardigan", PlanRule.Width, "Finished width, closed, is the larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease. The back is half of it." },
        { "off-shoulder-dress", PlanRule.Width, "Finished width is the larger of bust plus ease and hip plus hip ease." },
        { "off-shoulder-top", PlanRule.Width, "Finished width is bust plus ease." },
        { "pet-tabard", PlanRule.Width, "Finished width is the chest and its ease, all round; 4 cm of ease is usual (common practice)." },
        { "skirt", PlanRule.Width, "A straight skirt is pulled on over the hip: its width is the hip plus ease all the way down, and the waist is drawn in. Elastic is cut to the waist; 2 to 4 cm are left over to join it (common practice)." },
        { "flared skirt", PlanRule.Width, "The skirt is pulled on over the hip: from the waist down to the hip its width is the hip plus ease, and the waist is drawn in. Elastic is cut to the waist; 2 to 4 cm are left over to join it (common practice)." },
        { "shawl", PlanRule.Width, "Wingspan and depth are as the document gives them, edging included; the widest row has a count that makes the motif." },
        { "bias-wrap", PlanRule.Width, "Width, along the rows, and length, from the first row to the last, are as the document gives them, edging included; the width is the mean of two rows." },
        { "wrap", PlanRule.Width, "Width and length are as the document gives them, edging included." },
        { "bag", PlanRule.Width, "Width and height of the panels are as the document gives them; a top edging stands above that height." },
        { "cushion", PlanRule.Width, "A cover is 5 % smaller than its insert each way (common practice), so that it is full." },
        { "cardigan", PlanRule.Length, "Length is the chart's back waist length plus what the garment hangs below the waist, hem edging included." },
        { "tabard", PlanRule.Length, "Length is the chart's back waist length plus what hangs below the waist, hem edging included." },
        { "off-shoulder-top", PlanRule.Length, "Length is from the top edge to the hem as the document gives it, edgings included." },
        { "skirt", PlanRule.Length, "Length is from waist to hem as the document gives it, edgings included." },
        { "pet-tabard", PlanRule.Length, "Length is as the document gives it, hem edging included." },
        { "poncho", PlanRule.Length, "Length is 0.85 of centre back neck to cuff (common practice), edging included." },
        { "long poncho", PlanRule.Length, "Length is as the document gives it, in every size, edging included." },
    };

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_is_told_as_the_trade_has_it(string garment, PlanRule rule, string said) =>
        Assert.Equal(said, RuleWords.Of(rule, Shape(garment)));

    public static TheoryData<NeckForm, bool, string> Necks => new()
    {
        { NeckForm.Slit, false, "The slit neck is 26 cm wide in an adult's base size, a small step wider per size above it and narrower below, and never narrower than the head needs; a child's is 0.46 of the head. Its edging is inside that width." },
        { NeckForm.Slit, true, "The shoulders leave 18 cm of an adult's back open in the base size, a small step more per size above it and less below; of a child's back 0.3 of the head (common practice, no source). The fronts have the same shoulders; what is left of them falls open at the neck." },
        { NeckForm.Boat, false, "The boat neck of an adult is 0.72 of the cross back wide, or 30 cm in the base size where that is not known, and never narrower than the head needs; a child's is 0.46 of the head, which is nearly as wide as its shoulders (common practice, no source). Its edging is inside that width." },
        { NeckForm.Buttoned, false, "The neck beside a buttoned shoulder is 20 cm wide in an adult's base size, a small step wider per size above it and narrower below; a child's is 0.32 of the head (common practice, no source). It is never so narrow that the head would not pass through neck and open shoulder together, whose outer centimetre is sewn down." },
        { NeckForm.Square, false, "A square neck of an adult is 20 cm wide, 12 cm deep in front and 2.5 cm at the back, its edging inside; a child's follows the head (common practice, no source). It is never narrower than the head needs." },
        { NeckForm.Square, true, "A square neck of an adult is 20 cm wide, 12 cm deep in front and 2.5 cm at the back, its edging inside; a child's follows the head (common practice, no source). Open in front, a child's is 0.3 of the head wide." },
        { NeckForm.Round, false, "A round neck of an adult is 20 cm wide, 10 cm deep in front and 2.5 cm at the back, its edging inside; a child's follows the head (common practice, no source). It is never narrower than the head needs. Rows follow its curve in steps." },
        { NeckForm.V, false, "A V neck of an adult is 20 cm wide and comes to its point 20 cm below the shoulder in front, its edging inside; the back is not cut. A child's follows the head (common practice, no source). It is never narrower than the head needs. Rows follow its slopes in steps." },
        { NeckForm.VInsert, false, "A V neck with inserts is cut square in front, 20 cm wide and 20 cm deep for an adult, its edging inside; the back is not cut. Triangles of companion yarn fill the lower corners, so that its edge runs straight from each shoulder to the middle of the cut's lower edge. They are as wide as half of the cut and as tall as it is deep, as it was made. A child's follows the head (common practice, no source). It is never narrower than the head needs." },
    };

    [Theory]
    [MemberData(nameof(Necks))]
    public void A_necks_rule_is_told_by_its_form(NeckForm form, bool inFront, string said)
    {
        var neck = new Neck(form, null) { InFront = inFront };
        Assert.Equal(said, RuleWords.Of(PlanRule.Neck, inFront ? (Cardigan)Shape("cardigan") with { Neck = neck } : (BoxyTop)Shape("pullover") with { Neck = neck }));
    }

    [Theory]
    [InlineData(NeckForm.Slit, "The slit neck keeps the base size's width, a small step wider per size above it and narrower below; its edging is inside that width.")]
    [InlineData(NeckForm.Buttoned, "The neck keeps the base size's width, a small step wider per size above it and narrower below; its edging is inside that width.")]
    public void A_width_of_the_designers_own_is_kept(NeckForm form, string said) =>
        Assert.Equal(said, RuleWords.Of(PlanRule.NeckWidth, (BoxyTop)Shape("pullover") with { Neck = new Neck(form, Cm(24)) }));

    /// <summary>A cut neck as wide as its rule says, whatever its width, is told by its form.</summary>
    [Fact]
    public void A_cut_neck_of_the_designers_width_is_told_by_its_form() => Assert.StartsWith(
        "A square neck of an adult is ", RuleWords.Of(PlanRule.Neck, (BoxyTop)Shape("pullover") with { Neck = new Neck(NeckForm.Square, Cm(24)) }),
        StringComparison.Ordinal);

    /// <summary>Centimetres of width, front and back, as the rule tells them, are those that an adult's base size asks for.</summary>
    [Theory]
    [InlineData(NeckForm.Slit)]
    [InlineData(NeckForm.Square)]
    [InlineData(NeckForm.Round)]
    [InlineData(NeckForm.V)]
    public void A_necks_figures_are_those_that_it_is_planned_by(NeckForm form)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == "cardigan"));
        project = project.With(g => g with { Shape = (Cardigan)g.Shape with { Neck = new Neck(form, null) { InFront = true } } });
        var said = Figures().Matches(RuleWords.Of(PlanRule.Neck, project.Garment.Shape)).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToArray();
        var plan = project.Planned();
        var size = plan.Sizes.Single(s => s.Name == project.Sizes.Base);
        GarmentMeasure[] measures = form switch
        {
            NeckForm.Slit => [GarmentMeasure.NeckWidth],
            NeckForm.V => [GarmentMeasure.NeckWidth, GarmentMeasure.NeckDepth],
            _ => [GarmentMeasure.NeckWidth, GarmentMeasure.NeckDepth, GarmentMeasure.BackNeckDepth],
        };
        Assert.Equal(measures.Select(m => Math.Round(size.Target[m].Centimetres, 6)), said);
    }

    /// <summary>The figures of the buttonholes' rule are those of a band that is planned: a long one of stitches half a centimetre wide.</summary>
    [Fact]
    public void The_buttonholes_rule_has_the_bands_own_figures()
    {
        var said = RuleWords.Of(PlanRule.Buttonholes, Shape("cardigan"));
        // 9 stitches between the ends of three each: 3 less than two holes and 6 between them; 10 hold both.
        var stitch = Cm(0.5);
        Assert.Equal(1, ButtonLayout.Of(3 + 9 + 3, stitch, Length.Zero).Holes);
        Assert.Equal(new ButtonLayout(2, 3, 6, 3), ButtonLayout.Of(3 + 10 + 3, stitch, Length.Zero));
        Assert.Contains("of 2 stitches with at least 6 between", said, StringComparison.Ordinal);
        Assert.Contains("from 1.5 cm above its lower end", said, StringComparison.Ordinal);
    }

    private static GarmentShape Shape(string garment) => garment switch
    {
        "flared skirt" => (Skirt)Shape("skirt") with { Flare = Cm(20) },
        "long poncho" => (Poncho)Shape("poncho") with { Length = Cm(70) },
        _ => StarterDocument.Of(Repertoire.All.First(k => k.Name == garment)).Garment.Shape,
    };

    [GeneratedRegex(@"([0-9.]+) cm")]
    private static partial Regex Figures();
}
