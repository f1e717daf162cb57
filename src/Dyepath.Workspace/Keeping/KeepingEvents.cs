using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

public enum AlarmKind
{
    /// <summary>The hands have paused, or the host has had its rest.</summary>
    Send,
    Device,
    Patience,

    /// <summary>What another tab wrote has been in view long enough to be seen.</summary>
    Glance,
}

/// <summary>Something that a text's keeping hears of.</summary>
public abstract record KeepingEvent<T>
    where T : class;

/// <summary>Every copy on this device.</summary>
public sealed record DeviceHas<T>(ImmutableArray<Copy<T>> Copies) : KeepingEvent<T>
    where T : class;

/// <summary>It is written and was read back.</summary>
/// <param name="Edit">Of the text in it; -1 for a pending one.</param>
/// <param name="Others">Other copies are there that it does not follow.</param>
public sealed record DeviceHolds<T>(Copy<T> Copy, int Edit, int Stamp, bool Others) : KeepingEvent<T>
    where T : class;

/// <summary>Nothing was written, because another tab's copy goes further.</summary>
public sealed record DeviceIsAhead<T> : KeepingEvent<T>
    where T : class;

public sealed record DeviceFailed<T>(string Why) : KeepingEvent<T>
    where T : class;

/// <summary>What was kept on this device is gone: its store was cleared while the page was open.</summary>
public sealed record DeviceCleared<T> : KeepingEvent<T>
    where T : class;

public sealed record OtherTabWrote<T> : KeepingEvent<T>
    where T : class;

/// <summary>It was put away for ever in another tab.</summary>
public sealed record PutAwayElsewhere<T> : KeepingEvent<T>
    where T : class;

/// <summary>An answer of the host.</summary>
public abstract record HostSaid<T> : KeepingEvent<T>
    where T : class;

public sealed record HostHas<T>(T Content, string Etag, string? Made = null) : HostSaid<T>
    where T : class;

/// <summary>Its copy cannot be read.</summary>
public sealed record HostIsUnreadable<T> : HostSaid<T>
    where T : class;

/// <summary>It has what was sent, under this ETag.</summary>
public sealed record HostTook<T>(string Etag, string? Made = null) : HostSaid<T>
    where T : class;

/// <summary>It has another text than the one that was gone on from.</summary>
public sealed record HostHasAnother<T> : HostSaid<T>
    where T : class;

/// <param name="After">When it wants to be asked again, where it says so.</param>
public sealed record HostDidNot<T>(HostTrouble Trouble, string Why = "", TimeSpan? After = null) : HostSaid<T>
    where T : class;

/// <summary>A change by hand.</summary>
public sealed record Changed<T>(T Content) : KeepingEvent<T>
    where T : class;

/// <summary>What stands beside the text has changed, such as its picture; the text has not.</summary>
/// <param name="Sends">Also where the host has the text already.</param>
public sealed record Redrawn<T>(T Content, bool Sends) : KeepingEvent<T>
    where T : class;

public sealed record Rang<T>(AlarmKind Kind, int Number) : KeepingEvent<T>
    where T : class;

/// <summary>The connection is back.</summary>
public sealed record Connected<T> : KeepingEvent<T>
    where T : class;

/// <param name="InView">The page is in view, or no longer.</param>
public sealed record Seen<T>(bool InView) : KeepingEvent<T>
    where T : class;

/// <summary>A conflict ends with this tab's text, or with the newest that is known of the other.</summary>
public sealed record Chose<T>(bool Mine) : KeepingEvent<T>
    where T : class;

/// <summary>Something that a text's keeping asks for.</summary>
public abstract record KeepingCommand<T>
    where T : class;

public sealed record ReadDevice<T> : KeepingCommand<T>
    where T : class;

/// <param name="Held">What the device is known to have of this writer, so that only what is new need be written.</param>
/// <param name="Edit">Comes back in <see cref="DeviceHolds{T}"/>.</param>
/// <param name="Yields">Not to be written where another tab's copy goes further.</param>
public sealed record WriteDevice<T>(Copy<T> Copy, Copy<T>? Held, int Edit, int Stamp, bool Yields) : KeepingCommand<T>
    where T : class;

public sealed record ReadHost<T> : KeepingCommand<T>
    where T : class;

public sealed record WriteHost<T>(T Content, string? Etag, bool Leaving) : KeepingCommand<T>
    where T : class;

public sealed record SetAlarm<T>(AlarmKind Kind, int Number, TimeSpan After) : KeepingCommand<T>
    where T : class;

/// <summary>The text in view is another one now, which came from elsewhere.</summary>
/// <param name="Chosen">By hand, in a conflict.</param>
public sealed record ShowText<T>(T Content, bool Chosen) : KeepingCommand<T>
    where T : class;
