using Dyepath.Core.Booklets;

namespace Dyepath.Core.Edgings;

/// <summary>Labels of an edging's steps that say which round or row they are for.</summary>
internal static class EdgingLabels
{
    public static Phrase Last { get; } = Phrase.Plain("Last round");

    /// <summary>Rounds after the first one and before the last one.</summary>
    public static Phrase Between { get; } = Phrase.Plain("Every round between");

    public static Phrase Numbered(int number, bool row = false) => row ? Phrase.Of($"Row {number}") : Phrase.Of($"Round {number}");

    public static Phrase Further(bool row = false) => Phrase.Plain(row ? "Every further row" : "Every further round");
}
