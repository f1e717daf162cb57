using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making;

/// <summary>How a simulation is run. Each default is a value that can be used as it is.</summary>
public sealed record SimulationSettings
{
    /// <summary>When the maker corrects. Default at every row's end.</summary>
    public CheckHabit Check { get; init; } = CheckHabit.EveryRow;

    /// <summary>How many times the piece is worked, in [1, 1,000,000].</summary>
    public int Trials { get; init => field = Guard.InRange(value, 1, 1_000_000, "trials", nameof(Trials)); } = 500;

    /// <summary>The same seed gives the same bits on every machine, whatever the number of workers.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Relative standard deviation of each section occurrence's length, independent, in [0, 0.5].</summary>
    public double DyeVariation { get; init => field = Guard.InRange(value, 0, 0.5, "of the section's length", nameof(DyeVariation)); }

    /// <summary>The share of stitches in planned colour from which a piece counts as good, in [0, 1].</summary>
    public double GoodShare { get; init => field = Guard.InRange(value, 0, 1, "as a share", nameof(GoodShare)); } = 0.8;

    /// <summary>Threads to use, in [1, 256]; the browser always uses one.</summary>
    public int Workers { get; init => field = Guard.InRange(value, 1, 256, "workers", nameof(Workers)); } = 1;
}
