using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Instructions;

/// <summary>What the pattern calls a garment, its pieces and directions.</summary>
/// <param name="Called">With its article, such as <c>A boxy tunic</c>.</param>
/// <param name="Down">Where a line from bottom to top runs, such as <c>up</c> and <c>the body</c>.</param>
/// <param name="Measures">
/// The measures that a sentence about it tells, each with its words round <c>{0}</c>, such as <c>{0} long</c>.
/// </param>
public sealed record GarmentWords(
    string Called, (string Way, string What) Down, ImmutableArray<(GarmentMeasure Measure, string Words)> Measures)
{
    /// <summary>All of its pieces, as a sentence begins with them, such as <c>Front and back</c>; missing where there is one.</summary>
    public string? Pieces { get; init; }

    /// <summary>What a line from side to side goes round, such as <c>the body</c>; missing where the garment lies flat.</summary>
    public string? Round { get; init; }

    /// <summary>Where a line from side to side runs, such as <c>across</c> and <c>the bag</c>.</summary>
    public (string Way, string What) Across
    {
        get => Round is { } what ? ("round", what) : field;
        init;
    }

    /// <exception cref="ArgumentOutOfRangeException">There are no words for such a garment.</exception>
    public static GarmentWords Of(GarmentShape shape) => shape switch
    {
        BoxyTop top => new(
            top.IsTunic ? "A boxy tunic" : "A boxy pullover", ("up", "the body"), WithSleeves(top.Sleeves is not null))
        {
            Pieces = top.Sleeves is null ? "Front and back" : "Front, back and sleeves",
            Round = "the body",
        },
        Cardigan cardigan => new("A boxy cardigan", ("up", "the body"), WithSleeves(cardigan.Sleeves is not null))
        {
            Pieces = cardigan.Sleeves is null ? "Back and fronts" : "Back, fronts and sleeves",
            Round = "the body",
        },
        Vest => new(
            "A vest", ("up", "the body"),
            [(GarmentMeasure.Width, "{0} round"), (GarmentMeasure.Length, "{0} long"), (GarmentMeasure.ArmholeDepth, "with armholes {0} deep")])
        {
            Pieces = "Front and back",
            Round = "the body",
        },
        OffShoulder top => new(
            top.IsDress ? "An off-shoulder dress" : "An off-shoulder top", ("up", "the body"),
            [(GarmentMeasure.Width, "{0} round"), (GarmentMeasure.Length, "{0} long"), (GarmentMeasure.SleeveLength, "with sleeves {0} long")])
        {
            Pieces = "Front, back and sleeves",
            Round = "the body",
        },
        Tabard => new(
            "A tabard", ("up", "the body"), [(GarmentMeasure.PanelWidth, "front and back {0} wide"), (GarmentMeasure.Length, "{0} long")])
        {
            Pieces = "Front and back",
            Across = ("across", "the body"),
        },
        PetTabard => new(
            "A pet's tabard", ("up", "the body"),
            [(GarmentMeasure.Width, "{0} round"), (GarmentMeasure.Length, "{0} long"), (GarmentMeasure.LegOpening, "with leg openings {0} deep")])
        {
            Pieces = "Front and back",
            Round = "the body",
        },
        Poncho => new(
            "A poncho", ("up", "the poncho"), [(GarmentMeasure.WristToWrist, "{0} from wrist to wrist"), (GarmentMeasure.Length, "{0} long")])
        {
            Pieces = "Front and back",
            Across = ("across", "the poncho"),
        },
        Skirt skirt => new(skirt.IsFlared ? "A flared skirt" : "A straight skirt", ("down", "the skirt"),
            [
                (GarmentMeasure.Width, skirt.IsFlared ? "{0} round the hip" : "{0} round"),
                .. skirt.IsFlared ? ImmutableArray.Create((GarmentMeasure.HemWidth, "{0} round the hem")) : [],
                (GarmentMeasure.Length, "{0} long"),
            ])
        {
            Round = "the body",
        },
        Hat => new("A hat", ("up", "the hat"), [(GarmentMeasure.Circumference, "{0} round"), (GarmentMeasure.Height, "{0} high")])
        {
            Round = "the head",
        },
        Headband => new("A headband", ("up", "the headband"), [(GarmentMeasure.Circumference, "{0} round"), (GarmentMeasure.Height, "{0} high")])
        {
            Round = "the head",
        },
        Cowl => new("A cowl", ("up", "the cowl"), [(GarmentMeasure.Circumference, "{0} round"), (GarmentMeasure.Height, "{0} high")])
        {
            Round = "the cowl",
        },
        Shawl => new(
            "A shawl", ("up", "the shawl"), [(GarmentMeasure.Wingspan, "{0} from tip to tip"), (GarmentMeasure.Depth, "{0} deep")])
        {
            Across = ("from side to side of", "the shawl"),
        },
        Wrap wrap => Flat(wrap.IsBlanket ? "A blanket" : "A wrap"),
        BiasWrap => Flat("A wrap on the bias"),
        Bag => new("A bag", ("up", "the bag"), [(GarmentMeasure.Width, "{0} wide"), (GarmentMeasure.Height, "{0} high")])
        {
            Pieces = "Front and back",
            Across = ("across", "the bag"),
        },
        Cushion => new("A cushion cover", ("up", "the cushion"), [(GarmentMeasure.Width, "{0} wide"), (GarmentMeasure.Height, "{0} high")])
        {
            Pieces = "Front and back",
            Across = ("across", "the cushion"),
        },
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape?.Name, "No words for this garment."),
    };

    private static ImmutableArray<(GarmentMeasure, string)> WithSleeves(bool sleeves) =>
    [
        (GarmentMeasure.Width, "{0} round"), (GarmentMeasure.Length, "{0} long"),
        .. sleeves ? ImmutableArray.Create((GarmentMeasure.SleeveLength, "with rectangular sleeves {0} long")) : [],
    ];

    private static GarmentWords Flat(string called) => new(
        called, ("along", "the length"), [(GarmentMeasure.Width, "{0} wide"), (GarmentMeasure.Length, "{0} long")])
    {
        Across = ("across", "the width"),
    };
}
