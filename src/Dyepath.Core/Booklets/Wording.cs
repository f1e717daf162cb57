using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Booklets;

/// <summary>
/// Says phrases as one edition words them: US or UK terms, centimetres or inches, all sizes or one, right or left hand.
/// </summary>
/// <remarks>
/// Size lists follow the trade: the smallest size outside the parentheses, the rest inside in order, and a number that
/// is the same for all sizes said once. Centimetres are rounded to the nearest half and inches to the nearest quarter,
/// as printed leaflets do; under 2.5 cm to the nearest millimetre and eighth. Each is rounded from the exact length,
/// never one from the other.
/// </remarks>
public sealed class Wording
{
    private const double SmallCentimetres = 2.5;

    /// <summary>Words with a capital to begin with; not empty.</summary>
    public static string Capital(string words)
    {
        ArgumentException.ThrowIfNullOrEmpty(words);
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>Such as <c>hem, neck and cuffs</c>.</summary>
    public static string List(IEnumerable<string> names)
    {
        var all = names.ToArray();
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private readonly Edition _edition;
    private readonly int _sizeCount;
    private readonly int? _only;
    private readonly Catalogue? _catalogue;
    private readonly Action<string>? _missing;

    /// <exception cref="ArgumentException">The edition is for a size that the booklet does not have.</exception>
    public Wording(Booklet booklet, Edition edition)
        : this((booklet ?? throw new ArgumentNullException(nameof(booklet))).Sizes, edition)
    {
    }

    /// <param name="sizes">Names of all sizes, in the pattern's order.</param>
    /// <exception cref="ArgumentException">The edition is for a size that is not among them.</exception>
    public Wording(ImmutableArray<string> sizes, Edition edition)
        : this(sizes, edition, null)
    {
    }

    /// <param name="missing">Told what the edition's language has no words for: it is said in English.</param>
    /// <param name="catalogue">Instead of the language's own.</param>
    internal Wording(ImmutableArray<string> sizes, Edition edition, Action<string>? missing, Catalogue? catalogue = null)
    {
        ArgumentNullException.ThrowIfNull(edition);
        _catalogue = catalogue ?? Catalogue.Of(edition.Language);
        _missing = missing;
        _edition = edition;
        _sizeCount = sizes.Length;
        if (edition.Size is not { } size)
            return;
        var at = sizes.IndexOf(size);
        if (at < 0)
            throw new ArgumentException($"The booklet has no size {size}, only {string.Join(", ", sizes)}.", nameof(edition));
        _only = at;
    }

    /// <summary>Index of the one size that the edition is for; null for all.</summary>
    public int? OnlySize => _only;

    /// <summary>The phrase in this edition's words; neighbouring spans of equal weight are joined.</summary>
    public ImmutableArray<TextSpan> Say(Phrase phrase)
    {
        var size = _only ?? (_sizeCount == 1 ? 0 : null);
        var spans = ImmutableArray.CreateBuilder<TextSpan>();
        var text = new StringBuilder();
        var weight = false;
        foreach (var span in SayBySize(phrase, size is null, size is not null))
        {
            if (!span.IsSaidTo(size))
                continue;
            if (span.Strong != weight)
                Flush();
            weight = span.Strong;
            text.Append(span.Text);
        }
        Flush();
        return spans.ToImmutable();

        void Flush()
        {
            if (text.Length > 0)
                spans.Add(new TextSpan(text.ToString(), weight));
            text.Clear();
        }
    }

    /// <summary>
    /// What the edition would say of all sizes and of each, whichever of them it is for: those said where all sizes are printed are its
    /// text for all (<see cref="SizedSpan.IsSaidTo"/>), and so for each size.
    /// </summary>
    public ImmutableArray<SizedSpan> SayBySize(Phrase phrase) => SayBySize(phrase, toAll: true, toOne: true);

    /// <summary>What is said to neither is not looked at.</summary>
    private ImmutableArray<SizedSpan> SayBySize(Phrase phrase, bool toAll, bool toOne)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        var spans = ImmutableArray.CreateBuilder<SizedSpan>();
        Append(_catalogue?.Translate(phrase, _missing) ?? phrase, new SizedSpan("", Strong: false, toAll, toOne));
        return spans.ToImmutable();

        void Append(Phrase part, SizedSpan like)
        {
            if (!like.InAll && !like.InOne)
                return;
            foreach (var inline in part.Parts)
            {
                switch (inline)
                {
                    case Nested nested:
                        Append(nested.Content, like);
                        break;
                    case Strong emphasised:
                        Append(emphasised.Content, like with { Strong = true });
                        break;
                    case InOneSize one:
                        Append(one.Content, like with { InAll = false });
                        break;
                    case InAllSizes many:
                        Append(many.Content, like with { InOne = false });
                        break;
                    case LeftHanded left:
                        if (_edition.Hand == Hand.Left)
                            Append(left.Content, like);
                        break;
                    default:
                        foreach (var said in Say(inline))
                        {
                            var inOne = like.InOne && said.InOne;
                            if (inOne || (like.InAll && said.InAll))
                                spans.Add(new SizedSpan(said.Text, like.Strong, like.InAll && said.InAll, inOne, inOne ? said.Size : null));
                        }
                        break;
                }
            }
        }
    }

    /// <summary>The phrase as plain text.</summary>
    public string Text(Phrase phrase) => string.Concat(Say(phrase).Select(span => span.Text));

    private IEnumerable<SizedSpan> Say(Inline inline) => inline switch
    {
        Words words => Plain(words.Text),
        Name name => Plain(name.Text),
        Numerals number => Plain(Local(number.Text)),
        Turned turned => Plain(turned.Right == (_edition.Hand == Hand.Right) ? turned.ToRight : turned.ToLeft),
        Count count => SizeList(
            count.Values, value => value == 0 && count.NoneIsDash ? None : value.ToString(CultureInfo.InvariantCulture)),
        WordChoice words => SizeList(words.Values, word => word),
        PhraseChoice choice => SizeList(choice.Values, words => string.Concat(words.Leaves.SelectMany(Say).Select(span => span.Text))),
        Measure or YarnLength or YarnMass => Amount(inline, withUnits: true),
        Bare bare => Amount(bare.Amount, withUnits: false),
        UnitNames names => names.Of switch
        {
            UnitsOf.YarnLength => Paired(Plain("m"), Plain("yd")),
            UnitsOf.YarnMass => Paired(Plain("g"), Plain("oz")),
            _ => Paired(Plain("cm"), Plain(Inch)),
        },
        Term term => Plain(TradeTerms.Say(term.Us, _edition.Terms)),
        Side side => Plain(side.Right == (_edition.Hand == Hand.Right) ? "right" : "left"),
        ColourName colour => Plain($"{colour.Name} ({colour.Symbol})"),
        _ => throw new ArgumentOutOfRangeException(nameof(inline), inline, "No wording for this kind of inline."),
    };

    /// <summary>Said of a size that has none; an edition that says it also says what it means.</summary>
    public const string None = "–";

    /// <summary>“in” is a word of other languages.</summary>
    private string Inch => _catalogue?.UnitOf("in") ?? "in";

    /// <summary>English parts whole and fraction by a point, the other languages by a comma.</summary>
    private string Local(string number) => _catalogue is null ? number : number.Replace('.', ',');

    private static IEnumerable<SizedSpan> Plain(string text) => [new SizedSpan(text, Strong: false)];

    /// <summary>Whether the edition gives inches, alone or before centimetres.</summary>
    public static bool InchesFirst(Units units) => units is Units.Inches or Units.InchesThenCentimetres;

    /// <summary>
    /// How far something is off, in the first of these units: to the millimetre or the eighth of an inch, such as <c>3.6 cm</c>; less than
    /// a sixteenth of an inch in hundredths.
    /// </summary>
    public static string Fine(Length length, Units units)
    {
        if (!InchesFirst(units))
            return length.Centimetres.ToString("0.0", CultureInfo.InvariantCulture) + " cm";
        var hardly = Math.Abs(length.Inches) is > 0.005 and < 0.0625;
        return (hardly ? length.Inches.ToString("0.00", CultureInfo.InvariantCulture) : Inches(length, 8)) + " in";
    }

    /// <summary>A length of yarn in the first of these units, such as <c>824 m</c>: rounded up to whole ones, as everywhere.</summary>
    public static string Yarn(Length length, Units units) => InchesFirst(units)
        ? WholeYards(length) + " yd"
        : WholeMetres(length) + " m";

    /// <summary>Rounded up, that yarn bought by it is enough.</summary>
    public static string WholeMetres(Length length) => Whole(Math.Ceiling(Settled(length.Metres)));

    private static string WholeYards(Length length) => Whole(Math.Ceiling(Settled(length.Inches / 36)));

    /// <summary>One length in the first of these units, such as <c>52.5 cm</c> or <c>20¾ in</c>; rounded as the pattern rounds.</summary>
    public static string Say(Length length, Units units) => InchesFirst(units)
        ? Inches(length) + " in"
        : Centimetres(length) + " cm";

    private IEnumerable<SizedSpan> SizeList<T>(PerSize<T> values, Func<T, string> say)
        where T : notnull
    {
        var all = values.Values;
        if (all.Length != 1 && all.Length != _sizeCount)
            throw new ArgumentException($"{all.Length} values for {_sizeCount} sizes.", nameof(values));
        var said = all.Select(say).ToArray();
        return said.All(s => s == said[0]) ? Plain(said[0]) : said.SelectMany((text, i) => new[]
        {
            new SizedSpan(i switch { 0 => "", 1 => " (", _ => _catalogue is null ? ", " : "; " }, Strong: false, InOne: false),
            new SizedSpan(text, Strong: false, Size: i),
        }).Append(new SizedSpan(")", Strong: false, InOne: false));
    }

    private IEnumerable<SizedSpan> Amount(Inline amount, bool withUnits) => amount switch
    {
        Measure measure => Paired(
            SizeList(measure.Values, length => Local(Centimetres(length))).Concat(Unit(withUnits, "cm")),
            SizeList(measure.Values, Inches).Concat(Unit(withUnits, Inch))),
        YarnLength yarn => Paired(
            SizeList(yarn.Values, WholeMetres).Concat(Unit(withUnits, "m")),
            SizeList(yarn.Values, WholeYards).Concat(Unit(withUnits, "yd"))),
        YarnMass mass => Paired(
            SizeList(mass.Values, m => Whole(Math.Ceiling(Settled(m.Grams)))).Concat(Unit(withUnits, "g")),
            SizeList(mass.Values, m => Local(Math.Round(m.Ounces, 1).ToString("0.#", CultureInfo.InvariantCulture)))
                .Concat(Unit(withUnits, "oz"))),
        _ => throw new ArgumentOutOfRangeException(nameof(amount), amount, "Only amounts can stand bare."),
    };

    private static IEnumerable<SizedSpan> Unit(bool said, string name) => said ? Plain(" " + name) : [];

    private IEnumerable<SizedSpan> Paired(IEnumerable<SizedSpan> metric, IEnumerable<SizedSpan> imperial) => _edition.Units switch
    {
        Units.Centimetres => metric,
        Units.Inches => imperial,
        Units.InchesThenCentimetres => [.. imperial, .. Plain(" / "), .. metric],
        _ => [.. metric, .. Plain(" / "), .. imperial],
    };

    /// <summary>Takes off the dust of floating point before rounding up, so that 12.000000001 is 12.</summary>
    private static double Settled(double value) => Math.Round(value, 6);

    private static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);

    private static string Centimetres(Length length)
    {
        var cm = length.Centimetres;
        var step = Math.Abs(cm) < SmallCentimetres ? 0.1 : 0.5;
        return (Math.Round(cm / step, MidpointRounding.AwayFromZero) * step).ToString("0.#", CultureInfo.InvariantCulture).Replace('-', '−');
    }

    private static string Inches(Length length) => Inches(length, Math.Abs(length.Centimetres) < SmallCentimetres ? 8 : 4);

    /// <param name="parts">Of an inch: 4 or 8.</param>
    private static string Inches(Length length, int parts)
    {
        var eighths = (int)Math.Round(Math.Abs(length.Inches) * parts, MidpointRounding.AwayFromZero) * (8 / parts);
        var fraction = (eighths % 8) switch
        {
            1 => "⅛",
            2 => "¼",
            3 => "⅜",
            4 => "½",
            5 => "⅝",
            6 => "¾",
            7 => "⅞",
            _ => "",
        };
        var whole = eighths / 8;
        var sign = length < Length.Zero && eighths > 0 ? "−" : "";
        return sign + (whole == 0 && fraction.Length > 0 ? fraction : whole.ToString(CultureInfo.InvariantCulture) + fraction);
    }
}
