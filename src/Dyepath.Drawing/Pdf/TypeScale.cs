namespace Dyepath.Drawing.Pdf;

/// <summary>Sizes of type in points, the least cell of a chart in millimetres, and what the page leaves beside the text.</summary>
internal sealed record TypeScale(double Body)
{
    public required double Title { get; init; }

    public required double Designer { get; init; }

    public required double Heading { get; init; }

    public required double Subheading { get; init; }

    public required double Contents { get; init; }

    public required double Table { get; init; }

    /// <summary>Captions of tables and figures, and words of keys.</summary>
    public required double Caption { get; init; }

    public required double Footer { get; init; }

    /// <summary>Millimetres on all sides.</summary>
    public required double Margin { get; init; }

    /// <summary>Millimetres at the right of running text, for the maker's notes; charts and tables may go into it.</summary>
    public required double NotesMargin { get; init; }

    /// <summary>Shortest side of a chart's cell that takes a legible symbol, in millimetres.</summary>
    public required double SmallestCell { get; init; }

    public double Line => Body * Flow.Leading;

    public static TypeScale Of(TypeSize size) => size switch
    {
        TypeSize.Normal => new(10.5)
        {
            Title = 30,
            Designer = 14,
            Heading = 18,
            Subheading = 13,
            Contents = 11,
            Table = 8.8,
            Caption = 9.5,
            Footer = 8.5,
            Margin = 20,
            NotesMargin = 42,
            SmallestCell = 2.7,
        },
        TypeSize.Large => new(18)
        {
            Title = 40,
            Designer = 22,
            Heading = 28,
            Subheading = 22,
            Contents = 18,
            Table = 18,
            Caption = 18,
            Footer = 14,
            Margin = 16,
            NotesMargin = 16,
            SmallestCell = 5,
        },
        TypeSize.Compact => new(9)
        {
            Title = 26,
            Designer = 12,
            Heading = 14,
            Subheading = 11,
            Contents = 9,
            Table = 7.8,
            Caption = 8.2,
            Footer = 7.5,
            Margin = 14,
            NotesMargin = 46,
            SmallestCell = 2.4,
        },
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "No type of this size."),
    };
}
