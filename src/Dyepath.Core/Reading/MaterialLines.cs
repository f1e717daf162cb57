using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Reading;

/// <summary>The yarns with their balls, and the colour sequence, against document and plan.</summary>
internal static partial class MaterialLines
{
    private const string Section = "MATERIALS";

    /// <summary>What stands between a yarn's name and its ball.</summary>
    private static string Label(Yarn yarn)
    {
        string[] said = [yarn.Fibre, yarn.Category is { } number ? $"weight category {number}" : ""];
        return string.Join(", ", said.Where(s => s.Length > 0)) is { Length: > 0 } label ? $"{label}; " : "";
    }

    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var lines = read.Lines.Where(l => l.Section == Section).Select(l => l.Line).ToArray();
        var bullets = lines.Where(l => l.StartsWith("- ", StringComparison.Ordinal)).ToArray();
        var yarn = plan.Project.Yarn;
        Balls(plan, read, bullets.ElementAtOrDefault(0), $"{yarn.Name}: {Label(yarn)}", yarn.Ball, s => s.Yarn.BallsSafe, notes);
        if (plan.Project.Companion is { } companion && plan.Sizes.All(s => s.Yarn.Companion is not null))
            Balls(plan, read, bullets.ElementAtOrDefault(1), $"{companion.Name}, the companion yarn for ", companion.Ball, s => s.Yarn.Companion!.Balls, notes);
        Chains(plan, read, lines, notes);
        DrawnThrough(plan, read, bullets, notes);
        Buttons(plan, read, bullets, notes);
        if (lines.FirstOrDefault(l => l.StartsWith("[Picture: The colour sequence", StringComparison.Ordinal)) is not { } sequence || !IsSequence(plan, sequence))
            notes.Add((Section, "the plan has another sequence of colours"));
    }

    /// <param name="lead">How the line begins, up to what the ball holds.</param>
    private static void Balls(
        Plan plan, ReadBooklet read, string? line, string lead, Ball ball, Func<SizePlan, int> planned,
        List<(string Place, string Text)> notes)
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
            if (size is not null
                && SizeLists.For(said.Groups["n"].Value, i, read.Sizes.Length) != planned(size).ToString(CultureInfo.InvariantCulture))
                notes.Add((Section, $"“{line}”: the plan has other balls in {size.Name}"));
        }
        if (!Holds(ball, said.Groups["amounts"].Value))
            notes.Add((Section, $"“{line}”: the document has another ball"));
    }

    /// <summary>
    /// Every yarn that is joined for a chain is the companion yarn, or where there is none, one of the materials; of it there is as much as
    /// the text's own chains take, and two ends of each.
    /// </summary>
    private static void Chains(Plan plan, ReadBooklet read, string[] lines, List<(string Place, string Text)> notes)
    {
        var called = plan.Project.Companion is { } companion ? TextBooklet.Spaced(companion.Name) : "the smooth yarn";
        var joins = read.Lines.Where(l => l.Section == "PIECES" && l.Line.StartsWith("Chain: ", StringComparison.Ordinal)).Select(l => l.Line).ToArray();
        foreach (var join in joins.Where(j => !j.StartsWith($"Chain: Join {called} with ", StringComparison.Ordinal)))
            notes.Add(("PIECES", $"“{join}” does not join {called}"));
        var smooth = lines.Select(l => Smooth().Match(l)).Where(m => m.Success).ToArray();
        if (plan.Project.Companion is not null || joins.Length == 0)
        {
            if (smooth.Length > 0)
                notes.Add((Section, "a smooth yarn that nothing is made of"));
            return;
        }
        if (smooth is not [var said])
        {
            notes.Add((Section, "no yarn for the chains that rows are worked on over"));
            return;
        }
        var chain = Foundation.ChainInUnits(plan.Project.Fabric.Stitch) * plan.Sequence.YarnPerUnit.Metres;
        for (var i = 0; i < read.Sizes.Length; i++)
        {
            var metres = read.Pieces.Where(p => p.Size == read.Sizes[i]).Sum(p =>
                Copies(p.Name) * p.Shaped.Where(r => r.Chains > 0).Sum(r => r.Chains * chain + 2 * BallPlanner.End.Metres));
            foreach (var amounts in said.Groups["amounts"].Value.Split(" / "))
            {
                var list = amounts[..Math.Max(0, amounts.LastIndexOf(' '))];
                var exact = amounts.EndsWith(" yd", StringComparison.Ordinal) ? metres / 0.9144 : metres;
                if (!double.TryParse(SizeLists.For(list, i, read.Sizes.Length), NumberStyles.None, CultureInfo.InvariantCulture,
                    out var length) || !Up(length, exact))
                    notes.Add((Section, $"“{said.Value}”: the chains of {read.Sizes[i]} take {exact:0.0}"));
            }
        }
    }

    /// <summary>
    /// For every casing its elastic, 2 mm narrower than the casing at least and as long as the body asks for, or its cord.
    /// </summary>
    private static void DrawnThrough(Plan plan, ReadBooklet read, string[] bullets, List<(string Place, string Text)> notes)
    {
        for (var i = 0; i < read.Sizes.Length; i++)
        {
            if (plan.Sizes.FirstOrDefault(s => s.Name == read.Sizes[i]) is not { } size)
                continue;
            var said = bullets.Select(b => Through().Match(SizeLists.For(b, i, read.Sizes.Length))).Where(m => m.Success).ToArray();
            var planned = size.Edgings.Where(e => EdgingLibrary.Find(e.Edging).IsDrawnIn).ToArray();
            if (said.Length != planned.Length)
                notes.Add((Section, $"{said.Length} casings have what is drawn through them, the plan has {planned.Length} in {size.Name}"));
            foreach (var (line, edging) in said.Zip(planned))
            {
                var kind = EdgingLibrary.Find(edging.Edging);
                var cut = kind.ElasticShare is null
                    ? edging.Edge + Length.FromCentimetres(40)
                    : EdgingComparison.Elastic(plan.Construction, size, edging);
                var length = line.Groups["length"].Success ? line.Groups["length"].Value : null;
                if (!line.Groups["place"].Value.Equals(PlaceWords.Of(edging.Where), StringComparison.OrdinalIgnoreCase)
                    || line.Groups["what"].Value == "Elastic" != kind.ElasticShare is not null
                    || length is null != cut is null
                    || length is not null && !Amounts.Says(length, cut!.Value)
                    || !RunsFreely(line, edging.Depth))
                    notes.Add((Section, $"“{line.Value}”: the casing of {size.Name} takes another"));
            }
        }
    }

    /// <summary>
    /// As many as there are buttonholes, and the largest sold that goes through a hole of two stitches that gives by a quarter.
    /// </summary>
    private static void Buttons(Plan plan, ReadBooklet read, string[] bullets, List<(string Place, string Text)> notes)
    {
        var bands = plan.Sizes[0].Edgings.Select((edging, i) => (edging, i))
            .Where(e => plan.Construction.Edgings.First(p => p.Place == e.edging.Where).Closes is not null)
            .Select(e => e.i).ToArray();
        for (var i = 0; i < read.Sizes.Length; i++)
        {
            if (plan.Sizes.FirstOrDefault(s => s.Name == read.Sizes[i]) is not { } size)
                continue;
            var said = bullets.Select(b => Button().Match(SizeLists.For(b, i, read.Sizes.Length))).Where(m => m.Success).ToArray();
            var buttoned = bands.Select(at => size.Edgings[at])
                .Select(edging => (Edging: edging, Holes: Holes(read, size.Name, edging.Where)))
                .Where(b => b.Holes > 0).ToArray();
            if (said.Length != buttoned.Length)
                notes.Add((Section, $"{said.Length} lines of buttons, and {buttoned.Length} bands with buttonholes in {size.Name}"));
            foreach (var (line, (edging, holes)) in said.Zip(buttoned))
            {
                var hole = 2.5 * edging.Edge.Millimetres / edging.PickUp;
                var largest = ButtonBand.Diameters.LastOrDefault(d => d <= hole + 1e-6, ButtonBand.Diameters[0]);
                if (int.Parse(line.Groups["mm"].Value, CultureInfo.InvariantCulture) != largest
                    || int.Parse(line.Groups["n"].Value, CultureInfo.InvariantCulture) != holes)
                    notes.Add((Section, $"“{line.Value}”: {size.Name} takes others"));
            }
        }
    }

    private static int Holes(ReadBooklet read, string size, EdgingPlace place) =>
        read.Edgings.FirstOrDefault(e => e.Size == size && e.Place == PlaceWords.Of(place))?.Buttonholes?.Holes ?? 0;

    private static bool RunsFreely(Match line, Length depth) => !line.Groups["mm"].Success
        || int.Parse(line.Groups["mm"].Value, CultureInfo.InvariantCulture) is var wide && Edging.ElasticWidths.Contains(wide)
            && wide == Edging.ElasticWidths.Last(w => w <= depth.Millimetres - 2 + 1e-6);

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

    [GeneratedRegex(@"^(?:[^:]*: )?(?<amounts>[^:;]+) a ball\. Balls to buy: (?<n>[^:]+), which serve 19 makers of 20\.$")]
    private static partial Regex Ball();

    /// <summary>“Sleeve (make 2)”.</summary>
    internal static int Copies(string heading) =>
        Made().Match(heading) is { Success: true } made ? int.Parse(made.Groups["n"].Value, CultureInfo.InvariantCulture) : 1;

    [GeneratedRegex(@" \(make (?<n>[0-9]{1,4})\)$")]
    private static partial Regex Made();

    [GeneratedRegex(@"^- Smooth yarn of similar thickness, for chains that rows are worked on over: (?<amounts>.+)\.$")]
    private static partial Regex Smooth();

    [GeneratedRegex(@"^- (?<what>Elastic|Cord) for the (?<place>[a-z ]+), (?:(?<mm>[0-9]+) mm wide|2 mm narrower than the casing|chained from .+), (?:(?<length>[^,]+) long|as long as said there); a safety pin or bodkin to (?:draw it through; sewing thread|thread it)\.$")]
    private static partial Regex Through();

    [GeneratedRegex(@"^- Buttons: (?<n>[0-9]+), (?<mm>[0-9]+) mm across, so that they pass a buttonhole of 2 stitches; sewing thread\.$")]
    private static partial Regex Button();

    [GeneratedRegex(@"(?<n>[0-9]+(?:\.[0-9]+)?) (?<unit>m|yd|g|oz)\b")]
    private static partial Regex Amount();

    [GeneratedRegex(@"^[0-9]+(?:\.[0-9]+)?")]
    private static partial Regex Leading();
}
