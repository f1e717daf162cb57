using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Reading;

/// <summary>The yarns with their balls, and the colour sequence, against document and plan.</summary>
internal static partial class MaterialLines
{
    private const string Section = "MATERIALS";

    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var lines = read.Lines.Where(l => l.Section == Section).Select(l => l.Line).ToArray();
        var bullets = lines.Where(l => l.StartsWith("- ", StringComparison.Ordinal)).ToArray();
        var yarn = plan.Project.Yarn;
        Balls(plan, read, bullets.ElementAtOrDefault(0), $"{yarn.Name}: {MaterialsSection.Label(yarn)}", yarn.Ball, s => s.Yarn.BallsSafe, notes);
        if (plan.Project.Companion is { } companion && plan.Sizes.All(s => s.Yarn.Companion is not null))
            Balls(plan, read, bullets.ElementAtOrDefault(1), $"{companion.Name}, the companion yarn for ", companion.Ball, s => s.Yarn.Companion!.Balls, notes);
        if (lines.FirstOrDefault(l => l.StartsWith("[Picture: The colour sequence", StringComparison.Ordinal)) is not { } sequence || !IsSequence(plan, sequence))
            notes.Add((Section, "the plan has another sequence of colours"));
    }

    /// <param name="lead">How the line begins, up to what the ball holds.</param>
    private static void Balls(Plan plan, ReadBooklet read, string? line, string lead, Ball ball, Func<SizePlan, int> planned, List<(string Place, string Text)> notes)
    {
        lead = TextBooklet.Spaced($"- {lead}") + " ";
        var said = line is not null && line.StartsWith(lead, StringComparison.Ordinal) ? Ball().Match(line[lead.Length..]) : Match.Empty;
        if (!said.Success)
        {
            notes.Add((Section, $"“{line}” does not begin with “{lead}”, or says no balls"));
            return;
        }
        for (var i = 0; i < read.Sizes.Length; i++)
        {
            var size = plan.Sizes.FirstOrDefault(s => s.Name == read.Sizes[i]);
            if (size is not null && SizeLists.For(said.Groups["n"].Value, i, read.Sizes.Length) != planned(size).ToString(CultureInfo.InvariantCulture))
                notes.Add((Section, $"“{line}”: the plan has other balls in {size.Name}"));
        }
        if (!Holds(ball, said.Groups["amounts"].Value))
            notes.Add((Section, $"“{line}”: the document has another ball"));
    }

    private static bool Holds(Ball ball, string amounts) => Amount().Matches(amounts).All(amount =>
    {
        var value = double.Parse(amount.Groups["n"].Value, CultureInfo.InvariantCulture);
        return amount.Groups["unit"].Value switch
        {
            "m" => Up(value, ball.Length.Metres),
            "yd" => Up(value, ball.Length.Inches / 36),
            "g" => Up(value, ball.Mass.Grams),
            _ => Math.Abs(value - ball.Mass.Ounces) <= 0.05 + 1e-6,
        };
    });

    /// <summary>Rounded up to a whole number.</summary>
    private static bool Up(double said, double exact) => said >= exact - 1e-5 && said < exact + 1;

    private static bool IsSequence(Plan plan, string line)
    {
        var colours = ColourNames.Of(plan);
        const string lead = "In the order in which the yarn runs: ";
        var at = line.IndexOf(lead, StringComparison.Ordinal);
        if (at < 0)
            return false;
        var rest = line[(at + lead.Length)..];
        for (var i = 0; i < colours.Length; i++)
        {
            var ends = $" of {colours[i]}{(i == colours.Length - 1 ? "; then from the first again.]" : ", ")}";
            if (Leading().Match(rest) is not { Success: true } number
                || !Amounts.SaysRounded(double.Parse(number.Value, CultureInfo.InvariantCulture), plan.Sequence.UnitsIn(i))
                || !rest.AsSpan(number.Length).StartsWith(ends, StringComparison.Ordinal))
                return false;
            rest = rest[(number.Length + ends.Length)..];
        }
        return rest.Length == 0;
    }

    [GeneratedRegex(@"^(?:[^:]*: )?(?<amounts>[^:;]+) a ball\. Balls to buy: (?<n>[^:]+)\.$")]
    private static partial Regex Ball();

    [GeneratedRegex(@"(?<n>[0-9]+(?:\.[0-9]+)?) (?<unit>m|yd|g|oz)\b")]
    private static partial Regex Amount();

    [GeneratedRegex(@"^[0-9]+(?:\.[0-9]+)?")]
    private static partial Regex Leading();
}
