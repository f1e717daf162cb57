using System.Globalization;
using System.Text;
using Dyepath.Faults.Sources;
using Dyepath.Faults.Trying;

namespace Dyepath.Faults;

/// <summary>Results for people.</summary>
internal static class Report
{
    public static string Line(Fault fault) =>
        string.Create(CultureInfo.InvariantCulture, $"{(fault.Number < 0 ? "" : $"{fault.Number} ")}{Path.GetRelativePath(Target.Root, fault.Path)}:{fault.Line} {fault.Kind}: {fault.What}");

    public static string Line(Result result) => $"{(result.CaughtBy is { } test ? $"caught by {test}" : result.Reached ? "SURVIVED" : "NOT REACHED")}: {Line(result.Fault)}";

    /// <summary>By folder: how many were planted and what became of them.</summary>
    public static string Table(IReadOnlyList<Result> results, Target target)
    {
        var table = new StringBuilder("| folder | planted | caught | survived | never reached | caught, % |\n| --- | --- | --- | --- | --- | --- |\n");
        foreach (var folder in results.GroupBy(r => target.FolderOf(r.Fault.Path)!).OrderBy(g => g.Key, StringComparer.Ordinal))
            table.Append(Row(folder.Key, [.. folder]));
        return table.Append(Row("all", results)).ToString();
    }

    public static string Survivors(IReadOnlyList<Result> results) => string.Join('\n', results.Where(r => r.CaughtBy is null)
        .OrderBy(r => r.Fault.Path, StringComparer.Ordinal).ThenBy(r => r.Fault.Line).Select(Line));

    private static string Row(string name, IReadOnlyList<Result> results)
    {
        var caught = results.Count(r => r.CaughtBy is not null);
        var missed = results.Count(r => !r.Reached);
        return string.Create(CultureInfo.InvariantCulture, $"| {name} | {results.Count} | {caught} | {results.Count - caught - missed} | {missed} | {100.0 * caught / Math.Max(1, results.Count):0} |\n");
    }
}
