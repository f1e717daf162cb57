using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Booklets;

/// <summary>A run of words and numbers, still free of terms, units and sizes; an <see cref="Edition"/> makes it text.</summary>
/// <remarks>Written as an interpolated string: <c>Phrase.Of($"Ch {chains}, turn.")</c>.</remarks>
/// <param name="Parts">Directly after each other; spaces are in the words.</param>
public sealed record Phrase(ImmutableArray<Inline> Parts)
{
    /// <summary>Says nothing.</summary>
    public static Phrase Empty { get; } = new([]);

    /// <summary>A phrase from an interpolated string, in which numbers, lengths and phrases keep their kind.</summary>
    public static Phrase Of(PhraseBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        return new Phrase(builder.Parts());
    }

    /// <summary>A phrase of words that no edition changes.</summary>
    public static Phrase Plain(string words) => new([new Words(words)]);

    /// <summary>Something called as its maker calls it, in every language: a yarn, a size.</summary>
    public static Phrase Named(string name) => new([new Name(name)]);

    /// <summary>Such as <c>hem, neck and cuffs</c>; nothing of none.</summary>
    public static Phrase List(IEnumerable<Phrase> phrases)
    {
        var all = phrases.ToArray();
        return all.Length < 2 ? all.FirstOrDefault(Empty) : Of($"{Join(", ", all[..^1])} and {all[^1]}");
    }

    /// <summary>Such as <c>left front and right front</c>, all by the same word; at least one.</summary>
    public static Phrase Together(IEnumerable<Phrase> phrases) => phrases.Aggregate((a, b) => Of($"{a} and {b}"));

    /// <summary>One after the other.</summary>
    /// <param name="between">Signs and spaces alone: no language has another.</param>
    public static Phrase Join(string between, IEnumerable<Phrase> phrases) =>
        new([.. phrases.SelectMany((phrase, i) => (Inline[])(i == 0 ? [new Nested(phrase)] : [new Words(between), new Nested(phrase)]))]);

    /// <summary>One phrase for every size, each number one for each size; null where their words differ.</summary>
    /// <param name="bySize">Of one size each, with words, numbers and phrases in them.</param>
    public static Phrase? Shared(ImmutableArray<Phrase> bySize)
    {
        var length = bySize[0].Parts.Length;
        if (bySize.Any(phrase => phrase.Parts.Length != length))
            return null;
        var parts = ImmutableArray.CreateBuilder<Inline>(length);
        for (var i = 0; i < length; i++)
        {
            Inline[] alike = [.. bySize.Select(phrase => phrase.Parts[i])];
            Inline? shared = alike[0] switch
            {
                Count first when alike.All(part => part is Count) =>
                    first with { Values = new([.. alike.SelectMany(part => ((Count)part).Values.Values)]) },
                Nested when alike.All(part => part is Nested) =>
                    Shared([.. alike.Select(part => ((Nested)part).Content)]) is { } content ? new Nested(content) : null,
                var part => alike.All(part.Equals) ? part : null,
            };
            if (shared is null)
                return null;
            parts.Add(shared);
        }
        return new Phrase(parts.ToImmutable());
    }

    /// <summary>The parts, those of phrases within phrases one by one.</summary>
    public IEnumerable<Inline> Leaves => Parts.SelectMany(part => part is Nested nested ? nested.Content.Leaves : [part]);

    /// <summary>The one directly after the other, with no space between.</summary>
    public static Phrase operator +(Phrase a, Phrase b) => a.Parts.IsEmpty ? b : b.Parts.IsEmpty ? a : new([new Nested(a), new Nested(b)]);

    public bool Equals(Phrase? other) => other is not null && Parts.SequenceEqual(other.Parts);

    public override int GetHashCode() => Parts.Aggregate(0, HashCode.Combine);
}

/// <summary>One piece of a phrase.</summary>
public abstract record Inline;

/// <summary>Text that every edition says alike.</summary>
/// <param name="Text">With the spaces that part it from what stands beside it.</param>
public sealed record Words(string Text) : Inline;

/// <summary>A phrase within a phrase: a sentence of its own, or a part that others share.</summary>
/// <param name="Content">Said in its place.</param>
public sealed record Nested(Phrase Content) : Inline;

/// <summary>What is called the same in every language.</summary>
/// <param name="Text">As the document spells it.</param>
public sealed record Name(string Text) : Inline;

/// <summary>A number that stood among words.</summary>
/// <param name="Text">Digits, with a point before the fraction.</param>
internal sealed record Numerals(string Text) : Inline;

/// <summary><see cref="Side"/> in the words of another language.</summary>
internal sealed record Turned(string ToRight, string ToLeft, bool Right) : Inline;

/// <summary>A whole number, or one for each size: said once when they are all equal.</summary>
/// <param name="Values">Whole numbers; not said with a unit.</param>
public sealed record Count(PerSize<int> Values) : Inline
{
    /// <summary>Of sizes that have none, a dash is said.</summary>
    public bool NoneIsDash { get; init; }
}

/// <summary>A name for each size: said once when they are all equal.</summary>
/// <param name="Values">As they are printed, in every language.</param>
public sealed record WordChoice(PerSize<string> Values) : Inline;

/// <summary>Words for each size: said once when they are all equal.</summary>
/// <param name="Values">Of one size each.</param>
public sealed record PhraseChoice(PerSize<Phrase> Values) : Inline;

