using Dyepath.Core.Planning;

namespace Dyepath.Core.Limits;

/// <summary>
/// The work of one computation. Every loop of unbounded length spends steps here, so that the work ends soon after it is cancelled, and
/// ends where a document needs more than the limit. Steps are counted and not timed, so that the
/// same document is refused on every machine or on none. Not for several threads at once.
/// </summary>
/// <param name="most">Steps after which the work is given up; one is about ten nanoseconds of one core of a desktop computer.</param>
/// <param name="cancel">Looked at whenever steps are spent.</param>
public sealed class Effort(long most = long.MaxValue, CancellationToken cancel = default)
{
    /// <summary>What a plan, or one step of its check, may take: some seconds of one core.</summary>
    public const long MostOfPlan = 600_000_000;

    /// <summary>What is being worked out.</summary>
    public EffortPart Part { get; private set; } = EffortPart.Whole;

    /// <summary>Steps so far.</summary>
    public long Spent { get; private set; }

    /// <summary>Told of the steps whenever some are spent; lets a test stop the work wherever it can be stopped.</summary>
    internal Action<long>? Watch { get; init; }

    /// <summary>What a plan may take, <see cref="MostOfPlan"/>.</summary>
    public static Effort OfPlan(CancellationToken cancel) => new(MostOfPlan, cancel);

    /// <summary>What follows is another part of the work.</summary>
    public void Begin(EffortPart part)
    {
        Part = part;
        Spend(1);
    }

    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    /// <exception cref="TooMuchWorkException">More steps than were allowed.</exception>
    public void Spend(long steps)
    {
        Spent += steps;
        Watch?.Invoke(steps);
        cancel.ThrowIfCancellationRequested();
        if (Spent > most)
            throw new TooMuchWorkException(Part);
    }
}

/// <summary>A part of the work, and what its size comes from.</summary>
/// <param name="Place">The part of the document that decides how much it is.</param>
/// <param name="LeaveOut">What to leave out where it is too much: a sentence.</param>
public sealed record EffortPart(string Place, string LeaveOut)
{
    /// <summary>Before any part has begun, or where none is to blame.</summary>
    public static EffortPart Whole { get; } = new("document", "Plan fewer sizes.");

    /// <summary>Fitting the colours to what was counted in a swatch.</summary>
    public static EffortPart Counted { get; } =
        new("yarn.counted", "Leave out balls or repeats: a few balls with ten repeats each say all there is to say.");

    /// <summary>The search for the counts that serve all sizes.</summary>
    public static EffortPart Counts { get; } =
        new("garment.grading", "Do without side bands and unequal panels, or plan fewer sizes.");

    /// <summary>Where pieces begin in the colour sequence, so that colours meet along seams, and its check.</summary>
    public static EffortPart Seams { get; } = new("sizes", "Plan fewer sizes, or a smaller garment.");

    /// <summary>Writing and charting the pattern of all sizes.</summary>
    public static EffortPart Pattern { get; } = new("sizes", "Plan fewer sizes, or print one size alone.");
}

/// <summary>A document needs more work than the limit; not the caller's mistake.</summary>
public sealed class TooMuchWorkException : Exception
{
    /// <summary>Says what to leave out.</summary>
    /// <exception cref="ArgumentNullException">No part.</exception>
    public TooMuchWorkException(EffortPart part)
        : base($"Too much work at {(part ?? throw new ArgumentNullException(nameof(part))).Place}. {part.LeaveOut}") => Part = part;

    /// <summary>For no part in particular.</summary>
    public TooMuchWorkException()
        : this(EffortPart.Whole) { }

    /// <summary>For no part in particular, in other words.</summary>
    public TooMuchWorkException(string message)
        : base(message) => Part = EffortPart.Whole;

    /// <summary>For no part in particular, in other words, and with what led to it.</summary>
    public TooMuchWorkException(string message, Exception innerException)
        : base(message, innerException) => Part = EffortPart.Whole;

    /// <summary>What was being worked out when the steps ran out.</summary>
    public EffortPart Part { get; }
}
