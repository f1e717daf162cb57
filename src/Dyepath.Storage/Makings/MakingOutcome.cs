using Dyepath.Contracts;

namespace Dyepath.Storage.Makings;

/// <summary>What came of storing a making.</summary>
public abstract record MakingOutcome
{
    private MakingOutcome()
    {
    }

    /// <summary>It is stored for the first time.</summary>
    /// <param name="Making">As it is stored now.</param>
    public sealed record Created(MakingSummary Making) : MakingOutcome;

    /// <summary>It is stored, or was already.</summary>
    /// <param name="Making">As it is stored now.</param>
    public sealed record Saved(MakingSummary Making) : MakingOutcome;

    /// <summary>Nothing was changed: another text is stored than was seen, or the id is taken.</summary>
    /// <param name="Stored">As it was stored before, and is still.</param>
    public sealed record Stale(MakingSummary Stored) : MakingOutcome;

    /// <summary>There is no such making.</summary>
    public sealed record Missing : MakingOutcome;

    /// <summary>There are <see cref="MakingStore.Most"/> already.</summary>
    public sealed record Full : MakingOutcome;
}
