using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pdf;

/// <summary>A picture with its key and caption; parts of a divided chart follow each other, each with its own.</summary>
internal sealed class FigureLayout
{
    private const double CaptionSize = 9.5;
    private const double KeySize = 9.5;
    private const double KeyHeight = 19;
    private const double Scale = PageFrame.PointsPerMillimetre;

    private readonly Flow _flow;
    private readonly DrawnPicture _drawn;
    private readonly string _alternative;
    private readonly string _caption;
    private double _shrunk = 1;

    public FigureLayout(Flow flow, Figure figure, Reader reader)
    {
        _flow = flow;
        _caption = reader.Text(figure.Caption);
        _alternative = reader.Text(figure.Alternative);
        var width = figure.Picture is ColourChart ? flow.Frame.FullWidth : flow.Frame.TextWidth;
        var height = flow.Frame.BodyHeight - 62;
        _drawn = PictureDrawing.Draw(figure.Picture, _caption, _alternative, reader, new Room(width / Scale, height / Scale));
    }

    /// <summary>A first sheet is made this much smaller, at most, to stay with its heading; an overview has nothing to read.</summary>
    private double SmallestShare => _drawn.Sheets.Length > 1 ? 0.7 : 0.87;

    public double FirstHeight => SheetHeight(_drawn.Sheets[0]) + KeyRows().Sum(RowHeight)
        + Captions(_caption).Length * CaptionSize * Flow.Leading + 8;

    public void Write()
    {
        _flow.Space(6);
        var first = SheetHeight(_drawn.Sheets[0]);
        var share = (_flow.Free - (FirstHeight - first)) / first;
        if (share < 1 && share >= SmallestShare)
            _shrunk = share;
        _flow.Need(FirstHeight);
        Write(_drawn.Sheets[0]);
        WriteKey();
        Caption(_drawn.Sheets.Length > 1 ? _drawn.Sheets[0].Title : _caption);
        foreach (var sheet in _drawn.Sheets.Skip(1))
        {
            _flow.Need(SheetHeight(sheet) + 2 * CaptionSize * Flow.Leading + 4);
            Write(sheet);
            Caption(sheet.Title);
        }
    }

    /// <summary>The first sheet leaves room for the key.</summary>
    private double Fit(Sheet sheet)
    {
        var isFirst = ReferenceEquals(sheet, _drawn.Sheets[0]);
        var key = isFirst ? Math.Min(KeyRows().Sum(RowHeight), _flow.Frame.BodyHeight / 2) : 0;
        var fit = Math.Min(_flow.Frame.FullWidth / (sheet.Width * Scale), (_flow.Frame.BodyHeight - key - 40) / (sheet.Height * Scale));
        return Math.Min(1, fit) * (isFirst ? _shrunk : 1);
    }

    private double SheetHeight(Sheet sheet) => sheet.Height * Scale * Fit(sheet);

    private void Write(Sheet sheet)
    {
        var scale = Scale * Fit(sheet);
        var alternative = sheet.Title == _caption ? $"{_caption} {_alternative}" : $"{sheet.Title} {_alternative}";
        _flow.Add(new Begin(Role.Figure, alternative, new Box(Flow.Left, _flow.Y, sheet.Width * scale, sheet.Height * scale)));
        _flow.Add(new Draw(sheet, Flow.Left, _flow.Y, scale));
        _flow.Add(new End());
        _flow.Use(sheet.Height * scale + 4);
    }

    private ImmutableArray<ImmutableArray<TextSpan>> Captions(string text) =>
        TextWrap.Lines([new TextSpan(text, false)], _flow.Frame.TextWidth, CaptionSize);

    private void Caption(string text)
    {
        _flow.Add(new Begin(Role.Paragraph));
        _flow.Lines(Captions(text), Flow.Left, CaptionSize, Ink.Soft);
        _flow.Add(new End());
        _flow.Space(14);
    }

    private ImmutableArray<ImmutableArray<TextSpan>> EntryLines(KeyEntry entry) =>
        TextWrap.Lines([new TextSpan(entry.Text, false)], _flow.Frame.TextWidth - entry.Sign.Width * Scale - 5, KeySize);

    private double RowHeight(List<KeyEntry> row) =>
        Math.Max(KeyHeight, row.Max(entry => entry.Sign.Height) * Scale + 4)
            + (row.Max(entry => EntryLines(entry).Length) - 1) * KeySize * Flow.Leading;

    private static double EntryWidth(KeyEntry entry) => entry.Sign.Width * Scale + 5 + Typeface.Regular.Width(entry.Text, KeySize) + 16;

    private List<List<KeyEntry>> KeyRows()
    {
        var rows = new List<List<KeyEntry>>();
        var used = 0.0;
        foreach (var entry in _drawn.Key)
        {
            if (rows.Count == 0 || used + EntryWidth(entry) > _flow.Frame.TextWidth + 16)
            {
                rows.Add([]);
                used = 0;
            }
            rows[^1].Add(entry);
            used += EntryWidth(entry);
        }
        return rows;
    }

    private void WriteKey()
    {
        if (_drawn.Key.IsEmpty)
            return;
        _flow.Add(new Begin(Role.List));
        foreach (var row in KeyRows())
        {
            _flow.Need(RowHeight(row));
            var x = Flow.Left;
            foreach (var entry in row)
            {
                Write(entry, x);
                x += EntryWidth(entry);
            }
            _flow.Use(RowHeight(row));
        }
        _flow.Add(new End());
    }

    private void Write(KeyEntry entry, double x)
    {
        var (width, height) = (entry.Sign.Width * Scale, entry.Sign.Height * Scale);
        _flow.Add(new Begin(Role.Item));
        _flow.Add(new Begin(Role.ItemLabel));
        _flow.Add(new Begin(Role.Figure, entry.Sign.Title, new Box(x, _flow.Y, width, height)));
        _flow.Add(new Draw(entry.Sign, x, _flow.Y, Scale));
        _flow.Add(new End());
        _flow.Add(new End());
        _flow.Add(new Begin(Role.ItemBody));
        var lines = EntryLines(entry);
        for (var i = 0; i < lines.Length; i++)
            _flow.Line(lines[i], x + width + 5, _flow.Y + height / 2 - KeySize * Flow.Leading / 2 + i * KeySize * Flow.Leading, KeySize);
        _flow.Add(new End());
        _flow.Add(new End());
    }
}
