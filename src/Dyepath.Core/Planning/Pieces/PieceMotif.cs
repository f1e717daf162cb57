using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;

namespace Dyepath.Core.Planning;

/// <summary>What a person sees in a piece of a plan.</summary>
public static class PieceMotif
{
    /// <exception cref="ArgumentException">The piece is plain.</exception>
    public static MotifReading Read(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        if (!piece.Pooled)
            throw new ArgumentException($"The {piece.Name} is worked in one colour.", nameof(piece));
        var fabrication = Fabrication.Of(plan);
        var reader = MotifReader.Create(
            plan.Sequence.Ring, piece.Working, fabrication.GaugeFor(plan.Direction), fabrication.Stitch.StitchesPerUnit, fabrication.Palette);
        return reader.Read(PieceFabric.Of(plan, piece).Path);
    }
}
