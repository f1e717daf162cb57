using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;

namespace Dyepath.Core.Pricing;

/// <summary>One line of the sheet.</summary>
/// <param name="Label">With its unit.</param>
/// <param name="Cells">One a size; a dash where there is no figure.</param>
public sealed record PriceRow(string Label, ImmutableArray<string> Cells);

/// <summary>The sheet in words: the lines of its table, what stands below it, and both as files.</summary>
public sealed class PriceWords(PriceSheet sheet)
{
    /// <summary>Where there is no figure.</summary>
    public const string None = "–";

    /// <summary>Said wherever the sheet is shown.</summary>
    public const string ForYouAlone = "This is for you alone: it is in no file that a buyer gets.";

    private PriceInputs Inputs => sheet.Inputs;

    private string Currency => Inputs.Currency.Trim();

    /// <summary>Work, hours and money by size, in order.</summary>
    public ImmutableArray<PriceRow> Rows => [.. WorkRows(), .. MoneyRows(), .. KitRows()];

    /// <summary>
    /// What has no sizes: the prices as they were typed, the copies to sell, and every figure that lacks something, with what it lacks.
    /// </summary>
    public ImmutableArray<string> Lines => [.. TypedLines(), .. BreakEvenLines(), .. MissingLines()];

    /// <summary>The pace, what is assumed of the work, and what is not counted.</summary>
    /// <param name="pace">Where the pace comes from, within a sentence.</param>
    public static ImmutableArray<string> Assumptions(string pace) =>
    [
        $"Pace: {pace}. Hours are given at its middle, and from its fast end to its slow one, between which eight of ten rows lie.",
        string.Create(CultureInfo.InvariantCulture, $"Assumed, without a source: a stitch takes as many times longer than a single crochet as it takes more yarn; a turn or a join takes the time of {Workload.Turn:0} single crochet, a centimetre of seam of {Workload.SeamCentimetre:0}, an end to weave in of {Workload.End:0}, a bunch of fringe of {Workload.Bunch:0}."),
        "Not counted: the swatch, ripping back, counting, sewing on buttons, drawing elastic through, washing and drying.",
        "Yarn is priced in whole balls that serve 19 makers of 20. Hooks, markers, buttons and elastic are not priced.",
        $"A kit has each person's balls and one ball in {Kit.ReserveOneIn} more (common practice, no source), all people in the same size.",
    ];

    /// <summary>How fast, as the inputs say.</summary>
    public static string Words(Pace pace)
    {
        ArgumentNullException.ThrowIfNull(pace);
        return string.Create(CultureInfo.InvariantCulture, $"{pace.Low:0.#} to {pace.High:0.#} single crochet a minute, {pace.Median:0.#} in the middle");
    }

    /// <summary>As plain text, a block for each size.</summary>
    /// <param name="pace">As <see cref="Assumptions"/>.</param>
    public string Text(string pace)
    {
        var text = new StringBuilder();
        void Line(string line) => text.Append(line).Append('\n');
        Line($"{sheet.Plan.Project.Title}: time and price");
        Line(ForYouAlone);
        foreach (var (size, at) in sheet.Sizes.Select((s, i) => (s, i)))
        {
            Line("");
            Line($"Size {size.Name}");
            foreach (var row in Rows.Where(r => r.Cells[at] != None))
                Line($"{row.Label}: {row.Cells[at]}");
        }
        Line("");
        foreach (var line in Lines)
            Line(line);
        Line("");
        foreach (var line in Assumptions(pace))
            Line(line);
        return text.ToString();
    }

    /// <summary>As a table of values parted by commas (RFC 4180), a column for each size, as <see cref="ListingSheet.Spreadsheet"/> writes it.</summary>
    /// <param name="pace">As <see cref="Assumptions"/>.</param>
    public string Spreadsheet(string pace)
    {
        var lines = new StringBuilder();
        void Line(params IEnumerable<string> cells) => lines.AppendJoin(',', cells.Select(ListingSheet.Cell)).Append("\r\n");
        Line("Pattern", sheet.Plan.Project.Title);
        Line("Note", ForYouAlone);
        Line(["Size", .. sheet.Sizes.Select(s => s.Name)]);
        foreach (var row in Rows)
            Line([row.Label, .. row.Cells]);
        foreach (var line in Lines)
            Line("Note", line);
        foreach (var line in Assumptions(pace))
            Line("Note", line);
        return lines.ToString();
    }

    /// <summary>Rounded to hundredths, halves away from zero, with the currency's sign behind it.</summary>
    public string Money(decimal amount) =>
        WithSign(Math.Round(amount, 2, MidpointRounding.AwayFromZero).ToString("0.00", CultureInfo.InvariantCulture));

    private string Money(Amount amount) => amount.Value is { } value ? Money(value) : None;

    /// <summary>Of what rests on hours that are known to a quarter or so, cents say nothing.</summary>
    private string Whole(Amount amount) => amount.Value is not { } value ? None
        : WithSign(Math.Round(value, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture));

    private string WithSign(string number) => Currency.Length == 0 ? number : $"{number} {Currency}";

