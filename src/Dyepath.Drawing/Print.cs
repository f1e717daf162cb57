namespace Dyepath.Drawing;

/// <summary>How large the type of a printed booklet is.</summary>
public enum TypeSize
{
    /// <summary>10½ points, with a margin for notes.</summary>
    Normal,

    /// <summary>
    /// 18 points at least for all that is read: the size that blind people's organisations ask of large print. Charts have larger cells.
    /// </summary>
    Large,

    /// <summary>9 points, on fewer pages.</summary>
    Compact,
}

/// <summary>Paper and type of a printed booklet.</summary>
/// <param name="Paper">What it is printed on.</param>
/// <param name="Type">How large it is printed.</param>
public sealed record Print(PageSize Paper, TypeSize Type = TypeSize.Normal);
