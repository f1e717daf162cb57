using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Tests.Makings;

/// <summary>The demo's tunic under way.</summary>
internal static class Pieces
{
    public static Project Project { get; } = ProjectReader.Read(DemoProject.Utf8).Project!;

    /// <param name="rows">Rows in the log, one a minute.</param>
    /// <param name="counted">In the maker's own yarn.</param>
    public static string Text(int rows, string size = "M", Project? project = null, ImmutableArray<ImmutableArray<int>> counted = default)
    {
        var begun = DateTimeOffset.FromUnixTimeMilliseconds(1_764_000_000_000);
        var making = MakingDocument.Begin(project ?? Project, size) with
        {
            Counted = counted.IsDefault ? [] : counted,
            Log = [.. Enumerable.Range(0, rows).Select(row => new Entry(EntryKind.Row, begun.AddMinutes(row)))],
        };
        return Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making));
    }
}
