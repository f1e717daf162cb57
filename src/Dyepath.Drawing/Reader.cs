using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;

namespace Dyepath.Drawing;

/// <summary>One reader's copy: the edition and how its phrases are said.</summary>
internal sealed class Reader(Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, Effort? effort = null)
{
    /// <summary>What it takes to say one phrase and set it.</summary>
    private const int StepsOfPhrase = 1_000;

    /// <summary>What writing takes.</summary>
    public Effort Effort { get; } = effort ?? new Effort();

    public Edition Edition { get; } = edition;

    public bool LeftHanded => Edition.Hand == Hand.Left;

    public bool InchesFirst => Wording.InchesFirst(Edition.Units);

    /// <summary>BCP 47.</summary>
    public string Language => LanguageTags.Of(Edition.Language, Edition.Terms);

    public ImmutableArray<TextSpan> Say(Phrase phrase)
    {
        Effort.Spend(StepsOfPhrase);
        return say(phrase);
    }

    /// <summary>Between two units in a cell.</summary>
    public const string CellStroke = "\u00A0/ ";

    /// <summary>For narrow columns: the stroke between two units stays with the number before it.</summary>
    public ImmutableArray<TextSpan> SayCell(Phrase phrase) =>
        [.. Say(phrase).Select(span => span with { Text = InCell(span.Text) })];

    public static string InCell(string text) => text.Replace(" / ", CellStroke, StringComparison.Ordinal);

    public string Text(Phrase phrase) => string.Concat(Say(phrase).Select(span => span.Text));

    /// <summary>Words of the page itself, such as <c>Contents</c>.</summary>
    public string Text(string words) => Text(Phrase.Plain(words));

    /// <summary>Index of the edition's one size, or null for all of them.</summary>
    public int? OnlySize(Booklet booklet) =>
        Edition.Size is { } size && booklet.Sizes.IndexOf(size) is >= 0 and var at ? at : null;

    public string SizesLine(Booklet booklet) => (OnlySize(booklet) ?? (booklet.Sizes.Length == 1 ? 0 : null)) is { } only
        ? SizeName(booklet.Sizes[only])
        : Text(Phrase.Of($"Sizes {new WordChoice(new PerSize<string>(booklet.Sizes))}"));

    public string SizeName(string name) => Text(SaysSize(name) ? Phrase.Named(name) : Phrase.Of($"Size {Phrase.Named(name)}"));

    /// <summary>Whether a size's name says that it is one, such as <c>One size</c>.</summary>
    public static bool SaysSize(string name) => name.Contains("size", StringComparison.OrdinalIgnoreCase);

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
