using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Measuring;

/// <summary>
/// How stitch width, row height and yarn per stitch follow the hook: each in proportion to a power of its diameter. Two
/// swatches fix each power; with one, a supposed power serves for all three, since a fabric drawn to another scale
/// keeps its proportions.
/// </summary>
public sealed record HookResponse
{
    /// <summary>
    /// Supposed power. Common practice, no source: half a millimetre more on a 5 mm hook loses about one stitch in sixteen.
    /// </summary>
    public const double SupposedPower = 0.6;

    /// <summary>
    /// Largest power; a fabric in proportion to its hook has 1. Swatches that ask for more, or for a negative one, differ
    /// by more than their hooks.
    /// </summary>
    public const double LargestPower = 3;

    /// <summary>Standard deviation of the power where it is only supposed; an assumption, half of it.</summary>
    private const double SupposedPowerError = SupposedPower / 2;

    private readonly Swatch _swatch;
    private readonly Swatch? _other;

    private HookResponse(Swatch swatch, Swatch? other, double width, double height, double yarn, double error)
    {
        _swatch = swatch;
        _other = other;
        WidthPower = width;
        HeightPower = height;
        YarnPower = yarn;
        YarnPowerError = error;
    }

    /// <summary>Stitch width goes as this power of the hook's diameter, 0 to 3.</summary>
    public double WidthPower { get; }

    /// <summary>Row height goes as this power of the hook's diameter, 0 to 3.</summary>
    public double HeightPower { get; }

    /// <summary>Yarn per stitch goes as this power of the hook's diameter, 0 to 3.</summary>
    public double YarnPower { get; }

    /// <summary>Standard deviation of <see cref="YarnPower"/>.</summary>
    public double YarnPowerError { get; }

    /// <summary>Whether two swatches stand behind the powers.</summary>
    public bool IsMeasured => _other is not null;

    /// <param name="power">For one swatch, 0 to 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">Power or hook outside its range.</exception>
    public static HookResponse Supposed(Swatch swatch, double power = SupposedPower)
    {
        ArgumentNullException.ThrowIfNull(swatch);
        Swatch.Hooks.Check(swatch.HookMillimetres);
        Guard.InRange(power, 0, LargestPower, "power of the hook's diameter");
        return new HookResponse(swatch, null, power, power, power, SupposedPowerError);
    }

    /// <summary>
    /// Passes through both swatches, unless a power must be cut to 0 to <see cref="LargestPower"/>; where one of them
    /// measured no yarn, yarn follows the stitch width.
    /// </summary>
    /// <exception cref="ArgumentException">Both swatches used the same hook.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A hook outside 0.5 to 50 mm.</exception>
    public static HookResponse Between(Swatch swatch, Swatch other)
    {
        ArgumentNullException.ThrowIfNull(swatch);
        ArgumentNullException.ThrowIfNull(other);
        Swatch.Hooks.Check(swatch.HookMillimetres);
        Swatch.Hooks.Check(other.HookMillimetres);
        if (swatch.HookMillimetres == other.HookMillimetres)
            throw new ArgumentException($"Both swatches used a {swatch.HookMillimetres} mm hook.", nameof(other));
        var step = Math.Log(other.HookMillimetres / swatch.HookMillimetres);
        double Power(double ratio) => Math.Clamp(Math.Log(ratio) / step, 0, LargestPower);
        var width = Power(other.Worked.StitchWidth / swatch.Worked.StitchWidth);
        var height = Power(other.Worked.RowHeight / swatch.Worked.RowHeight);
        var yarn = Ratio(swatch.YarnUsed, other.YarnUsed) is { } ratio ? Power(ratio) : width;
        // Two lengths of yarn, each stretched or crimped on its own.
        var error = MeasuringErrors.Default.Stretch * Math.Sqrt(2) / Math.Abs(step);
        return new HookResponse(swatch, other, width, height, yarn, error);
    }

