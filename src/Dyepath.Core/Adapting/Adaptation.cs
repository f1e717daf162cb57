using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Adapting;

/// <summary>What a pattern asks of a reader's own yarn, gauge and hands.</summary>
public enum AdaptVerdict
{
    /// <summary>She works the size as the pattern has it.</summary>
    AsWritten,

    /// <summary>She works it as the pattern has it, with another hook.</summary>
    OtherHook,

    /// <summary>Her yarn, or her gauge, takes counts of its own.</summary>
    ReDerived,

    /// <summary>Her yarn does not make this piece.</summary>
    NotSuited,
}

/// <summary>Which of yarn and hands differs from the pattern's, as far as her measures tell.</summary>
public enum AdaptCause
{
    /// <summary>She measured neither a stitch's yarn nor her gauge.</summary>
    Untold,

    /// <summary>Both are the pattern's.</summary>
    Neither,

    /// <summary>A stitch takes as much yarn as the pattern's; the colours come round sooner or later.</summary>
    Yarn,

    /// <summary>The colours come round after as much yarn as the pattern's; a stitch takes more of it, or less.</summary>
    Hands,

    /// <summary>Both differ.</summary>
    Both,
}

/// <summary>Something that differs between the pattern's size and hers.</summary>
/// <param name="What">Such as <c>front, rows</c>.</param>
/// <param name="From">In the pattern, with its unit.</param>
/// <param name="To">For her, with its unit.</param>
public sealed record AdaptChange(string What, string From, string To);

/// <summary>Another garment that her yarn makes.</summary>
/// <param name="Garment">As the document calls it.</param>
/// <param name="Title">As it is called where it is chosen.</param>
/// <param name="Motif">What her colours then draw, in a maker's words.</param>
public sealed record OtherGarment(string Garment, string Title, string Motif);

/// <summary>The answer to a reader.</summary>
/// <param name="Verdict">What she is to do.</param>
/// <param name="Cause">What differs, where that can be told.</param>
/// <param name="Why">For a maker who knows no mathematics; whole sentences.</param>
/// <param name="Plan">Of her size alone; missing where her yarn does not suit.</param>
/// <param name="Changes">All that differs from the pattern's size; empty where her yarn does not suit.</param>
public sealed record Adaptation(
    AdaptVerdict Verdict, AdaptCause Cause, string Why, Plan? Plan, ImmutableArray<AdaptChange> Changes)
{
    /// <summary>The size's document with her materials, its counts free: what is worked out anew is worked out from it.</summary>
    public required Project Document { get; init; }

    /// <summary>What her yarn makes instead; empty where it suits, and where nothing that was tried comes out well.</summary>
    public ImmutableArray<OtherGarment> Others { get; init; } = [];
}

/// <summary>An answer, or what is wrong with what the reader gave.</summary>
/// <param name="Adaptation">Missing where something is wrong.</param>
/// <param name="Faults">Located in the document that her materials lead to, such as <c>yarn.sections[2].length</c>.</param>
public sealed record AdaptResult(Adaptation? Adaptation, ImmutableArray<Finding> Faults);
