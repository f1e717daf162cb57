using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Documents;

/// <summary>A day of the calendar, as ISO 8601 writes it.</summary>
internal sealed class DateShape : Shape<DateOnly>
{
    /// <summary>Year, month and day, with hyphens between.</summary>
    private const string Form = "O";

    // Months of 31, 30 and 28 days, then 29 February of years that are divisible by 4 and not by 100, or by 400; no year 0.
    private const string Pattern =
        "^(?!0000)([0-9]{4}-((0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))"
        + "|([0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00)-02-29)$";

    private static readonly Regex Whole = TextPatterns.Whole(Pattern);

    public override string Allowed => "a date such as \"2026-12-01\"";

    public override DocumentNode Example => new TextNode("2026-12-01");

    public override IEnumerable<DocumentNode> Ends => [new TextNode("0001-01-01"), new TextNode("9999-12-31")];

    public override bool TryRead(Place place, FaultList faults, out DateOnly value)
    {
        var text = (place.Node as TextNode)?.Text;
        value = default;
        var isGood = text is not null && Whole.IsMatch(text)
            && DateOnly.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out value);
        if (!isGood)
        {
            faults.Form(place, Allowed, text is null
                ? "Write it in quotation marks: year, month and day, with a hyphen between."
                : "Write a day that is in the calendar: year, month and day in digits, with a hyphen between.");
        }
        return isGood;
    }

    public override DocumentNode Write(DateOnly value, Commentary? commentary = null) =>
        new TextNode(value.ToString(Form, CultureInfo.InvariantCulture));

    public override ObjectNode Schema(SchemaDefinitions definitions) =>
        ObjectNode.Of(("type", new TextNode("string")), ("pattern", new TextNode(Pattern)));
}
