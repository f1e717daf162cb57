using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

/// <summary>
/// A text as one tab has put it on this device. Each tab writes its own copy and no other, so that no tab can write over another.
/// </summary>
/// <param name="Writer">The tab.</param>
/// <param name="Stamp">Grows with every writing by this writer.</param>
/// <param name="Lineage">What the text goes on from.</param>
/// <param name="Content">The text.</param>
/// <param name="At">When it was written here.</param>
public sealed record Copy<T>(string Writer, int Stamp, Lineage Lineage, T Content, DateTimeOffset At)
{
    /// <summary>Of the host's text that this one follows; missing where the host is not known to have any.</summary>
    public string? Etag { get; init; }

    /// <summary>The host's name for its having the text at all: another one, and it lost the text meanwhile and got it anew.</summary>
    public string? Made { get; init; }

    /// <summary>The host has this very text, under <see cref="Etag"/>.</summary>
    public required bool IsSent { get; init; }

    /// <summary>ETags of further texts that are in this one: sent, and perhaps stored, without an answer.</summary>
    public required ImmutableArray<string> Includes { get; init; }

    /// <summary>This text goes on from what the host has under an ETag.</summary>
    public bool GoesOnFrom(string? etag) => etag is not null && (etag == Etag || Includes.Contains(etag));
}

/// <summary>Another text, with which this tab's cannot be put together: somebody chooses.</summary>
/// <param name="Content">The text.</param>
/// <param name="Lineage">Missing where the host has it and no tab of this device wrote it.</param>
/// <param name="Etag">See <see cref="Copy{T}.Etag"/>.</param>
/// <param name="Made">See <see cref="Copy{T}.Made"/>.</param>
/// <param name="IsSent">The host has it.</param>
/// <param name="Includes">See <see cref="Copy{T}.Includes"/>.</param>
/// <param name="At">When it was written here; missing where only the host has it.</param>
public sealed record OtherText<T>(
    T Content, Lineage Lineage, string? Etag, string? Made, bool IsSent, ImmutableArray<string> Includes, DateTimeOffset? At = null)
{
    /// <summary>The copy is what its writer made of this text since.</summary>
    public bool IsGoneOnWithIn(Copy<T> copy) => Lineage == Lineage.None ? copy.GoesOnFrom(Etag) : copy.Lineage.Follows(Lineage);
}

/// <summary>This tab's text before another tab's took its place on the page, until that could be seen.</summary>
/// <param name="Content">The text that was replaced.</param>
/// <param name="Lineage">What it went on from.</param>
/// <param name="Etag">See <see cref="Copy{T}.Etag"/>.</param>
/// <param name="Made">See <see cref="Copy{T}.Made"/>.</param>
/// <param name="Includes">See <see cref="Copy{T}.Includes"/>.</param>
/// <param name="Other">What took its place.</param>
public sealed record Replaced<T>(
    T Content, Lineage Lineage, string? Etag, string? Made, ImmutableArray<string> Includes, OtherText<T> Other);

/// <summary>In a conflict this tab gave up its own text for another.</summary>
/// <param name="Given">What it gave up.</param>
/// <param name="Taken">What it took.</param>
public sealed record Yielding(Lineage Given, Lineage Taken);
