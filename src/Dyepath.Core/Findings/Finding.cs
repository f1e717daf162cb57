using System.Collections.Immutable;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Findings;

/// <summary>Something the designer should know, in words that say what to do.</summary>
/// <param name="Level">How much it matters.</param>
/// <param name="Place">Where in the document it lies, such as <c>yarn.sections[2].length</c>.</param>
/// <param name="Text">Whole sentences, with what to do where something can be done.</param>
public record Finding(FindingLevel Level, string Place, string Text)
{
    /// <summary>Its text without what <see cref="Remedies"/> say by themselves.</summary>
    public string Fact { get; init; } = Text;

    /// <summary>What helps, each by itself, the cheapest first.</summary>
    public ImmutableArray<Remedy> Remedies { get; init; } = [];

    /// <summary>The fault of the program behind it, for a log; missing where the document is the reason.</summary>
    public Exception? Cause { get; init; }

    /// <summary>The same behind words that say of what it is true.</summary>
    /// <param name="before">Such as <c>Worked up: </c>.</param>
    internal Finding Behind(string before) => this with { Text = before + Text, Fact = before + Fact };

    /// <summary>The same with what helps, each a sentence or more, and with nothing else that did.</summary>
    internal Finding Helped(ImmutableArray<Remedy> remedies) =>
        this with { Text = string.Join(' ', [Fact, .. remedies.Select(r => r.Text)]), Remedies = remedies };

    /// <inheritdoc/>
    public virtual bool Equals(Finding? other) =>
        other is not null && EqualityContract == other.EqualityContract
        && (Level, Place, Text, Fact, Cause) == (other.Level, other.Place, other.Text, other.Fact, other.Cause)
        && Remedies.SequenceEqual(other.Remedies);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Level, Place, Text);
}

/// <summary>How much a finding matters, the least first.</summary>
public enum FindingLevel
{
    /// <summary>Worth knowing; nothing needs to be done.</summary>
    Note,

    /// <summary>The plan stands, but something may come out otherwise than is wished.</summary>
    Warning,

    /// <summary>Nothing can be planned, or the plan must not be used, until it is mended.</summary>
    Fault,
}
