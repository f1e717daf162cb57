using System.Buffers;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;

namespace Dyepath.Storage.Backup;

/// <summary>Reads the lines of a backup of any form, and holds those of the present one to their hashes.</summary>
internal sealed class BackupReader(Stream stream) : IDisposable
{
    /// <summary>A document of 2 MB, every letter of it written as an escape sequence, and some more.</summary>
    private const int LongestLine = 20_000_000;

    /// <summary>A long line has thousands of pieces of the usual 4 KB, and every reading walks through all of them.</summary>
    private const int PieceBytes = 1 << 16;

    private const int HashDigits = 64;

    private readonly PipeReader _pipe = PipeReader.Create(stream, new StreamPipeReaderOptions(bufferSize: PieceBytes, leaveOpen: true));
    private readonly BackupChain _chain = new();

    private static ReadOnlySpan<byte> BeforeHash => "{\"hash\":\""u8;

    private static ReadOnlySpan<byte> AfterHash => "\","u8;

    /// <summary>Of the line that was read last; the first is 1.</summary>
    public int Number { get; private set; }

    public bool HasHashes { get; private set; }

    public async Task<BackupStart> ReadStartAsync(CancellationToken stop)
    {
        if (await ReadAsync(stop) is not { Start: { } start })
            throw new BadBackupException("This is no backup of Dyepath: its first line is not that of one.");
        if (start.Form > BackupStart.PresentForm)
        {
            throw new BadBackupException(
                $"A newer Dyepath wrote this backup: it has the form {start.Form}, and this program reads up to {BackupStart.PresentForm}. "
                + "Restore it with the newer program.");
        }
        if (start.Form < BackupStart.FirstForm || HasHashes != start.Form >= BackupStart.FirstFormWithHashes)
            throw new BadBackupException($"This backup was changed: it says that it has the form {start.Form}, and does not have it.");
        return start;
    }

    /// <summary>Null at the end of the file.</summary>
    public async Task<BackupLine?> ReadAsync(CancellationToken stop)
    {
        Number++;
        if (await LineAsync(stop) is not { } bytes)
            return null;
        if (Number == 1)
            HasHashes = bytes.AsSpan().StartsWith(BeforeHash);
        if (HasHashes && !HasItsHash(bytes))
        {
            throw new BadBackupException(
                $"Line {Number} is not the one that was written there: the file was changed from there on. Take another copy of the backup.");
        }
        try
        {
            return JsonSerializer.Deserialize(bytes, BackupJson.Default.BackupLine) is { HasOnePart: true } line
                ? line
                : throw new BadBackupException($"Line {Number} is no line of a backup.");
        }
        catch (JsonException e)
        {
            throw new BadBackupException($"Line {Number} is not JSON of the form of a backup.", e);
        }
    }

    public void Dispose() => _pipe.Complete();

    private bool HasItsHash(ReadOnlySpan<byte> line)
    {
        var end = BeforeHash.Length + HashDigits;
        return line.StartsWith(BeforeHash) && line.Length > end + AfterHash.Length && line[end..].StartsWith(AfterHash)
            && _chain.Next(line[(end + AfterHash.Length)..]) == Encoding.ASCII.GetString(line[BeforeHash.Length..end]);
    }

    private async Task<byte[]?> LineAsync(CancellationToken stop)
    {
        // So much of the line was looked through without finding its end.
        var searched = 0L;
        while (true)
        {
            var read = await _pipe.ReadAsync(stop);
            var end = read.Buffer.Slice(searched).PositionOf((byte)'\n');
            if (end is null && !read.IsCompleted && read.Buffer.Length <= LongestLine)
            {
                searched = read.Buffer.Length;
                _pipe.AdvanceTo(read.Buffer.Start, read.Buffer.End);
                continue;
            }
            var line = end is { } found ? read.Buffer.Slice(0, found) : read.Buffer;
            if (line.Length > LongestLine)
                throw new BadBackupException($"Line {Number} is longer than any line of a backup.");
            var bytes = end is null && line.IsEmpty ? null : line.ToArray();
            _pipe.AdvanceTo(end is { } position ? read.Buffer.GetPosition(1, position) : read.Buffer.End);
            return bytes;
        }
    }
}
