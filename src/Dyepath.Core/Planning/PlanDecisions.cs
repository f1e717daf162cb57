using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Motifs;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Planning;

/// <summary>How what was chosen for a plan is written among decisions.</summary>
internal static class PlanDecisions
{
    /// <param name="findings">What the counts were chosen among; they are written as places in it.</param>
    public static Grading Grading(this Decisions? decisions, IReadOnlyList<CountFinding> findings, Func<Grading> search)
    {
        return decisions.Answer(search, Write, Read);

        void Write(BinaryWriter to, Grading grading)
        {
            var places = new Dictionary<CountFinding, int>(ReferenceEqualityComparer.Instance);
            for (var i = 0; i < findings.Count; i++)
                places.TryAdd(findings[i], i);
            to.WriteAll(grading.Chosen, (w, count) =>
            {
                w.Write(places[count.Front]);
                w.Write(places[count.Back]);
                w.Write(count.Bands);
                w.Write(count.Measure);
                w.Write(count.Penalty);
                w.WriteMaybe(count.Rounds, (x, rounds) => x.Write(rounds));
            });
            to.WriteAll(grading.Curve, (w, point) =>
            {
                w.Write(point.Counts);
                w.Write(point.WorstError);
                w.WriteWhole(point.Stitches);
            });
            to.WriteAll(grading.Reasons, (w, reason) =>
            {
                w.Write((byte)reason.Level);
                w.Write(reason.Place);
                w.Write(reason.Text);
            });
            to.Write(grading.Cost);
            to.Write(grading.WorstError);
            to.Write(grading.IsProven);
        }

        Grading Read(BinaryReader from) => new(
            from.ReadAll(r => new GradedCount(
                findings[r.ReadInt32()], findings[r.ReadInt32()], r.ReadInt32(), r.ReadLength(), r.ReadDouble())
            {
                Rounds = r.ReadMaybe(x => x.ReadInt32()),
            }),
            from.ReadAll(r => new CurvePoint(r.ReadInt32(), r.ReadLength(), r.ReadWhole())),
            from.ReadAll(r => new Finding((FindingLevel)r.ReadByte(), r.ReadString(), r.ReadString())))
        {
            Cost = from.ReadDouble(),
            WorstError = from.ReadLength(),
            IsProven = from.ReadBoolean(),
        };
    }

    public static IReadOnlyList<GradingRemedy> GradingRemedies(this Decisions? decisions, Func<IReadOnlyList<GradingRemedy>> search) =>
        decisions.Answer(
            search,
            (to, remedies) => to.WriteAll(remedies, (w, remedy) =>
            {
                w.Write((byte)remedy.Kind);
                w.Write(remedy.Amount);
                w.Write(remedy.WorstError);
                w.Write(remedy.Cost);
            }),
            from => from.ReadAll(r => new GradingRemedy((GradingRemedyKind)r.ReadByte(), r.ReadInt32(), r.ReadLength(), r.ReadDouble())));

    public static int Start(this Decisions? decisions, Func<int> search) =>
        decisions.Answer(search, (to, start) => to.Write(start), from => from.ReadInt32());

    public static SeamDecision Seams(this Decisions? decisions, Func<SeamDecision> search) => decisions.Answer(
        search,
        (to, decided) =>
        {
            to.Write(decided.Rows);
            to.Write(decided.Turned);
            to.Write(decided.Start);
        },
        from => new SeamDecision(from.ReadInt32(), from.ReadBoolean(), from.ReadInt32()));

    public static ImmutableArray<BallShare> BallShares(this Decisions? decisions, Func<ImmutableArray<BallShare>> search) =>
        decisions.Answer(
            search,
            (to, shares) => to.WriteAll(shares, (w, share) =>
            {
                w.Write(share.Balls);
                w.Write(share.Share);
            }),
            from => from.ReadAll(r => new BallShare(r.ReadInt32(), r.ReadDouble())));

    public static double MadeWell(this Decisions? decisions, Func<double> search) =>
        decisions.Answer(search, (to, chance) => to.Write(chance), from => from.ReadDouble());

    public static IReadOnlyList<Remedy> Remedies(this Decisions? decisions, Func<IEnumerable<Remedy>> search) =>
        decisions.Answer<IReadOnlyList<Remedy>>(
            () => [.. search()],
            (to, remedies) => to.WriteAll(remedies, (w, remedy) =>
            {
                // Where no count serves, all that helps sets something.
                w.Write(remedy.Place!);
                w.Write(remedy.Value!);
                w.Write(remedy.Text);
            }),
            from => from.ReadAll(r => new Remedy(r.ReadString(), r.ReadString(), r.ReadString())));
}
