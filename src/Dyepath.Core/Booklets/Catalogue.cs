using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Booklets;

/// <summary>
/// The sentences of one language, each found by what it says in English: <c>Ch {n}, turn.</c> is an entry, and what stands in braces is a
/// slot of a kind, filled by the phrase at hand.
/// </summary>
/// <remarks>docs/languages.md says how a file of it is written.</remarks>
public sealed partial class Catalogue
{
    private readonly FrozenDictionary<string, Entry> _entries;

    private Catalogue(Language language, IEnumerable<KeyValuePair<string, Entry>> entries)
    {
        Language = language;
        _entries = entries.ToFrozenDictionary(StringComparer.Ordinal);
    }

    public Language Language { get; }

    /// <summary>What the entries say in English.</summary>
    public IEnumerable<string> Keys => _entries.Keys;

    /// <summary>Every key with each thing that is said of it, its forms among them.</summary>
    internal IEnumerable<(string Key, string Said)> Entries =>
        _entries.SelectMany(e => e.Value.Forms.Values.Prepend(e.Value.Main).Select(said => (e.Key, said)));

    /// <summary>Such as a sentence, or a piece's name with the forms that sentences ask for.</summary>
    /// <param name="Main">What is said where no form is asked for.</param>
    /// <param name="Forms">By name, such as a case.</param>
    private sealed record Entry(string Main, ImmutableDictionary<string, string> Forms);

    /// <summary>Null for English, which needs none.</summary>
    public static Catalogue? Of(Language language) => language switch
    {
        Language.German => German.Value,
        Language.Spanish => Spanish.Value,
        Language.English => null,
    };

    private static Lazy<Catalogue> German { get; } = new(() => Embedded(Language.German, "de.txt"));

    private static Lazy<Catalogue> Spanish { get; } = new(() => Embedded(Language.Spanish, "es.txt"));

    private static Catalogue Embedded(Language language, string name)
    {
        using var stream = typeof(Catalogue).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The catalogue {name} is not in the assembly.");
        using var reader = new StreamReader(stream);
        return Read(language, reader.ReadToEnd());
    }

    /// <summary>
    /// Entries are parted by empty lines: what is said in English, then <c>= </c> and what the language says, then its forms, such as
    /// <c>@dat = </c>. Lines that begin with <c>#</c> are notes.
    /// </summary>
    /// <exception cref="FormatException">A line that is none of these, a second entry for the same, or a slot that the English lacks.</exception>
    public static Catalogue Read(Language language, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var entries = new Dictionary<string, Entry>(StringComparer.Ordinal);
        string? key = null;
        var number = 0;
        foreach (var line in text.Split('\n').Select(l => l.TrimEnd('\r')))
        {
            number++;
            if (line.Length == 0)
                key = null;
            else if (line[0] == '#')
                continue;
            else if (key is null)
                key = line;
            else if (Form().Match(line) is { Success: true } form)
                Add(form.Groups["form"].Value, form.Groups["text"].Value);
            else
                throw Wrong("neither “= ” nor a form");
        }
        return new Catalogue(language, entries);

        void Add(string form, string said)
        {
            var slots = Kinds().Count(key!);
            if (Slot().Matches(said).Select(NumberOf).Any(n => n < 1 || n > slots))
                throw Wrong("a slot that the English has not");
            var first = form.Length == 0;
            if (first == entries.TryGetValue(key!, out var entry))
                throw Wrong(first ? "said a second time" : "a form before “= ”");
            entries[key!] = first
                ? new Entry(said, ImmutableDictionary<string, string>.Empty) : entry! with { Forms = entry.Forms.SetItem(form, said) };
        }

        FormatException Wrong(string why) => new(string.Create(CultureInfo.InvariantCulture, $"Line {number} of the catalogue of {language}, “{key}”: {why}."));
    }

    /// <summary>The phrase in this language. What it has no entry for stays English.</summary>
    /// <param name="missing">Told what has no entry.</param>
    public Phrase Translate(Phrase phrase, Action<string>? missing = null) => Translate(phrase, "", missing);

    private Phrase Translate(Phrase phrase, string form, Action<string>? missing)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        if (phrase.Parts is [Nested only])
            return Translate(only.Content, form, missing);
        var (key, slots) = Keyed(phrase);
        var bare = key.Trim();
        if (!HasWords(bare))
            return AsItIs();
        if (Said(bare, form) is not { } said)
        {
            missing?.Invoke(bare);
            return AsItIs();
        }
        var (before, after) = (key[..(key.Length - key.TrimStart().Length)], key[key.TrimEnd().Length..]);
        return Filled(before + said + after, (n, asked) => Slotted(slots[n], asked, missing));

