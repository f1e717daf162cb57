using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Replays;

/// <summary>How the plain values of decisions are written, without loss.</summary>
internal static class DecisionForm
{
    public static void Write(this BinaryWriter to, Length length) => to.Write(length.Nanometres);

    public static Length ReadLength(this BinaryReader from) => Length.FromNanometres(from.ReadInt64());

    public static void WriteAll<T>(this BinaryWriter to, IReadOnlyCollection<T> items, Action<BinaryWriter, T> write)
    {
        to.Write7BitEncodedInt(items.Count);
        foreach (var item in items)
            write(to, item);
    }

    public static ImmutableArray<T> ReadAll<T>(this BinaryReader from, Func<BinaryReader, T> read)
    {
        var items = ImmutableArray.CreateBuilder<T>();
        for (var left = from.Read7BitEncodedInt(); left > 0; left--)
            items.Add(read(from));
        return items.ToImmutable();
    }

    public static void WriteMaybe<T>(this BinaryWriter to, T? value, Action<BinaryWriter, T> write)
        where T : struct
    {
        to.Write(value.HasValue);
        if (value is { } there)
            write(to, there);
    }

    public static T? ReadMaybe<T>(this BinaryReader from, Func<BinaryReader, T> read)
        where T : struct => from.ReadBoolean() ? read(from) : null;

    public static void WriteMaybeObject<T>(this BinaryWriter to, T? value, Action<BinaryWriter, T> write)
        where T : class
    {
        to.Write(value is not null);
        if (value is not null)
            write(to, value);
    }

    public static T? ReadMaybeObject<T>(this BinaryReader from, Func<BinaryReader, T> read)
        where T : class => from.ReadBoolean() ? read(from) : null;

    public static void WriteNumbers(this BinaryWriter to, IReadOnlyCollection<double> numbers) =>
        to.WriteAll(numbers, (w, n) => w.Write(n));

    public static ImmutableArray<double> ReadNumbers(this BinaryReader from) => from.ReadAll(r => r.ReadDouble());

    public static void WriteWhole(this BinaryWriter to, IReadOnlyCollection<int> numbers) => to.WriteAll(numbers, (w, n) => w.Write(n));

    public static ImmutableArray<int> ReadWhole(this BinaryReader from) => from.ReadAll(r => r.ReadInt32());
}
