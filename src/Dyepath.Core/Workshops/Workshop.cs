using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Workshops;

/// <summary>How thick a yarn is, as it is told by looking.</summary>
public enum YarnThickness
{
    /// <summary>As thick as a matchstick's half: sock yarn.</summary>
    Thin,

    /// <summary>As thick as a matchstick.</summary>
    Medium,

    /// <summary>As thick as a pencil.</summary>
    Thick,
}

/// <summary>How much yarn lies from where a colour begins to where it begins again, held against the body.</summary>
public enum SequenceReach
{
    /// <summary>From the elbow to the fingertips.</summary>
    Forearm,

    /// <summary>From the shoulder to the fingertips.</summary>
    Arm,

    /// <summary>From fingertips to fingertips, both arms stretched out.</summary>
    BothArms,

    /// <summary>More than both arms.</summary>
    Longer,
}

/// <summary>How one colour becomes the next.</summary>
public enum ColourChange
{
    /// <summary>Within a stitch.</summary>
    Sharp,

    /// <summary>Over some stitches.</summary>
    Blended,

    /// <summary>In specks: no colour is long enough for a stitch, and nothing can be planned.</summary>
    Speckled,
}

/// <summary>What is made.</summary>
public enum WorkshopPiece
{
    /// <summary>A band round the head, gathered at its top.</summary>
    Hat,

    /// <summary>A band round the neck.</summary>
    Cowl,

    /// <summary>A strip.</summary>
    Scarf,

    /// <summary>A strip folded and closed at its sides.</summary>
    Bag,

    /// <summary>As long as it is wide.</summary>
    Square,
}

/// <summary>How it is worked.</summary>
public enum WorkshopWay
{
    /// <summary>In rows that are turned, and sewn together.</summary>
    Rows,

    /// <summary>In joined rounds.</summary>
    Rounds,
}

/// <summary>One colour of a person's yarn.</summary>
/// <param name="Name">As the card names it.</param>
/// <param name="Colour">As the card draws it.</param>
/// <param name="Stitches">Single crochet that it lasts; missing where nothing was counted.</param>
public sealed record CardColour(string Name, Srgb Colour, double? Stitches = null);

/// <summary>A yarn by three taps, and its colours where somebody has looked.</summary>
/// <param name="Thickness">How thick.</param>
/// <param name="Reach">How long its sequence.</param>
/// <param name="Change">How its colours change.</param>
/// <param name="Colours">In the order in which they come off the ball; empty where they are not told.</param>
/// <param name="Ball">Yarn in one ball; missing, what 100 g of such yarn usually hold.</param>
public sealed record WorkshopYarn(
    YarnThickness Thickness, SequenceReach Reach, ColourChange Change, ImmutableArray<CardColour> Colours, Length? Ball = null)
{
    /// <summary>Single crochet in one sequence; missing unless all colours were counted.</summary>
    public double? Sequence => Colours.IsEmpty || Colours.Any(c => c.Stitches is null) ? null : Colours.Sum(c => c.Stitches);
}

/// <summary>One person of a workshop.</summary>
/// <param name="Name">What the card is headed with; missing, her number.</param>
/// <param name="Yarn">Her yarn.</param>
/// <param name="Piece">What she wants.</param>
/// <param name="Width">Wanted across a row (of a hat and a cowl their height; in rounds their girth); missing, the usual.</param>
/// <param name="Way">Rows, unless rounds are asked for.</param>
/// <param name="ForChild">It is for a child.</param>
public sealed record WorkshopPerson(
    string? Name, WorkshopYarn Yarn, WorkshopPiece Piece, Length? Width = null, WorkshopWay Way = WorkshopWay.Rows, bool ForChild = false);

/// <summary>A workshop: who comes, and how long there is.</summary>
/// <param name="Title">Printed on every card.</param>
/// <param name="Minutes">For crochet, within <see cref="AllMinutes"/>.</param>
/// <param name="People">1 to <see cref="MostPeople"/>.</param>
public sealed record Workshop(string Title, int Minutes, ImmutableArray<WorkshopPerson> People)
{
    /// <summary>Most cards of one workshop.</summary>
    public const int MostPeople = 60;

    /// <summary>Of <see cref="Minutes"/>.</summary>
    public static CountBounds AllMinutes { get; } = new(20, 2_000, "minutes");
}
