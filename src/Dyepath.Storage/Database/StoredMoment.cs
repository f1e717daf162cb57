namespace Dyepath.Storage.Database;

internal static class StoredMoment
{
    /// <summary>In whole milliseconds, so that both databases give back what was stored.</summary>
    public static DateTimeOffset GetStoredNow(this TimeProvider clock) =>
        DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());
}
