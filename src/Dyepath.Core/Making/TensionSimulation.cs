using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making;

/// <summary>
/// Works a piece many times over with uneven hands and uneven dye, and counts the stitches that come out in their planned
/// colour. Nothing else is random: the maker misreads nothing, skips nothing, and corrects as she means to.
/// </summary>
public static class TensionSimulation
{
    /// <summary>
    /// Reports the share of trials worked, in (0, 1], from any worker's thread; heeds <paramref name="cancellation"/> before every row.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static SimulationResult Run(
        PlannedPiece piece,
        HandModel hands,
        SimulationSettings settings,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default) =>
        // Vectors lose to scalar code in the browser's interpreter.
        Run(piece, hands, settings, Vector256.IsHardwareAccelerated && !OperatingSystem.IsBrowser(), progress, cancellation);

    /// <summary>
    /// The colours that one trial of <see cref="Run(PlannedPiece, HandModel, SimulationSettings, IProgress{double}?, CancellationToken)"/>
    /// gives.
    /// </summary>
    /// <param name="trial">Numbered as <see cref="SimulationResult.Shares"/> is, from 0; under the settings' trials.</param>
    /// <returns>
    /// A colour for each stitch in working order, row after row: an index of <see cref="Yarns.ColourRing.Colours"/>, the first of the
    /// sections that share it.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">No such trial.</exception>
    public static byte[] Draw(PlannedPiece piece, HandModel hands, SimulationSettings settings, int trial)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(hands);
        ArgumentNullException.ThrowIfNull(settings);
        Guard.InRange(trial, 0, settings.Trials - 1, "trials");
        var colours = new byte[piece.Stitches];
        new TrialGroup(piece, hands, settings, vectorised: false).Draw(trial, colours);
        return colours;
    }

    internal static SimulationResult Run(
        PlannedPiece piece,
        HandModel hands,
        SimulationSettings settings,
        bool vectorised,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(hands);
        ArgumentNullException.ThrowIfNull(settings);
        var shares = new double[settings.Trials];
        var corrections = new double[settings.Trials];
        var rightByRow = new long[piece.RowStitches.Length];
        int worked = 0;

        void WorkGroup(TrialGroup group, int index)
        {
            int first = index * NormalLanes.Count;
            int count = Math.Min(NormalLanes.Count, settings.Trials - first);
            group.Work(first, shares.AsSpan(first, count), corrections.AsSpan(first, count), cancellation);
            progress?.Report((double)Interlocked.Add(ref worked, count) / settings.Trials);
        }

        void Collect(TrialGroup group)
        {
            lock (rightByRow)
            {
                for (int row = 0; row < rightByRow.Length; row++) rightByRow[row] += group.RightByRow[row];
            }
        }

        int groups = (settings.Trials + NormalLanes.Count - 1) / NormalLanes.Count;
        if (settings.Workers == 1 || OperatingSystem.IsBrowser())
        {
            var group = new TrialGroup(piece, hands, settings, vectorised);
            for (int index = 0; index < groups; index++) WorkGroup(group, index);
            Collect(group);
        }
        else
        {
            Parallel.For(
                0,
                groups,
                new ParallelOptions { MaxDegreeOfParallelism = settings.Workers, CancellationToken = cancellation },
                () => new TrialGroup(piece, hands, settings, vectorised),
                (index, _, group) =>
                {
                    WorkGroup(group, index);
                    return group;
                },
                Collect);
        }

        // Summed in the order of the trials, so that the result does not depend on the threads.
        double corrected = 0;
        foreach (double correction in corrections) corrected += correction;
        return new SimulationResult(
            [.. shares],
            [.. rightByRow.Select((right, row) => (double)right / ((long)piece.RowStitches[row] * settings.Trials))],
            settings.GoodShare,
            corrected / ((double)piece.Stitches * settings.Trials));
    }
}
