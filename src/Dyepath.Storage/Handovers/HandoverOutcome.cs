using Dyepath.Contracts;

namespace Dyepath.Storage.Handovers;

/// <summary>What came of handing a project over.</summary>
public abstract record HandoverOutcome
{
    private HandoverOutcome()
    {
    }

    /// <summary>The piece was handed over.</summary>
    /// <param name="Handover">With its key, which is told this once.</param>
    public sealed record Done(Handover Handover) : HandoverOutcome;

    /// <summary>There is no such project.</summary>
    public sealed record Missing : HandoverOutcome;

    /// <summary>The project has <see cref="HandoverStore.MostOfProject"/> already.</summary>
    public sealed record Full : HandoverOutcome;
}

/// <summary>What came of a maker's log.</summary>
public enum ReceiveOutcome
{
    /// <summary>It is stored; what she sent of this piece before is replaced.</summary>
    Stored,

    /// <summary>The handover was revoked.</summary>
    Revoked,

    /// <summary>The handover has <see cref="MakerLogStore.MostOfHandover"/>, or as many bytes as it may have.</summary>
    Full,
}
