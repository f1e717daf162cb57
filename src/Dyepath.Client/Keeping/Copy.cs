using System.Collections.Immutable;

namespace Dyepath.Client.Keeping;

/// <summary>A text as one tab has put it on this device. Each tab writes its own copy and no other, so that no tab can write over another.</summary>
/// <param name="Writer">The tab.</param>
/// <param name="Stamp">Grows with every writing by this writer.</param>
/// <param name="Etag">Of the host's text that this one follows; missing where the host is not known to have any.</param>
/// <param name="Made">The host's name for its having the text at all: another one, and it lost the text meanwhile and got it anew.</param>
/// <param name="IsSent">The host has this very text, under <paramref name="Etag"/>.</param>
/// <param name="Includes">ETags of further texts that are in this one: sent, and perhaps stored, without an answer.</param>
public sealed record Copy<T>(
    string Writer, int Stamp, Lineage Lineage, T Content, string? Etag, string? Made, bool IsSent, ImmutableArray<string> Includes, DateTimeOffset At)
{
    /// <summary>This text goes on from what the host has under an ETag.</summary>
    public bool GoesOnFrom(string? etag) => etag is not null && (etag == Etag || Includes.Contains(etag));
}

/// <summary>Another text, with which this tab's cannot be put together: somebody chooses.</summary>
/// <param name="Lineage">Missing where the host has it and no tab of this device wrote it.</param>
/// <param name="IsSent">The host has it.</param>
public sealed record OtherText<T>(T Content, Lineage Lineage, string? Etag, string? Made, bool IsSent, ImmutableArray<string> Includes);
