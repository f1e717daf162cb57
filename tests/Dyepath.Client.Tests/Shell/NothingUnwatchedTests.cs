using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Dyepath.Client.Tests.Shell;

/// <summary>Work that nobody waits for fails unheard, unless it goes through the two places that report it.</summary>
public sealed partial class NothingUnwatchedTests
{
    private static readonly string[] Projects = ["Dyepath.Client", "Dyepath.Workspace"];

    /// <summary>What keeps texts turns every fault into a state of saving.</summary>
    private static readonly string[] Own = ["/Keeping/"];

    [Fact]
    public void WhatIsBegunWithoutBeingAwaitedIsWatched()
    {
        var found = Sources().SelectMany(file => File.ReadLines(file).Select((line, i) => (Line: line.Trim(), Place: $"{Path.GetFileName(file)}:{i + 1}")))
            .Where(l => Unwatched().IsMatch(l.Line) && !Watched().IsMatch(l.Line)).Select(l => $"{l.Place}: {l.Line}");
        Assert.Empty(found);
    }

    [Fact]
    public void TheRuleSeesWhatItForbids()
    {
        foreach (var line in (string[])["private async void Load()", "_ = Send();", "_ = InvokeAsync(() => Pressed(name));", "InvokeAsync(Take);", "InvokeAsync(async () => await Load());"])
            Assert.True(Unwatched().IsMatch(line) && !Watched().IsMatch(line), line);
    }

    private static IEnumerable<string> Sources([CallerFilePath] string here = "")
    {
        var sources = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../../src"));
        return Projects
            .SelectMany(project => Directory.EnumerateFiles(Path.Combine(sources, project), "*.*", SearchOption.AllDirectories))
            .Where(f => f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))
            .Where(f => !Own.Any(own => f.Contains(own, StringComparison.Ordinal)));
    }

    /// <summary>A call whose task is dropped, or whose exceptions nobody can catch.</summary>
    [GeneratedRegex(@"\basync void\b|(^|\s|\()_ = [\w.]+\(|(^|[;{]\s*|=> )InvokeAsync\((?!StateHasChanged\))")]
    private static partial Regex Unwatched();

    /// <summary>The helpers themselves, and calls that are awaited, returned or handed to them.</summary>
    [GeneratedRegex(@"public async void Watch\(Func<Task> work\)|protected void Start\(Func<Task> work\) =>|await InvokeAsync|Watch\(\(\) => InvokeAsync|InvokeAsync\(Recover\)")]
    private static partial Regex Watched();
}