        Phrase AsItIs() => new([.. phrase.Parts.SelectMany(NumbersApart).Select(part => Slotted(part, form, missing))]);
    }

    /// <summary>What a unit is called, by an entry such as <c>unit in</c>; itself where there is none.</summary>
    internal string UnitOf(string sign) => _entries.TryGetValue($"unit {sign}", out var entry) ? entry.Main : sign;

    /// <summary>The entry, or that of the same words without their capital.</summary>
    private string? Said(string key, string form)
    {
        if (_entries.TryGetValue(key, out var entry))
            return Of(entry);
        var small = char.ToLowerInvariant(key[0]) + key[1..];
        return small != key && _entries.TryGetValue(small, out entry) ? Wording.Capital(Of(entry)) : null;

        string Of(Entry entry) => entry.Forms.TryGetValue(form, out var formed) ? formed : entry.Main;
    }

    /// <param name="slot">What stands in the slot of a number, from 0, in the form asked for.</param>
    private static Phrase Filled(string said, Func<int, string, Inline> slot)
    {
        var parts = ImmutableArray.CreateBuilder<Inline>();
        var at = 0;
        foreach (Match match in Slot().Matches(said))
        {
            if (match.Index > at)
                parts.Add(new Words(said[at..match.Index]));
            parts.Add(slot(NumberOf(match) - 1, match.Groups["form"].Value));
            at = match.Index + match.Length;
        }
        if (at < said.Length)
            parts.Add(new Words(said[at..]));
        return new Phrase(parts.ToImmutable());
    }

    private Inline Slotted(Inline part, string form, Action<string>? missing) => part switch
    {
        Nested nested => new Nested(Translate(nested.Content, form, missing)),
        Strong strong => new Strong(Translate(strong.Content, form, missing)),
        InOneSize one => new InOneSize(Translate(one.Content, form, missing)),
        InAllSizes all => new InAllSizes(Translate(all.Content, form, missing)),
        LeftHanded left => new LeftHanded(Translate(left.Content, form, missing)),
        PhraseChoice choice => new PhraseChoice(new([.. choice.Values.Values.Select(words => Translate(words, form, missing))])),
        Term term => new Nested(Translate(Phrase.Plain(term.Us), form, missing)),
        Side side => new Turned(Plain("right", form, missing), Plain("left", form, missing), side.Right),
        _ => part,
    };

    private string Plain(string words, string form, Action<string>? missing) =>
        string.Concat(Translate(Phrase.Plain(words), form, missing).Leaves.OfType<Words>().Select(w => w.Text));

    private static int NumberOf(Match slot) => int.Parse(slot.Groups["n"].Value, CultureInfo.InvariantCulture);

    /// <summary>What the phrase says in English with its slots by kind, and what is in them.</summary>
    internal static (string Key, ImmutableArray<Inline> Slots) Keyed(Phrase phrase)
    {
        var key = new StringBuilder();
        var slots = ImmutableArray.CreateBuilder<Inline>();
        foreach (var part in phrase.Parts.SelectMany(NumbersApart))
        {
            if (part is Words words)
            {
                key.Append(words.Text.Replace("{", "{{", StringComparison.Ordinal));
                continue;
            }
            key.Append('{').Append(KindOf(part)).Append('}');
            slots.Add(part);
        }
        return (key.ToString(), slots.ToImmutable());
    }

    /// <summary>Words with the numbers among them each a part of its own.</summary>
    private static IEnumerable<Inline> NumbersApart(Inline part)
    {
        if (part is not Words { Text: var text } || !text.Any(char.IsAsciiDigit))
        {
            yield return part;
            yield break;
        }
        var at = 0;
        foreach (Match number in Numeral().Matches(text))
        {
            if (number.Index > at)
                yield return new Words(text[at..number.Index]);
            yield return new Numerals(number.Value);
            at = number.Index + number.Length;
        }
        if (at < text.Length)
            yield return new Words(text[at..]);
    }

    private static string KindOf(Inline part) => part switch
    {
        Count or Numerals => "n",
        Measure or YarnLength or YarnMass or Bare => "amount",
        UnitNames => "unit",
        Term => "term",
        Side or Turned => "side",
        ColourName => "colour",
        Name or WordChoice => "name",
        _ => "text",
    };

    private static bool HasWords(string key) => Kinds().Replace(key, "").Any(char.IsLetter);

    [GeneratedRegex(@"^(?:@(?<form>[a-z]+) )?= (?<text>.*)$")]
    private static partial Regex Form();

    [GeneratedRegex(@"\{(?:n|amount|unit|term|side|colour|name|text)\}")]
    private static partial Regex Kinds();

    [GeneratedRegex(@"\{(?<n>[0-9]+)(?:@(?<form>[a-z]+))?\}")]
    private static partial Regex Slot();

    [GeneratedRegex(@"[0-9]+(?:\.[0-9]+)?")]
    private static partial Regex Numeral();
}
