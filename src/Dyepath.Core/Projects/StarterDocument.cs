using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Projects.Description;
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

    /// <summary>The same for any garment.</summary>
    public static string Write(GarmentKind kind) => DocumentPrinter.Print(ProjectDescription.Project.Write(Of(kind), new Commentary()));

    /// <summary>What a project of a garment is called until it is given a name.</summary>
    public static string TitleOf(GarmentKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return $"My {kind.Title.ToLowerInvariant()}";
    }

    /// <summary>A small project of a garment; what the garment leaves open is left open.</summary>
    public static Project Of(GarmentKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        if (kind.Name == Project.Garment.Shape.Name)
            return Project;
        return Project with
        {
            Title = TitleOf(kind),
            Garment = kind.First,
            Companion = kind.HasCompanion ? CompanionOf(kind) : null,
            Sizes = !kind.IsToBody ? SizeDescription.None
                : kind.Chart == Project.Sizes.Chart ? Project.Sizes
                : SizeDescription.None with { Chart = kind.Chart },
        };
    }

    /// <summary>Used for what the garment has.</summary>
    private static CompanionYarn CompanionOf(GarmentKind kind) => new(
        "Companion yarn", new Srgb(0x79, 0xa8, 0xa9), Project.Yarn.Ball,
        kind.First.Shape.PlainPiecesField is null
            ? [CompanionUse.Foundation, CompanionUse.Edgings]
            : [CompanionUse.Seams, CompanionUse.Edgings, CompanionUse.PlainPieces]);

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
                new YarnSection("first colour", new Srgb(0x1f, 0x4e, 0x5f), Length.FromCentimetres(25)),
                new YarnSection("second colour", new Srgb(0x79, 0xa8, 0xa9), Length.FromCentimetres(19)),
                new YarnSection("third colour", new Srgb(0xf4, 0xe9, 0xd8), Length.FromCentimetres(25)),
                new YarnSection("fourth colour", new Srgb(0xa2, 0x64, 0x3a), Length.FromCentimetres(19)),
            ],
            [new CountedBall("first ball", [[4, 3, 4, 3], [4, 3, 4, 3], [4, 3, 4, 3]])]),
        new FabricChoice(
            FabricStitch.SingleCrochet,
            new Swatch(5.5, new Gauge(14, 16, Length.FromCentimetres(10)), null, null, [new YarnUsed(40, Length.FromCentimetres(252))])),
        new GarmentSpec(
            new BoxyTop(
                new Ease("classic", "newer", null), Length.FromCentimetres(5), Length.FromCentimetres(12), Length.FromCentimetres(20),
                new Neck(NeckForm.Slit, null), Length.FromCentimetres(8), null),
            Working.Turned,
            null,
            MotifKind.Argyle,
            GarmentFields.UsualGrading,
            GarmentFields.UsualSeams,
            [new EdgingChoice(EdgingPlace.Hem, EdgingLibrary.Plain, null)]),
        new SizeSelection("women", ["S", "M", "L"], [], "M", [], []),
        ProjectDescription.UsualEdition)
    {
        Words = MapShape<string>.Empty,
        Photos = [],
    };
}
