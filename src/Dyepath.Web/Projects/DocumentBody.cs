using Dyepath.Core.Projects;

namespace Dyepath.Web.Projects;

/// <summary>Reads the document that a request carries.</summary>
internal static class DocumentBody
{
    public static IResult TooLarge { get; } = Problems.Of(
        StatusCodes.Status413PayloadTooLarge, "The project is larger than 2 MB.",
        "Shorten its notes, and keep pictures in files of their own.");

    /// <summary>The text, or the answer that says why it is none.</summary>
    public static async Task<(DocumentText? Text, IResult? Refusal)> ReadAsync(HttpRequest request, CancellationToken stop)
    {
        if (request.ContentLength > ProjectReader.MostBytes)
            return (null, TooLarge);
        var bytes = new byte[request.ContentLength ?? ProjectReader.MostBytes + 1];
        var length = await request.Body.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, stop);
        if (length > ProjectReader.MostBytes)
            return (null, TooLarge);
        var (text, fault) = DocumentText.Read(length == bytes.Length ? bytes : bytes[..length]);
        return fault is null
            ? (text, null)
            : (null, Problems.Of(
                StatusCodes.Status400BadRequest, "The text is no project document.",
                FormattableString.Invariant($"Line {fault.Line}: found {fault.Found}; allowed: {fault.Allowed}. {fault.Next}")));
    }
}
