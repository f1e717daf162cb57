using System.Collections.Immutable;
using Dyepath.Core.Replays;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>How what was estimated from counts is written among decisions.</summary>
internal static class SequenceDecisions
{
    public static SequenceEstimate Estimate(this Decisions? decisions, HandsPrior hands, Func<SequenceEstimate> search) =>
        decisions.Answer(search, Write, from => Read(from, hands));

    public static HandsPrior Hands(this Decisions? decisions, HandsPrior supposed, Func<HandsPrior> search) =>
        decisions.Answer(search, (to, hands) => to.Write(hands.Spread), from => supposed.Wider(from.ReadDouble()));

    public static IReadOnlyList<MeasuringFinding> Findings(this Decisions? decisions, Func<IEnumerable<MeasuringFinding>> search) =>
        decisions.Answer<IReadOnlyList<MeasuringFinding>>(
            () => [.. search()], (to, found) => to.WriteAll(found, Write), from => from.ReadAll(ReadFinding));

    public static (ImmutableArray<CountedRun> Runs, ImmutableArray<MeasuringFinding> Findings) Runs(
        this Decisions? decisions, Func<(ImmutableArray<CountedRun> Runs, ImmutableArray<MeasuringFinding> Findings)> search) =>
        decisions.Answer<(ImmutableArray<CountedRun> Runs, ImmutableArray<MeasuringFinding> Findings)>(
            search,
            (to, read) =>
            {
                to.WriteAll(read.Runs, (w, run) =>
                {
                    w.Write(run.Ball);
                    w.Write(run.FirstRepeat);
                    w.WriteAll(run.Rows, (v, row) => v.WriteWhole(row));
                });
                to.WriteAll(read.Findings, Write);
            },
            from => (from.ReadAll(r => new CountedRun(r.ReadInt32(), r.ReadInt32(), r.ReadAll(v => v.ReadWhole()))),
                from.ReadAll(ReadFinding)));

    private static void Write(BinaryWriter to, SequenceEstimate estimate)
    {
        to.WriteNumbers([.. estimate.Sections.Select(s => s.Value)]);
        to.WriteNumbers(estimate.CovarianceMatrix);
        to.Write(estimate.Repeats);
        to.Write(estimate.Residual);
        to.Write(estimate.DegreesOfFreedom);
    }

    private static SequenceEstimate Read(BinaryReader from, HandsPrior hands) => new(
        [.. from.ReadNumbers()], [.. from.ReadNumbers()], from.ReadInt32(), from.ReadDouble(), from.ReadInt32(), hands);

    private static void Write(BinaryWriter to, MeasuringFinding finding)
    {
        to.Write((byte)finding.Kind);
        to.Write(finding.Place);
        to.Write(finding.Text);
    }

    private static MeasuringFinding ReadFinding(BinaryReader from) =>
        new((FindingKind)from.ReadByte(), from.ReadString(), from.ReadString());
}
