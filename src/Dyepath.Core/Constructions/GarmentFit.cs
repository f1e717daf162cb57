using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>What a body needs of the garments that it gets into.</summary>
internal static class GarmentFit
{
    /// <summary>How far a slit in crochet stretches over a head without harm (common practice, no source).</summary>
    private const double SlitStretch = 1.1;

    /// <summary>Crochet that stretches by more than this round a head wears out its shape (common practice, no source).</summary>
    private const double BrimStretch = 1.15;

    /// <summary>The narrowest slit, flat, that lets a head through.</summary>
    public static Length SlitFor(Length head) => head / (2 * SlitStretch);

    public static WornFit Head(Length neck, BodyOfSize body, string place) => new(
        FitPart.NeckOpening, 2 * SlitStretch * neck, BodyMeasure.Head, body[BodyMeasure.Head], place, Mend.WidenNeck)
    {
        AsMade = 2 * neck,
        Stretch = 2 * (SlitStretch - 1) * neck,
    };

    /// <summary>What is smaller than the head, and holds on it by that.</summary>
    public static WornFit Brim(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var around = size.Finished[GarmentMeasure.Circumference];
        return new(
            FitPart.Brim, BrimStretch * around, BodyMeasure.Head, size.Body[BodyMeasure.Head], "garment.smaller", Mend.LessOffHead)
        {
            AsMade = around,
            Stretch = (BrimStretch - 1) * around,
        };
    }

    /// <summary>Fabric left beside a neck, so that it stays on (common practice, no source).</summary>
    public static Length LeastShoulder(Wearers wearer) => Length.FromCentimetres(wearer == Wearers.Adult ? 4 : 2.5);
}
