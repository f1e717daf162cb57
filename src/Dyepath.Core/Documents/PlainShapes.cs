using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Dyepath.Core.Colours;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Documents;

/// <summary>A short text without control characters (line breaks only where it is said), not blank.</summary>
internal sealed class TextShape : Shape<string>
{
    // Besides the C0 and C1 controls, the separators and direction marks that make a line read other than it is written.
    private const string OneLine = @"^(?=.*\S)[^\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]*$";
    private const string Lines = @"^(?=[\s\S]*\S)[^\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]*$";

    // Words between single spaces, none with a mark that parts the entries of a list.
    private const string Entry =
        @"^[^\s\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff(),;:]+( [^\s\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff(),;:]+)*$";

    private readonly int _longest;
    private readonly string _pattern;
    private readonly Regex _whole;
    private readonly string _shorten;

    public TextShape(int longest, bool lines = false)
        : this(
            longest, lines ? Lines : OneLine, lines ? $"text of 1 to {longest} characters, line breaks as \\n" : $"text of 1 to {longest} characters on one line",
            "Shorten it, or take out what cannot be printed.")
    {
    }

    private TextShape(int longest, string pattern, string allowed, string shorten) =>
        (_longest, _pattern, _whole, Allowed, _shorten) = (longest, pattern, TextPatterns.Whole(pattern), allowed, shorten);

    /// <summary>A name that is printed in lists such as <c>S (M, L)</c>, where brackets, commas and colons mean something else.</summary>
    public static TextShape InLists(int longest) => new(
        longest, Entry, $"a name of 1 to {longest} characters without ( ) , ; : and without spaces at its ends or two together",
        "Size lists are printed with brackets and commas: write the name shorter and without them.");

    public override string Allowed { get; }

    public override DocumentNode Example => new TextNode("…");

    public override IEnumerable<DocumentNode> Ends => [new TextNode("x"), new TextNode(new string('x', _longest))];

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out string value)
    {
        value = (place.Node as TextNode)?.Text;
        if (value is not null && value.EnumerateRunes().Count() <= _longest && _whole.IsMatch(value))
            return true;
        faults.Form(place, Allowed, value switch
        {
            null => "Write it in quotation marks.",
            "" => "Write something, or leave the property out where it may be.",
            _ => _shorten,
        });
        return false;
    }

    public override DocumentNode Write(string value, Commentary? commentary = null) => new TextNode(value);

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(
        ("type", new TextNode("string")), ("maxLength", NumberNode.Of(_longest)), ("pattern", new TextNode(_pattern)));
}

/// <summary>One of a few words.</summary>
internal sealed class ChoiceShape<T>(params (string Name, T Value)[] choices) : Shape<T>
{
    public ImmutableArray<string> Names { get; } = [.. choices.Select(c => c.Name)];

    public override string Allowed => string.Join(", ", Names.Select(n => $"\"{n}\""));

    public override DocumentNode Example => new TextNode(Names[0]);

    public override IEnumerable<DocumentNode> Ends => Names.Select(name => new TextNode(name));

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value)
    {
        var text = (place.Node as TextNode)?.Text;
        var at = text is null ? -1 : Names.IndexOf(text);
        value = at < 0 ? default : choices[at].Value;
        if (at < 0)
            faults.Form(place, Allowed, Nearest.Suggest(text ?? "", Names, "Choose one of these words."));
        return at >= 0;
    }

    public override DocumentNode Write(T value, Commentary? commentary = null)
    {
        var at = Array.FindIndex(choices, c => EqualityComparer<T>.Default.Equals(c.Value, value));
        return at >= 0
            ? new TextNode(Names[at])
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"The document has no word for it; it has {Allowed}.");
    }

    public override ObjectNode Schema(SchemaDefinitions definitions) =>
        ObjectNode.Of(("enum", new ListNode([.. Names.Select(n => new TextNode(n))])));
}

/// <summary>Yes or no.</summary>
internal sealed class FlagShape : Shape<bool>
{
    public override string Allowed => "true, false";

    public override DocumentNode Example => new FlagNode(true);

    public override IEnumerable<DocumentNode> Ends => [new FlagNode(false), new FlagNode(true)];

    public override bool TryRead(Place place, FaultList faults, out bool value)
    {
        var flag = place.Node as FlagNode;
        value = flag is { Value: true };
        if (flag is null)
            faults.Form(place, Allowed, "Write true or false, without quotation marks.");
        return flag is not null;
    }

    public override DocumentNode Write(bool value, Commentary? commentary = null) => new FlagNode(value);

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(("type", new TextNode("boolean")));
}

/// <summary>A count.</summary>
internal sealed class WholeShape(int smallest, int largest) : Shape<int>
{
    public WholeShape(CountBounds bounds)
        : this(bounds.Smallest, bounds.Largest) { }