    private IEnumerable<PriceRow> WorkRows()
    {
        yield return Row("Stitches, pooled pieces", s => Count(s.Work.Pooled.Stitches));
        if (sheet.Sizes.Any(s => s.Work.Plain.Stitches > 0))
            yield return Row("Stitches, plain pieces and bands", s => Count(s.Work.Plain.Stitches));
        if (sheet.Sizes.Any(s => s.Work.Edgings.Stitches > 0))
            yield return Row("Stitches, edgings", s => Count(s.Work.Edgings.Stitches));
        yield return Row("Turns and joins", s => Count(s.Work.Hook.Turns));
        if (sheet.Sizes.Any(s => s.Work.Seams.Centimetres > 0))
            yield return Row("Seams, cm", s => Count((long)Math.Round(s.Work.Seams.Centimetres, MidpointRounding.AwayFromZero)));
        yield return Row("Ends to weave in", s => Count(s.Work.Ends));
        yield return Row("Hours", s => Hours(s.Hours.Median));
        yield return Row("Hours, 80 % range", s => $"{Hours(s.Hours.Low)} to {Hours(s.Hours.High)}");
    }

    private IEnumerable<PriceRow> MoneyRows()
    {
        yield return Row("Balls of yarn", s => Count(s.Balls));
        if (HasCompanion)
            yield return Row("Balls of companion yarn", s => Count(s.CompanionBalls ?? 0));
        yield return Row("Yarn costs", s => Money(s.Yarn));
        yield return Row("A finished piece, yarn and work", s => Whole(s.Piece.Median));
        yield return Row("A finished piece, 80 % range", s => s.Piece is { Low.Value: not null, High.Value: not null } ? $"{Whole(s.Piece.Low)} to {Whole(s.Piece.High)}" : None);
    }

    private IEnumerable<PriceRow> KitRows()
    {
        if (Inputs.People is not { } people)
            yield break;
        var name = people == 1 ? "Kit for 1 person" : string.Create(CultureInfo.InvariantCulture, $"Kit for {people} people");
        yield return Row($"{name}, balls of yarn", s => Count(s.Kit!.Balls));
        if (HasCompanion)
            yield return Row($"{name}, balls of companion yarn", s => Count(s.Kit!.CompanionBalls ?? 0));
        yield return Row($"{name}, hooks of {Hook}", s => Count(s.Kit!.Hooks));
        yield return Row($"{name}, stitch markers", s => Count(s.Kit!.Markers));
        if (sheet.Sizes.Any(s => s.Kit!.Buttons is not null))
            yield return Row($"{name}, buttons", s => Count(s.Kit!.Buttons ?? 0));
        yield return Row($"{name}, yarn costs", s => Money(s.KitYarn!));
    }

    private IEnumerable<string> TypedLines()
    {
        (string Words, string? Amount)[] typed =
        [
            (PriceInputs.Words(PriceField.Ball), Said(Inputs.Ball)),
            (PriceInputs.Words(PriceField.CompanionBall), HasCompanion ? Said(Inputs.CompanionBall) : null),
            (PriceInputs.Words(PriceField.Wage), Said(Inputs.Wage)),
            (PriceInputs.Words(PriceField.Fixed), Said(Inputs.Fixed)),
            (PriceInputs.Words(PriceField.Copy), Said(Inputs.Copy)),
            ("the fee on a copy", Fee),
        ];
        var said = typed.Where(t => t.Amount is not null).Select(t => $"{t.Words}, {t.Amount}").ToArray();
        if (said.Length > 0)
            yield return $"Worked out from {string.Join("; ", said)}.";

        string? Said(decimal? amount) => amount is { } value ? Money(value) : null;
    }

    private string? Fee => (Inputs.Fee, Inputs.FeePerCopy) switch
    {
        (null, null) => null,
        ({ } share, null) => Share(share),
        (null, { } each) => Money(each),
        ({ } share, { } each) => $"{Share(share)} and {Money(each)}",
    };

    private static string Share(decimal share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.##} %");

    private IEnumerable<string> BreakEvenLines()
    {
        var even = sheet.BreakEven;
        if (even.PerCopy.Value is not { } left)
            yield break;
        yield return $"A copy leaves {Money(left)} once fees are taken off.";
        if (even.Copies is { } copies)
            yield return copies == 1 ? $"One copy brings the fixed costs of {Money(Inputs.Fixed!.Value)} in."
                : $"{Count(copies)} copies bring the fixed costs of {Money(Inputs.Fixed!.Value)} in.";
        else if (even.Missing.IsEmpty)
            yield return "So no number of copies brings the fixed costs in: raise the price of a copy.";
    }

    private IEnumerable<string> MissingLines()
    {
        var piece = sheet.Sizes.SelectMany(s => s.Piece.Median.Missing).Distinct().Order().ToArray();
        var yarn = sheet.Sizes.SelectMany(s => s.Yarn.Missing).Distinct().Order().ToArray();
        if (yarn.Length > 0)
            yield return $"No figure for what the yarn costs without {List(yarn)}.";
        if (piece.Length > 0)
            yield return $"No figure for a finished piece without {List(piece)}.";
        if (!sheet.BreakEven.Missing.IsEmpty)
            yield return $"No figure for the copies to sell without {List(sheet.BreakEven.Missing)}.";
    }

    private static string List(IEnumerable<PriceField> fields) => Wording.List(fields.Select(PriceInputs.Words));

    private bool HasCompanion => sheet.Sizes.Any(s => s.CompanionBalls is not null);

    private string Hook => MaterialsSection.Millimetres(sheet.Plan.Project.Fabric.Swatch.HookMillimetres);

    private PriceRow Row(string label, Func<SizePrice, string> cell) => new(label, [.. sheet.Sizes.Select(cell)]);

    private static string Count(long count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Hours(double hours) => hours.ToString("0.0", CultureInfo.InvariantCulture);
}
