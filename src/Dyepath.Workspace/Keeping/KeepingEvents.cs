using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

/// <summary>What an alarm is set for; there is one of each kind.</summary>
public enum AlarmKind
{
    /// <summary>The hands have paused, or the host has had its rest.</summary>
    Send,

    /// <summary>The device has had its rest after a refusal.</summary>
    Device,

    /// <summary>The host, or this device, has been waited for long enough.</summary>
    Patience,

    /// <summary>What another tab wrote has been in view long enough to be seen.</summary>
    Glance,
}

/// <summary>Something that a text's keeping hears of.</summary>
public abstract record KeepingEvent<T>
    where T : class;

/// <summary>Every copy on this device.</summary>
/// <param name="Copies">By every tab that wrote one; empty where there is none.</param>
public sealed record DeviceHas<T>(ImmutableArray<Copy<T>> Copies) : KeepingEvent<T>
    where T : class;

/// <summary>It is written and was read back.</summary>
/// <param name="Copy">As it was read back.</param>
/// <param name="Edit">Of the text in it; -1 for a pending one.</param>
/// <param name="Stamp">Of what was written; see <see cref="KeepingState{T}.Stamp"/>.</param>
/// <param name="Others">Other copies are there that it does not follow.</param>
public sealed record DeviceHolds<T>(Copy<T> Copy, int Edit, int Stamp, bool Others) : KeepingEvent<T>
    where T : class;

/// <summary>Nothing was written, because another tab's copy goes further.</summary>
public sealed record DeviceIsAhead<T> : KeepingEvent<T>
    where T : class;

/// <summary>The device neither read nor wrote.</summary>
/// <param name="Why">In words, for the page.</param>
public sealed record DeviceFailed<T>(string Why) : KeepingEvent<T>
    where T : class;

/// <summary>What was kept on this device is gone: its store was cleared while the page was open.</summary>
public sealed record DeviceCleared<T> : KeepingEvent<T>
    where T : class;

/// <summary>Another tab has put a copy of this text on the device.</summary>
public sealed record OtherTabWrote<T> : KeepingEvent<T>
    where T : class;

/// <summary>It was put away for ever in another tab.</summary>
public sealed record PutAwayElsewhere<T> : KeepingEvent<T>
    where T : class;

/// <summary>An answer of the host.</summary>
public abstract record HostSaid<T> : KeepingEvent<T>
    where T : class;

/// <summary>Its text, as it was asked for.</summary>
/// <param name="Content">The text.</param>
/// <param name="Etag">Of the text.</param>
/// <param name="Made">See <see cref="Copy{T}.Made"/>.</param>
public sealed record HostHas<T>(T Content, string Etag, string? Made = null) : HostSaid<T>
    where T : class;

/// <summary>Its copy cannot be read.</summary>
public sealed record HostIsUnreadable<T> : HostSaid<T>
    where T : class;

/// <summary>It has what was sent, under this ETag.</summary>
/// <param name="Etag">Of the text that was sent.</param>
/// <param name="Made">See <see cref="Copy{T}.Made"/>.</param>
public sealed record HostTook<T>(string Etag, string? Made = null) : HostSaid<T>
    where T : class;

/// <summary>It has another text than the one that was gone on from.</summary>
public sealed record HostHasAnother<T> : HostSaid<T>
    where T : class;

/// <param name="Trouble">What kept it from doing so.</param>
/// <param name="Why">The host's own words; empty where it gave none.</param>
/// <param name="After">When it wants to be asked again, where it says so.</param>
public sealed record HostDidNot<T>(HostTrouble Trouble, string Why = "", TimeSpan? After = null) : HostSaid<T>
    where T : class;

/// <summary>A change by hand.</summary>
/// <param name="Content">The text as it is then.</param>
public sealed record Changed<T>(T Content) : KeepingEvent<T>
    where T : class;

/// <summary>What stands beside the text has changed, such as its picture; the text has not.</summary>
/// <param name="Content">The same text with what stands beside it now.</param>
/// <param name="Sends">Also where the host has the text already.</param>
public sealed record Redrawn<T>(T Content, bool Sends) : KeepingEvent<T>
    where T : class;

/// <summary>An alarm that was set; one that was set again since is passed over.</summary>
/// <param name="Kind">What it was set for.</param>
/// <param name="Number">As <see cref="SetAlarm{T}"/> gave it.</param>
public sealed record Rang<T>(AlarmKind Kind, int Number) : KeepingEvent<T>
    where T : class;

/// <summary>The connection is back.</summary>
public sealed record Connected<T> : KeepingEvent<T>
    where T : class;

/// <param name="InView">The page is in view, or no longer.</param>
public sealed record Seen<T>(bool InView) : KeepingEvent<T>
    where T : class;

/// <summary>A conflict ends with this tab's text, or with the newest that is known of the other.</summary>
/// <param name="Mine">This tab's text, or else the other.</param>
public sealed record Chose<T>(bool Mine) : KeepingEvent<T>
    where T : class;

/// <summary>Something that a text's keeping asks for.</summary>
public abstract record KeepingCommand<T>
    where T : class;

/// <summary>Read every copy of this text on the device.</summary>
public sealed record ReadDevice<T> : KeepingCommand<T>
    where T : class;

/// <param name="Copy">What to write.</param>
/// <param name="Held">What the device is known to have of this writer, so that only what is new need be written.</param>
/// <param name="Edit">Comes back in <see cref="DeviceHolds{T}"/>.</param>
/// <param name="Stamp">Comes back in <see cref="DeviceHolds{T}"/>.</param>
/// <param name="Yields">Not to be written where another tab's copy goes further.</param>
public sealed record WriteDevice<T>(Copy<T> Copy, Copy<T>? Held, int Edit, int Stamp, bool Yields) : KeepingCommand<T>
    where T : class;

/// <summary>Ask the host for its text.</summary>
public sealed record ReadHost<T> : KeepingCommand<T>
    where T : class;

/// <summary>Send a text to the host.</summary>
/// <param name="Content">What to send.</param>
/// <param name="Etag">Of the host's text that it follows; missing where the host should have none.</param>
/// <param name="Leaving">The page may be gone before the host answers.</param>
public sealed record WriteHost<T>(T Content, string? Etag, bool Leaving) : KeepingCommand<T>
    where T : class;

/// <summary>Ring after a while; takes the place of an earlier alarm of its kind.</summary>
/// <param name="Kind">What it is set for.</param>
/// <param name="Number">Comes back in <see cref="Rang{T}"/>, so that an earlier alarm is told from this one.</param>
/// <param name="After">From now.</param>
public sealed record SetAlarm<T>(AlarmKind Kind, int Number, TimeSpan After) : KeepingCommand<T>
    where T : class;

/// <summary>The text in view is another one now, which came from elsewhere.</summary>
/// <param name="Content">The text that is in view now.</param>
/// <param name="Chosen">By hand, in a conflict.</param>
public sealed record ShowText<T>(T Content, bool Chosen) : KeepingCommand<T>
    where T : class;
