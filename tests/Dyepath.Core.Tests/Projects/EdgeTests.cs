using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Projects.Description;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Projects;

/// <summary>
/// What the description of a document allows and what the computing accepts are one range: documents at the ends of every range, one at a
/// time and together, go through all that is worked out from a document. Each gives something or words, nothing throws.
/// </summary>
public sealed class EdgeTests
{
    private static readonly BaseDocuments Bases = new();

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(6)]
    public void One_value_at_an_end_of_its_range(int which)
    {
        var broken = new List<string>();
        var accepted = 0;
        // In part, another twelfth from each document.
        var step = Extent.Of(12, 1);
        foreach (var (i, edge) in Edges.Of(ProjectDescription.Project, Bases[which]).Index())
        {
            if (i % step == which % step)
                accepted += Tried(edge.Document, edge.Place, broken) ? 1 : 0;
        }
        Assert.True(broken.Count == 0, $"{broken.Count} places\n{string.Join('\n', broken.Take(40))}");
        Assert.True(accepted > 60 / step, $"only {accepted} documents were read");
    }

    [Fact]
    public void Law_several_values_at_ends_of_their_ranges()
    {
        var broken = new List<string>();
        var (cases, accepted) = (Extent.Of(14, 100), 0);
        Gen.Select(Gen.Int[0, Bases.Count - 1], Gen.Int[2, 6], Gen.Int[0, int.MaxValue]).Holds(
            (which, values, seed) =>
            {
                var random = new Random(seed);
                var (document, places) = (Bases[which], new List<string>());
                for (var i = 0; i < values; i++)
                {
                    // A change that the reader refuses is left out, so that most documents are read in the end.
                    var edges = Edges.Of(ProjectDescription.Project, document).ToArray();
                    var edge = edges[random.Next(edges.Length)];
                    if (!Read(edge.Document).IsGood)
                        continue;
                    document = edge.Document;
                    places.Add(edge.Place);
                }
                accepted += Tried(document, string.Join("; ", places), broken) ? 1 : 0;
            },
            seed: 4711, cases);
        Assert.True(broken.Count == 0, $"{broken.Count} documents\n{string.Join('\n', broken.Take(40))}");
        Assert.True(accepted > cases * 7 / 10, $"only {accepted} documents were read");
    }

    [Fact]
    public void Pieces_under_way_with_one_value_at_an_end_of_its_range()
    {
        var demo = ProjectReader.Read(DemoProject.Utf8).Project!;
        ImmutableArray<int> counted = [.. demo.Yarn.Sections.Select((_, i) => 3 + i)];
        var making = MakingWriter.WriteUtf8(new MakingDocument(
            demo with { Photos = [] }, "M", [counted, counted], [new Entry(EntryKind.Row, DateTimeOffset.UnixEpoch, 1)]));
        var broken = new List<string>();
        var accepted = 0;
        foreach (var edge in Edges.Of(MakingDescription.Making, Edges.Parse(making)).Where(e => !e.Place.StartsWith(".project.", StringComparison.Ordinal)))
        {
            if (MakingReader.Read(Encoding.UTF8.GetBytes(DocumentPrinter.Print(edge.Document))).Making is not { } read)
                continue;
            accepted++;
            if (Record.Exception(() => Everything.From(read)) is { } fault)
                broken.Add($"{edge.Place}: {fault.GetType().Name} {fault.Message}");
        }
        Assert.True(broken.Count == 0, string.Join('\n', broken));
        Assert.True(accepted > 10, $"only {accepted} documents were read");
    }

    private static ProjectReading Read(DocumentNode document) => ProjectReader.Read(Encoding.UTF8.GetBytes(DocumentPrinter.Print(document)));

    private static bool Tried(DocumentNode document, string place, List<string> broken)
    {
        if (Read(document).Project is not { } project)
            return false;
        if (Record.Exception(() => Everything.From(project)) is { } fault)
            broken.Add($"{place}: {fault.GetType().Name} {fault.Message.ReplaceLineEndings(" ")} {fault.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("Dyepath.Core.", StringComparison.Ordinal) && !l.Contains("Guard", StringComparison.Ordinal) && !l.Contains("Bounds", StringComparison.Ordinal))?.Trim()}");
        return true;
    }

    /// <summary>Documents to begin with: the shapes, ways of working and stitches that lead through different code.</summary>
    private sealed class BaseDocuments
    {
        private readonly DocumentNode[] _all =
        [
            Of(InThreeSizes(Demo())),
            Of(StarterDocument.Project),
            Of(Demo() with { Fabric = Demo().Fabric with { Keeping = ColourKeeping.Free, SectionStitches = null } }),
            Rectangle("\"shape\": \"cowl\", \"circumference\": \"60 cm\", \"height\": \"30 cm\"", "sc"),
            Rectangle("\"shape\": \"wrap\", \"width\": \"40 cm\", \"length\": \"90 cm\"", "linen"),
            Rectangle("\"shape\": \"cowl\", \"circumference\": \"60 cm\", \"height\": \"30 cm\", \"working\": \"turned\"", "dc"),
            Of(InThreeSizes(MeasuredByLength(Demo()))),
            Of(Demo() with
            {
                Sizes = Demo().Sizes with { Overrides = [new FixedNumber("M", "panelStitches", null, 80, "sample"), new FixedNumber("L", "sleeveRows", null, 60, "sample")] },
                Garment = Demo().Garment with { Direction = Direction.Up, Grading = Demo().Garment.Grading with { UnequalPanels = true, AlternatingRows = true, HalfStitchTurn = true } },
            }),
        ];

        public int Count => _all.Length;

        public DocumentNode this[int index] => _all[index];

        private static Project Demo() => ProjectReader.Read(DemoProject.Utf8).Project! with { Photos = [] };

        /// <summary>The ends of every range are the same in few sizes as in many.</summary>
        private static Project InThreeSizes(Project project) => project with { Sizes = project.Sizes with { Sizes = ["XS", "M", "5X"] } };

        private static Project MeasuredByLength(Project project) => project with
        {
            Yarn = project.Yarn with { Counted = [] },
            Fabric = project.Fabric with { Keeping = ColourKeeping.Free, SectionStitches = null },
        };

        private static DocumentNode Of(Project project) => Edges.Parse(ProjectWriter.WriteUtf8(project));

        private static DocumentNode Rectangle(string garment, string stitch)
        {
            var starter = ProjectWriter.Write(StarterDocument.Project);
            var node = (ObjectNode)Edges.Parse(Encoding.UTF8.GetBytes(starter));
            var fabric = ((ObjectNode)node.Find("fabric")!.Value) with { Members = [.. ((ObjectNode)node.Find("fabric")!.Value).Members.Select(m => m.Name == "stitch" ? m with { Value = new TextNode(stitch) } : m)] };
            return node with
            {
                Members =
                [
                    .. node.Members.Where(m => m.Name != "sizes").Select(m => m.Name switch
                    {
                        "garment" => m with { Value = Edges.Parse(Encoding.UTF8.GetBytes($"{{ {garment}, \"motif\": \"bands\" }}")) },
                        "fabric" => m with { Value = fabric },
                        _ => m,
                    }),
                ],
            };
        }
    }
}
