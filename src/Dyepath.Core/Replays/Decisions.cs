using Dyepath.Core.Limits;

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

    /// <summary>Searches are made and recorded, or else answered from a record.</summary>
    public bool IsRecording => _writer is not null;

    /// <summary>To be handed to a computation that makes its searches, and then to be read with <see cref="ToArray"/>.</summary>
    public static Decisions Record() => new(new MemoryStream(), true);

    /// <param name="recorded">From <see cref="ToArray"/>, of the same computation on the same input.</param>
    public static Decisions Replay(byte[] recorded)
    {
        ArgumentNullException.ThrowIfNull(recorded);
        return new Decisions(new MemoryStream(recorded, writable: false), false);
    }

    /// <summary>What was recorded so far, for <see cref="Replay"/>.</summary>
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

    /// <summary>
    /// A whole computation with all its searches. Where it was given up when it was recorded, it is given up again, for the same reason.
    /// </summary>
    internal T Whole<T>(Func<T> work)
    {
        try
        {
            var done = work();
            Take(() => true, (to, end) => to.Write(end), from => from.ReadBoolean());
            return done;
        }
        catch (Exception fault) when (_writer is not null && fault is not OperationCanceledException)
        {
            WriteGivenUp(_asked + 1, fault);
            throw;
        }
    }

    /// <summary>Searches are not to be made within one another.</summary>
    /// <exception cref="InvalidDataException">Recorded from another computation, or given up there.</exception>
    /// <exception cref="TooMuchWorkException">Given up there for that.</exception>
    internal T Take<T>(Func<T> search, Action<BinaryWriter, T> write, Func<BinaryReader, T> read)
    {
        var place = ++_asked;
        if (_reader is null)
        {
            try
            {
                var found = search();
                _writer!.Write(place);
                write(_writer, found);
                return found;
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                WriteGivenUp(place, fault);
                throw;
            }
        }
        try
        {
            var recorded = _reader.ReadInt32();
            if (recorded == -place)
                throw ReadGivenUp(_reader);
            return recorded == place ? read(_reader) : throw new InvalidDataException($"Decision {place} was asked for where {recorded} was recorded.");
        }
        catch (EndOfStreamException ended)
        {
            throw new InvalidDataException($"Decision {place} was asked for and not recorded.", ended);
        }
    }

    private void WriteGivenUp(int place, Exception fault)
    {
        _writer!.Write(-place);
        _writer.WriteMaybeObject((fault as TooMuchWorkException)?.Part, (to, part) =>
        {
            to.Write(part.Place);
            to.Write(part.LeaveOut);
        });
    }

    private static Exception ReadGivenUp(BinaryReader from) =>
        from.ReadMaybeObject(r => new EffortPart(r.ReadString(), r.ReadString())) is { } part
        ? new TooMuchWorkException(part)
        : new InvalidDataException("What was recorded failed.");
}

internal static class Decided
{
    /// <summary>The answer that was recorded, or else the search's own; without decisions always the search's.</summary>
    public static T Answer<T>(this Decisions? decisions, Func<T> search, Action<BinaryWriter, T> write, Func<BinaryReader, T> read) =>
        decisions is null ? search() : decisions.Take(search, write, read);
}
