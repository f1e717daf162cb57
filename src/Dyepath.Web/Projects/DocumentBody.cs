using System.Globalization;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Projects;

/// <summary>Reads the document that a request carries.</summary>
internal static class DocumentBody
{
    public static IResult TooLarge { get; } = Problems.Of(
        StatusCodes.Status413PayloadTooLarge, "The project is larger than 2 MB.", "Shorten its notes, and keep pictures in files of their own.");

    /// <summary>The text, or the answer that says why it is none.</summary>
    public static async Task<(DocumentText? Text, IResult? Refusal)> ReadAsync(HttpRequest request, CancellationToken stop)
    {
        if (request.ContentLength > ProjectReader.MostBytes)
            return (null, TooLarge);
        using var body = new MemoryStream((int)(request.ContentLength ?? 0));
        await request.Body.CopyToAsync(body, stop).ConfigureAwait(false);
        var (text, fault) = DocumentText.Read(body.ToArray());
        return fault is null
            ? (text, null)
            : (null, Problems.Of(
                StatusCodes.Status400BadRequest, "The text is no project document.",
                string.Create(CultureInfo.InvariantCulture, $"Line {fault.Line}: found {fault.Found}; allowed: {fault.Allowed}. {fault.Next}")));
    }
}
