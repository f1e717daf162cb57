using Dyepath.Core.Measuring;

namespace Dyepath.Core.Findings;

/// <summary>Something the designer should know, in words that say what to do.</summary>
/// <param name="Place">Where in the document it lies, such as <c>yarn.sections[2].length</c>.</param>
public record Finding(FindingLevel Level, string Place, string Text)
{
    /// <summary>The fault of the program behind it, for a log; missing where the document is the reason.</summary>
    public Exception? Cause { get; init; }
}

public enum FindingLevel
{
    Note,
    Warning,
    Fault,
}
