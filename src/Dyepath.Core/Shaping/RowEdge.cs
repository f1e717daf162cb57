namespace Dyepath.Core.Shaping;

/// <summary>An edge of a row as the first row's right side is looked at.</summary>
public enum RowEdge
{
    /// <summary>Where the first row begins.</summary>
    Right,

    /// <summary>Where the first row ends.</summary>
    Left,
}
