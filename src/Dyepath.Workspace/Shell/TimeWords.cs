using System.Globalization;

namespace Dyepath.Workspace.Shell;

/// <summary>When something was, as one says it.</summary>
public static class TimeWords
{
    /// <returns>Such as <c>3 hours ago</c>; from a day on the date.</returns>
    public static string Ago(DateTimeOffset at)
    {
        var ago = DateTimeOffset.UtcNow - at;
        return ago < TimeSpan.FromMinutes(2) ? "just now"
            : ago < TimeSpan.FromHours(1) ? $"{(int)ago.TotalMinutes} minutes ago"
            : ago < TimeSpan.FromHours(2) ? "an hour ago"
            : ago < TimeSpan.FromDays(1) ? $"{(int)ago.TotalHours} hours ago"
            : Day(at);
    }

    /// <summary>As a date.</summary>
    public static string Day(DateTimeOffset at) => at.ToLocalTime().ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
}