/// <summary>A length, or one for each size, said in the edition's units.</summary>
/// <param name="Values">Of the garment or of a swatch, rounded only when they are said.</param>
public sealed record Measure(PerSize<Length> Values) : Inline;

/// <summary>
/// A <see cref="Measure"/>, <see cref="YarnLength"/> or <see cref="YarnMass"/> in a table cell: the numbers alone;
/// <see cref="UnitNames"/> in the row's header says the units.
/// </summary>
/// <param name="Amount">A <see cref="Measure"/>, <see cref="YarnLength"/> or <see cref="YarnMass"/>.</param>
public sealed record Bare(Inline Amount) : Inline;

/// <summary>The edition's units for such amounts, such as <c>cm / in</c>.</summary>
/// <param name="Of">Which kind of amount the units are for.</param>
public sealed record UnitNames(UnitsOf Of = UnitsOf.Measure) : Inline;

/// <summary>A kind of amount that has units of its own.</summary>
public enum UnitsOf
{
    /// <summary>Lengths of fabric: centimetres, inches.</summary>
    Measure,

    /// <summary>Lengths of yarn: metres and yards.</summary>
    YarnLength,

    /// <summary>Masses of yarn: grams and ounces.</summary>
    YarnMass,
}

/// <summary>Said only in an edition for one size.</summary>
/// <param name="Content">Left out where several sizes are printed.</param>
public sealed record InOneSize(Phrase Content) : Inline;

/// <summary>Said only where more than one size is printed.</summary>
/// <param name="Content">Left out where one size is printed.</param>
public sealed record InAllSizes(Phrase Content) : Inline;

/// <summary>A length of yarn, or one for each size, in metres and yards, rounded up to whole ones.</summary>
/// <param name="Values">Of yarn, not of fabric.</param>
public sealed record YarnLength(PerSize<Length> Values) : Inline;

/// <summary>A mass of yarn, or one for each size, in grams and ounces, rounded up.</summary>
/// <param name="Values">Of yarn.</param>
public sealed record YarnMass(PerSize<Mass> Values) : Inline;

/// <summary>A term that differs between US and UK usage, by its US abbreviation or US words (see the terms table).</summary>
/// <param name="Us">The term in US usage, abbreviated or in full.</param>
public sealed record Term(string Us) : Inline;

/// <summary>Left or right, exchanged for left-handed makers.</summary>
/// <param name="Right">For a right-handed maker; left where it is false.</param>
public sealed record Side(bool Right) : Inline;

/// <summary>Said only to left-handed makers.</summary>
/// <param name="Content">Left out for the right hand.</param>
public sealed record LeftHanded(Phrase Content) : Inline;

/// <summary>A colour of the sequence: its name and its symbol, so that hue is never the only sign.</summary>
/// <param name="Section">Index of the section in the colour sequence as worked, from 0.</param>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Symbol">As a chart's cells show it.</param>
public sealed record ColourName(int Section, string Name, string Symbol) : Inline;

/// <summary>Printed in bold.</summary>
/// <param name="Content">What is printed so.</param>
public sealed record Strong(Phrase Content) : Inline;

/// <summary>One value for each size, in the pattern's order of sizes; a single value serves them all.</summary>
/// <param name="Values">One for each size, or one for all; never empty.</param>
public sealed record PerSize<T>(ImmutableArray<T> Values)
    where T : notnull
{
    /// <summary>Whether one value can be said for all sizes.</summary>
    public bool IsSame => Values.All(v => EqualityComparer<T>.Default.Equals(v, Values[0]));

    public bool Equals(PerSize<T>? other) => other is not null && Values.SequenceEqual(other.Values);

    public override int GetHashCode() => Values.Aggregate(0, (hash, value) => HashCode.Combine(hash, value));
}

/// <summary>Lets phrases be written as interpolated strings.</summary>
[InterpolatedStringHandler]
public sealed class PhraseBuilder(int literalLength, int formattedCount)
{
    private readonly ImmutableArray<Inline>.Builder _parts = ImmutableArray.CreateBuilder<Inline>(formattedCount * 2 + literalLength % 2);

    /// <summary>Words that every edition says alike.</summary>
    public void AppendLiteral(string text) => _parts.Add(new Words(text));

    /// <summary>A part, as it is.</summary>
    public void AppendFormatted(Inline part) => _parts.Add(part);

    /// <summary>Another phrase, a sentence of its own.</summary>
    public void AppendFormatted(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        _parts.Add(new Nested(phrase));
    }

    /// <summary>A count for each size.</summary>
    public void AppendFormatted(PerSize<int> values) => _parts.Add(new Count(values));

    /// <summary>A length for each size, said in the edition's units.</summary>
    public void AppendFormatted(PerSize<Length> values) => _parts.Add(new Measure(values));

    /// <summary>A number that is the same in every size.</summary>
    public void AppendFormatted(int value) => _parts.Add(new Count(new PerSize<int>([value])));

    /// <summary>A number that need not be whole, to hundredths at most.</summary>
    public void AppendFormatted(double value) => _parts.Add(new Numerals(value.ToString("0.##", CultureInfo.InvariantCulture)));

    /// <summary>A length that is the same in every size, said in the edition's units.</summary>
    public void AppendFormatted(Length value) => _parts.Add(new Measure(new PerSize<Length>([value])));

    /// <summary>Words that every edition says alike.</summary>
    public void AppendFormatted(string text) => _parts.Add(new Nested(Phrase.Plain(text)));

    internal ImmutableArray<Inline> Parts() => _parts.ToImmutable();
}
