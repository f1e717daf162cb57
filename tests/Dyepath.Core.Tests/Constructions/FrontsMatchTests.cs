using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>The two fronts of a cardigan are mirror images of each other, so that a neck cut deeper into one is seen at once.</summary>
public sealed class FrontsMatchTests
{
    public static TheoryData<string, NeckForm, Direction> Ways => new MatrixTheoryData<string, NeckForm, Direction>(
        ["women", "child", "men"], [NeckForm.Round, NeckForm.V], [Direction.Up, Direction.Sideways]);

    [Theory]
    [MemberData(nameof(Ways))]
    public void Their_necks_are_as_deep_as_each_other_or_that_is_warned_of(string chart, NeckForm form, Direction direction)
    {
        // In part, one sequence in turn.
        var turn = chart.Length + (int)form + (int)direction;
        foreach (var sections in new int[][] { [4, 5, 6, 3, 4], [7, 5, 6, 3] }.Where((_, i) => Extent.IsWhole || i == turn % 2))
        {
            if (Cardigan(chart, form, direction, sections).Tried().Plan is not { } plan)
                continue;
            var warned = plan.Findings.Any(f => f.Level == FindingLevel.Warning && f.Text.Contains("so that they do not match", StringComparison.Ordinal));
            foreach (var size in plan.Sizes)
            {
                var depths = new[] { PieceId.LeftFront, PieceId.RightFront }
                    .Select(front => size[front].Opening(OpeningId.Neck).Into * (direction == Direction.Up ? plan.RowHeight : plan.StitchWidth).Centimetres)
                    .ToArray();
                Assert.True(
                    warned || depths.Max() - depths.Min() <= 2.55,
                    $"{string.Join(", ", sections)}, {size.Name}: {string.Join(" and ", depths.Select(d => $"{d:0.0}"))} cm");
            }
        }
    }

    private static Project Cardigan(string chart, NeckForm form, Direction direction, int[] sections)
    {
        var project = Begun("cardigan", "sc", true, direction);
        return project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. sections.Select((n, i) => project.Yarn.Sections[i % 4] with { Name = $"colour {i}", Length = Cm(6.2 * n) })],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
            },
            Fabric = project.Fabric with { SectionStitches = [.. sections] },
            Garment = project.Garment with
            {
                Shape = (Cardigan)project.Garment.Shape with { Neck = ((Cardigan)project.Garment.Shape).Neck with { Form = form, BackDepth = Cm(4) } },
            },
            Sizes = project.Sizes with { Chart = chart, Sizes = [], Base = null },
        };
    }
}
