using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>Projects of every kind that the pattern writer must be able to put into words.</summary>
internal static class Patterns
{
    private static readonly SizeSelection OneSize = new(null, [], [], null, [], []);

    public static Project Named(string name) => name switch
    {
        "tunic" => Tideline,
        "tunic in three sizes" => Small(Tideline),
        "continued seams" => Tideline.With(g => g with { Seams = g.Seams with { Extension = SeamExtension.Continued } }),
        "worked up" => Small(Tideline.Directed(Direction.Up)),
        "side bands" =>
            (Tideline.Directed(Direction.Up).With(g => g with { Grading = g.Grading with { SideBands = true, UnequalPanels = true } })) with
            {
                Companion = Tideline.Companion! with { Uses = [CompanionUse.PlainPieces, CompanionUse.Edgings] },
            },
        "alternating rows" => Tideline.With(g => g with { Grading = g.Grading with { AlternatingRows = true } }),
        "double crochet" => Small(Stitched(FabricStitch.DoubleCrochet, 13, 8, 12.1)),
        "half double crochet" => Small(Stitched(FabricStitch.HalfDoubleCrochet, 13.5, 10.5, 9.3)),
        "linen stitch" => Small(Stitched(FabricStitch.Linen, 16, 18, 5)),
        "free" => Small(Tideline with
        {
            Fabric = Tideline.Fabric with { Keeping = ColourKeeping.Free, SectionStitches = null, TurnCost = null },
        }),
        "other end, no waste" => Tideline with
        {
            Yarn = Tideline.Yarn with { FromOtherEnd = true },
            Companion = Tideline.Companion! with { Uses = [CompanionUse.Foundation, CompanionUse.Seams] },
        },
        "plain sleeves" => Small(Tideline.WithTop(t => t with { Sleeves = t.Sleeves! with { Pooled = false } })) with
        {
            Companion = Tideline.Companion! with { Uses = [CompanionUse.PlainPieces] },
        },
        "cowl in rounds" => Cowl(Working.Rounds, MotifKind.EvenSlant),
        "cowl turned round" => Cowl(Working.RoundsTurned, MotifKind.Argyle),
        "spiral cowl" => Cowl(Working.Spiral, MotifKind.Columns),
        "sewn cowl" => Cowl(Working.Turned, MotifKind.Argyle),
        "sideways cowl" => Cowl(Working.Turned, MotifKind.Argyle).Directed(Direction.Sideways),
        "double crochet cowl" =>
            Cowl(Working.Rounds, MotifKind.EvenSlant) with { Fabric = Stitched(FabricStitch.DoubleCrochet, 13, 8, 12.1).Fabric },
        "linen cowl in rounds" => LinenCowl(Working.Rounds, MotifKind.Columns, 60),
        "linen cowl turned round" => LinenCowl(Working.RoundsTurned, MotifKind.Argyle, 60),
        "linen spiral cowl" => LinenCowl(Working.Spiral, MotifKind.EvenSlant, 60),
        "child's pullover" => Tideline.WithTop(t => t with { IsTunic = false, BelowWaist = Cm(8) }) with
        {
            Sizes = new SizeSelection("child", ["6", "8", "10"], [], "8", [], []),
        },
        "V with inserts" => Small(Tideline.WithTop(t => t with { IsTunic = false, Sleeves = null, Neck = new Neck(NeckForm.VInsert, null) })
            .With(g => g with
            {
                Edgings = [new(EdgingPlace.Neck, "sc", null)],
                Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
            })) with
        {
            Companion = Tideline.Companion! with { Uses = [CompanionUse.PlainPieces, CompanionUse.Seams] },
        },
        "unedged" => Tideline.With(g => g with { Edgings = [] }),
        "blanket" => (Tideline with { Sizes = OneSize, Companion = null }).With(g => g with
        {
            Shape = new Wrap(Cm(90), Cm(120), IsBlanket: true),
            Edgings = [new(EdgingPlace.Border, "shell", null)],
        }),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such pattern."),
    };

    public static ImmutableArray<string> Names { get; } =
    [
        "tunic", "worked up", "side bands", "alternating rows", "double crochet", "half double crochet", "linen stitch", "free",
        "other end, no waste", "plain sleeves", "cowl in rounds", "cowl turned round", "spiral cowl", "sewn cowl", "sideways cowl",
        "double crochet cowl", "linen cowl in rounds", "linen cowl turned round", "linen spiral cowl", "child's pullover", "V with inserts",
        "blanket",
    ];

    public static TheoryData<string> Data() => [.. Names];

    private static Project Small(Project project) => project with { Sizes = project.Sizes with { Sizes = ["S", "M", "L"], Base = "M" } };

    private static Project Stitched(FabricStitch stitch, double stitches, double rows, double centimetresEach) => Tideline with
    {
        Fabric = Tideline.Fabric with
        {
            Stitch = stitch,
            TurnCost = null,
            Swatch = new Swatch(
                5.5, new Gauge(stitches, rows, Cm(10)), null, null, [new YarnUsed(20, Length.FromCentimetres(20 * centimetresEach))]),
        },
    };

    public static Project LinenCowl(Working working, MotifKind motif, double around) =>
        Cowl(working, motif, around) with { Fabric = Stitched(FabricStitch.Linen, 16, 18, 5).Fabric };

    private static Project Cowl(Working working, MotifKind motif, double around = 60) => (Tideline with { Sizes = OneSize }).With(g => g with
    {
        Shape = new Cowl(Cm(around), Cm(30)),
        Working = working,
        Direction = null,
        Motif = motif,
        Edgings = [new(EdgingPlace.Brims, "sc", 2)],
    });
}
