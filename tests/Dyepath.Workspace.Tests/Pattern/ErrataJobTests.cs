using System.Text;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests.Pattern;

public sealed class ErrataJobTests
{
    private static readonly Plan Now = PlanOf(Documents.Demo());

    private readonly BookletFiles _files = new(new JobsHere());

    [Fact]
    public async Task The_file_is_what_the_comparison_says()
    {
        var earlier = Documents.Demo();
        earlier.Set("words.notes", "Deep water begins the back.");
        var said = new List<string>();
        var (file, why) = await _files.ErrataAsync(earlier.Text, Now, null, said.Add, TestContext.Current.CancellationToken);
        Assert.Equal("", why);
        Assert.Equal(("tideline-errata.txt", "text/plain"), (file!.Name, file.Type));
        Assert.Equal(Errata.Of(PlanOf(earlier), Now, TestContext.Current.CancellationToken).Text(), Encoding.UTF8.GetString(file.Bytes));
        Assert.Contains("Working the earlier version out…", said);
        Assert.Equal("Comparing the two, line by line…", said[^1]);
    }

    [Theory]
    [InlineData("title", "", "title")]
    [InlineData("garment.motif", "bands", "no pattern")]
    public async Task An_earlier_version_without_a_pattern_says_why(string place, string value, string words)
    {
        var earlier = Documents.Demo();
        earlier.Set(place, value);
        var (file, why) = await _files.ErrataAsync(earlier.Text, Now, null, _ => { }, TestContext.Current.CancellationToken);
        Assert.Null(file);
        Assert.Contains(words, why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_document_is_told_and_not_thrown()
    {
        var (file, why) = await _files.ErrataAsync("no JSON", Now, null, _ => { }, TestContext.Current.CancellationToken);
        Assert.Null(file);
        Assert.NotEmpty(why);
    }

    [Fact]
    public async Task It_can_be_stopped_and_a_fault_of_the_second_runtime_is_one_of_the_job()
    {
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _files.ErrataAsync(Documents.Demo().Text, Now, null, _ => { }, stop.Token));
        await Assert.ThrowsAsync<JobException>(() => new BookletFiles(new JobsThatFail(new JobException("no")))
            .ErrataAsync(Documents.Demo().Text, Now, null, _ => { }, TestContext.Current.CancellationToken));
    }

    private static Plan PlanOf(ProjectDocument document) =>
        GarmentPlanner.Plan(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Project!, TestContext.Current.CancellationToken).Plan!;
}
