using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Pdf;

/// <summary>
/// A table with ruled rows. It takes the notes margin where it must; columns that still do not fit go into further
/// tables, each with the first column. The head is repeated where a page ends.
/// </summary>
internal sealed class TableLayout
{
    /// <summary>Distance of baselines over the size of type.</summary>
    private const double Leading = 1.3;

    private const double WideGutter = 10;

    /// <summary>Between the columns of what is set in two, where it would not fit otherwise.</summary>
    private const double NarrowGutter = 5;
    private const double Padding = 3;

    /// <summary>Room between the halves of a table in two columns.</summary>
    private const double Between = 26;

    /// <summary>Rows from which a narrow table is set in two columns.</summary>
    private const int FewestForTwo = 8;

    /// <summary>Rows that end a table on a page of their own.</summary>
    private const int FewestTogether = 3;

    /// <summary>A table of no more of the page is not torn.</summary>
    private const double Short = 0.4;

    private readonly Flow _flow;
    private double _gutter = WideGutter;
    private readonly bool _numbers;
    private readonly int _ticks;
    private double _left;
    private readonly ImmutableArray<TextSpan> _caption;
    private readonly string _continued;
    private readonly ImmutableArray<ImmutableArray<TextSpan>>[] _rows;

    public TableLayout(Flow flow, Table table, Booklet booklet, Reader reader)
    {
        (_flow, _left) = (flow, flow.Left);
        _numbers = table.PerSizeColumns;
        _ticks = table.Ticks;
        _caption = reader.Say(table.Caption);
        _continued = reader.Text("continued");
        _rows = [.. table.ForSize(reader.OnlySize(booklet)).Select(row => ImmutableArray.CreateRange(row, reader.SayCell))];
        var columns = _rows[0].Length;
        if (_rows.Any(row => row.Length != columns))
            throw new ArgumentException($"Every row of a table has as many cells as its head, {columns}.", nameof(table));
    }

    /// <summary>Caption, head and first rows.</summary>
    public static double FirstHeight(TypeScale type) =>
        type.Caption * Flow.Leading * 2 + 4 * (type.Table * Leading + 2 * Padding);

    private double Size => _flow.Type.Table;

    private double LineHeight => Size * Leading;

    public void Write()
    {
        var groups = Groups();
        for (var i = 0; i < groups.Count; i++)
            Write(groups[i], i == 0 ? _caption : [.. _caption, new TextSpan($" ({_continued})", false)]);
    }

    private void Write((int[] Columns, double[] Widths) group, ImmutableArray<TextSpan> caption)
    {
        var captions = TextWrap.Lines(caption, _flow.Frame.TextWidth, _flow.Type.Caption);
        var head = Cells(0, group);
        var above = captions.Length * _flow.Type.Caption * Flow.Leading + Height(head);
        var whole = above + Enumerable.Range(1, _rows.Length - 1).Sum(r => Height(Cells(r, group)) + 1);
        // A table that is not too long is kept on one page.
        _flow.Need(whole <= _flow.Frame.BodyHeight * Short ? whole : above + 4 * (LineHeight + 2 * Padding));
        _flow.Add(new Begin(Role.Table));
        _flow.Add(new Begin(Role.TableCaption));
        _flow.Add(new Begin(Role.Paragraph));
        _flow.Lines(captions, _flow.Left, _flow.Type.Caption, Ink.Soft);
        _flow.Add(new End());
        _flow.Add(new End());
        _flow.Use(2);
        double Width() => group.Widths.Sum() + _gutter * (group.Widths.Length - 1) + TicksWidth;
        var mayBeTwo = !_numbers && _rows.Length > FewestForTwo;
        if (mayBeTwo && 2 * Width() + Between > _flow.Frame.FullWidth)
            _gutter = NarrowGutter;
        if (mayBeTwo && 2 * Width() + Between <= _flow.Frame.FullWidth)
        {
            InTwo(head, group, Width());
            _flow.Add(new End());
            _flow.Space(14);
            return;
        }
        _gutter = WideGutter;
        Row(head, group.Widths, header: true);
        for (var row = 1; row < _rows.Length; row++)
        {
            foreach (var cells in Parts(Cells(row, group), _flow.Frame.BodyHeight - Height(head)))
            {
                // The last rows stay together, so that none is left alone.
                var together = row == _rows.Length - FewestTogether && row > 1
                    ? Enumerable.Range(row, FewestTogether).Sum(r => Height(Cells(r, group)) + 1) : Height(cells);
                if (_flow.Need(Math.Max(Height(cells), Math.Min(together, _flow.Frame.BodyHeight / 2))))
                    RepeatedHead(head, group.Widths);
                Row(cells, group.Widths, header: false);
            }
        }
        _flow.Add(new End());
        _flow.Space(14);
    }

