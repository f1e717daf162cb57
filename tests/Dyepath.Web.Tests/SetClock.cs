namespace Dyepath.Web.Tests;

/// <summary>A clock that tests set; what only lasts goes on as ever.</summary>
internal sealed class SetClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;
}
