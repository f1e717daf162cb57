namespace Dyepath.Storage.Database;

internal static class StoredMoment
{
    /// <summary>In whole milliseconds, so that both databases give back what was stored.</summary>
    public static DateTimeOffset GetStoredNow(this TimeProvider clock) =>
        clock.GetUtcNow().ToStored();

    public static DateTimeOffset ToStored(this DateTimeOffset moment) =>
        DateTimeOffset.FromUnixTimeMilliseconds(moment.ToUnixTimeMilliseconds());

    /// <summary>Damaged bytes may be any number, and one row's must not keep a list from being read.</summary>
    public static DateTimeOffset FromMilliseconds(long milliseconds) => DateTimeOffset.FromUnixTimeMilliseconds(
        Math.Clamp(milliseconds, DateTimeOffset.MinValue.ToUnixTimeMilliseconds(), DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()));
}
