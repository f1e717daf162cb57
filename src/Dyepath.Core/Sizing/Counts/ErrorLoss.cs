using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// What a size loses when it comes out <c>measure − target</c> away from its target. Candidate penalties
/// are in the same unit as the loss.
/// </summary>
public sealed class ErrorLoss
{
    /// <summary>Largest finite loss accepted; beyond it sums would lose their last digits.</summary>
    private const double Largest = 1e12;

    private readonly Func<Length, double> _of;

    private ErrorLoss(string name, bool isConvex, Func<Length, double> of) => (Name, IsConvex, _of) = (name, isConvex, of);

    /// <summary>The square of the error, in cm².</summary>
    public static ErrorLoss Squared { get; } = new("squared", true, error => error.Centimetres * error.Centimetres);

    /// <summary>The magnitude of the error, in cm.</summary>
    public static ErrorLoss Absolute { get; } = new("absolute", true, error => Math.Abs(error.Centimetres));

    public string Name { get; }

    /// <summary>
    /// Whether the loss is promised to be convex in the error. Sizes sharing a convex loss are solved by
    /// interval programming (docs/decisions/grading-program.md); any other loss by branch and bound.
    /// </summary>
    public bool IsConvex { get; }

    /// <summary>
    /// A convex loss of the caller's own. Convexity is the caller's promise and is not checked: with a
    /// function that breaks it the plan may not be the best one; use <see cref="General"/> for those.
    /// </summary>
    public static ErrorLoss Convex(string name, Func<Length, double> of) => Checked(name, true, of);

    /// <summary>Any loss at all, for example one that stops growing. Solved by branch and bound.</summary>
    public static ErrorLoss General(string name, Func<Length, double> of) => Checked(name, false, of);

    /// <summary>
    /// The same loss where <paramref name="tooSmall"/> ≤ error ≤ <paramref name="tooLarge"/>, infinite
    /// (not allowed) elsewhere. Keeps a convex loss convex.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="tooSmall"/> above zero or <paramref name="tooLarge"/> below it.</exception>
    public ErrorLoss Within(Length tooSmall, Length tooLarge)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tooSmall, Length.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThan(tooLarge, Length.Zero);
        return new ErrorLoss(
            $"{Name} within {tooSmall} to {tooLarge}",
            IsConvex,
            error => error >= tooSmall && error <= tooLarge ? _of(error) : double.PositiveInfinity);
    }

    /// <summary>The loss at <paramref name="error"/>, in [0, 1e12], or positive infinity where the error is not allowed.</summary>
    /// <exception cref="InvalidOperationException">A loss of the caller's own returned NaN, a negative number or a finite one above 1e12.</exception>
    public double Of(Length error)
    {
        double loss = _of(error);
        if (loss is >= 0 and <= Largest or double.PositiveInfinity)
            return loss;
        throw new InvalidOperationException(
            $"The loss '{Name}' returned {loss} for an error of {error}; it must lie in [0, {Largest}] or be positive infinity.");
    }

    public override string ToString() => Name;

    private static ErrorLoss Checked(string name, bool isConvex, Func<Length, double> of)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(of);
        return new ErrorLoss(name, isConvex, of);
    }
}
