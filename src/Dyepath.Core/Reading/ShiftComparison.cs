using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Checking;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Reading;

/// <summary>
/// How much earlier or later each colour is said to begin than in the row two below, or in the round below, against the yarn followed
/// from row to row: once for all, or with the chart that a piece follows.
/// </summary>
internal static partial class ShiftComparison
{
    /// <summary>What is printed has two decimals.</summary>
    private const double Rounding = 0.005 + 1e-6;

    /// <param name="Part">Empty where none is named.</param>
    /// <param name="First">From 1.</param>
    /// <param name="Earlier">Units in the order of work.</param>
    private sealed record Said(string Part, int First, int Last, double Earlier)
    {
        /// <summary>Of wrong-side rows, where they are said to differ from right-side rows.</summary>
        public double? WrongSide { get; init; }
    }

    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        if (PlainPeriod.Of(plan.Sequence.Ring) is not { } period)
            return;
        var forAll = read.Lines.Where(l => l.Section == "KEEPING THE COLOURS").Select(l => Sentence(l.Line)).OfType<Said>().ToArray();
        foreach (var size in plan.Sizes.Where(s => read.Sizes.Contains(s.Name)))
        {
            foreach (var (piece, planned) in read.Pieces.Where(p => p.Size == size.Name).Zip(size.Pieces).Where(p => p.Second.Pooled))
            {
                var lines = read.Lines.Where(l => l.Part.StartsWith($"Chart {piece.Beginning?.Chart}:", StringComparison.Ordinal)).Select(l => l.Line).ToArray();
                Said[] said = [.. forAll, .. lines.Select(Sentence).OfType<Said>(), .. lines.Select(Rows).OfType<Said>()];
                var place = $"{size.Name}, {planned.Name}";
                if (Wrong(plan, planned, period, said) is { } wrong)
                    notes.Add((place, wrong));
                if (planned.Shape is null)
                    continue;
                var steps = read.Lines.Where(l => l.Section == "PIECES" && (l.Part == piece.Name || l.Part == $"{piece.Name}, size {size.Name}") && l.Line.StartsWith("Motif: ", StringComparison.Ordinal)).Select(l => l.Line).ToArray();
                Changes(planned, period, steps, place, notes);
            }
        }
    }

    private static string? Wrong(Plan plan, PiecePlan piece, double period, Said[] said)
    {
        if (piece.Shape is null)
        {
            if (said is not [{ First: 0, WrongSide: null } one])
                return "the text does not say once how much earlier or later its colours begin";
            var back = piece.Working is Working.Turned or Working.RoundsTurned ? 2 : 1;
            // Rows of linen stitch stand half a pair over each other in the round.
            var walked = plan.Project.Fabric.Stitch.StitchesPerUnit == 1
                ? Walked(RowStartComparison.PlaceOf(plan, piece, back) - RowStartComparison.PlaceOf(plan, piece, 0)) : back * piece.Lean;
            return Agree(one.Earlier, walked, period) ? null : "its colours begin otherwise than the text says, against the row below";
        }
        var walk = Walk(piece);
        if (piece.Shape is { Bias: > 0, Rows: > 3 })
        {
            return said is [{ First: 0, WrongSide: { } other } two]
                && walk.All(at => Agree(at.Key.Row % 2 == 0 ? two.Earlier : other, at.Value, period))
                ? null : "the text does not say once how much earlier or later the colours of right-side and of wrong-side rows begin";
        }
        foreach (var ((index, row), earlier) in walk)
        {
            var name = piece.Shape.Parts[index].Below is null ? "" : PartNames.Of(piece.Shape.Parts[index]);
            if (said.Where(s => (s.First == 0 && s.WrongSide is null) || (s.Part == name && row + 1 >= s.First && row + 1 <= s.Last))
                .ToArray() is not [var one] || !Agree(one.Earlier, earlier, period))
                return $"the text does not say rightly how much earlier or later the colours of row {row + 1} of the {PartNames.Of(piece.Shape.Parts[index])} begin";
        }
        return said.All(s => s.First == 0) || said.Sum(s => s.Last - s.First + 1) == walk.Count ? null : "the text says how the colours of rows begin that the plan does not have";
    }

    /// <summary>Wherever the yarn of an upright piece goes otherwise than in the row before, a step says so, and how.</summary>
    private static void Changes(PiecePlan piece, double period, string[] steps, string place, List<(string Place, string Text)> notes)
    {
        var walked = Walk(piece);
        var upright = piece.Shape is not { Bias: > 0, Rows: > 3 };
        var changes = walked.Where(at => upright).Where(at => at.Key.Row > 2 && !Agree(at.Value, walked[Below(at.Key)], period))
            .Select(at => (at.Key.Row, at.Value, Before: walked[Below(at.Key)])).ToList();
        foreach (var step in steps)
        {
            if (UpTo().Match(step) is { Success: true } upTo)
            {
                // Of the first part: alike up to the row that is said, and otherwise from the next one on.
                var last = int.Parse(upTo.Groups["a"].Value, CultureInfo.InvariantCulture);
                var begins = walked.Where(at => at.Key.Part == 0).OrderBy(at => at.Key.Row).Select(at => at.Value).ToArray();
                if (step != steps[0] || begins.TakeWhile(at => Agree(at, begins[0], period)).Count() != last - 2)
                    notes.Add((place, $"“{step}” is not what the yarn does"));
                continue;
            }
            var said = Changed().Match(step);
            var row = said.Success ? int.Parse(said.Groups["a"].Value, CultureInfo.InvariantCulture) - 1 : -1;
            var then = Then().Match(step);
            if (!said.Success || changes.FindIndex(c => c.Row == row && Agree(Earlier(said), c.Value, period)
                && (!then.Success || Agree(Earlier(then), c.Before, period))) is not (>= 0 and var at))
                notes.Add((place, $"“{step}” is not what the yarn does"));
            else
                changes.RemoveAt(at);
        }
        foreach (var (row, _, _) in changes)
            notes.Add((place, $"no step says that colours begin otherwise from row {row + 1} on"));

        (int, int) Below((int Part, int Row) at) =>
            piece.Shape!.Parts[at.Part] is var part && at.Row > part.FirstRow ? (at.Part, at.Row - 1) : (part.Below!.Value, at.Row - 1);
    }

    /// <summary>
    /// Where every row's first stitch lies along the yarn, by part and row: a part that is joined on begins where a piece without cuts
    /// would.
    /// </summary>
    private static Dictionary<(int Part, int Row), long> Places(PiecePlan piece)
    {
        var places = new Dictionary<(int, int), long>();
        var (at, turn) = (0L, ColourRing.ToMicro(piece.TurnCost));
        foreach (var part in piece.Shape!.Parts)
        {
            if (!part.Continues)
            {
                var first = part.Outline.At(0);
                at = ColourRing.ToMicro(piece.Start) + part.FirstRow * (piece.Stitches * ColourRing.Unit + turn)
                    + (part.FirstRow % 2 == 0 ? first.First : piece.Stitches - 1 - first.Last) * ColourRing.Unit;
            }
            for (var row = 0; row < part.Rows; row++)
            {
                places.Add((part.Index, part.FirstRow + row), at);
                at += part.Outline.At(row).Units * ColourRing.Unit + turn;
            }
        }
        return places;
    }

    /// <summary>Units of yarn from a stitch of the row two below to the one above it, by part and row.</summary>
    private static Dictionary<(int Part, int Row), double> Walk(PiecePlan piece)
    {
        var (places, walked) = (Places(piece), new Dictionary<(int, int), double>());
        foreach (var part in piece.Shape!.Parts)
        {
            for (var row = Math.Max(2, part.FirstRow); row < part.FirstRow + part.Rows; row++)
            {
                var below = part;
                while (row - 2 < below.FirstRow)
                    below = piece.Shape.Parts[below.Below!.Value];
                var (here, there) = (part.Outline.At(row - part.FirstRow), below.Outline.At(row - 2 - below.FirstRow));
                // Odd-numbered rows begin at their right.
                var column = row % 2 == 0 ? here.First - there.First : there.Last - here.Last;
                walked.Add(
                    (part.Index, row), Walked(places[(part.Index, row)] - places[(below.Index, row - 2)] - column * ColourRing.Unit));
            }
        }
        return walked;
    }

    private static double Walked(long micro) => (double)micro / ColourRing.Unit;

    private static bool Agree(double earlier, double walked, double period) =>
        Math.Abs(Math.IEEERemainder(earlier - walked, period)) <= Rounding;

    private static Said? Sentence(string line)
    {
        if (ByTurns().Match(line) is { Success: true } turns
            && Alone().Match(turns.Groups["right"].Value) is { Success: true } right && Alone().Match(turns.Groups["wrong"].Value) is { Success: true } wrong)
            return new Said("", 0, 0, Earlier(right)) { WrongSide = Earlier(wrong) };
        return Once().Match(line) is { Success: true } once ? new Said("", 0, 0, Earlier(once)) : null;
    }

    private static Said? Rows(string line)
    {
        if (RowsOf().Match(line) is not { Success: true } rows)
            return null;
        var first = int.Parse(rows.Groups["a"].Value, CultureInfo.InvariantCulture);
        return new Said(rows.Groups["part"].Value, first, rows.Groups["b"].Success ? int.Parse(rows.Groups["b"].Value, CultureInfo.InvariantCulture) : first, Earlier(rows));
    }

    private static double Earlier(Match said)
    {
        if (said.Groups["zero"].Success)
            return 0;
        var size = said.Groups["half"].Success ? 0.5 : double.Parse(said.Groups["n"].Value, CultureInfo.InvariantCulture);
        return said.Groups["when"].Value == "earlier" ? size : -size;
    }

    private const string By = "(?:(?<zero>exactly above itself)|(?:(?<half>half a)|(?<n>[0-9]+(?:\\.[0-9]+)?)) (?:stitch|stitches|pair|pairs) (?<when>earlier|later))";

    [GeneratedRegex($"^In the order of work, each colour begins {By}(?: than it did)? (?:two (?:row|round)s below|in the round below)\\.$")]
    private static partial Regex Once();

    [GeneratedRegex("^In the order of work, each colour of a right-side row begins (?<right>.+) two rows below, each colour of a wrong-side row (?<wrong>.+) two rows below: ")]
    private static partial Regex ByTurns();

    [GeneratedRegex($"^{By}(?: than it did)?$")]
    private static partial Regex Alone();

    [GeneratedRegex($"^Motif: (?:from row (?<a>[0-9]{{1,5}}) on|in rows? (?<a>[0-9]{{1,5}})(?: and (?<b>[0-9]{{1,5}}))?) each colour begins {By} (?:than )?two rows below[:,;.]")]
    private static partial Regex Changed();

    [GeneratedRegex("^Motif: up to row (?<a>[0-9]{1,5}) the picture: ")]
    private static partial Regex UpTo();

    [GeneratedRegex($"; before that, {By}[;.]")]
    private static partial Regex Then();

    [GeneratedRegex($"^- (?:(?<part>[a-z]+ side|side [0-9]+), )?rows? (?<a>[0-9]{{1,5}})(?: (?:to|and) (?<b>[0-9]{{1,5}}))?: {By}\\.$")]
    private static partial Regex RowsOf();
}
