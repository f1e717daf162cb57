using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

/// <summary>Where the latest change is.</summary>
public enum SaveState
{
    /// <summary>On the host.</summary>
    Saved,

    /// <summary>On its way to this device, or from there to the host.</summary>
    Saving,

    /// <summary>On this device; the host gets it when it can be reached.</summary>
    OnDevice,

    /// <summary>Another tab or device has changed it too: somebody chooses. Until then changes are kept on this device as ever.</summary>
    Conflict,

    /// <summary>Neither the host nor this device took it.</summary>
    Failed,

    /// <summary>Another tab went on first, so that the last change was not taken.</summary>
    Elsewhere,
}

/// <summary>Whether there is a text yet, or no more.</summary>
public enum Stage
{
    /// <summary>This device or the host has still to answer.</summary>
    Opening,

    /// <summary>There is a text in view.</summary>
    Open,

    /// <summary>There is nothing to keep: <see cref="KeepingState{T}.Trouble"/> says why, or it was put away in another tab.</summary>
    Closed,
}

/// <summary>What the host last answered that was no text and no thanks.</summary>
public enum HostTrouble
{
    /// <summary>It answered as it should, or has not been asked yet.</summary>
    None,

    /// <summary>It cannot be reached, or there is none.</summary>
    Away,

    /// <summary>It answered that it cannot just now.</summary>
    Busy,

    /// <summary>It asks for its access token first.</summary>
    SignIn,

    /// <summary>It gave a reason; see <see cref="KeepingState{T}.HostWhy"/>.</summary>
    Refused,

    /// <summary>What it has stored is damaged; sending the very text mends it.</summary>
    Damaged,

    /// <summary>It has no such text.</summary>
    Missing,
}

