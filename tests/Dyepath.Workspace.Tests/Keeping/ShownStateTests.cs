using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>What a page says of where the last change is, in every state that a text can be in.</summary>
public sealed class ShownStateTests
{
    private static readonly WordRules Text = new(IsLog: false), Log = new(IsLog: true);

    /// <summary>Open, changed, and neither here nor there.</summary>
    private static readonly KeepingState<string> Typed = new() { Writer = "a", Stage = Stage.Open, Mine = "0", Edit = 3 };

    private static readonly KeepingState<string> Held = Typed with { HeldEdit = 3 };

    private static readonly OtherText<string> Other = new("1", Lineage.None, null, null, false, []);

    [Fact]
    public void A_choice_comes_first_then_what_is_elsewhere_or_closed()
    {
        Assert.Equal(SaveState.Conflict, (Held with { Theirs = Other, IsElsewhere = true, SentEdit = 3 }).Shown(Text));
        Assert.Equal(SaveState.Elsewhere, (Held with { IsElsewhere = true, SentEdit = 3 }).Shown(Text));
        Assert.Equal(SaveState.Failed, (Held with { Stage = Stage.Closed, SentEdit = 3 }).Shown(Text));
        Assert.Equal(SaveState.Saved, (Held with { SentEdit = 3 }).Shown(Text));
        Assert.Equal(SaveState.Saved, (Typed with { SentEdit = 3, DeviceWhy = "full" }).Shown(Log));
    }

    [Theory]
    [InlineData(HostTrouble.None, true)]
    [InlineData(HostTrouble.Missing, true)]
    [InlineData(HostTrouble.Away, false)]
    [InlineData(HostTrouble.Busy, false)]
    [InlineData(HostTrouble.SignIn, false)]
    [InlineData(HostTrouble.Refused, false)]
    [InlineData(HostTrouble.Damaged, false)]
    public void What_is_on_its_way_is_being_saved_unless_the_host_has_failed_it(HostTrouble trouble, bool isFine)
    {
        // Not yet on the device, which may still take it.
        Assert.Equal(SaveState.Saving, (Typed with { Trouble = trouble }).Shown(Text));
        // The device took it not: the host may, or nobody did.
        Assert.Equal(isFine ? SaveState.Saving : SaveState.Failed, (Typed with { DeviceWhy = "full", SendingEdit = 3, Trouble = trouble }).Shown(Text));
        Assert.Equal(SaveState.Failed, (Typed with { DeviceWhy = "full", Trouble = trouble }).Shown(Text));
        // On the device: a project goes on to the host by itself, a log is safe where it is until it is sent.
        Assert.Equal(isFine ? SaveState.Saving : SaveState.OnDevice, (Held with { Trouble = trouble }).Shown(Text));
        Assert.Equal(SaveState.OnDevice, (Held with { Trouble = trouble }).Shown(Log));
        Assert.Equal(isFine ? SaveState.Saving : SaveState.OnDevice, (Held with { Trouble = trouble, SendingEdit = 3 }).Shown(Log));
        Assert.Equal(SaveState.OnDevice, (Held with { Trouble = trouble }).Shown(new Kept()));
    }

    [Fact]
    public void A_text_is_sent_or_held_only_as_it_is_now()
    {
        Assert.False((Typed with { SentEdit = 2 }).IsSent || (Typed with { HeldEdit = 2 }).IsHeld);
        Assert.False((Typed with { SentEdit = 3, HeldEdit = 3, Mine = null }).IsSent || (Typed with { SentEdit = 3, HeldEdit = 3, Mine = null }).IsHeld);
        Assert.True((Typed with { SentEdit = 3 }).IsSent && Held.IsHeld);
        Assert.False(Typed.IsSent || Typed.IsHeld || new KeepingState<string> { Writer = "a" }.IsSent);
    }

    [Fact]
    public void It_is_at_rest_while_nothing_is_under_way()
    {
        Assert.True(Typed.IsAtRest);
        Assert.All(
            [
                Typed with { DeviceIsBusy = true }, Typed with { HostIsBusy = true }, Typed with { LooksAgain = true }, Typed with { IsYielding = true },
                Typed with { AsksHost = true }, Typed with { Pending = "0 1" },
            ],
            s => Assert.False(s.IsAtRest));
    }

    [Fact]
    public void It_goes_on_from_the_hosts_text_or_from_one_that_is_in_it()
    {
        var state = Typed with { Etag = "\"e\"", Includes = ["\"f\""] };
        Assert.True(state.GoesOnFrom("\"e\"") && state.GoesOnFrom("\"f\""));
        Assert.False(state.GoesOnFrom("\"g\"") || state.GoesOnFrom(null) || Typed.GoesOnFrom(null));
        var copy = new Copy<string>("a", 1, Lineage.None, "0", default) { Etag = "\"e\"", IsSent = false, Includes = ["\"f\""] };
        Assert.True(copy.GoesOnFrom("\"e\"") && copy.GoesOnFrom("\"f\""));
        Assert.False(copy.GoesOnFrom("\"g\"") || (copy with { Etag = null }).GoesOnFrom(null));
        // What only the host has is known by its ETag, what another tab wrote by its changes.
        Assert.True((Other with { Etag = "\"e\"" }).IsGoneOnWithIn(copy));
        Assert.False((Other with { Etag = "\"g\"" }).IsGoneOnWithIn(copy));
        Assert.True((Other with { Lineage = Lineage.None.With("b", 1) }).IsGoneOnWithIn(copy with { Lineage = Lineage.None.With("b", 2) }));
        Assert.False((Other with { Lineage = Lineage.None.With("b", 2), Etag = "\"e\"" }).IsGoneOnWithIn(copy with { Lineage = Lineage.None.With("b", 1) }));
    }

    [Fact]
    public void Usual_waits_are_what_docs_promise()
    {
        KeepingRules<Workspace.Store.ProjectText> project = new Workspace.Store.ProjectKeeping();
        Assert.Equal((700.0, 10.0, 500.0, 3.0, 10.0), (project.Quiet.TotalMilliseconds, project.Deference.TotalSeconds, project.Glance.TotalMilliseconds, project.Patience.TotalSeconds, project.DeviceRest.TotalSeconds));
        Assert.Equal([2, 2, 5, 15, 30, 30], new[] { 0, 1, 2, 3, 4, 9 }.Select(n => project.Rest(n).TotalSeconds));
        Assert.Equal((false, false, true), (project.KeepsFirst, project.OpensFromDevice, project.SaysWhatItSends));
        KeepingRules<Workspace.Making.Store.Piece> piece = new Workspace.Making.Store.PieceKeeping();
        Assert.Equal((4.0, true, true, false), (piece.Quiet.TotalSeconds, piece.KeepsFirst, piece.OpensFromDevice, piece.SaysWhatItSends));
    }

    /// <summary>Of a sort that goes to no host.</summary>
    private sealed record Kept : KeepingRules<string>
    {
        public override TimeSpan Quiet => TimeSpan.Zero;

        public override bool KeepsFirst => false;

        public override bool OpensFromDevice => true;

        public override bool Same(string one, string other) => one == other;

        public override string? Join(string one, string other) => null;

        public override bool WritesOver(string before, string shown, string now) => false;

        public override string EtagOf(string content) => content;

        public override bool GoesToHost(string content) => false;
    }
}
