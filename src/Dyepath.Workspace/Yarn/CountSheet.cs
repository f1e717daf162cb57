using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Yarn;

/// <summary>
/// The counts of one ball in the document, a list a repeat. A repeat in the counting is the last, shorter list; it is kept in the
/// order in which it is counted, whole repeats in the yarn's own order, whichever end the ball is pulled from.
/// </summary>
public sealed class CountSheet(ProjectDocument document, int ball)
{
    private const string Counted = "yarn.counted";

    private readonly int _sections = document.Count("yarn.sections");

    /// <summary>The ball is pulled from its other end, so that the last section comes first.</summary>
    public bool Backwards => document.Is("yarn.fromOtherEnd");

    /// <summary>Of the ball, in the document.</summary>
    public string Place => string.Create(CultureInfo.InvariantCulture, $"{Counted}[{ball}]");

    /// <summary>Place of the ball's list of repeats.</summary>
    public string Repeats => Place + ".repeats";

    /// <summary>The begun one included.</summary>
    public int RepeatCount => document.Count(Repeats);

    /// <summary>Of one repeat, from 0, in the document.</summary>
    public string RowPlace(int repeat) => string.Create(CultureInfo.InvariantCulture, $"{Repeats}[{repeat}]");

    /// <summary>Of one count, in the document; the index is that of the list.</summary>
    public string CellPlace(int repeat, int index) => string.Create(CultureInfo.InvariantCulture, $"{Repeats}[{repeat}][{index}]");

    /// <summary>Counts of a repeat; missing where what stands there is no whole number.</summary>
    public int?[] Row(int repeat) => [.. Enumerable.Range(0, document.Count(RowPlace(repeat))).Select(i => Count(CellPlace(repeat, i)))];

    /// <summary>Whole repeats.</summary>
    public IEnumerable<int[]> Whole() =>
        Enumerable.Range(0, RepeatCount).Select(Row)
            .Where(row => row.Length == _sections && row.All(n => n is not null))
            .Select(row => row.Select(n => n!.Value).ToArray());

    /// <summary>
    /// Whether the counts of all balls are still the example's, also while the document has faults: beside lengths or a swatch of the
    /// example's, since small counts are easily alike.
    /// </summary>
    public static bool AreExample(ProjectDocument document)
    {
        var hasLengths = ExampleValues.AreLengths([.. SectionView.Read(document).Select(s => s.Length)]);
        return (hasLengths || SampleYarn.HasItsSwatch(document))
            && ExampleValues.AreCounts([.. Of(document).Select(row => row.ToImmutableArray())], hasLengths);
    }

    /// <summary>Whether any repeat says of a section that it has stitches; of one that was added later all say 0.</summary>
    public static bool IsCounted(ProjectDocument document, int section) => Of(document).Any(row => row[section] > 0);

    /// <summary>Whole repeats of all balls.</summary>
    private static IEnumerable<int[]> Of(ProjectDocument document) =>
        Enumerable.Range(0, document.Count(Counted)).SelectMany(ball => new CountSheet(document, ball).Whole());

    /// <summary>Whether the last repeat is begun and not whole.</summary>
    public bool IsBegun => RepeatCount > 0 && document.Count(RowPlace(RepeatCount - 1)) < _sections;

    /// <summary>Which count comes next: its repeat, and its section in the yarn's own order.</summary>
    public (int Repeat, int Section) Next => IsBegun
        ? (RepeatCount - 1, SectionOf(document.Count(RowPlace(RepeatCount - 1))))
        : (RepeatCount, SectionOf(0));

    /// <summary>The section that a column of a repeat counts.</summary>
    public int SectionAt(int repeat, int column) => IsBegun && repeat == RepeatCount - 1 ? SectionOf(column) : column;

    /// <summary>Adds the next count; makes the ball, and a repeat, where there is none yet.</summary>
    public void Append(int count, string newBallName)
    {
        if (_sections == 0)
            return;
        if (!document.Has(Place))
            document.Add(Counted, new JsonObject { ["name"] = newBallName, ["repeats"] = new JsonArray() }, ball);
        if (!IsBegun)
            document.Add(Repeats, new JsonArray());
        var row = RowPlace(RepeatCount - 1);
        document.Add(row, JsonValue.Create(count));
        if (IsTurned(RepeatCount - 1))
            Turn(row);
    }

    /// <summary>Takes back the last count; a ball without counts goes with it.</summary>
    /// <returns>What it was.</returns>
    public int? TakeBack()
    {
        if (RepeatCount == 0)
            return null;
        var row = RowPlace(RepeatCount - 1);
        if (IsTurned(RepeatCount - 1))
            Turn(row);
        var last = CellPlace(RepeatCount - 1, document.Count(row) - 1);
        var count = Count(last);
        document.Set(last, null);
        Tidy();
        return count;
    }

    /// <summary>Puts in a count that was forgotten; all later ones move one place on.</summary>
    public void Insert(int repeat, int column, int count) => Shift(counts =>
        counts.Insert(Math.Min(Position(repeat, column), counts.Count), count));

    /// <summary>Takes out a count that was made twice; all later ones move one place back.</summary>
    public void TakeOut(int repeat, int column) => Shift(counts =>
    {
        if (Position(repeat, column) < counts.Count)
            counts.RemoveAt(Position(repeat, column));
    });

    /// <summary>Takes out a repeat; a ball without counts goes with it.</summary>
    public void RemoveRepeat(int repeat)
    {
        document.Set(RowPlace(repeat), null);
        Tidy();
    }

    private void Shift(Action<List<int>> change)
    {
        // In the order of counting, so that a shift means the same whichever end the ball is pulled from.
        var counts = Enumerable.Range(0, RepeatCount)
            .SelectMany(r => IsTurned(r) ? Row(r).Reverse() : Row(r)).Select(n => n ?? 0).ToList();
        change(counts);
        var rows = counts.Chunk(_sections).Select(row => Backwards && row.Length == _sections ? [.. row.Reverse()] : row);
        document.Set(Repeats, new JsonArray([.. rows.Select(
            row => (JsonNode)new JsonArray([.. row.Select(n => (JsonNode)JsonValue.Create(n))]))]));
        Tidy();
    }

    /// <summary>How many counts were made before this one.</summary>
    private int Position(int repeat, int column) =>
        Enumerable.Range(0, repeat).Sum(r => document.Count(RowPlace(r))) + (IsTurned(repeat) ? _sections - 1 - column : column);

    /// <summary>Whether a repeat stands the other way round than it was counted.</summary>
    private bool IsTurned(int repeat) => Backwards && document.Count(RowPlace(repeat)) == _sections;

    private void Tidy()
    {
        if (RepeatCount > 0 && document.Count(RowPlace(RepeatCount - 1)) == 0)
            document.Set(RowPlace(RepeatCount - 1), null);
        if (RepeatCount == 0)
            document.Set(Place, null);
        if (document.Count(Counted) == 0)
            document.Set(Counted, null);
    }

    private void Turn(string row)
    {
        for (var i = 1; i < _sections; i++)
            document.Move(row, i, 0);
    }

    private int SectionOf(int step) => Backwards ? _sections - 1 - step : step;

    private int? Count(string place) =>
        int.TryParse(document.Typed(place), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
}
