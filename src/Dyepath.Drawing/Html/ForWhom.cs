using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Drawing.Html;

/// <summary>Where an element of the page is shown: with all sizes, with one, or with some only.</summary>
/// <param name="InAll">Where no size is chosen.</param>
/// <param name="InOne">Where one is.</param>
/// <param name="Sizes">Indices of the sizes that may be chosen; null: any.</param>
internal sealed record ForWhom(bool InAll, bool InOne, ImmutableArray<int>? Sizes)
{
    public static ForWhom Everyone { get; } = new(true, true, null);

    public static ForWhom Of(SizedSpan span) => new(span.InAll, span.InOne, span.Size is { } size ? [size] : null);

    /// <summary>
    /// The attributes that the style sheet goes by. What is not shown with all sizes is hidden by itself, so that a reader without styles
    /// has the pattern for all sizes.
    /// </summary>
    public string Attributes(string classes = "")
    {
        var all = string.Join(' ', new[] { classes, Name }.Where(name => name.Length > 0));
        return (all.Length > 0 ? $" class=\"{all}\"" : "") + (InAll ? "" : " hidden=\"\"");
    }

    private string Name => !InOne ? "all" : Sizes is { } some ? string.Join(' ', some.Select(SizeChoice.Class)) : InAll ? "" : "one";

    public bool Equals(ForWhom? other) => other is not null && InAll == other.InAll && InOne == other.InOne
        && (Sizes is { } mine ? other.Sizes is { } theirs && mine.SequenceEqual(theirs) : other.Sizes is null);

    public override int GetHashCode() => HashCode.Combine(InAll, InOne, Sizes?.Length);
}
