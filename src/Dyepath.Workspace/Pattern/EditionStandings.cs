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
    /// <summary>The edition number of a document; missing where it has none that can be.</summary>
    public static int? Number(ProjectDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return int.TryParse(document.Typed("edition.number"), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number is >= 1 and <= Edition.MostNumber ? number : null;
    }

    /// <param name="now">The document in view.</param>
    /// <param name="isPublished">Something is published under its number.</param>
    /// <param name="published">What that says, its pictures on the same shelf; missing where it is not at hand.</param>
    /// <returns>In how many places the two differ, too; 0 where that is not known.</returns>
    public static (EditionStanding Standing, int Differences) Of(ProjectDocument now, bool isPublished, ProjectDocument? published)
    {
        ArgumentNullException.ThrowIfNull(now);
        if (Number(now) is null)
            return (EditionStanding.Unnumbered, 0);
        if (!isPublished)
            return (EditionStanding.Unpublished, 0);
        if (published is null)
            return (EditionStanding.Unknown, 0);
        var differences = DocumentDifference.Between(published.Root, now.Root).Count;
        return (differences == 0 ? EditionStanding.AsPublished : EditionStanding.Changed, differences);
    }
}
