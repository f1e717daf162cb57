using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Pricing;
using Dyepath.Workspace.Fields;

namespace Dyepath.Workspace.Pattern;

/// <summary>A pace that was measured in a log.</summary>
/// <param name="Low">Single crochet a minute; one row of ten is slower.</param>
/// <param name="Median">Half of the rows are slower.</param>
/// <param name="High">One row of ten is faster.</param>
/// <param name="Rows">How many it rests on.</param>
/// <param name="From">The log, within a sentence.</param>
public sealed record LogPace(double Low, double Median, double High, int Rows, string From);

/// <summary>
/// Prices and costs as the designer typed them, kept on this device alone, project by project: the document is what buyers and testers may
/// get, so they are not in it.
/// </summary>
public sealed record PriceNotes
{
    /// <summary>What a note may be long; longer ones are no amounts.</summary>
    public const int Longest = 30;

    /// <summary>Slow end of the pace; empty, the usual one.</summary>
    public string Slow { get; init; } = "";

    /// <summary>Fast end of the pace; empty, the usual one.</summary>
    public string Fast { get; init; } = "";

    /// <summary>Takes the place of both ends where it is there.</summary>
    public LogPace? Own { get; init; }

    /// <summary>Sign behind amounts.</summary>
    public string Currency { get; init; } = "";

    /// <summary>Price of a ball.</summary>
    public string Ball { get; init; } = "";

    /// <summary>Price of a ball of the companion yarn.</summary>
    public string CompanionBall { get; init; } = "";

    /// <summary>Of an hour.</summary>
    public string Wage { get; init; } = "";

    /// <summary>Fixed costs: the sample.</summary>
    public string Sample { get; init; } = "";

    /// <summary>Fixed costs: the test round.</summary>
    public string TestRound { get; init; } = "";

    /// <summary>Fixed costs: editing.</summary>
    public string Editing { get; init; } = "";

    /// <summary>Fixed costs: photos.</summary>
    public string Photos { get; init; } = "";

    /// <summary>Price of a copy.</summary>
    public string Copy { get; init; } = "";

    /// <summary>Share of it that goes to whoever sells it, in per cent.</summary>
    public string Fee { get; init; } = "";

    /// <summary>What each sale costs beside the share.</summary>
    public string FeePerCopy { get; init; } = "";

    /// <summary>Whom kits are made for.</summary>
    public string People { get; init; } = "";

    /// <summary>Under which the device keeps those of a project.</summary>
    public static string NameFor(string projectId) => $"price.{projectId}";

    /// <summary>As the device kept them; empty ones where it has none that can be read.</summary>
    public static PriceNotes Read(string? json)
    {
        try
        {
            var read = json is null ? null : JsonSerializer.Deserialize(json, PriceNotesJson.Default.PriceNotes);
            return read is null || read.Texts.Any(t => t is null || t.Length > Longest) ? new PriceNotes()
                : read.Own is { } own && PaceOf(own) is null ? read with { Own = null } : read;
        }
        catch (JsonException)
        {
            return new PriceNotes();
        }
    }

    /// <summary>As JSON, for <see cref="Read"/>.</summary>
    public string Write() => JsonSerializer.Serialize(this, PriceNotesJson.Default.PriceNotes);

    /// <summary>
    /// What the notes come to. A field that holds no amount counts as empty, and <paramref name="faults"/> says by the field's name what may
    /// stand there.
    /// </summary>
    public PriceInputs Inputs(out ImmutableDictionary<string, string> faults)
    {
        var typed = new TypedAmounts();
        decimal? Money(string text, string name) => typed.Number(text, name, 0, PriceInputs.MostMoney, "Write an amount from 0 to 1,000,000, such as 9.50.");
        var inputs = new PriceInputs
        {
            Pace = TypedPace(typed),
            Currency = PriceInputs.CanBeCurrency(Currency) ? Currency.Trim() : typed.Amiss(nameof(Currency), "Write the sign of a currency, or at most 8 letters.", ""),
            Ball = Money(Ball, nameof(Ball)),
            CompanionBall = Money(CompanionBall, nameof(CompanionBall)),
            Wage = Money(Wage, nameof(Wage)),
            Fixed = typed.Sum(
                [
                    Money(Sample, nameof(Sample)), Money(TestRound, nameof(TestRound)), Money(Editing, nameof(Editing)),
                    Money(Photos, nameof(Photos)),
                ],
                nameof(Sample)),
            Copy = Money(Copy, nameof(Copy)),
            Fee = typed.Number(Fee.Trim().TrimEnd('%'), nameof(Fee), 0, 100 * PriceInputs.MostFee, "Write per cent, from 0 to 99.") / 100,
            FeePerCopy = Money(FeePerCopy, nameof(FeePerCopy)),
            People = typed.Whole(People, nameof(People), PriceInputs.MostPeople, "Write a whole number from 1 to 1,000."),
        };
        faults = typed.Faults.ToImmutableDictionary();
        return inputs;
    }

