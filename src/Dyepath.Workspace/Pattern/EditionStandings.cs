using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Pattern;

/// <summary>How a document stands to what was published under its edition number.</summary>
public enum EditionStanding
{
    /// <summary>It has no number, or none that can be.</summary>
    Unnumbered,

    /// <summary>Nothing is published under its number.</summary>
    Unpublished,

    /// <summary>What is published under its number says the same.</summary>
    AsPublished,

    /// <summary>What is published under its number says something else.</summary>
    Changed,

    /// <summary>Something is published under its number; what it says is not at hand.</summary>
    Unknown,
}

/// <summary>Tells a published edition from a text that has only its number.</summary>
public static class EditionStandings
{
    /// <param name="number">As it is typed.</param>
    /// <param name="isPublished">Something is published under that number.</param>
    /// <param name="published">What it says; missing where it is not at hand.</param>
    /// <param name="now">The document in view.</param>
    /// <returns>In how many places the two differ, too; 0 where that is not known.</returns>
    public static (EditionStanding Standing, int Differences) Of(
        string number, bool isPublished, ProjectDocument? published, ProjectDocument now)
    {
        ArgumentNullException.ThrowIfNull(now);
        if (!int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var edition)
            || edition is < 1 or > Edition.MostNumber)
            return (EditionStanding.Unnumbered, 0);
        if (!isPublished)
            return (EditionStanding.Unpublished, 0);
        if (published is null || ProjectDocument.TryParse(now.Text) is not { } whole)
            return (EditionStanding.Unknown, 0);
        var differences = DocumentDifference.Between(published.Root, whole.Root).Count;
        return (differences == 0 ? EditionStanding.AsPublished : EditionStanding.Changed, differences);
    }
}
