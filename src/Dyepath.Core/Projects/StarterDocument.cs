using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects.Description;
using Dyepath.Core.Projects.Shapes;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Projects;

/// <summary>A document to begin with: a small project whose every field is explained by a comment.</summary>
public static class StarterDocument
{
    /// <summary>A yarn has to have a name: what the pattern calls it until the designer has said which it is.</summary>
    public const string UnnamedYarn = "Variegated yarn";

    /// <summary>JSON with comments; <see cref="ProjectReader"/> reads it without faults.</summary>
    public static string Write() => DocumentPrinter.Print(ProjectDescription.Project.Write(Project, new Commentary()));

    /// <summary>What it says.</summary>
    public static Project Project { get; } = new(
        "My pullover",
        "",
        new Yarn(
            UnnamedYarn,
            "",
            3,
            new Ball(Length.FromMetres(230), Mass.FromGrams(100)),
            [
                new YarnSection("first colour", new Srgb(0x1f, 0x4e, 0x5f), Length.FromCentimetres(31.5)),
                new YarnSection("second colour", new Srgb(0x79, 0xa8, 0xa9), Length.FromCentimetres(25)),
                new YarnSection("third colour", new Srgb(0xf4, 0xe9, 0xd8), Length.FromCentimetres(38)),
                new YarnSection("fourth colour", new Srgb(0xc0, 0x84, 0x5a), Length.FromCentimetres(25)),
            ],
            [new CountedBall("first ball", [[5, 4, 6, 4], [5, 4, 6, 4], [5, 4, 6, 4]])]),
        null,
        new FabricChoice(
            FabricStitch.SingleCrochet,
            new Swatch(5.5, new Gauge(14, 16, Length.FromCentimetres(10)), null, null, [new YarnUsed(40, Length.FromCentimetres(252))]),
            SectionStitches: [5, 4, 6, 4]),
        new GarmentSpec(
            new BoxyTop(
                new Ease("classic", "newer", null), Length.FromCentimetres(5), Length.FromCentimetres(12), Length.FromCentimetres(20),
                Length.FromCentimetres(26), Length.FromCentimetres(0.5), Length.FromCentimetres(8), null),
            Working.Turned,
            null,
            MotifKind.Argyle,
            GarmentDescription.UsualGrading,
            GarmentDescription.UsualSeams,
            []),
        new SizeSelection("women", ["S", "M", "L"], [], "M", [], []),
        ProjectDescription.UsualEdition,
        MapShape<string>.Empty,
        []);
}
