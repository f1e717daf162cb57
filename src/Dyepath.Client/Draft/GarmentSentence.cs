using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;

namespace Dyepath.Client.Draft;

/// <summary>What a sighted person sees in the picture of a garment.</summary>
internal static class GarmentSentence
{
    public static string Of(Plan plan, SizePlan size)
    {
        var units = plan.Project.Edition.Units;
        var piece = size.Pieces.FirstOrDefault(p => p.Pooled) ?? size.Pieces[0];
        var colours = string.Join(", ", plan.Project.Yarn.Sections.Select(s => s.Name));
        string Say(GarmentMeasure measure) => size.Finished.TryGetValue(measure, out var l) ? Wording.Say(l, units) : "";
        var shape = plan.Project.Garment.Shape switch
        {
            BoxyTop { IsTunic: true } => $"A boxy tunic, {Say(GarmentMeasure.Width)} round and {Say(GarmentMeasure.Length)} long",
            BoxyTop => $"A boxy pullover, {Say(GarmentMeasure.Width)} round and {Say(GarmentMeasure.Length)} long",
            Cowl => $"A cowl, {Say(GarmentMeasure.Circumference)} round and {Say(GarmentMeasure.Height)} high",
            Wrap { IsBlanket: true } => $"A blanket, {Say(GarmentMeasure.Width)} wide and {Say(GarmentMeasure.Length)} long",
            _ => $"A wrap, {Say(GarmentMeasure.Width)} wide and {Say(GarmentMeasure.Length)} long",
        };
        var sleeves = size.Find(PieceId.Sleeve) is not null ? $", with rectangular sleeves {Say(GarmentMeasure.SleeveLength)} long" : "";
        return $"{shape}{sleeves}, size {size.Name}. {colours} make {MotifWords.Of(piece.Motif)}; {piece.Stitches} stitches by {piece.Rows} rows in the {piece.Name}.";
    }
}
