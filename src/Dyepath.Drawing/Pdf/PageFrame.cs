namespace Dyepath.Drawing.Pdf;

/// <summary>Page and margins in points. The right margin is wide, for the maker's notes.</summary>
internal sealed record PageFrame(double Width, double Height)
{
    public const double PointsPerMillimetre = 72 / 25.4;

    private const double Margin = 20 * PointsPerMillimetre;
    private const double NotesMargin = 42 * PointsPerMillimetre;

    public static PageFrame Of(PageSize size) => size switch
    {
        PageSize.A4 => new PageFrame(210 * PointsPerMillimetre, 297 * PointsPerMillimetre),
        PageSize.Letter => new PageFrame(8.5 * 72, 11 * 72),
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "No page of this size."),
    };

    public const double Left = Margin;

    public const double Top = Margin;

    public double Bottom => Height - Margin;

    /// <summary>Width of running text.</summary>
    public double TextWidth => Width - Margin - NotesMargin;

    /// <summary>Width for charts and tables that need the notes margin too.</summary>
    public double FullWidth => Width - 2 * Margin;

    public double BodyHeight => Bottom - Top;
}
