using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Yarns;

/// <summary>
/// One colour of the sequence as it lies along the yarn. Lengths are as measured on the relaxed yarn; they may be
/// missing when the sequence is known from counted stitches alone.
/// </summary>
/// <param name="Name">As the pattern prints it; sections of one colour may share it.</param>
/// <param name="Colour">As a screen shows it; sections of equal colours are one colour.</param>
/// <param name="Length">Mean length along the yarn.</param>
/// <param name="Spread">Standard deviation of that length from repeat to repeat.</param>
/// <param name="Blend">Length over which the colour runs into the next one, half of it on each side of the boundary.</param>
public sealed record YarnSection(string Name, Srgb Colour, Length? Length = null, Length? Spread = null, Length? Blend = null);

/// <summary>Stitches counted per section, repeat after repeat, in work made from one ball.</summary>
/// <param name="Name">What the designer calls the ball.</param>
/// <param name="Repeats">One row a repeat, one whole number a section, in the order in which the yarn runs.</param>
public sealed record CountedBall(string Name, ImmutableArray<ImmutableArray<int>> Repeats)
{
    /// <summary>What the ball is called of which a maker counted her own yarn, for a pattern that is another's.</summary>
    public const string MakersOwn = "the maker's own";

    /// <summary>Stitches counted in one section: none where it was too short to be seen.</summary>
    public static CountBounds Counts { get; } = new(0, 1_000, "stitches");

    /// <summary>Whether a repeat is the last one and still being counted: its counts are kept, and used once all are there.</summary>
    public bool IsBegun(int repeat, int sections) => repeat == Repeats.Length - 1 && Repeats[repeat].Length < sections;
}

/// <summary>What one ball (skein, cake) holds, as its label says.</summary>
/// <param name="Length">Of the whole ball.</param>
/// <param name="Mass">Of the whole ball.</param>
public sealed record Ball(Length Length, Mass Mass);

/// <summary>A variegated yarn whose colours repeat in one sequence.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Fibre">In the designer's words, such as <c>wool</c>.</param>
/// <param name="Ball">What one ball holds.</param>
/// <param name="Sections">1 to 64 sections in the order in which the yarn runs when pulled from its usual end.</param>
/// <param name="Counted">By ball; empty where nothing was counted.</param>
/// <param name="FromOtherEnd">The ball is pulled from the other end, so that the sequence runs backwards.</param>
/// <param name="Category">Yarn weight category, 0 (lace) to 7 (jumbo), where the label names one.</param>
public sealed record Yarn(
    string Name,
    string Fibre,
    int? Category,
    Ball Ball,
    ImmutableArray<YarnSection> Sections,
    ImmutableArray<CountedBall> Counted,
    bool FromOtherEnd = false);

/// <summary>What a solid companion yarn is used for.</summary>
public enum CompanionUse
{
    /// <summary>The chains that pieces begin on.</summary>
    Foundation,

    /// <summary>Sewing pieces together.</summary>
    Seams,

    /// <summary>Whatever is worked along finished edges.</summary>
    Edgings,

    /// <summary>Pieces without colour changes, such as sleeves or tabs.</summary>
    PlainPieces,
}

/// <summary>A solid yarn beside the variegated one.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Colour">As a screen shows it.</param>
/// <param name="Ball">What one ball holds.</param>
/// <param name="Uses">What it is used for; all else is of the variegated yarn.</param>
public sealed record CompanionYarn(string Name, Srgb Colour, Ball Ball, ImmutableArray<CompanionUse> Uses);
