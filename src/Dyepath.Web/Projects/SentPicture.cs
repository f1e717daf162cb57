using Dyepath.Contracts;

namespace Dyepath.Web.Projects;

/// <summary>The picture that a client sends with a text: it has planned the text already, and the host does not.</summary>
internal static class SentPicture
{
    private static readonly IResult Refusal = Problems.Of(
        StatusCodes.Status400BadRequest, "The picture for the shelf cannot be drawn.",
        $"Leave {ApiPaths.PictureHeader} out, or send the base64 of a picture of at most {SwatchPicture.MostStitches} × {SwatchPicture.MostRows} "
        + $"stitches in at most {SwatchPicture.MostColours} colours.");

    /// <summary>No picture and no refusal where none was sent.</summary>
    public static (SwatchPicture? Picture, IResult? Refusal) Read(HttpRequest request)
    {
        var sent = request.Headers[ApiPaths.PictureHeader];
        if (sent.Count == 0)
            return (null, null);
        if (sent is not [{ Length: <= ApiPaths.LongestPicture } text])
            return (null, Refusal);
        var utf8 = new byte[text.Length];
        if (!Convert.TryFromBase64String(text, utf8, out var length))
            return (null, Refusal);
        return SwatchPicture.Read(utf8.AsSpan(0, length)) is { } picture ? (picture, null) : (null, Refusal);
    }
}
