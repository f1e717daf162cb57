using Dyepath.Core.Colours;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>The quiet greys and line weights of every drawing; yarn brings the only strong colours.</summary>
internal static class Ink
{
    public static Srgb Black { get; } = new(0x1d, 0x1d, 0x1d);

    public static Srgb Soft { get; } = new(0x55, 0x55, 0x55);

    public static Srgb Line { get; } = new(0x8a, 0x8a, 0x8a);

    public static Srgb Paper { get; } = new(0xff, 0xff, 0xff);

    public static Stroke Fine { get; } = new(Soft, 0.15);

    public static Stroke Grid { get; } = new(Line, 0.08);

    public static Stroke Tenth { get; } = new(Black, 0.35);

    public static Stroke Edge { get; } = new(Black, 0.4);
}