    /// <summary>Through both swatches of a fabric where it has two with different hooks, else <see cref="Supposed"/>.</summary>
    public static HookResponse For(FabricChoice fabric)
    {
        ArgumentNullException.ThrowIfNull(fabric);
        return fabric.OtherSwatch is { } other && other.HookMillimetres != fabric.Swatch.HookMillimetres
            ? Between(fabric.Swatch, other)
            : Supposed(fabric.Swatch);
    }

    /// <summary>Yarn per stitch with this hook over that with the swatch's.</summary>
    /// <param name="hookMillimetres">0.5 to 50.</param>
    public double YarnFactor(double hookMillimetres) => Factor(hookMillimetres, YarnPower);

    /// <summary><see cref="YarnFactor"/> with the error that the power brings into it.</summary>
    /// <inheritdoc cref="YarnFactor" path="/param"/>
    public Estimate YarnFactorEstimate(double hookMillimetres)
    {
        var factor = YarnFactor(hookMillimetres);
        return new Estimate(factor, factor * YarnPowerError * Math.Abs(Math.Log(hookMillimetres / _swatch.HookMillimetres)));
    }

    /// <summary>
    /// The swatch that this hook would give: all gauges and all yarn used change together, and C with them (it divides by
    /// <see cref="YarnFactor"/>). A measured hook gives its own swatch, completed where it was measured in fewer states.
    /// </summary>
    /// <param name="hookMillimetres">0.5 to 50.</param>
    /// <exception cref="ArgumentOutOfRangeException">Hook outside its range.</exception>
    public Swatch At(double hookMillimetres)
    {
        var width = Factor(hookMillimetres, WidthPower);
        var height = Factor(hookMillimetres, HeightPower);
        var yarn = YarnFactor(hookMillimetres);
        return new Swatch(
            hookMillimetres,
            Scaled(_swatch.Worked, width, height),
            State(s => s.Blocked, hookMillimetres, width, height),
            State(s => s.Hung, hookMillimetres, width, height),
            [.. _swatch.YarnUsed.Select(u => new YarnUsed(u.Stitches, u.Length * yarn, u.Mass * yarn))]);
    }

    /// <summary>A finished state follows its own two measurements where it has them, else the worked gauge.</summary>
    private Gauge? State(Func<Swatch, Gauge?> state, double hook, double width, double height)
    {
        if (state(_swatch) is not { } own)
            return null;
        if (_other is null || state(_other) is not { } other)
            return Scaled(own, width, height);
        var step = Math.Log(_other.HookMillimetres / _swatch.HookMillimetres);
        double Along(double ratio) => Factor(hook, Math.Clamp(Math.Log(ratio) / step, 0, LargestPower));
        return Scaled(own, Along(other.StitchWidth / own.StitchWidth), Along(other.RowHeight / own.RowHeight));
    }

    private double Factor(double hook, double power) =>
        Math.Pow(Swatch.Hooks.Check(hook) / _swatch.HookMillimetres, power);

    private static Gauge Scaled(Gauge gauge, double width, double height) =>
        gauge with { Stitches = gauge.Stitches / width, Rows = gauge.Rows / height };

    /// <summary>Yarn per stitch of the second over the first, by length where both have it, else by mass.</summary>
    private static double? Ratio(ImmutableArray<YarnUsed> first, ImmutableArray<YarnUsed> second) =>
        Per(second, u => u.Length?.Centimetres) / Per(first, u => u.Length?.Centimetres)
        ?? Per(second, u => u.Mass?.Grams) / Per(first, u => u.Mass?.Grams);

    private static double? Per(ImmutableArray<YarnUsed> used, Func<YarnUsed, double?> amount)
    {
        var measured = used.Where(u => amount(u) is > 0).ToArray();
        return measured.Length == 0 ? null : measured.Sum(u => amount(u)!.Value) / measured.Sum(u => u.Stitches);
    }
}
