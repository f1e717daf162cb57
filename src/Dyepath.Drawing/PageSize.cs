namespace Dyepath.Drawing;

/// <summary>Paper that a booklet is laid out for.</summary>
public enum PageSize
{
    /// <summary>210 × 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8½ × 11 in (ANSI Y14.1, A).</summary>
    Letter,
}
