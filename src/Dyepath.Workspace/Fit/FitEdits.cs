using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Garments;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Fields;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Fit;

/// <summary>What this page writes into the document where one deed changes more than one value.</summary>
public static class FitEdits
{
    /// <summary>Place of the numbers that are set against the plan's.</summary>
    public const string Overrides = "sizes.overrides";

    /// <summary>Place of the base size's numbers as it was made.</summary>
    public const string Locked = "sizes.locked";

    private const string DirectionPlace = "garment.direction";

    /// <summary>Fixes a count of one size by hand; a fixed count holds for one direction, so that is fixed too.</summary>
    public static void Pin(ProjectDocument document, Direction direction, string size, string what, int count, string reason)
    {
        KeepDirection(document, direction);
        var number = new JsonObject { ["size"] = size, ["what"] = what, ["count"] = count, ["reason"] = reason };
        if (Find(document, Overrides, size, what) is { } at)
            document.Set($"{Overrides}[{at}]", number);
        else
            document.Add(Overrides, number);
    }

    /// <summary>Keeps a number of the base size as it was made.</summary>
    /// <param name="value">A length as text, or a count.</param>
    public static void Lock(ProjectDocument document, Direction direction, string baseSize, string what, JsonValue value)
    {
        if (!document.Has("sizes.base"))
            document.Set("sizes.base", baseSize);
        var isCount = value.GetValueKind() == JsonValueKind.Number;
        if (isCount)
            KeepDirection(document, direction);
        var number = new JsonObject { ["size"] = baseSize, ["what"] = what, [isCount ? "count" : "length"] = value };
        if (Find(document, Locked, baseSize, what) is { } at)
            document.Set($"{Locked}[{at}]", number);
        else
            document.Add(Locked, number);
    }

    /// <summary>
    /// Takes one number back out of a list; an empty list goes too, and with the last count a direction that was fixed for its sake alone.
    /// </summary>
    public static void Release(ProjectDocument document, string list, int index)
    {
        document.Set($"{list}[{index}]", null);
        if (document.Count(list) == 0)
            document.Set(list, null);
        if (document.Implied.GetValueOrDefault(DirectionPlace) is { } implied && !HasCounts(document))
        {
            document.Implied.Remove(DirectionPlace);
            if (document.Typed(DirectionPlace) == implied)
                document.Set(DirectionPlace, null);
        }
    }

    /// <summary>Takes every fixed count out of a list, and leaves fixed lengths.</summary>
    public static void ReleaseCounts(ProjectDocument document, string list)
    {
        for (var i = document.Count(list) - 1; i >= 0; i--)
        {
            if (document.Has($"{list}[{i}].count"))
                Release(document, list, i);
        }
    }

    /// <summary>Fixed counts mean nothing in another direction and are released.</summary>
    /// <param name="direction"><c>up</c>, <c>sideways</c> or <c>best</c>.</param>
    public static void Direct(ProjectDocument document, string direction)
    {
        ReleaseCounts(document, Overrides);
        ReleaseCounts(document, Locked);
        document.Set(DirectionPlace, direction == "best" ? null : direction);
    }

    /// <summary>Any count is fixed, of any size.</summary>
    public static bool HasCounts(ProjectDocument document) => new[] { Overrides, Locked }
        .Any(list => Enumerable.Range(0, document.Count(list)).Any(i => document.Has($"{list}[{i}].count")));

    /// <summary>The document says which way the garment is worked.</summary>
    public static bool HasDirection(ProjectDocument document) => document.Typed(DirectionPlace) is "up" or "sideways";

    private static void KeepDirection(ProjectDocument document, Direction direction)
    {
        if (!HasCounts(document))
            document.Implied.Remove(DirectionPlace);
        if (HasDirection(document))
            return;
        document.Set(DirectionPlace, FitWords.Name(direction));
        document.Implied[DirectionPlace] = FitWords.Name(direction);
    }

    private static int? Find(ProjectDocument document, string list, string size, string what)
    {
        for (var i = 0; i < document.Count(list); i++)
        {
            if (document.Typed($"{list}[{i}].size") == size && document.Typed($"{list}[{i}].what") == what)
                return i;
        }
        return null;
    }

    /// <summary>What holds for either weight while the document says nothing.</summary>
    public const string UsualWeight = "4 cm²";

    private static readonly int[] Distances = [0, 1, 2, 3, 4];

    /// <summary>
    /// A weight is added to the square of how far a size is off, so that its root is a distance that a designer can picture; a weight of
    /// her own stands among the others.
    /// </summary>
    public static IReadOnlyList<Choice> Weights(string now, bool inches)
    {
        var usual = Distances.Select(d => new Choice(FormattableString.Invariant($"{d * d} cm²"), Off(d, inches)));
        return now.Length == 0 || Distances.Any(d => FormattableString.Invariant($"{d * d} cm²") == now) ? [.. usual]
            : [.. usual, new Choice(now, TypedQuantity.TryWeight(now, out var area) ? Off(Math.Sqrt(area), inches) : now)];
    }

    private static string Off(double centimetres, bool inches) => centimetres == 0 ? "nothing"
        : inches ? FormattableString.Invariant($"{centimetres / 2.54:0.#} in") : FormattableString.Invariant($"{centimetres:0.#} cm");
}
