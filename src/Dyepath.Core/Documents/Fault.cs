using Dyepath.Core.Findings;

namespace Dyepath.Core.Documents;

/// <summary>What is wrong with a document, by who can see it.</summary>
public enum FaultKind
{
    /// <summary>The bytes are no JSON document of an allowed size and depth.</summary>
    NotJson,

    /// <summary>A property is missing, unknown or doubled, or a value is of the wrong form: what the JSON Schema sees too.</summary>
    Form,

    /// <summary>A quantity is out of its range, or values contradict each other: beyond what the JSON Schema can say.</summary>
    Meaning,
}

/// <summary>One reason why a project document cannot be used.</summary>
/// <param name="Path">Where, such as <c>yarn.sections[2].length</c>; <c>document</c> for the whole.</param>
/// <param name="Line">Line of the text, from 1.</param>
/// <param name="Kind">Decides whether the JSON Schema sees it too.</param>
/// <param name="Found">What stands there, shortened where it is long.</param>
/// <param name="Allowed">What may stand there.</param>
/// <param name="Next">What to do.</param>
public sealed record Fault(string Path, int Line, FaultKind Kind, string Found, string Allowed, string Next)
    : Finding(FindingLevel.Fault, Path, FormattableString.Invariant($"{Path} (line {Line}): found {Found}; allowed: {Allowed}. {Next}"))
{
    public override string ToString() => Text;
}