    /// <summary>Fixed costs that nothing is typed for, while something is for another; within a sentence.</summary>
    public ImmutableArray<string> FixedLeftOut
    {
        get
        {
            (string Text, string Words)[] all = [(Sample, "the sample"), (TestRound, "the test round"), (Editing, "editing"), (Photos, "photos")];
            return all.All(c => c.Text.Trim().Length == 0) ? [] : [.. all.Where(c => c.Text.Trim().Length == 0).Select(c => c.Words)];
        }
    }

    /// <summary>Where the pace comes from, within a sentence.</summary>
    public string PaceWords(Pace pace)
    {
        var words = PriceWords.Words(pace);
        return Own is { } own ? $"{words}, over {own.Rows.ToString(CultureInfo.InvariantCulture)} rows of {own.From}"
            : Slow.Trim().Length + Fast.Trim().Length == 0 || IsPaceAmiss ? $"{words} (common practice, no source)" : $"{words}, as you said";
    }

    private bool IsPaceAmiss
    {
        get
        {
            var typed = new TypedAmounts();
            TypedPace(typed);
            return typed.Faults.Count > 0;
        }
    }

    /// <returns>Null where nobody works so.</returns>
    public static Pace? PaceOf(LogPace own)
    {
        ArgumentNullException.ThrowIfNull(own);
        var isRising = own.Low <= own.Median && own.Median <= own.High;
        return own.From is { Length: <= 200 } && isRising && Pace.Allowed.Holds(own.Low) && Pace.Allowed.Holds(own.High)
            ? Pace.Of(own.Low, own.Median, own.High) : null;
    }

    private IEnumerable<string?> Texts =>
        [Slow, Fast, Currency, Ball, CompanionBall, Wage, Sample, TestRound, Editing, Photos, Copy, Fee, FeePerCopy, People];

    private Pace TypedPace(TypedAmounts typed)
    {
        if (Own is { } own && PaceOf(own) is { } measured)
            return measured;
        const string allowed = "Write stitches in a minute, from 1 to 100.";
        var slow = typed.Number(Slow, nameof(Slow), 1, 100, allowed) ?? (decimal)Pace.Usual.Low;
        var fast = typed.Number(Fast, nameof(Fast), 1, 100, allowed) ?? (decimal)Pace.Usual.High;
        // Half of what was said beside half of what is usual would be nobody's pace.
        return typed.Faults.Count > 0 ? Pace.Usual
            : slow <= fast ? Pace.Between((double)slow, (double)fast)
            : typed.Amiss(nameof(Fast), "The fast end of the pace is below the slow one.", Pace.Usual);
    }

    /// <summary>Reads what was typed and gathers what may not stand there.</summary>
    private sealed class TypedAmounts
    {
        public Dictionary<string, string> Faults { get; } = [];

        public T Amiss<T>(string name, string allowed, T instead)
        {
            Faults.TryAdd(name, allowed);
            return instead;
        }

        /// <returns>Null where nothing is typed, or nothing that may stand there.</returns>
        public decimal? Number(string text, string name, decimal least, decimal most, string allowed) => text.Trim().Length == 0 ? null
            : TypedText.TryNumber(text, out var number) && number >= least && number <= most ? number
            : Amiss<decimal?>(name, allowed, null);

        public int? Whole(string text, string name, int most, string allowed) =>
            Number(text, name, 1, most, allowed) is not { } number ? null
            : number % 1 == 0 ? (int)number
            : Amiss<int?>(name, allowed, null);

        /// <returns>Null where nothing is typed, or all together is too much.</returns>
        public decimal? Sum(ImmutableArray<decimal?> parts, string name) => parts.All(p => p is null) ? null
            : parts.Sum(p => p ?? 0) is var sum && sum <= PriceInputs.MostMoney ? sum
            : Amiss<decimal?>(name, "All four together come to more than 1,000,000.", null);
    }
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(PriceNotes))]
internal sealed partial class PriceNotesJson : JsonSerializerContext;
