namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>The promises of <see cref="KeepingLawTests"/> over a second's worth of interleavings of other seeds: what is broken often shows here first.</summary>
public sealed class KeepingSampleTests
{
    private const int Cases = 400;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Nothing_that_was_shown_as_kept_is_lost_and_every_conflict_ends(bool isLog) =>
        KeepingLawTests.Hold(isLog, new Trials(Devices: 2, Tabs: 3, DevicesFail: true, HostIsEmptied: true, OneWriter: false), seed: 11, Cases);

    [Theory]
    [InlineData(false, 1, 3)]
    [InlineData(false, 2, 3)]
    [InlineData(true, 2, 3)]
    public void There_is_no_conflict_without_two_writers(bool isLog, int devices, int tabs) =>
        KeepingLawTests.Hold(isLog, new Trials(devices, tabs, DevicesFail: false, HostIsEmptied: false, OneWriter: true), seed: 12, Cases);

    [Fact]
    public void One_choice_ends_the_conflict_of_two_tabs() => KeepingLawTests.Hold(
        isLog: false, new Trials(Devices: 1, Tabs: 2, DevicesFail: false, HostIsEmptied: false, OneWriter: false, OneChoice: true), seed: 15, Cases);
}