    /// <summary>A long, narrow table runs down the left half of the page and then down the right one.</summary>
    private void InTwo(ImmutableArray<ImmutableArray<TextSpan>>[] head, (int[] Columns, double[] Widths) group, double width)
    {
        var rows = Enumerable.Range(1, _rows.Length - 1).Select(row => Cells(row, group)).ToArray();
        var tallest = rows.Max(Height) + 1;
        for (var next = 0; next < rows.Length;)
        {
            _flow.Need(Height(head) + Math.Min(FewestForTwo, rows.Length - next) / 2 * tallest);
            var fit = Math.Max(1, (int)((_flow.Free - Height(head) - 1) / tallest));
            var left = Math.Min(fit, (rows.Length - next + 1) / 2);
            var top = _flow.Y;
            var bottom = top;
            for (var half = 0; half < 2 && next < rows.Length; half++)
            {
                _flow.Back(top);
                _left = _flow.Left + half * (width + Between);
                if (next == 0)
                    Row(head, group.Widths, header: true);
                else
                    RepeatedHead(head, group.Widths);
                for (var i = 0; i < left && next < rows.Length; i++)
                    Row(rows[next++], group.Widths, header: false);
                bottom = Math.Max(bottom, _flow.Y);
            }
            _left = _flow.Left;
            _flow.Back(bottom);
        }
    }

    /// <summary>An amount in two units breaks in every cell of a row or in none, and then without its stroke.</summary>
    private ImmutableArray<ImmutableArray<TextSpan>>[] Cells(int row, (int[] Columns, double[] Widths) group)
    {
        ImmutableArray<ImmutableArray<TextSpan>>[] cells =
            [.. group.Columns.Select((column, i) => TextWrap.Lines(Strengthened(row, _rows[row][column]), group.Widths[i], Size))];
        if (!_numbers || row == 0 || !cells.Skip(1).Any(lines => lines.Length > 1))
            return cells;
        for (var i = 1; i < cells.Length; i++)
        {
            var spans = _rows[row][group.Columns[i]];
            var words = string.Concat(spans.Select(span => span.Text));
            var halves = words.Split(Reader.CellStroke);
            if (halves.Length == 2)
                cells[i] = [[new TextSpan(halves[0], false)], [new TextSpan(halves[1], false)]];
        }
        return cells;
    }

    private static ImmutableArray<TextSpan> Strengthened(int row, ImmutableArray<TextSpan> spans) =>
        row == 0 ? [.. spans.Select(span => span with { Strong = true })] : spans;

    private double Height(ImmutableArray<ImmutableArray<TextSpan>>[] cells) =>
        cells.Max(lines => lines.Length) * LineHeight + 2 * Padding;

    /// <summary>A row taller than a page is shared out over several.</summary>
    private IEnumerable<ImmutableArray<ImmutableArray<TextSpan>>[]> Parts(
        ImmutableArray<ImmutableArray<TextSpan>>[] cells, double room)
    {
        var fits = Math.Max(1, (int)((room - 2 * Padding) / LineHeight));
        var all = cells.Max(lines => lines.Length);
        for (var first = 0; first < all; first += fits)
            yield return [.. cells.Select(lines => lines.Skip(first).Take(fits).ToImmutableArray())];
    }

    private void Row(ImmutableArray<ImmutableArray<TextSpan>>[] cells, double[] widths, bool header)
    {
        _flow.Add(new Begin(Role.Row));
        DrawCells(cells, widths, (column, draw) =>
        {
            _flow.Add(new Begin(header ? Role.ColumnHeader : column == 0 ? Role.RowHeader : Role.Cell));
            draw();
            _flow.Add(new End());
        });
        _flow.Add(new End());
        if (!header)
            Ticks(widths);
        Finish(cells, widths, header);
    }

