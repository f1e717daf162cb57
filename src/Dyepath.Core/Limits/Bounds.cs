using System.Runtime.CompilerServices;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Limits;

/// <summary>
/// A named range, both ends included. What a document may say and what the computing accepts are the same object, so that they cannot
/// disagree.
/// </summary>
/// <param name="Unit">As <see cref="Guard"/> names it.</param>
public readonly record struct Bounds(double Smallest, double Largest, string Unit)
{
    public bool Holds(double value) => value >= Smallest && value <= Largest;

    /// <inheritdoc cref="Guard.InRange(double, double, double, string, string)"/>
    public double Check(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Guard.InRange(value, Smallest, Largest, Unit, name);
}

/// <summary>The same for counts.</summary>
/// <inheritdoc cref="Bounds"/>
public readonly record struct CountBounds(int Smallest, int Largest, string Unit)
{
    public bool Holds(int value) => value >= Smallest && value <= Largest;

    /// <inheritdoc cref="Guard.InRange(int, int, int, string, string)"/>
    public int Check(int value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Guard.InRange(value, Smallest, Largest, Unit, name);
}
