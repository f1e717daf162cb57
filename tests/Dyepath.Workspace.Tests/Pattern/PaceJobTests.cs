using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Tests.Making;

namespace Dyepath.Workspace.Tests.Pattern;

public sealed class PaceJobTests
{
    /// <summary>A step, the chain, then rows of the demo in size M, four minutes each.</summary>
    private static MakingDocument Steady(int rows) => MakingBench.Demo() with
    {
        Log =
        [
            .. new[] { EntryKind.Step, EntryKind.Step }.Select((kind, i) => new Entry(kind, MakingBench.Now.AddMinutes(i))),
            .. Enumerable.Range(1, rows).Select(i => new Entry(EntryKind.Row, MakingBench.Now.AddMinutes(1 + 4 * i))),
        ],
    };

    [Fact]
    public async Task Rows_of_a_log_tell_the_pace()
    {
        var told = await Ask(PaceJob.Order(Steady(30)));
        Assert.Empty(told.Why);
        Assert.Equal((30, "the log of size M"), (told.Pace!.Rows, told.Pace.From));
        Assert.Equal(told.Pace.Low, told.Pace.High, 1e-9);
        Assert.NotNull(PriceNotes.PaceOf(told.Pace));
    }

    [Fact]
    public async Task Too_short_a_log_says_so() =>
        Assert.Equal("It has fewer than 10 rows that were told as they were finished.", (await Ask(PaceJob.Order(Steady(9)))).Why);

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("?")]
    public async Task What_is_no_log_says_so(string order) => Assert.Equal(new PaceReport(null, "It cannot be read."), await Ask(order));

    private static async Task<PaceReport> Ask(string order) =>
        PaceJob.Read(await new JobsHere().RunAsync(PaceJob.Name, order, _ => { }, CancellationToken.None, null));
}
