using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Sizing;

/// <summary>The charts that come with the tool.</summary>
public static class SizeCharts
{
    /// <summary>Those of the Craft Yarn Council, then letter codes, then girths.</summary>
    public static ImmutableArray<SizeChart> All { get; } = [.. CraftYarnCharts.All, .. LetterCodeCharts.All, .. GirthCharts.All];

    /// <summary>Finds a chart by its id: <c>women</c>, <c>men</c>, <c>youth</c>, <c>child</c>, <c>baby</c>,
    /// <c>en13402-3-women</c>, <c>en13402-3-men</c>, <c>astm-d5585-straight</c>, <c>astm-d5585-curvy</c>.</summary>
    public static bool TryFind(string id, [NotNullWhen(true)] out SizeChart? chart)
    {
        chart = All.FirstOrDefault(candidate => candidate.Id == id);
        return chart is not null;
    }
}
