using Dyepath.Contracts;

namespace Dyepath.Storage;

/// <summary>A part of a list.</summary>
/// <param name="Items">At most <see cref="ApiPaths.MostListed"/>.</param>
/// <param name="Next">Where the list goes on; null at its end.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, Place? Next);

/// <summary>
/// A place in a list that is ordered by moment, the newest first, then by id. It names no row: what is added, deleted or changed
/// meanwhile moves no other entry across it.
/// </summary>
/// <param name="Moment">Of the last entry before it.</param>
/// <param name="Id">Of the last entry before it; decides among entries of one moment.</param>
public sealed record Place(DateTimeOffset Moment, string Id)
{
    /// <summary>Before every entry.</summary>
    public static Place Start { get; } = new(DateTimeOffset.MaxValue, "");

    /// <param name="found">One more than fits where there are more.</param>
    internal static Page<T> Page<T>(List<T> found, Func<T, Place> place) => found.Count <= ApiPaths.MostListed
        ? new(found, null)
        : new(found[..ApiPaths.MostListed], place(found[ApiPaths.MostListed - 1]));
}
