using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Documents that the reader accepts and that ask for as much work as a document can; made from a seed, not kept as files.</summary>
internal static class HeavyProjects
{
    public static ImmutableArray<string> Names { get; } =
        ["counted", "slips", "sizes", "bands", "starts", "tall", "wide", "none", "blanket", "charts"];

    public static Project Of(string name)
    {
        var random = new Random(name.Length * 7919);
        var project = name switch
        {
            // Every list of counts as long as it may be: 1.6 MB.
            "counted" => With(64, 40, 200, random, (s, r) => 3 + (s * 7 % 5) + random.Next(2)),
            // A colour is missed in every third repeat, so that the record falls apart into many runs.
            "slips" => With(64, 12, 200, random, (s, r) => 3 + (s + r / 3) * 7 % 23),
            _ => With(name is "starts" or "tall" ? 64 : 12, 1, 3, random, (s, r) => name is "starts" or "tall" ? 60 : 4 + s % 3),
        };
        return name switch
        {
            "counted" or "slips" => project,
            "sizes" => Sized(project, 40, 60, 180),
            "bands" => Sized(project, 40, 60, 180) with { Garment = project.Garment with { Grading = Everything } },
            "starts" => Sized(project, 40, 90, 140, 30, 30),
            "tall" => Sized(project, 40, 40, 44, 40, 190) with { Garment = project.Garment with { Direction = Direction.Up, Shape = ((BoxyTop)project.Garment.Shape) with { BelowWaist = Length.FromCentimetres(100) } } },
            "wide" => Sized(project, 40, 100, 900, 30, 30),
            "none" => Sized(project, 40, 60, 400, 40, 40) with { Garment = project.Garment with { Grading = Everything, Motif = MotifKind.Shallow } },
            "blanket" => Blanket(project, 900, 900),
            _ => Sized(project, 40, 60, 180, 40, 60),
        };
    }

    private static GradingChoice Everything { get; } = new(null, true, true, true, true, 4, 4);

    private static Project With(int sections, int balls, int repeats, Random random, Func<int, int, int> count)
    {
        var demo = ProjectReader.Read(DemoProject.Utf8).Project!;
        return demo with
        {
            Photos = [],
            Yarn = demo.Yarn with
            {
                Ball = new Ball(Length.FromMetres(800), Mass.FromGrams(200)),
                Sections = [.. Enumerable.Range(0, sections).Select(s => new YarnSection(
                    $"colour {s}", new Srgb((byte)random.Next(256), (byte)random.Next(256), (byte)random.Next(256))))],
                Counted =
                [
                    .. Enumerable.Range(0, balls).Select(b => new CountedBall($"b{b}",
                        [.. Enumerable.Range(0, repeats).Select(r => Enumerable.Range(0, sections).Select(s => count(s, r)).ToImmutableArray())])),
                ],
            },
            Fabric = demo.Fabric with { SectionStitches = null, Swatch = demo.Fabric.Swatch with { YarnUsed = [] } },
            Garment = demo.Garment with { Motif = MotifKind.Argyle, Edgings = [], Starts = ImmutableSortedDictionary<string, int>.Empty },
            Companion = demo.Companion ?? new CompanionYarn("plain", new Srgb(0, 0, 0), demo.Yarn.Ball, [CompanionUse.PlainPieces]),
        };
    }

    private static Project Sized(Project project, int sizes, double from, double to, double stitches = 20, double rows = 24) => project with
    {
        Fabric = project.Fabric with
        {
            Swatch = project.Fabric.Swatch with { Worked = new Gauge(stitches, rows, Length.FromCentimetres(10)), Blocked = null, Hung = null },
        },
        Sizes = new SizeSelection(null, [],
        [
            .. Enumerable.Range(0, sizes).Select(i => new OwnSize($"s{i}", Body(from + i * (to - from) / sizes))),
        ], null, [], []),
    };

    private static ImmutableSortedDictionary<string, Length> Body(double bust) => new Dictionary<string, double>
    {
        ["bust"] = bust,
        ["hip"] = bust + 5,
        ["backWaistLength"] = 45,
        ["armholeDepth"] = 18 + bust / 40,
        ["upperArm"] = 25 + bust / 20,
        ["centreBackNeckToCuff"] = Math.Max(80, bust / 2 + 40),
    }.ToImmutableSortedDictionary(m => m.Key, m => Length.FromCentimetres(m.Value), StringComparer.Ordinal);

    private static Project Blanket(Project project, double width, double length) => Sized(project, 40, 60, 180, 10, 50) with
    {
        Garment = project.Garment with { Shape = new Wrap(Length.FromCentimetres(width), Length.FromCentimetres(length), true), Seams = new SeamChoice(SeamExtension.Continued, 1, 1), Working = Working.Turned },
    };
}
