using System.Collections.Immutable;
using System.Globalization;

namespace Dyepath.Core.Pricing;

/// <summary>What the designer types, so that a figure can be missing for the want of it.</summary>
public enum PriceField
{
    /// <summary>Price of a ball of the variegated yarn.</summary>
    Ball,

    /// <summary>Price of a ball of the companion yarn.</summary>
    CompanionBall,

    /// <summary>What an hour of work is paid.</summary>
    Wage,

    /// <summary>What the pattern costs before the first copy is sold.</summary>
    Fixed,

    /// <summary>Price of a copy of the pattern.</summary>
    Copy,

    /// <summary>Share of the price of a copy that goes to whoever sells it.</summary>
    Fee,
}

/// <summary>
/// Prices and costs as the designer types them, all in one currency; nothing is made up for what she leaves empty. They are in no project
/// document, since a document reaches buyers.
/// </summary>
public sealed record PriceInputs
{
    /// <summary>The largest amount of money.</summary>
    public const decimal MostMoney = 1_000_000;

    /// <summary>The largest share that goes to whoever sells a copy.</summary>
    public const decimal MostFee = 0.99m;

    /// <summary>The most people that a kit is for.</summary>
    public const int MostPeople = 1_000;

    /// <summary>Characters of a currency's sign.</summary>
    public const int LongestCurrency = 8;

    /// <summary>How fast she works.</summary>
    public Pace Pace { get; init; } = Pace.Usual;

    /// <summary>Written behind every amount; empty, amounts are bare numbers.</summary>
    public string Currency { get; init; } = "";

    /// <inheritdoc cref="PriceField.Ball"/>
    public decimal? Ball { get; init; }

    /// <inheritdoc cref="PriceField.CompanionBall"/>
    public decimal? CompanionBall { get; init; }

    /// <inheritdoc cref="PriceField.Wage"/>
    public decimal? Wage { get; init; }

    /// <summary>Sample, test round, editing, photos and whatever else is paid once.</summary>
    public decimal? Fixed { get; init; }

    /// <inheritdoc cref="PriceField.Copy"/>
    public decimal? Copy { get; init; }

    /// <summary>In [0, <see cref="MostFee"/>].</summary>
    public decimal? Fee { get; init; }

    /// <summary>What each sale costs beside the share; none where nothing is typed.</summary>
    public decimal? FeePerCopy { get; init; }

    /// <summary>Whom kits are made for, all in one size.</summary>
    public int? People { get; init; }

    /// <summary>As it is asked for, within a sentence.</summary>
    public static string Words(PriceField field) => field switch
    {
        PriceField.Ball => "the price of a ball",
        PriceField.CompanionBall => "the price of a ball of the companion yarn",
        PriceField.Wage => "the wage of an hour",
        PriceField.Fixed => "the fixed costs",
        PriceField.Copy => "the price of a copy",
        PriceField.Fee => "the fee on a copy (0 % where there is none)",
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "No words for this field."),
    };

    /// <exception cref="ArgumentOutOfRangeException">Something is out of its range, or the currency no short sign.</exception>
    internal void Check()
    {
        foreach (var (amount, name) in new[]
        {
            (Ball, nameof(Ball)), (CompanionBall, nameof(CompanionBall)), (Wage, nameof(Wage)), (Fixed, nameof(Fixed)),
            (Copy, nameof(Copy)), (FeePerCopy, nameof(FeePerCopy)),
        })
        {
            if (amount is < 0 or > MostMoney)
                throw new ArgumentOutOfRangeException(name, amount, $"{name} must lie in [0, {MostMoney}].");
        }
        if (Fee is < 0 or > MostFee)
            throw new ArgumentOutOfRangeException(nameof(Fee), Fee, $"{nameof(Fee)} must lie in [0, {MostFee}].");
        if (People is < 1 or > MostPeople)
            throw new ArgumentOutOfRangeException(nameof(People), People, $"{nameof(People)} must lie in [1, {MostPeople}].");
        if (!CanBeCurrency(Currency))
            throw new ArgumentOutOfRangeException(nameof(Currency), Currency, $"{nameof(Currency)} has at most {LongestCurrency} characters, letters and signs of currencies alone.");
    }

    /// <summary>Short, and nothing that could be read as part of the amount or break a line.</summary>
    public static bool CanBeCurrency(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length <= LongestCurrency
            && text.All(c => char.IsLetter(c) || char.GetUnicodeCategory(c) == UnicodeCategory.CurrencySymbol || c is '.' or ' ');
    }
}

/// <summary>An amount of money; or the fields without which there is none.</summary>
/// <param name="Value">Not rounded; missing where a field is.</param>
/// <param name="Missing">Empty where there is an amount.</param>
public sealed record Amount(decimal? Value, ImmutableArray<PriceField> Missing)
{
    /// <summary>Worked out where no field is missing.</summary>
    /// <param name="needed">Each with what was typed.</param>
    public static Amount Of(Func<decimal> value, params (PriceField Field, decimal? Typed)[] needed)
    {
        ArgumentNullException.ThrowIfNull(value);
        ImmutableArray<PriceField> missing = [.. needed.Where(n => n.Typed is null).Select(n => n.Field)];
        return new Amount(missing.IsEmpty ? value() : null, missing);
    }
}
