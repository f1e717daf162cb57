using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>How wide a garment is round the body: by the bust, and by the hip where it has to pass it.</summary>
internal readonly record struct BodyGirth(Ease BustEase, Length HipEase, bool PassesHip)
{
    public ImmutableArray<BodyMeasure> Needs => PassesHip ? [BodyMeasure.Bust, BodyMeasure.Hip] : [BodyMeasure.Bust];

    /// <summary>The larger of bust and hip, each with its ease.</summary>
    public Length Target(BodyOfSize body)
    {
        var bust = body[BodyMeasure.Bust] + BustEase.Length;
        return PassesHip ? Length.Max(bust, body[BodyMeasure.Hip] + HipEase) : bust;
    }

    /// <summary>Round bust and hip, the largest body of the range.</summary>
    public Length Floor(BodyOfSize body)
    {
        var bust = body.Floor(BodyMeasure.Bust, BustEase.Length);
        return PassesHip ? Length.Max(bust, body.Floor(BodyMeasure.Hip, HipEase)) : bust;
    }

    /// <summary>
    /// The most that a garment is smaller than the body by the published ease of a very close fit, and the share of an adult's bust that
    /// this is: crochet does not stretch farther.
    /// </summary>
    private static readonly (Length Most, double Share) Stretches = (Length.FromCentimetres(10), 0.11);

    /// <summary>Whether it goes round the bust, and the hip gets through the hem.</summary>
    public ImmutableArray<WornFit> Worn(Length finished, BodyOfSize body)
    {
        var bust = body[BodyMeasure.Bust];
        var stretch = Length.Min(Stretches.Most, Stretches.Share * bust);
        return
        [
            new(FitPart.Body, finished, BodyMeasure.Bust, bust - stretch, "garment.ease", Mend.BustEase) { Stretch = stretch },
            .. Hem(finished, body),
        ];
    }

    /// <summary>Whether the hip gets through the hem.</summary>
    public ImmutableArray<WornFit> Hem(Length finished, BodyOfSize body) => PassesHip
        ? [new(FitPart.Hem, finished, BodyMeasure.Hip, body[BodyMeasure.Hip], "garment.hipEase", Mend.HipEase)]
        : [];
}
