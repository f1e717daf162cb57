using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Planning;

/// <summary>What the rules say that a plan's measures follow.</summary>
public static class RuleWords
{
    /// <summary>One sentence or more, in the words of the project's size tables.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The garment has no such rule.</exception>
    public static string Of(PlanRule rule, Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        return project.Sizes.InWords(Of(rule, project.Garment.Shape));
    }

    /// <summary>One sentence or more, as of a woman's garment.</summary>
    /// <param name="shape">The garment that follows it; a sentence that names a garment or its parts is for that garment alone.</param>
    /// <exception cref="ArgumentOutOfRangeException">The garment has no such rule.</exception>
    internal static string Of(PlanRule rule, GarmentShape shape) => (rule, shape) switch
    {
        (PlanRule.Body, _) => "A size is planned for the middle of each body measure's range; a body at either end of the range has half the range less or more ease.",
        (PlanRule.Locked, _) => "The base size keeps the numbers it was made with, and every other size is moved by as much as the base was; an override moves its own size alone.",
        (PlanRule.Gauge, { IsToBody: true }) => "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one, since the swatch was hung the other way. The worked gauge is for the hook.",
        (PlanRule.Gauge, _) => "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one.",
        (PlanRule.Seam, _) => "Hidden stitches and rows of each sewn edge, and the depth of edgings, are taken off before counts are chosen.",
        (PlanRule.Grading, _) => "Few stitch counts serve all sizes: a further one is taken where it brings the size that fits worst at least half a centimetre nearer (a child's by as much less as it is smaller), and all lean alike unless the designer allows more.",
        (PlanRule.Widths, _) => "Each size comes out at least 1 cm wider than the one before it, or half of what their targets differ by, and none under the largest body of its range, or, with less ease than the range is wide, half a range under its target. A centimetre too narrow weighs as two too wide.",
        (PlanRule.Edgings, _) => "Where rounds are left open, each size has as many as bring the measure that runs along the stitches nearest to its target.",
        (PlanRule.Width, _) => Width(shape),
        (PlanRule.Fronts, _) => "The two fronts and the band on top make up what the back leaves of the width: the bands overlap by their own width, so that it counts once.",
        (PlanRule.Length, _) => Length(shape),
        (PlanRule.ArmholeDepth, Vest) => "Armhole depth is the larger of the chart's armhole depth and half of upper arm plus ease, its edging inside.",
        (PlanRule.ArmholeDepth, Poncho) => "The sides are joined for the stated length from the lower edge up; what is above it stays open for the arms.",
        (PlanRule.ArmholeDepth, _) => "Armhole depth is the larger of the chart's armhole depth and half of upper arm plus ease, on whole even rows, or whole stitches.",
        (PlanRule.ArmholeInset, _) => "An armhole's upright edge lies where the cross back ends: what the piece is wider than the cross back is left out, half at either side, edging included, but for what holds it on the shoulders beside the neck.",
        (PlanRule.NeckWidth, PetTabard) => "The slit neck is never narrower than the head needs; its edging is inside that width.",
        (PlanRule.Neck or PlanRule.NeckWidth, _) => Of(NeckOf(shape)),
        (PlanRule.Motif, _) => $"A cut edge is moved to the nearest place at which the motif goes on unbroken (whole half periods of the colours); where that is farther off than the document lets it, or a size would come out more than an inch off where the document does not say, the motif gives way there, as little as can be. {(NeckOf(shape).InFront ? "The fronts' shoulders are as wide as the back's, to a centimetre." : "A neck that the head would not pass then is made wider.")}",
        (PlanRule.Buttonholes, _) => "A band has buttonholes of 2 stitches with at least 6 between them, in its middle row, from 1.5 cm above its lower end to 1.5 cm below its upper one, or where the neck is a slit below the corner that folds back, which is taken to fold as far down as it is wide (common practice, no source); in women's clothes the right front's band usually has them, in men's the left one's.",
        (PlanRule.SleeveWidth, OffShoulder) => "A sleeve is upper arm plus ease round.",
        (PlanRule.SleeveWidth, _) => "A rectangular sleeve is twice the armhole depth round; worked up in the variegated yarn its count is limited, and the armhole follows it.",
        (PlanRule.SleeveLength, Cardigan) => "Sleeve length is centre back neck to cuff, less half of the back's finished width, less what the sleeve is shorter by.",
        (PlanRule.SleeveLength, _) => "Sleeve length is centre back neck to cuff, less half of the panel's finished width, less what the sleeve is shorter by: the wider the dropped shoulder, the shorter the sleeve.",
        (PlanRule.SleeveJoin, _) => "Each sleeve is sewn to front and back for the first centimetres below the top edge (4 to 6 cm, common practice).",
        (PlanRule.Vent, _) => "The sides are left open from the hem up for as long as the document says, and the lower edges of front and back are edged each by itself.",
        (PlanRule.TopEdge, _) => "The round of front, back and both sleeve tops is drawn in to a stated share of the girth of the shoulders, so that it stays on them.",
        (PlanRule.LegOpening, PetTabard) => "The sides are left open from the shoulder seam down for the forelegs, as far as the document says; their edging is inside.",
        (PlanRule.PanelWidth, Tabard) => "Front, back and the two tabs between them go round the chest and its ease; no panel is so narrow that its neck leaves no shoulders.",
        (PlanRule.Tabs, _) => "A tab of companion yarn holds front and back together in the middle of each side. Children's clothing is tied with no cord.",
        (PlanRule.WristToWrist, Poncho) => "From side edge to side edge it is twice the stated share of centre back neck to cuff, edging included; 80 % is usual (common practice), so that hands are free.",
        (PlanRule.Circumference, Hat) => "A hat is a little smaller than the head, 5 % unless the document says otherwise (common practice), so that it holds.",
        (PlanRule.Circumference, Headband) => "A headband is smaller than the head, 8 % unless the document says otherwise (common practice), since it holds on it by that alone.",
        (PlanRule.Circumference, Cowl) => "A cowl's circumference is as the document gives it, for every size its own where its sizes say so.",
        (PlanRule.Height, Headband) => "Height is from edge to edge as the document gives it, edgings included.",
        (PlanRule.Height, Hat) => "Height is from the edge of the brim to the drawn crown.",
        (PlanRule.CrownEdge, Hat) => "A gored crown narrows like a disc as wide across as the brim is round, over 3.14 (common practice). Worked sideways, pairs of rows stop short of it by whole half rounds of the colours, as many as are nearest to that; what is left at the top is drawn together.",
        (PlanRule.HemWidth, Skirt) => "The hem is the flare wider than the hip. Worked sideways, pairs of rows stop short of the waist by whole half rounds of the colours, so that every stitch keeps its colour; they end as near to the hip as such steps come, as many at each height as the skirt widens there, spread evenly round.",
        (PlanRule.Steps, Shawl) => "Rows grow and shrink at their ends by whole half rounds of the colours, which leaves every stitch its colour; of all such outlines the one with the least area between it and the triangle is taken, where a step has to bring at least four stitches.",
        (PlanRule.Bias, _) => "Every second row leaves 2 stitches at its end and every other goes on over 2 chains of companion yarn, so that the piece moves 2 stitches to the left with every two rows. Lines of right-side rows lean by 1 stitch a row less, and those of wrong-side rows by 1 more, than in an upright piece of the mean count; against the slanted edges both lean alike, which is the lean that the count is chosen for.",
        (PlanRule.GussetLength, _) => "The gusset is as long as both sides and the lower edge of a panel.",
        (PlanRule.StrapLength, _) => "The strap is as long as the document says, and longer at either end by its own width, which is sewn on inside the bag (common practice).",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, $"No words for this rule of a {shape.Name}."),
    };

    private static string Width(GarmentShape shape) => shape switch
    {
        BoxyTop or Vest => "Finished width is the larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease.",
        Cardigan => "Finished width, closed, is the larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease. The back is half of it.",
        OffShoulder { IsDress: true } => "Finished width is the larger of bust plus ease and hip plus hip ease.",
        OffShoulder => "Finished width is bust plus ease.",
        PetTabard => "Finished width is the chest and its ease, all round; 4 cm of ease is usual (common practice).",
        Skirt skirt => $"{(skirt.IsFlared ? "The skirt is pulled on over the hip: from the waist down to the hip its width is the hip plus ease" : "A straight skirt is pulled on over the hip: its width is the hip plus ease all the way down")}, and the waist is drawn in. Elastic is cut to the waist; 2 to 4 cm are left over to join it (common practice).",
        Shawl => "Wingspan and depth are as the document gives them, edging included; the widest row has a count that makes the motif.",
        BiasWrap => "Width, along the rows, and length, from the first row to the last, are as the document gives them, edging included; the width is the mean of two rows.",
        Wrap => "Width and length are as the document gives them, edging included.",
        Bag => "Width and height of the panels are as the document gives them; a top edging stands above that height.",
        Cushion => "A cover is 5 % smaller than its insert each way (common practice), so that it is full.",
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape.Name, "No rule of its width."),
    };

    private static string Length(GarmentShape shape) => shape switch
    {
        BoxyTop or Cardigan or Vest => "Length is the chart's back waist length plus what the garment hangs below the waist, hem edging included.",
        Tabard => "Length is the chart's back waist length plus what hangs below the waist, hem edging included.",
        OffShoulder => "Length is from the top edge to the hem as the document gives it, edgings included.",
        Skirt => "Length is from waist to hem as the document gives it, edgings included.",
        PetTabard => "Length is as the document gives it, hem edging included.",
        Poncho { Length: null } => "Length is 0.85 of centre back neck to cuff (common practice), edging included.",
        Poncho => "Length is as the document gives it, in every size, edging included.",
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape.Name, "No rule of its length."),
    };

    private static Neck NeckOf(GarmentShape shape) => shape switch
    {
        BoxyTop top => top.Neck,
        Cardigan cardigan => cardigan.Neck,
        Vest vest => vest.Neck,
        Tabard tabard => tabard.Neck,
        Poncho poncho => poncho.Neck,
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape.Name, "No rule of its neck."),
    };

    private static string Of(Neck neck)
    {
        if (!neck.IsCut && neck.Width is not null)
            return $"The {(neck.Form == NeckForm.Slit ? "slit neck" : "neck")} keeps the base size's width, a small step wider per size above it and narrower below; its edging is inside that width.";
        var (width, depth, back) = neck.SayUsual;
        var child = $"child's follows the head (common practice, no source). {(neck.InFront ? "Open in front, a child's is 0.3 of the head wide." : "It is never narrower than the head needs.")}";
        return neck.Form switch
        {
            NeckForm.Slit when neck.InFront => $"The shoulders leave {width} of an adult's back open in the base size, a small step more per size above it and less below; of a child's back 0.3 of the head (common practice, no source). The fronts have the same shoulders; what is left of them falls open at the neck.",
            NeckForm.Slit => "The slit neck is 26 cm wide in an adult's base size, a small step wider per size above it and narrower below, and never narrower than the head needs; a child's is 0.46 of the head. Its edging is inside that width.",
            NeckForm.Boat => "The boat neck of an adult is 0.72 of the cross back wide, or 30 cm in the base size where that is not known, and never narrower than the head needs; a child's is 0.46 of the head, which is nearly as wide as its shoulders (common practice, no source). Its edging is inside that width.",
            NeckForm.Buttoned => $"The neck beside a buttoned shoulder is {width} wide in an adult's base size, a small step wider per size above it and narrower below; a child's is 0.32 of the head (common practice, no source). It is never so narrow that the head would not pass through neck and open shoulder together, whose outer centimetre is sewn down.",
            NeckForm.Square => $"A square neck of an adult is {width} wide, {depth} deep in front and {back} at the back, its edging inside; a {child}",
            NeckForm.Round => $"A round neck of an adult is {width} wide, {depth} deep in front and {back} at the back, its edging inside; a {child} Rows follow its curve in steps.",
            NeckForm.V => $"A V neck of an adult is {width} wide and comes to its point {depth} below the shoulder in front, its edging inside; the back is not cut. A {child} Rows follow its slopes in steps.",
            NeckForm.VInsert => $"A V neck with inserts is cut square in front, {width} wide and {depth} deep for an adult, its edging inside; the back is not cut. Triangles of companion yarn fill the lower corners, so that its edge runs straight from each shoulder to the middle of the cut's lower edge. They are as wide as half of the cut and as tall as it is deep, as it was made. A {child}",
            _ => throw new ArgumentOutOfRangeException(nameof(neck), neck.Form, "No rule of such a neck."),
        };
    }
}
