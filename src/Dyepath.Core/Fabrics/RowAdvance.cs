namespace Dyepath.Core.Fabrics;

/// <summary>
/// The yarn from one row to the next row that is worked the same way. Turned rows are compared two by two, since every
/// other row runs backwards; rounds one by one.
/// </summary>
/// <param name="Micro">Yarn of those rows with their turns, in micro-units.</param>
/// <param name="Rows">1 or 2.</param>
public readonly record struct RowAdvance(long Micro, int Rows);
