namespace Dyepath.Core.Replays;

/// <summary>
/// What the long searches of a computation found, in the order in which they were made. Recorded once, they let the same computation
/// be made again at once, with the same result to the last bit: each search is then answered instead of made
/// (docs/decisions/plan-in-the-worker.md).
/// </summary>
public sealed class Decisions : IDisposable
{
    private readonly MemoryStream _stream;
    private readonly BinaryWriter? _writer;
    private readonly BinaryReader? _reader;
    private int _asked;

    private Decisions(MemoryStream stream, bool record)
    {
        _stream = stream;
        if (record)
            _writer = new BinaryWriter(stream);
        else
            _reader = new BinaryReader(stream);
    }

    public bool IsRecording => _writer is not null;

    /// <summary>To be handed to a computation that makes its searches, and then to be read with <see cref="ToArray"/>.</summary>
    public static Decisions Record() => new(new MemoryStream(), true);

    /// <param name="recorded">From <see cref="ToArray"/>, of the same computation on the same input.</param>
    public static Decisions Replay(byte[] recorded)
    {
        ArgumentNullException.ThrowIfNull(recorded);
        return new Decisions(new MemoryStream(recorded, writable: false), false);
    }

    public byte[] ToArray()
    {
        _writer?.Flush();
        return _stream.ToArray();
    }

    public void Dispose()
    {
        _writer?.Dispose();
        _reader?.Dispose();
        _stream.Dispose();
    }

    /// <exception cref="InvalidDataException">Recorded from another computation.</exception>
    internal T Take<T>(Func<T> search, Action<BinaryWriter, T> write, Func<BinaryReader, T> read)
    {
        var place = ++_asked;
        if (_reader is null)
        {
            var found = search();
            // After the search, which may ask for others itself.
            _writer!.Write(place);
            write(_writer, found);
            return found;
        }
        try
        {
            var recorded = _reader.ReadInt32();
            return recorded == place ? read(_reader) : throw new InvalidDataException($"Decision {place} was asked for where {recorded} was recorded.");
        }
        catch (EndOfStreamException ended)
        {
            throw new InvalidDataException($"Decision {place} was asked for and not recorded.", ended);
        }
    }
}

internal static class Decided
{
    /// <summary>The answer that was recorded, or else the search's own; without decisions always the search's.</summary>
    public static T Answer<T>(this Decisions? decisions, Func<T> search, Action<BinaryWriter, T> write, Func<BinaryReader, T> read) =>
        decisions is null ? search() : decisions.Take(search, write, read);
}
