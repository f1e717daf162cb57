using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing;

/// <summary>A picture to show a pattern with.</summary>
/// <param name="Name">Of its files, without their ending, such as <c>cover-square</c>.</param>
/// <param name="Width">Pixels.</param>
/// <param name="Height">Pixels.</param>
/// <param name="Svg">With the alternative text as its description.</param>
/// <param name="Alternative">What a sighted person sees, for those who do not.</param>
public sealed record PostPicture(string Name, int Width, int Height, string Svg, string Alternative);

/// <summary>Pictures to show a pattern with: the garment, its fabric, and both, in the shapes that posts have.</summary>
public static class PostPictures
{
    /// <summary>Of every picture, in pixels.</summary>
    public const int Width = 1_080;

    /// <summary>Height over width.</summary>
    private static readonly ImmutableArray<(string Name, double Proportion)> Shapes = [("square", 1), ("portrait", 5.0 / 4), ("tall", 3.0 / 2)];

    /// <summary>In the order in which they are handed out; fewer where a booklet has no garment to show, or no chart of colours.</summary>
    /// <param name="edition">Its size is shown; where it has none, the sample.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static IEnumerable<PostPicture> Of(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(booklet);
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(say);
        return Drawn(booklet, edition, new Reader(edition, say, new Effort(cancel: cancel)));
    }

    private static IEnumerable<PostPicture> Drawn(Booklet booklet, Edition edition, Reader reader)
    {
        var size = reader.OnlySize(booklet) ?? booklet.Cover?.Sample ?? 0;
        var fabric = BookletParts.Fabric(booklet.For(edition with { Size = booklet.Sizes[size] }));
        var posts = new PostSheet(booklet.Cover, fabric, size, reader);
        foreach (var (shape, proportion) in Shapes)
        {
            // A hundredth too tall would be a pixel more.
            var height = Math.Floor(100 * PostSheet.Width * proportion) / 100;
            foreach (var (name, draw) in new (string, Func<double, string, string, Sheet?>)[]
            {
                ("cover", posts.Cover), ("fabric", posts.Fabric), ("both", posts.Both),
            })
            {
                if (draw(height, booklet.Title, booklet.Designer) is { } sheet)
                {
                    yield return new PostPicture(
                        $"{name}-{shape}", Width, (int)Math.Round(Width * proportion), SvgWriter.Write(sheet, "picture", reader.Effort), sheet.Description);
                }
            }
        }
    }
}
