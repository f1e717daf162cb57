namespace Dyepath.Drawing.Pdf;

/// <summary>Page and margins in points. The right margin is wide, for the maker's notes.</summary>
/// <param name="Width">Of the page.</param>
/// <param name="Height">Of the page.</param>
/// <param name="Type">Sizes of type and margins.</param>
internal sealed record PageFrame(double Width, double Height, TypeScale Type)
{
    public const double PointsPerMillimetre = 72 / 25.4;

    public static PageFrame Of(Print print)
    {
        var type = TypeScale.Of(print.Type);
        return print.Paper switch
        {
            PageSize.A4 => new PageFrame(210 * PointsPerMillimetre, 297 * PointsPerMillimetre, type),
            PageSize.Letter => new PageFrame(8.5 * 72, 11 * 72, type),
            _ => throw new ArgumentOutOfRangeException(nameof(print), print.Paper, "No page of this size."),
        };
    }

    private double Margin => Type.Margin * PointsPerMillimetre;

    public double Left => Margin;

    public double Top => Margin;

    public double Bottom => Height - Margin;

    /// <summary>Width of running text.</summary>
    public double TextWidth => Width - Margin - Type.NotesMargin * PointsPerMillimetre;

    /// <summary>Width for charts and tables that need the notes margin too.</summary>
    public double FullWidth => Width - 2 * Margin;

    public double BodyHeight => Bottom - Top;
}