    /// <summary>Beside a row; a frame is nothing to read.</summary>
    private void Ticks(double[] widths)
    {
        var x = _left + widths.Sum() + _gutter * widths.Length;
        var y = _flow.Y + Padding + (LineHeight - Box) / 2;
        var frame = new PathBuilder().Rectangle(0, 0, Box, Box).With(new Style(null, new Stroke(Ink.Soft, 0.5)));
        for (var i = 0; i < _ticks; i++)
        {
            _flow.Add(new Begin(Role.Artifact));
            _flow.Add(new Draw(new Sheet(Box, Box, [frame], ""), x + i * (Box + 3), y, 1));
            _flow.Add(new End());
        }
    }

    private double Box => Size * 0.9;

    private double TicksWidth => _ticks == 0 ? 0 : _gutter + _ticks * (Box + 3);

    private void RepeatedHead(ImmutableArray<ImmutableArray<TextSpan>>[] head, double[] widths)
    {
        _flow.Add(new Begin(Role.Artifact));
        DrawCells(head, widths, (_, draw) => draw());
        _flow.Add(new End());
        Finish(head, widths, header: true);
    }

    private void DrawCells(ImmutableArray<ImmutableArray<TextSpan>>[] cells, double[] widths, Action<int, Action> each)
    {
        var x = _left;
        for (var column = 0; column < cells.Length; column++)
        {
            var (lines, width, left) = (cells[column], widths[column], x);
            var atRight = _numbers && column > 0;
            each(column, () =>
            {
                for (var i = 0; i < lines.Length; i++)
                {
                    var at = atRight ? left + width - TextWrap.Width(Trimmed(lines[i]), Size) : left;
                    _flow.Line(lines[i], at, _flow.Y + Padding + i * LineHeight, Size);
                }
            });
            x += width + _gutter;
        }
    }

    private static IEnumerable<TextSpan> Trimmed(ImmutableArray<TextSpan> line) =>
        line.Select((span, i) => i == line.Length - 1 ? span with { Text = span.Text.TrimEnd(' ') } : span);

    private void Finish(ImmutableArray<ImmutableArray<TextSpan>>[] cells, double[] widths, bool header)
    {
        _flow.Use(Height(cells));
        var width = widths.Sum() + _gutter * (widths.Length - 1) + TicksWidth;
        _flow.Rule(_left, _flow.Y, width, header ? 0.9 : 0.35, header ? Ink.Soft : Ink.Line);
        _flow.Use(1);
    }

    private List<(int[] Columns, double[] Widths)> Groups()
    {
        var columns = Enumerable.Range(0, _rows[0].Length).ToArray();
        var natural = columns.Select(c => _rows.Select((row, r) => TextWrap.Width(Strengthened(r, row[c]), Size)).Max() + 0.5).ToArray();
        var least = columns.Select(c => _rows.Select((row, r) => TextWrap.LongestWord(Strengthened(r, row[c]), Size)).Max() + 0.5)
            .ToArray();
        var full = _flow.Frame.FullWidth;
        natural[0] = Math.Min(natural[0], Math.Max(least[0], full * 0.4));
        if (_numbers && columns.Length > 1)
        {
            Array.Fill(natural, natural.Skip(1).Max(), 1, columns.Length - 1);
            Array.Fill(least, least.Skip(1).Max(), 1, columns.Length - 1);
        }
        if (Fits(natural, full))
            return [(columns, natural)];
        if (Fits(least, full))
            return [(columns, Shared(natural, least, full - _gutter * (columns.Length - 1)))];
        var first = Math.Min(natural[0], full * 0.4);
        var groups = new List<(int[], double[])>();
        for (var start = 1; start < columns.Length;)
        {
            var end = start + 1;
            var used = first + _gutter + natural[start];
            while (end < columns.Length && used + _gutter + natural[end] <= full)
                used += _gutter + natural[end++];
            double[] widths = [first, .. natural[start..end].Select(width => Math.Min(width, full - first - _gutter))];
            groups.Add(([0, .. columns[start..end]], widths));
            start = end;
        }
        return groups.Count > 0 ? groups : [(columns, [full])];
    }

    private bool Fits(double[] widths, double room) => widths.Sum() + _gutter * (widths.Length - 1) <= room;

    /// <summary>Columns of sizes are narrow and alike, so that all of their cells break at the same place.</summary>
    private double[] Shared(double[] natural, double[] least, double room)
    {
        if (_numbers)
            return [Math.Min(natural[0], room - least.Skip(1).Sum()), .. least.Skip(1)];
        var share = (room - least.Sum()) / Math.Max(0.01, natural.Sum() - least.Sum());
        return [.. natural.Zip(least, (n, l) => l + (n - l) * Math.Clamp(share, 0, 1))];
    }
}
