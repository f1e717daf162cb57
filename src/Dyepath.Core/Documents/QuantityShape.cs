using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Documents;

/// <param name="Symbol">As it is written.</param>
/// <param name="Size">Of one such unit, in the quantity's base unit.</param>
/// <param name="Step">Numbers written in this unit are multiples of it; 0, any number.</param>
/// <param name="Written">False: only read.</param>
/// <param name="Fractions">Half, quarter and eighth signs are read.</param>
internal sealed record QuantityUnit(string Symbol, decimal Size, decimal Step, bool Written, bool Fractions = false);

/// <summary>How a kind of quantity becomes a number of its base unit and back.</summary>
/// <param name="Id">Of the definition in the JSON Schema.</param>
/// <param name="Name">With its article, such as <c>a length</c>.</param>
internal sealed record QuantityKind<T>(
    string Id, string Name, Func<double, T> FromBase, Func<T, double> ToBase, ImmutableArray<QuantityUnit> Units);

/// <summary>A number with its unit, such as "41 cm"; <paramref name="smallest"/> and <paramref name="largest"/> in base units.</summary>
internal sealed class QuantityShape<T>(QuantityKind<T> kind, string example, decimal smallest, decimal largest) : Shape<T>
    where T : struct
{
    /// <param name="bounds">In base units.</param>
    public QuantityShape(QuantityKind<T> kind, string example, Bounds bounds)
        : this(kind, example, (decimal)bounds.Smallest, (decimal)bounds.Largest) { }

    private const int MostDecimals = 20;
    private const string FractionSigns = "⅛¼⅜½⅝¾⅞";

    private static readonly SearchValues<char> Fractions = SearchValues.Create(FractionSigns);

    private readonly Regex _whole = TextPatterns.Whole(PatternOf(kind));

    public override string Allowed =>
        $"{kind.Name} such as \"{example}\", from {Written(smallest)} to {Written(largest)} ({Symbols(", ")})";

    public override DocumentNode Example => new TextNode(example);

    public override IEnumerable<DocumentNode> Ends => [new TextNode(Written(smallest)), new TextNode(Written(largest))];

    public override bool TryRead(Place place, FaultList faults, out T value)
    {
        value = default;
        if (place.Node is not TextNode { Text: var text } || _whole.Match(text) is not { Success: true } match)
        {
            faults.Form(
                place, Allowed,
                place.Node is NumberNode ? "Write the number and its unit in quotation marks."
                    : place.Node is TextNode typed && _whole.IsMatch(typed.Text.Replace(',', '.'))
                        ? $"Write a point for the comma: \"{typed.Text.Replace(',', '.')}\"."
                        : "Write a number, then its unit.");
            return false;
        }
        var inBase = NumberOf(match, UnitOf(match)) * UnitOf(match).Size;
        if (inBase < smallest || inBase > largest)
        {
            faults.Meaning(place, Allowed, "Check the number and its unit.");
            return false;
        }
        value = kind.FromBase(ToDouble(inBase));
        return true;
    }

    public override DocumentNode Write(T value, Commentary? commentary = null) => new TextNode(Text(value));

    public override ObjectNode Schema(SchemaDefinitions definitions) => definitions.Reference(kind.Id, () => ObjectNode.Of(
        ("description", new TextNode($"{kind.Name} in {Symbols(", ")}")),
        ("type", new TextNode("string")),
        ("pattern", new TextNode(PatternOf(kind)))));

    /// <summary>
    /// In the kind's first unit, unless two decimals or more are needed there and another unit needs fewer. Exact down
    /// to <see cref="MostDecimals"/> decimals.
    /// </summary>
    private string Text(T value)
    {
        var inBase = kind.ToBase(value);
        if (!(inBase >= ToDouble(smallest) && inBase <= ToDouble(largest)))
            throw new ArgumentOutOfRangeException(nameof(value), value, $"The document allows {Allowed}.");
        var exact = Exactly(inBase);
        return kind.Units
            .Where(u => u.Written)
            .Select(u => (Unit: u, Number: u.Step == 0 ? exact / u.Size : Math.Round(exact / u.Size / u.Step) * u.Step))
            .Where(n => n.Unit.Step == 0 || EqualityComparer<T>.Default.Equals(kind.FromBase(ToDouble(n.Number * n.Unit.Size)), value))
            .Select(n => $"{Digits(n.Number)} {n.Unit.Symbol}")
            .OrderBy(text => Math.Max(1, Decimals(text)))
            .First();
    }

    private string Symbols(string separator) => string.Join(separator, kind.Units.Select(u => u.Symbol));

    private string Written(decimal inBase) => Text(kind.FromBase(ToDouble(inBase)));

    private static string PatternOf(QuantityKind<T> kind)
    {
        var units = string.Join('|', kind.Units.Select(u => u.Symbol));
        var decimals = $"[-−]?[0-9]{{1,6}}([.][0-9]{{1,{MostDecimals}}})? ?({units})";
        var withFractions = string.Join('|', kind.Units.Where(u => u.Fractions).Select(u => u.Symbol));
        return withFractions.Length == 0 ? $"^{decimals}$" : $"^({decimals}|[-−]?([0-9]{{1,6}} ?)?[{FractionSigns}] ?({withFractions}))$";
    }

    private static decimal NumberOf(Match match, QuantityUnit unit)
    {
        // Without the unit, whose name may end in a digit too.
        var number = match.Value.AsSpan(0, match.Length - unit.Symbol.Length);
        var isNegative = number[0] is '-' or '−';
        if (isNegative)
            number = number[1..];
        var fraction = number.IndexOfAny(Fractions);
        var digits = number[..(fraction >= 0 ? fraction : number.Length)].Trim();
        var value = digits.IsEmpty ? 0 : decimal.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        if (fraction >= 0)
            value += (FractionSigns.IndexOf(number[fraction]) + 1) / 8m;
        return isNegative ? -value : value;
    }

    private QuantityUnit UnitOf(Match match) =>
        kind.Units.Where(u => match.Value.EndsWith(u.Symbol, StringComparison.Ordinal)).MaxBy(u => u.Symbol.Length)!;

    /// <summary>All significant digits of a double; the framework's conversion keeps only fifteen.</summary>
    private static decimal Exactly(double value) =>
        decimal.Parse(value.ToString("R", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>The nearest double; the framework's conversion may miss it by one.</summary>
    private static double ToDouble(decimal value) =>
        double.Parse(value.ToString(CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Digits(decimal number) => number.ToString($"0.{new string('#', MostDecimals)}", CultureInfo.InvariantCulture);

    private static int Decimals(string text)
    {
        var point = text.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 0 : text.IndexOf(' ', StringComparison.Ordinal) - point - 1;
    }
}
