using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Booklets;

/// <summary>A run of words and numbers, still free of terms, units and sizes; an <see cref="Edition"/> makes it text.</summary>
/// <remarks>Written as an interpolated string: <c>Phrase.Of($"Ch {chains}, turn.")</c>.</remarks>
public sealed record Phrase(ImmutableArray<Inline> Parts)
{
    public static Phrase Empty { get; } = new([]);

    public static Phrase Of(PhraseBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        return new Phrase(builder.Parts());
    }

    public static Phrase Plain(string words) => new([new Words(words)]);

    public static Phrase operator +(Phrase a, Phrase b) => new([.. a.Parts, .. b.Parts]);

    public bool Equals(Phrase? other) => other is not null && Parts.SequenceEqual(other.Parts);

    public override int GetHashCode() => Parts.Aggregate(0, HashCode.Combine);
}

/// <summary>One piece of a phrase.</summary>
public abstract record Inline;

public sealed record Words(string Text) : Inline;

/// <summary>A whole number, or one for each size: said once when they are all equal.</summary>
public sealed record Count(PerSize<int> Values) : Inline;

/// <summary>A word or name for each size: said once when they are all equal.</summary>
public sealed record WordChoice(PerSize<string> Values) : Inline;

/// <summary>A length, or one for each size, said in the edition's units.</summary>
public sealed record Measure(PerSize<Length> Values) : Inline;

/// <summary>
/// A <see cref="Measure"/>, <see cref="YarnLength"/> or <see cref="YarnMass"/> in a table cell: the numbers alone;
/// <see cref="UnitNames"/> in the row's header says the units.
/// </summary>
public sealed record Bare(Inline Amount) : Inline;

/// <summary>The edition's units for such amounts, such as <c>cm / in</c>.</summary>
public sealed record UnitNames(UnitsOf Of = UnitsOf.Measure) : Inline;

public enum UnitsOf
{
    Measure,
    YarnLength,
    YarnMass,
}

/// <summary>Said only in an edition for one size.</summary>
public sealed record InOneSize(Phrase Content) : Inline;

/// <summary>Said only where more than one size is printed.</summary>
public sealed record InAllSizes(Phrase Content) : Inline;

/// <summary>A length of yarn, or one for each size, in metres and yards, rounded up to whole ones.</summary>
public sealed record YarnLength(PerSize<Length> Values) : Inline;

/// <summary>A mass of yarn, or one for each size, in grams and ounces, rounded up.</summary>
public sealed record YarnMass(PerSize<Mass> Values) : Inline;

/// <summary>A term that differs between US and UK usage, by its US abbreviation or US words (see the terms table).</summary>
public sealed record Term(string Us) : Inline;

/// <summary>Left or right, exchanged for left-handed makers.</summary>
public sealed record Side(bool Right) : Inline;

/// <summary>A colour of the sequence: its name and its symbol, so that hue is never the only sign.</summary>
public sealed record ColourName(int Section, string Name, string Symbol) : Inline;

public sealed record Strong(Phrase Content) : Inline;

/// <summary>One value for each size, in the pattern's order of sizes; a single value serves them all.</summary>
public sealed record PerSize<T>(ImmutableArray<T> Values)
    where T : notnull
{
    public bool IsSame => Values.All(v => EqualityComparer<T>.Default.Equals(v, Values[0]));

    public bool Equals(PerSize<T>? other) => other is not null && Values.SequenceEqual(other.Values);

    public override int GetHashCode() => Values.Aggregate(0, (hash, value) => HashCode.Combine(hash, value));
}

/// <summary>Lets phrases be written as interpolated strings.</summary>
[InterpolatedStringHandler]
public sealed class PhraseBuilder(int literalLength, int formattedCount)
{
    private readonly ImmutableArray<Inline>.Builder _parts = ImmutableArray.CreateBuilder<Inline>(formattedCount * 2 + literalLength % 2);

    public void AppendLiteral(string text) => _parts.Add(new Words(text));

    public void AppendFormatted(Inline part) => _parts.Add(part);

    public void AppendFormatted(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        _parts.AddRange(phrase.Parts);
    }

    public void AppendFormatted(PerSize<int> values) => _parts.Add(new Count(values));

    public void AppendFormatted(PerSize<Length> values) => _parts.Add(new Measure(values));

    public void AppendFormatted(int value) => _parts.Add(new Words(value.ToString(CultureInfo.InvariantCulture)));

    public void AppendFormatted(Length value) => _parts.Add(new Measure(new PerSize<Length>([value])));

    public void AppendFormatted(string text) => _parts.Add(new Words(text));

    internal ImmutableArray<Inline> Parts() => _parts.ToImmutable();
}
