using System.Collections.Immutable;
using System.Text.Json;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Adapting;

/// <summary>From the least to the most that is accepted, both included.</summary>
/// <param name="Least">In the unit that its owner states.</param>
/// <param name="Most">In the same.</param>
public readonly record struct AcceptedRange(double Least, double Most);

/// <summary>
/// Which other yarns and gauges a published size accepts, one thing changed at a time and all else as the pattern has it: what a guide to
/// substituting the yarn says. Found by asking <see cref="Adapter"/>'s own question of yarns and gauges in between.
/// </summary>
/// <param name="Size">Its name.</param>
/// <param name="Sequence">Units until the colours come round, natural tension, the pattern's hook.</param>
/// <param name="SequenceWithOtherHook">
/// The same yarn in tighter or looser hands, whose stitches are smaller or larger with it, where another hook may be taken.
/// </param>
/// <param name="Stitches">Of the gauge that sizes follow from, over 10 cm.</param>
/// <param name="Rows">Of the same, over 10 cm.</param>
/// <param name="BallMetres">Metres on a ball with which as many balls are bought.</param>
/// <param name="Balls">How many those are.</param>
public sealed record AcceptedRanges(
    string Size, AcceptedRange Sequence, AcceptedRange SequenceWithOtherHook, AcceptedRange Stitches, AcceptedRange Rows,
    AcceptedRange BallMetres, int Balls)
{
    /// <summary>Sequences and gauges are looked for up to so many times the pattern's, or down to one over that.</summary>
    private const double Reach = 1.25;

    /// <summary>The same of balls.</summary>
    private const double BallReach = 2;

    /// <summary>Steps from the pattern's own to the end of the reach, and halvings of the step in which it ends.</summary>
    private const int Steps = 10, Halvings = 6;

    /// <param name="plan">Of the whole pattern.</param>
    /// <param name="sizeName">One of its sizes.</param>
    /// <exception cref="ArgumentException">The plan has no such size.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static AcceptedRanges Of(Plan plan, string sizeName, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var size = Adapter.SizeOf(plan, sizeName);
        var one = new OneSize(plan, size, cancel);
        var published = new AsPublished(plan, size, one);
        var (pattern, ten) = (Materials(plan, 1), Length.FromCentimetres(10));
        var (sequence, stitches, rows) = (plan.Sequence.Measured.Natural.Total.Value, ten / plan.StitchWidth, ten / plan.RowHeight);
        var ball = plan.Project.Yarn.Ball.Length;
        return new AcceptedRanges(
            size.Name,
            Within(sequence, Reach, f => Works(Materials(plan, f), 0) is not null),
            Within(sequence, Reach, f => Works(Tighter(f), AdaptLimits.HookReach) is not null),
            Within(stitches, Reach, f => Works(pattern with { Gauge = new Gauge(stitches * f, rows, ten) }, 0) is not null),
            Within(rows, Reach, f => Works(pattern with { Gauge = new Gauge(stitches, rows * f, ten) }, 0) is not null),
            Within(
                ball.Metres, BallReach,
                f => Works(pattern with { Ball = ball * f }, 0)?.Plan.Sizes[0].Yarn.BallsSafe == size.Yarn.BallsSafe),
            size.Yarn.BallsSafe);

        // The same yarn by hands that put so many times as many stitches into it.
        OwnMaterials Tighter(double f) => pattern with
        {
            YarnPerStitch = pattern.YarnPerStitch / f,
            Gauge = new Gauge(stitches * f, rows * f, ten),
        };

        PublishedWork? Works(OwnMaterials own, double hookReach)
        {
            var document = new OwnDocument(plan, own);
            var free = document.Free(one.Project);
            return MeasuredYarn.TryMeasure(free.Yarn, free.Fabric, out var measured, out _)
                ? published.Find(document, measured, own.Yarn.Sections, hookReach).Work : null;
        }
    }

    /// <summary>The pattern's yarn, its sections so many times as long, and its stitch.</summary>
    private static OwnMaterials Materials(Plan plan, double times)
    {
        var measured = plan.Sequence.Measured;
        var natural = plan.Sequence.AsWorked([.. measured.Natural.Sections.Select(s => s.Value)]);
        var each = measured.YarnPerStitch.PerUnit;
        ImmutableArray<YarnSection> sections =
            [.. plan.Sequence.Colours.Select((c, i) => new YarnSection(c.Name, c.Colour, each * (natural[i] * times)))];
        return new OwnMaterials(new OwnYarnCount(plan.Project.Yarn.Name, sections, [])) { YarnPerStitch = each };
    }

    private static AcceptedRange Within(double own, double reach, Func<double, bool> accepts) =>
        new(own * End(1 / reach, accepts), own * End(reach, accepts));

    /// <summary>How far all that is asked between is accepted: in steps first, then nearer in the step in which it ends.</summary>
    private static double End(double reach, Func<double, bool> accepts)
    {
        var (good, bad) = (1.0, 0.0);
        for (var step = 1; step <= Steps; step++)
        {
            var next = Math.Pow(reach, step / (double)Steps);
            if (!accepts(next))
            {
                bad = next;
                break;
            }
            good = next;
        }
        for (var half = 0; bad > 0 && half < Halvings; half++)
        {
            var middle = (good + bad) / 2;
            if (accepts(middle))
                good = middle;
            else
                bad = middle;
        }
        return good;
    }

    /// <summary>
    /// Writes <c>{"size", "sequenceStitches", "sequenceStitchesOtherHook", "gaugeStitches", "gaugeRows", "ballMetres", "balls"}</c>, each
    /// range as <c>{"least", "most"}</c>, to the hundredth.
    /// </summary>
    public void Write(Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("size", Size);
        Range("sequenceStitches", Sequence);
        Range("sequenceStitchesOtherHook", SequenceWithOtherHook);
        Range("gaugeStitches", Stitches);
        Range("gaugeRows", Rows);
        Range("ballMetres", BallMetres);
        json.WriteNumber("balls", Balls);
        json.WriteEndObject();

        void Range(string name, AcceptedRange range)
        {
            json.WriteStartObject(name);
            json.WriteNumber("least", Math.Round(range.Least, 2));
            json.WriteNumber("most", Math.Round(range.Most, 2));
            json.WriteEndObject();
        }
    }
}
