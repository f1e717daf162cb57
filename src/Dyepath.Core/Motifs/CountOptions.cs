using Dyepath.Core.Fabrics;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Motifs;

/// <summary>In which order counts are listed; ties by stitches.</summary>
public enum CountOrder
{
    /// <summary>The fewest first.</summary>
    Stitches,

    /// <summary>Those that forgive most first.</summary>
    Forgiveness,

    /// <summary>The clearest first.</summary>
    Clarity,
}

/// <summary>Which stitch counts to look for.</summary>
/// <param name="Gauge">Gives finished widths, and how tall a row is for its width.</param>
/// <param name="From">Fewest stitches, 1 to 1,000.</param>
/// <param name="To">Most stitches, <paramref name="From"/> to 1,000.</param>
public sealed record CountOptions(Gauge Gauge, int From, int To)
{
    /// <summary>What the count has to make. Default argyle.</summary>
    public MotifKind Motif { get; init; } = MotifKind.Argyle;

    /// <summary>Turned, or how rounds follow each other. Default turned.</summary>
    public Working Working { get; init; } = Working.Turned;

    /// <summary>Rows of the piece, 1 to 5,000. It decides how little drift makes columns. Default 72.</summary>
    public int Rows { get; init; } = 72;

    /// <summary>Turn cost, start and units; the default is a turn that takes no yarn, at the sequence's start, in stitches.</summary>
    public PathOptions Path { get; init; } = new();

    /// <summary>
    /// Offers N and N + 1 in turn as well, where rows are turned (unturned rounds would lose their columns). Default on.
    /// </summary>
    public bool Alternating { get; init; } = true;

    /// <summary>Offers a turn that takes half a unit of yarn as well, except in a spiral. Default off.</summary>
    public bool HalfTurn { get; init; }

    /// <summary>Default by stitches.</summary>
    public CountOrder Order { get; init; } = CountOrder.Stitches;

    /// <summary>Limits between motifs, and how far the eye blurs.</summary>
    public MotifOptions Thresholds { get; init; } = new();

    /// <summary>Omitted, all sections of different colours are equally distinct.</summary>
    public Palette? Palette { get; init; }
}
