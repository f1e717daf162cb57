using System.Diagnostics.CodeAnalysis;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;

namespace Dyepath.Core.Projects.Description;

/// <summary>The designer's photographs in the document.</summary>
internal static class PhotoDescription
{
    public static ObjectShape<Photo> Photo { get; } = new("photo", "A photograph, printed after your own words of its place.", o =>
    {
        var place = o.Required(
            "place", "Where in the pattern, as in words.", new ChoiceShape<string>([.. WordPlaces.All.Select(p => (p, p))]), p => p.Place);
        var alternative = o.Required(
            "alternative", "What is seen, for who cannot see it.", new TextShape(Booklets.Photo.LongestAlternative), p => p.Alternative);
        var jpeg = o.Required("jpeg", "The picture itself.", new JpegShape(), p => p.Picture);
        return v => new Photo(place.From(v), alternative.From(v), jpeg.From(v));
    });

    public static void TogetherSmall(Place photos, IEnumerable<Photo> all, FaultList faults)
    {
        var bytes = all.Sum(p => p.Picture.ByteCount);
        if (bytes > Booklets.Photo.MostBytes)
        {
            faults.Meaning(
                photos, $"pictures of at most {Booklets.Photo.MostBytes / 1_000} kB together", "Scale them down, or leave one out.",
                FormattableString.Invariant($"{(bytes + 999) / 1_000} kB"));
        }
    }
}

/// <summary>A JPEG as base64.</summary>
internal sealed class JpegShape : Shape<JpegPicture>
{
    private const string Pattern = "^(?:[A-Za-z0-9+/]{4})*(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$";
    private const int MostCharacters = (JpegPicture.MostBytes + 2) / 3 * 4;

    // One grey point: the smallest that there is.
    private static readonly string Point = Convert.ToBase64String(
    [
        0xff, 0xd8, 0xff, 0xe0, 0x00, 0x10, .. "JFIF\0"u8, 0x01, 0x01, 0x00, 0x00, 0x01, 0x00, 0x01, 0x00, 0x00, 0xff, 0xdb, 0x00, 0x43,
        0x00, .. Enumerable.Repeat((byte)1, 64), 0xff, 0xc0, 0x00, 0x0b, 0x08, 0x00, 0x01, 0x00, 0x01,
        0x01, 0x01, 0x11, 0x00, 0xff, 0xc4, 0x00, 0x14, 0x00, 0x01, .. new byte[15], 0x00, 0xff, 0xc4, 0x00, 0x14, 0x10, 0x01,
        .. new byte[15],
        0x00, 0xff, 0xda, 0x00, 0x08, 0x01, 0x01, 0x00, 0x00, 0x3f, 0x00, 0x3f, 0xff, 0xff, 0xd9,
    ]);

    public override string Allowed => FormattableString.Invariant(
        $"a JPEG as base64, at most {JpegPicture.MostBytes / 1_000} kB and {JpegPicture.MostPixels} pixels a side, without a camera's notes");

    public override DocumentNode Example => new TextNode(Point);

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out JpegPicture value)
    {
        if (place.Node is PictureNode known)
        {
            value = known.Picture;
            return true;
        }
        value = null;
        var text = (place.Node as TextNode)?.Text;
        if (text is null || text.Length > MostCharacters || !IsBase64(text))
        {
            faults.Form(place, Allowed, text is null ? "Write it in quotation marks." : "Write it without spaces or line breaks, or make it smaller.");
            return false;
        }
        if (JpegPicture.TryRead(text, out value, out var next))
            return true;
        faults.Meaning(place, Allowed, next);
        return false;
    }

    public override DocumentNode Write(JpegPicture value, Commentary? commentary = null) => new TextNode(value.Base64);

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(
        ("type", new TextNode("string")), ("maxLength", NumberNode.Of(MostCharacters)), ("pattern", new TextNode(Pattern)),
        ("contentEncoding", new TextNode("base64")), ("contentMediaType", new TextNode("image/jpeg")));

    private static bool IsBase64(string text)
    {
        var body = text.AsSpan();
        for (var padding = 0; padding < 2 && body.EndsWith("="); padding++)
            body = body[..^1];
        return text.Length % 4 == 0 && System.Buffers.Text.Base64.IsValid(text) && !body.ContainsAny(" \t\r\n");
    }
}
