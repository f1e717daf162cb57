using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pdf;

/// <summary>A picture with its key and caption; parts of a divided chart follow each other, each with its own.</summary>
internal sealed class FigureLayout
{
    private const double Scale = PageFrame.PointsPerMillimetre;

    private readonly Flow _flow;
    private readonly DrawnPicture _drawn;
    private readonly string _alternative;
    private readonly string _caption;
    private readonly bool _ofStitches;
    private double _shrunk = 1;

    public FigureLayout(Flow flow, Figure figure, Reader reader)
    {
        _flow = flow;
        _caption = reader.Text(figure.Caption);
        _ofStitches = figure.Picture is SymbolChart;
        _alternative = reader.Text(figure.Alternative);
        var width = figure.Picture is ColourChart ? flow.Frame.FullWidth : flow.Frame.TextWidth;
        var height = flow.Frame.BodyHeight - 6.5 * flow.Type.Caption;
        var room = new Room(width / Scale, height / Scale, flow.Type.SmallestCell);
        _drawn = PictureDrawing.Draw(figure.Picture, _caption, _alternative, reader, room);
    }

    /// <summary>
    /// A first sheet is made this much smaller, at most, to stay with its heading; an overview has nothing to read, and standard symbols
    /// are large.
    /// </summary>
    private double SmallestShare => _drawn.Sheets.Length > 1 || _ofStitches ? 0.7 : 0.87;

    private double CaptionLine => _flow.Type.Caption * Flow.Leading;

    /// <summary>Room above the first sheet.</summary>
    private const double Above = 6;

    /// <summary>The first sheet made as small as it may be, with its key and its caption.</summary>
    public double LeastHeight => Above + FirstHeight - (1 - SmallestShare) * SheetHeight(_drawn.Sheets[0]);

    private double FirstHeight => SheetHeight(_drawn.Sheets[0]) + KeyRows().Sum(RowHeight)
        + Captions(FirstCaption).Length * CaptionLine + 8;

    /// <summary>Of the first sheet: of a divided chart it says that it is the overview.</summary>
    private string FirstCaption => _drawn.Sheets.Length > 1 ? _drawn.Sheets[0].Title : _caption;

    public void Write()
    {
        _flow.Space(Above);
        var first = SheetHeight(_drawn.Sheets[0]);
        var share = (_flow.Free - (FirstHeight - first)) / first;
        if (share < 1 && share >= SmallestShare)
            _shrunk = share;
        _flow.Need(FirstHeight);
        Write(_drawn.Sheets[0]);
        WriteKey();
        Caption(FirstCaption);
        foreach (var sheet in _drawn.Sheets.Skip(1))
        {
            _flow.Need(SheetHeight(sheet) + 2 * CaptionLine + 4);
            Write(sheet);
            Caption(sheet.Title);
        }
    }

    /// <summary>The first sheet leaves room for the key.</summary>
    private double Fit(Sheet sheet)
    {
        var isFirst = ReferenceEquals(sheet, _drawn.Sheets[0]);
        var key = isFirst ? Math.Min(KeyRows().Sum(RowHeight), _flow.Frame.BodyHeight / 2) : 0;
        var height = _flow.Frame.BodyHeight - key - 2 * CaptionLine - 14;
        var fit = Math.Min(_flow.Frame.FullWidth / (sheet.Width * Scale), height / (sheet.Height * Scale));
        return Math.Min(1, fit) * (isFirst ? _shrunk : 1);
    }

    private double SheetHeight(Sheet sheet) => sheet.Height * Scale * Fit(sheet);

    private void Write(Sheet sheet)
    {
        var scale = Scale * Fit(sheet);
        var alternative = sheet.Title == _caption ? $"{_caption} {_alternative}" : $"{sheet.Title} {_alternative}";
        _flow.Figure(sheet, _flow.Left, _flow.Y, scale, alternative);
        _flow.Use(sheet.Height * scale + 4);
    }

    private ImmutableArray<ImmutableArray<TextSpan>> Captions(string text) =>
        TextWrap.Lines([new TextSpan(text, false)], _flow.Frame.TextWidth, _flow.Type.Caption);

    private void Caption(string text)
    {
        _flow.Add(new Begin(Role.Paragraph));
        _flow.Lines(Captions(text), _flow.Left, _flow.Type.Caption, Ink.Soft);
        _flow.Add(new End());
        _flow.Space(14);
    }

    private ImmutableArray<ImmutableArray<TextSpan>> EntryLines(KeyEntry entry) =>
        TextWrap.Lines([new TextSpan(entry.Text, false)], _flow.Frame.TextWidth - entry.Sign.Width * Scale - 5, _flow.Type.Caption);

    private double RowHeight(List<KeyEntry> row) =>
        Math.Max(2 * _flow.Type.Caption, row.Max(entry => entry.Sign.Height) * Scale + 4)
            + (row.Max(entry => EntryLines(entry).Length) - 1) * CaptionLine;

    private double EntryWidth(KeyEntry entry) => entry.Sign.Width * Scale + 5 + Typeface.Regular.Width(entry.Text, _flow.Type.Caption) + 16;

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
            var x = _flow.Left;
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
        _flow.Figure(entry.Sign, x, _flow.Y, Scale);
        _flow.Add(new End());
        _flow.Add(new Begin(Role.ItemBody));
        var lines = EntryLines(entry);
        for (var i = 0; i < lines.Length; i++)
            _flow.Line(lines[i], x + width + 5, _flow.Y + height / 2 + (i - 0.5) * CaptionLine, _flow.Type.Caption);
        _flow.Add(new End());
        _flow.Add(new End());
    }
}
