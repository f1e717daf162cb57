using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Dyepath.Storage.Backup;

/// <summary>Writes lines of the present form: <c>{"hash":"…",</c> and the line's one part.</summary>
internal sealed class BackupWriter(Stream stream)
{
    /// <summary>Leaves letters of every language readable.</summary>
    private static readonly BackupJson Readable = new(new JsonSerializerOptions(BackupJson.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    private readonly BackupChain _chain = new();

    public async Task WriteAsync(BackupLine line, CancellationToken stop)
    {
        var rest = JsonSerializer.SerializeToUtf8Bytes(line, Readable.BackupLine).AsMemory(1);
        await stream.WriteAsync(Encoding.UTF8.GetBytes($"{{\"hash\":\"{_chain.Next(rest.Span)}\","), stop);
        await stream.WriteAsync(rest, stop);
        stream.WriteByte((byte)'\n');
    }
}
