namespace Dyepath.Core.Shaping;

/// <summary>An edge of a row as the first row's right side is looked at.</summary>
public enum RowEdge
{
    /// <summary>The edge that columns are counted from.</summary>
    Right,

    /// <summary>The edge opposite.</summary>
    Left,
}