/// <summary>One text as a tab keeps it. Every change of it is <see cref="KeepingMachine{T}"/>'s.</summary>
public sealed record KeepingState<T>
    where T : class
{
    /// <summary>This tab: its own name among all that ever wrote.</summary>
    public required string Writer { get; init; }

    /// <summary>Opening until a text is found, or none is.</summary>
    public Stage Stage { get; init; }

    /// <summary>The text in view; missing until it is open.</summary>
    public T? Mine { get; init; }

    /// <summary>Grows whenever <see cref="Mine"/> becomes another text.</summary>
    public int Edit { get; init; }

    /// <summary>Grows with whatever a copy on the device says.</summary>
    public int Stamp { get; init; }

    /// <summary>This tab's own changes, as <see cref="Lineage"/> counts them.</summary>
    public int Changes { get; init; }

    /// <summary>What <see cref="Mine"/> goes on from.</summary>
    public Lineage Lineage { get; init; } = Lineage.None;

    /// <summary>A change that holds once the device has it.</summary>
    public T? Pending { get; init; }

    /// <summary>The last change was refused, because another tab went on first.</summary>
    public bool IsElsewhere { get; init; }

    // This device.

    /// <summary>
    /// The copy on this device that is known to hold <see cref="Mine"/> as it was at <see cref="HeldEdit"/>, and the stamp it had here.
    /// </summary>
    public Copy<T>? Held { get; init; }

    /// <summary>The edit that <see cref="Held"/> is of; −1 where nothing is held.</summary>
    public int HeldEdit { get; init; } = -1;

    /// <summary>The stamp that <see cref="Held"/> had; −1 where nothing is held.</summary>
    public int HeldStamp { get; init; } = -1;

    /// <summary>The device is reading or writing.</summary>
    public bool DeviceIsBusy { get; init; }

    /// <summary>The device is being read.</summary>
    public bool IsLooking { get; init; }

    /// <summary>What is being written may be gone again.</summary>
    public bool WasCleared { get; init; }

    /// <summary>Another tab has written: the copies are to be read.</summary>
    public bool LooksAgain { get; init; }

    /// <summary>Why the device keeps nothing, in words; null where it does.</summary>
    public string? DeviceWhy { get; init; }

    /// <summary>After a refusal, until something happens or a while has passed.</summary>
    public bool DeviceRests { get; init; }

    /// <summary>
    /// The device was cleared: nothing is put there again before the host has answered that this browser is still signed in.
    /// </summary>
    public bool AwaitsHost { get; init; }

    // The host.

    /// <summary>The picture beside the text, which the host has already, is another one.</summary>
    public bool IsRedrawn { get; init; }

    /// <summary>See <see cref="Copy{T}.Etag"/>, of <see cref="Mine"/>.</summary>
    public string? Etag { get; init; }

    /// <summary>See <see cref="Copy{T}.Made"/>, of <see cref="Mine"/>.</summary>
    public string? Made { get; init; }

    /// <summary>What the host had under these names it has no more, whatever a copy says.</summary>
    public ImmutableArray<string> LostMades { get; init; } = [];

    /// <summary><see cref="Made"/> of a copy about which the host is asked.</summary>
    public string? AskedMade { get; init; }

    /// <summary>See <see cref="Copy{T}.Includes"/>, of <see cref="Mine"/>.</summary>
    public ImmutableArray<string> Includes { get; init; } = [];

    /// <summary>
    /// Texts that <see cref="Mine"/> has gone through since the host's and that other tabs may have taken from the device.
    /// </summary>
    public ImmutableArray<T> Earlier { get; init; } = [];

    /// <summary>The edit that the host has under <see cref="Etag"/>.</summary>
    public int SentEdit { get; init; } = -1;

    /// <summary>The host was asked or sent something, and has not answered.</summary>
    public bool HostIsBusy { get; init; }

    /// <summary>The edit of which the device has been told that it will be sent.</summary>
    public int IntendedEdit { get; init; } = -1;

    /// <summary>The page is going out of view.</summary>
    public bool IsLeaving { get; init; }

    /// <summary>The edit on its way to the host; missing where none is.</summary>
    public int? SendingEdit { get; init; }

    /// <summary>Something else than typing has changed <see cref="Mine"/> while it was on its way.</summary>
    public bool WasReplaced { get; init; }

    /// <summary>The pause after the last change is over: the host is to be told.</summary>
    public bool IsDue { get; init; }

    /// <summary>The host is to be asked for its text.</summary>
    public bool AsksHost { get; init; }

    /// <summary>Of the last answer.</summary>
    public HostTrouble Trouble { get; init; }

    /// <summary>The host's words to <see cref="HostTrouble.Refused"/>.</summary>
    public string HostWhy { get; init; } = "";

    /// <summary>That failed one after another, since one that did not.</summary>
    public int Tries { get; init; }

    /// <summary>
    /// What <see cref="Etag"/> was when the host was last asked for its text: an answer may be older than what is known by now.
    /// </summary>
    public string? AskedEtag { get; init; }

    /// <summary>A text of the host that would be a conflict, unless another tab of this device knows of it.</summary>
    public HostHas<T>? Doubted { get; init; }

    // Others.

    /// <summary>In a conflict, the other text; missing where there is none.</summary>
    public OtherText<T>? Theirs { get; init; }

    /// <summary>The conflict is to end with the other text, once the device was looked at for what has become of it.</summary>
    public bool IsYielding { get; init; }

    /// <summary>Until something is changed here by hand.</summary>
    public Yielding? Yielded { get; init; }

    /// <summary>Missing where the text in view was seen.</summary>
    public Replaced<T>? Unseen { get; init; }

    /// <summary>Who this tab was before it was reloaded; missing in a new one.</summary>
    public string? WriterBefore { get; init; }

    /// <summary>The text in view was written or chosen in this tab, also before it was reloaded.</summary>
    public bool IsOwn { get; init; }

    /// <summary>While opening: what the device has, and what the host answered.</summary>
    public ImmutableArray<Copy<T>>? Found { get; init; }

    /// <summary>Missing until it answered.</summary>
    public HostSaid<T>? HostSaid { get; init; }

    /// <summary>While opening: what has not answered by now is waited for no longer.</summary>
    public bool IsImpatient { get; init; }

    /// <summary>The last alarm that was set of each kind.</summary>
    public ImmutableDictionary<AlarmKind, int> Alarms { get; init; } = ImmutableDictionary<AlarmKind, int>.Empty;

    /// <summary>The host has the text in view.</summary>
    public bool IsSent => SentEdit == Edit && Mine is not null;

    /// <summary>This device has the text in view.</summary>
    public bool IsHeld => HeldEdit == Edit && Mine is not null;

    /// <summary>What the page says of where the last change is.</summary>
    public SaveState Shown(KeepingRules<T> rules) => this switch
    {
        { Theirs: not null } => SaveState.Conflict,
        { IsElsewhere: true } => SaveState.Elsewhere,
        { Stage: Stage.Closed } => SaveState.Failed,
        { IsSent: true } => SaveState.Saved,
        { IsHeld: false, DeviceWhy: null } => SaveState.Saving,
        // Trying again in the background changes no word.
        { SendingEdit: not null, Trouble: HostTrouble.None or HostTrouble.Missing } => SaveState.Saving,
        { IsHeld: false } => SaveState.Failed,
        { Trouble: HostTrouble.None or HostTrouble.Missing } when !rules.KeepsFirst && rules.GoesToHost(Mine!) => SaveState.Saving,
        _ => SaveState.OnDevice,
    };

    /// <summary>Nothing is under way, and nothing will be until something happens or an alarm rings.</summary>
    public bool IsAtRest => !DeviceIsBusy && !HostIsBusy && !LooksAgain && !IsYielding && !AsksHost && Pending is null;

    /// <summary>The text in view goes on from what the host has under an ETag; false for null.</summary>
    public bool GoesOnFrom(string? etag) => etag is not null && (etag == Etag || Includes.Contains(etag));
}
