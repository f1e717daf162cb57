using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Motifs;

/// <summary>How what was found among stitch counts is written among decisions.</summary>
internal static class CountDecisions
{
    public static void Write(BinaryWriter to, CountSearch search)
    {
        to.WriteAll(search.Counts, Write);
        to.WriteAll(search.Nearest, (w, near) =>
        {
            Write(w, near.Finding);
            w.WriteMaybe(near.TurnChange, (v, n) => v.Write(n));
            w.WriteMaybe(near.YarnChange, (v, n) => v.Write(n));
        });
        to.WriteAll(search.Advice, Write);
    }

    public static CountSearch ReadSearch(BinaryReader from) => new(
        from.ReadAll(ReadFinding),
        from.ReadAll(r => new NearCount(ReadFinding(r), r.ReadMaybe(v => v.ReadDouble()), r.ReadMaybe(v => v.ReadDouble()))),
        from.ReadAll(ReadAdvice));

    public static void Write(BinaryWriter to, MotifShare share)
    {
        to.Write((byte)share.Kind);
        to.Write(share.Counts);
        Write(to, share.Example);
    }

    public static MotifShare ReadShare(BinaryReader from) => new((MotifKind)from.ReadByte(), from.ReadInt32(), ReadFinding(from));

    public static void Write(BinaryWriter to, CountFinding finding)
    {
        to.Write(finding.Stitches);
        to.WriteWhole(finding.RowStitches);
        to.Write(finding.TurnCost);
        to.Write((byte)finding.Task);
        to.Write(finding.HalfRepeats);
        var reading = finding.Reading;
        to.Write((byte)reading.Kind);
        to.WriteMaybe(reading.Lean, (w, lean) =>
        {
            w.Write(lean.Micro);
            w.Write(lean.Rows);
        });
        to.WriteMaybe(reading.PeriodUnits, (w, n) => w.Write(n));
        to.WriteMaybe(reading.VisiblePeriodUnits, (w, n) => w.Write(n));
        to.WriteMaybe(reading.VisibleLean, (w, n) => w.Write(n));
        to.WriteMaybe(reading.DiamondWidth, (w, length) => w.Write(length));
        to.WriteMaybe(reading.DiamondHeight, (w, length) => w.Write(length));
        to.Write(reading.Clarity);
        to.Write(reading.RelativeClarity);
        to.WriteAll(reading.Findings, (w, found) => w.Write((byte)found));
        to.WriteMaybe(finding.Forgiveness, (w, forgives) =>
        {
            w.Write(forgives.Tighter);
            w.Write(forgives.Looser);
        });
        to.Write(finding.Width);
    }

    public static CountFinding ReadFinding(BinaryReader from) => new(
        from.ReadInt32(),
        from.ReadWhole(),
        from.ReadDouble(),
        (CountTask)from.ReadByte(),
        from.ReadInt64(),
        new MotifReading(
            (MotifKind)from.ReadByte(),
            from.ReadMaybe(r => new Lean(r.ReadInt64(), r.ReadInt32())),
            from.ReadMaybe(r => r.ReadDouble()),
            from.ReadMaybe(r => r.ReadDouble()),
            from.ReadMaybe(r => r.ReadDouble()),
            from.ReadMaybe(r => r.ReadLength()),
            from.ReadMaybe(r => r.ReadLength()))
        {
            Clarity = from.ReadDouble(),
            RelativeClarity = from.ReadDouble(),
            Findings = from.ReadAll(r => (MotifFinding)r.ReadByte()),
        },
        from.ReadMaybe(r => new Forgiveness(r.ReadDouble(), r.ReadDouble())))
    {
        Width = from.ReadLength(),
    };

    private static void Write(BinaryWriter to, CountAdvice advice)
    {
        to.Write((byte)advice.Task);
        switch (advice)
        {
            case CountAdvice.Turn turn:
                to.Write((byte)0);
                to.Write(turn.Stitches);
                to.Write(turn.TurnCost);
                break;
            case CountAdvice.Hook hook:
                to.Write((byte)1);
                to.Write(hook.Stitches);
                to.Write(hook.YarnChange);
                to.Write(hook.SequenceUnits);
                break;
            case CountAdvice.Motif motif:
                to.Write((byte)2);
                to.Write((byte)motif.Kind);
                to.Write(motif.Counts);
                to.Write(motif.Example);
                break;
            case CountAdvice.Way way:
                to.Write((byte)3);
                to.Write((byte)way.Working);
                to.Write(way.Counts);
                to.Write(way.Example);
                break;
            case CountAdvice.Range range:
                to.Write((byte)4);
                to.Write(range.Stitches);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(advice), advice, "Advice of a kind that decisions cannot hold.");
        }
    }

    private static CountAdvice ReadAdvice(BinaryReader from)
    {
        var task = (CountTask)from.ReadByte();
        CountAdvice advice = from.ReadByte() switch
        {
            0 => new CountAdvice.Turn(from.ReadInt32(), from.ReadDouble()),
            1 => new CountAdvice.Hook(from.ReadInt32(), from.ReadDouble(), from.ReadDouble()),
            2 => new CountAdvice.Motif((MotifKind)from.ReadByte(), from.ReadInt32(), from.ReadInt32()),
            3 => new CountAdvice.Way((Working)from.ReadByte(), from.ReadInt32(), from.ReadInt32()),
            4 => new CountAdvice.Range(from.ReadInt32()),
            var other => throw new InvalidDataException($"There is no advice of kind {other}."),
        };
        return advice with { Task = task };
    }
}
