using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>Texts of words: as projects are kept, where two that differ cannot be put together, or as logs are, of which one may go on from the other.</summary>
internal sealed record WordRules(bool IsLog) : KeepingRules<string>
{
    public override TimeSpan Quiet => TimeSpan.FromSeconds(1);

    public override bool KeepsFirst => IsLog;

    public override bool OpensFromDevice => IsLog;

    public override bool Same(string one, string other) => one == other;

    public override string? Join(string one, string other) => one == other ? one
        : !IsLog ? null
        : one.StartsWith(other + " ", StringComparison.Ordinal) ? one
        : other.StartsWith(one + " ", StringComparison.Ordinal) ? other
        : null;

    /// <summary>Every word is put in the one place there is.</summary>
    public override bool WritesOver(string before, string shown, string now) => !IsLog;

    public override string EtagOf(string content) => $"\"{content}\"";
}
