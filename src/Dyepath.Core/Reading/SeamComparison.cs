using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Reading;

/// <summary>The words that say at which seams the colours meet, against how far they jump there in the plan.</summary>
internal static class SeamComparison
{
    private const string Section = "MAKING UP";

    public static void Compare(Plan plan, SizePlan size, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var opened = plan.Construction.Joins.Where(j => j.Kind == JoinKind.Opening).Select(j => j.Id).ToArray();
        var seams = size.Seams.Where(s => s.Extension is not null && !opened.Contains(s.Id)).ToArray();
        var said = read.Lines.Where(l => l.Section == Section).Select(l => Own(l.Line, size.Name)).OfType<string>().ToArray();
        if (said.Length != (seams.Length > 0 ? 1 : 0))
        {
            notes.Add(($"{Section}, {size.Name}", $"the text says {said.Length} times where colours meet"));
            return;
        }
        if (said is not [var words])
            return;
        foreach (var seam in seams)
        {
            var how = seam.PhaseJump >= seam.Chance / 1.5 && seam.Chance > 0 ? "do not meet at" : seam.PhaseJump > 1 ? "jump a little at"
                : seam.Match < 0.5 ? "meet to within a stitch at" : "meet at";
            var named = words.TrimEnd('.').Split("; ").Where(part => part.StartsWith($"{how} ", StringComparison.Ordinal))
                .SelectMany(part => part[(how.Length + 1)..].Replace(" and the ", ", the ", StringComparison.Ordinal).Split(", "));
            var name = seam.Id is SeamId.LeftSleeve or SeamId.RightSleeve ? $"the underside of the {seam.Where}" : $"the {seam.Where}";
            if (!named.Contains(name))
                notes.Add(($"{Section}, {size.Name}", $"colours {how} {name}, and the text says “{words}”"));
        }
    }

    /// <summary>What is said for one size, without its name; null where a line says no such thing, or says it for others.</summary>
    private static string? Own(string line, string size)
    {
        const string lead = "Colours ";
        if (line.StartsWith(lead, StringComparison.Ordinal))
            return line[lead.Length..];
        var at = line.IndexOf($": {lead}", StringComparison.Ordinal);
        return at >= 0 && line.StartsWith("Size", StringComparison.Ordinal) && line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..at].Split(", ").Contains(size) ? line[(at + 2 + lead.Length)..] : null;
    }
}
