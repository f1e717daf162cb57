namespace Dyepath.Storage.Versions;

internal readonly record struct SavedText(int Number, DateTimeOffset SavedAt, int Bytes, bool Kept, bool Published = false);

/// <summary>
/// Which earlier texts of a project stay. Of every two minutes of this and the last hour, of every other hour of this and the
/// last day, and of every day before, the last text; of these the newest that fit the quota. Stretches nest and lie whole
/// on one side of each limit, so thinning at every save leaves what thinning once would. A published edition stays, whatever its age.
/// </summary>
internal static class Retention
{
    public const int MostVersions = 200;

    public const long MostBytes = 20_000_000;

    private static readonly TimeSpan TwoMinutes = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);
    private static readonly TimeSpan Day = TimeSpan.FromDays(1);

    public static List<int> Dropped(IEnumerable<SavedText> versions, DateTimeOffset now)
    {
        var dropped = new List<int>();
        var (count, bytes) = (0, 0L);
        (TimeSpan Every, long Number)? last = null;
        foreach (var version in versions.Where(v => !v.Published).OrderByDescending(v => v.Number))
        {
            var span = Span(version.SavedAt, now);
            var again = span == last;
            last = span;
            if ((again && !version.Kept) || count == MostVersions || bytes + version.Bytes > MostBytes)
            {
                dropped.Add(version.Number);
                continue;
            }
            count++;
            bytes += version.Bytes;
        }
        return dropped;
    }

    /// <summary>The stretch of time of which one text stays.</summary>
    private static (TimeSpan Every, long Number) Span(DateTimeOffset savedAt, DateTimeOffset now)
    {
        var every = IsOver(Day) ? Day : IsOver(Hour) ? Hour : TwoMinutes;
        return (every, Number(savedAt, every));

        // The whole stretch lies further back than its own length.
        bool IsOver(TimeSpan stretch) => Number(savedAt, stretch) < Number(now - stretch, stretch);
    }

    private static long Number(DateTimeOffset moment, TimeSpan every) => moment.UtcTicks / every.Ticks;
}