    public override string Allowed => smallest == largest
        ? FormattableString.Invariant($"{smallest}")
        : FormattableString.Invariant($"a whole number from {smallest} to {largest}");

    public override DocumentNode Example => NumberNode.Of(Math.Max(1, smallest));

    public override IEnumerable<DocumentNode> Ends => [NumberNode.Of(smallest), NumberNode.Of(largest)];

    public override bool TryRead(Place place, FaultList faults, out int value)
    {
        // 14.0 and 1e2 are whole numbers to JSON Schema, and so here; what a double would round to a whole number is none.
        var isWhole = TextPatterns.TryNumber(place.Node, out var number) && number == Math.Floor(number)
            && !TextPatterns.IsRounded(place.Node);
        value = isWhole && number >= smallest && number <= largest ? (int)number : smallest - 1;
        if (value < smallest)
            faults.Form(place, Allowed, TextPatterns.AskForNumber(place.Node, Allowed));
        return value >= smallest;
    }

    public override DocumentNode Write(int value, Commentary? commentary = null) => NumberNode.Of(value);

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(
        ("type", new TextNode("integer")), ("minimum", NumberNode.Of(smallest)), ("maximum", NumberNode.Of(largest)));
}

/// <summary>A number with decimals.</summary>
/// <param name="whole">Only whole numbers, in a range beyond that of counts.</param>
internal sealed class RealShape(double example, Bounds bounds, bool whole = false) : Shape<double>
{
    public override string Allowed => FormattableString.Invariant($"a {(whole ? "whole " : "")}number from {bounds.Smallest} to {bounds.Largest}");

    public override DocumentNode Example => NumberNode.Of(example);

    public override IEnumerable<DocumentNode> Ends => [NumberNode.Of(bounds.Smallest), NumberNode.Of(bounds.Largest)];

    public override bool TryRead(Place place, FaultList faults, out double value)
    {
        var isGood = TextPatterns.TryNumber(place.Node, out value) && bounds.Holds(value)
            && !(whole && (value != Math.Floor(value) || TextPatterns.IsRounded(place.Node)));
        if (!isGood)
            faults.Form(place, Allowed, TextPatterns.AskForNumber(place.Node, Allowed));
        return isGood;
    }

    public override DocumentNode Write(double value, Commentary? commentary = null) => NumberNode.Of(value);

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(
        ("type", new TextNode(whole ? "integer" : "number")), ("minimum", NumberNode.Of(bounds.Smallest)), ("maximum", NumberNode.Of(bounds.Largest)));
}

/// <summary>An sRGB colour.</summary>
internal sealed class ColourShape : Shape<Srgb>
{
    private const string Pattern = "^#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$";

    public override string Allowed => "a colour such as \"#1f4e5f\"";

    public override DocumentNode Example => new TextNode("#1f4e5f");

    public override IEnumerable<DocumentNode> Ends => [new TextNode("#000000"), new TextNode("#ffffff")];

    public override bool TryRead(Place place, FaultList faults, out Srgb value)
    {
        var isGood = Srgb.TryParse((place.Node as TextNode)?.Text, out value);
        if (!isGood)
            faults.Form(place, Allowed, "Write # and six (or three) of 0–9 and a–f.");
        return isGood;
    }

    public override DocumentNode Write(Srgb value, Commentary? commentary = null) => new TextNode(value.ToString());

    public override ObjectNode Schema(SchemaDefinitions definitions) =>
        ObjectNode.Of(("type", new TextNode("string")), ("pattern", new TextNode(Pattern)));
}

/// <summary>Shared by the shapes that read text and numbers.</summary>
internal static class TextPatterns
{
    /// <summary>A pattern of the JSON Schema, in which $ is the very end; .NET's would let a line break follow.</summary>
    public static Regex Whole(string pattern) => new(pattern[..^1] + @"\z", RegexOptions.CultureInvariant);

    /// <summary>What to write where a number is wanted: a number in quotation marks is told to do without them.</summary>
    public static string AskForNumber(DocumentNode node, string allowed) =>
        node is TextNode { Text: var text } && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _)
            ? $"Write {allowed}, without quotation marks."
            : $"Write {allowed}, in digits.";

    /// <summary>The finite number of a node; false for any other node and for one beyond the range of doubles.</summary>
    public static bool TryNumber(DocumentNode node, out double number)
    {
        number = 0;
        return node is NumberNode { Raw: var raw }
            && double.TryParse(raw, NumberStyles.Float, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
    }

    /// <summary>Whether a number has decimals that are lost where it is held as a double.</summary>
    public static bool IsRounded(DocumentNode node) =>
        node is NumberNode { Raw: var raw } && decimal.TryParse(raw, NumberStyles.Float, CultureInfo.InvariantCulture, out var exact)
        && exact != Math.Floor(exact);
}
