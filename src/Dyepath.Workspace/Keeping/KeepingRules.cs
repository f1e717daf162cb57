namespace Dyepath.Workspace.Keeping;

/// <summary>What sets one sort of text apart from another in how it is kept.</summary>
public abstract record KeepingRules<T>
    where T : class
{
    /// <summary>After the last change, before the host is told.</summary>
    public abstract TimeSpan Quiet { get; }

    /// <summary>
    /// A change holds only once this device has it, and is refused where another tab went on first; otherwise it holds at once.
    /// </summary>
    public abstract bool KeepsFirst { get; }

    /// <summary>What this device has is opened without waiting for the host.</summary>
    public abstract bool OpensFromDevice { get; }

    /// <summary>
    /// Before a text is sent, this device is told that it will be: a tab that goes on from it then knows the host's text for its own.
    /// Not needed where <see cref="Join"/> tells that by itself.
    /// </summary>
    public bool SaysWhatItSends => !KeepsFirst;

    /// <summary>Before a text that another tab wrote is sent by this one: the other is likely to do it.</summary>
    public virtual TimeSpan Deference => TimeSpan.FromSeconds(10);

    /// <summary>Before what another tab wrote counts as seen: a change by hand to the same place was not made to it.</summary>
    public virtual TimeSpan Glance => TimeSpan.FromMilliseconds(500);

    /// <summary>
    /// How long the host may take to answer before what this device has is opened, and this device before the host is asked past it.
    /// </summary>
    public virtual TimeSpan Patience => TimeSpan.FromSeconds(3);

    /// <summary>After a refusal by this device.</summary>
    public virtual TimeSpan DeviceRest => TimeSpan.FromSeconds(10);

    /// <summary>Whether nothing tells two texts apart.</summary>
    public abstract bool Same(T one, T other);

    /// <summary>The text in which both are, where that is one of the two; null where neither goes on from the other.</summary>
    public abstract T? Join(T one, T other);

    /// <summary>
    /// What became another between <paramref name="before"/> and <paramref name="shown"/> became another again in <paramref name="now"/>.
    /// False where a change that was made to an unseen text is refused anyway.
    /// </summary>
    public abstract bool WritesOver(T before, T shown, T now);

    /// <summary>The ETag under which a host stores it.</summary>
    public abstract string EtagOf(T content);

    /// <summary>Whether it goes to the host at all.</summary>
    public virtual bool GoesToHost(T content) => true;

    /// <summary>Before the host is tried again for the n-th time, from 1.</summary>
    public virtual TimeSpan Rest(int tries) => TimeSpan.FromSeconds(tries switch { <= 1 => 2, 2 => 5, 3 => 15, _ => 30 });
}
