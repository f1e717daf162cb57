using System.Collections.Immutable;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Pricing;

/// <summary>A figure with the range that eight of ten makers' rows keep within.</summary>
/// <param name="Low">At the fast end of the pace.</param>
/// <param name="Median">In the middle.</param>
/// <param name="High">At the slow end of the pace.</param>
public readonly record struct HoursRange(double Low, double Median, double High)
{
    /// <summary>Work at a pace; both in single crochet.</summary>
    public static HoursRange Of(double singleCrochets, Pace pace)
    {
        ArgumentNullException.ThrowIfNull(pace);
        return new(Hours(pace.High), Hours(pace.Median), Hours(pace.Low));

        double Hours(double stitches) => singleCrochets / stitches / 60;
    }

    /// <summary>As it is printed, to six minutes: what is worked out from it can be worked out again from the print.</summary>
    public HoursRange ToTenths() => new(Math.Round(Low, 1), Math.Round(Median, 1), Math.Round(High, 1));
}

/// <summary>Time and money of one size.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Work">Counted from the plan.</param>
/// <param name="Hours">At the maker's pace, in tenths.</param>
/// <param name="Yarn">Balls of both yarns that serve 19 makers of 20.</param>
/// <param name="Kit">Missing where nobody said for how many.</param>
public sealed record SizePrice(string Name, Workload Work, HoursRange Hours, Amount Yarn, Kit? Kit)
{
    /// <summary>Balls of the variegated yarn to buy.</summary>
    public required int Balls { get; init; }

    /// <summary>Balls of the companion yarn to buy; missing where there is none.</summary>
    public required int? CompanionBalls { get; init; }

    /// <summary>Yarn and the wage of the work, in the order of <see cref="HoursRange"/>: what a finished piece has to bring at least.</summary>
    public required (Amount Low, Amount Median, Amount High) Piece { get; init; }

    /// <summary>The yarn of the kit; hooks, markers and buttons are not priced. Missing as <see cref="Kit"/> is.</summary>
    public required Amount? KitYarn { get; init; }
}

/// <summary>How many copies bring the fixed costs in.</summary>
/// <param name="PerCopy">What is left of the price of one, once fees are taken off; may be negative.</param>
/// <param name="Copies">The fewest; missing where a figure is, or where a copy leaves too little.</param>
public sealed record BreakEven(Amount PerCopy, long? Copies)
{
    /// <summary>A copy that leaves less brings nothing in.</summary>
    public const decimal LeastPerCopy = 0.01m;

    /// <summary>What has to be typed first.</summary>
    public required ImmutableArray<PriceField> Missing { get; init; }

    /// <summary>From the inputs alone.</summary>
    public static BreakEven Of(PriceInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var perCopy = Amount.Of(
            () => inputs.Copy!.Value * (1 - inputs.Fee!.Value) - (inputs.FeePerCopy ?? 0),
            (PriceField.Copy, inputs.Copy), (PriceField.Fee, inputs.Fee));
        var copies = Amount.Of(
            () => perCopy.Value!.Value < LeastPerCopy ? -1 : Math.Ceiling(inputs.Fixed!.Value / perCopy.Value.Value),
            (PriceField.Fixed, inputs.Fixed), (PriceField.Copy, inputs.Copy), (PriceField.Fee, inputs.Fee));
        return new BreakEven(perCopy, copies.Value is { } needed and >= 0 ? (long)needed : null) { Missing = copies.Missing };
    }
}

/// <summary>
/// How long a garment takes and what it costs, size by size, and how many copies of its pattern bring the costs in; for the designer alone.
/// </summary>
/// <param name="Plan">Where the work is counted.</param>
/// <param name="Inputs">What the designer typed.</param>
/// <param name="Sizes">In the pattern's order.</param>
/// <param name="BreakEven">Of the pattern, not of a size.</param>
public sealed record PriceSheet(Plan Plan, PriceInputs Inputs, ImmutableArray<SizePrice> Sizes, BreakEven BreakEven)
{
    /// <exception cref="ArgumentOutOfRangeException">An input out of its range.</exception>
    public static PriceSheet Of(Plan plan, PriceInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(inputs);
        inputs.Check();
        return new PriceSheet(plan, inputs, [.. plan.Sizes.Select((_, at) => OfSize(plan, inputs, at))], BreakEven.Of(inputs));
    }

    private static SizePrice OfSize(Plan plan, PriceInputs inputs, int at)
    {
        var size = plan.Sizes[at];
        var work = Workload.Of(plan, size);
        var hours = HoursRange.Of(work.SingleCrochets, inputs.Pace).ToTenths();
        var (balls, companion) = (size.Yarn.BallsSafe, size.Yarn.Companion?.Balls);
        var kit = inputs.People is { } people ? Kit.For(plan, at, people) : null;
        var yarn = Yarn(inputs, balls, companion);
        return new SizePrice(size.Name, work, hours, yarn, kit)
        {
            Balls = balls,
            CompanionBalls = companion,
            Piece = (Piece(hours.Low), Piece(hours.Median), Piece(hours.High)),
            KitYarn = kit is null ? null : Yarn(inputs, kit.Balls, kit.CompanionBalls),
        };

        Amount Piece(double time) => yarn.Value is { } materials
            ? Amount.Of(() => materials + (decimal)time * inputs.Wage!.Value, (PriceField.Wage, inputs.Wage))
            : yarn with { Missing = [.. yarn.Missing, .. inputs.Wage is null ? [PriceField.Wage] : ImmutableArray<PriceField>.Empty] };
    }

    private static Amount Yarn(PriceInputs inputs, int balls, int? companion)
    {
        var needed = ImmutableArray.CreateBuilder<(PriceField, decimal?)>();
        if (balls > 0)
            needed.Add((PriceField.Ball, inputs.Ball));
        if (companion > 0)
            needed.Add((PriceField.CompanionBall, inputs.CompanionBall));
        return Amount.Of(() => balls * (inputs.Ball ?? 0) + (companion ?? 0) * (inputs.CompanionBall ?? 0), [.. needed]);
    }
}
