using System.Runtime.CompilerServices;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Limits;

/// <summary>
/// A named range, both ends included. What a document may say and what the computing accepts are the same object, so that they cannot
/// disagree.
/// </summary>
/// <param name="Smallest">Included.</param>
/// <param name="Largest">Included.</param>
/// <param name="Unit">As <see cref="Guard"/> names it.</param>
public readonly record struct Bounds(double Smallest, double Largest, string Unit)
{
    /// <summary>Whether a value lies within, ends included; false for NaN.</summary>
    public bool Holds(double value) => value >= Smallest && value <= Largest;

    /// <inheritdoc cref="Guard.InRange(double, double, double, string, string)"/>
    public double Check(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Guard.InRange(value, Smallest, Largest, Unit, name);
}

/// <summary>The same for counts.</summary>
/// <inheritdoc cref="Bounds"/>
/// <param name="Smallest">Included.</param>
/// <param name="Largest">Included.</param>
/// <param name="Unit">What is counted, in the plural, such as <c>rounds</c>.</param>
public readonly record struct CountBounds(int Smallest, int Largest, string Unit)
{
    /// <summary>Whether a count lies within, ends included.</summary>
    public bool Holds(int value) => value >= Smallest && value <= Largest;

    /// <inheritdoc cref="Guard.InRange(int, int, int, string, string)"/>
    public int Check(int value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Guard.InRange(value, Smallest, Largest, Unit, name);
}
