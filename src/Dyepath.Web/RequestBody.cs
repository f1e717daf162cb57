using Dyepath.Core.Projects;

namespace Dyepath.Web;

/// <summary>Reads what a request carries, up to the size that a document may have.</summary>
internal static class RequestBody
{
    /// <summary>For what is larger.</summary>
    public static IResult TooLarge { get; } = Problems.Of(
        StatusCodes.Status413PayloadTooLarge, "The document is larger than 2 MB.",
        "Shorten its notes, and keep pictures in files of their own.");

    /// <returns>Null where it is larger.</returns>
    public static async Task<byte[]?> ReadAsync(HttpRequest request, CancellationToken stop)
    {
        const int most = ProjectReader.MostBytes;
        if (request.ContentLength > most)
            return null;
        var bytes = new byte[request.ContentLength ?? most + 1];
        var length = await request.Body.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, stop);
        if (length > most)
            return null;
        return length == bytes.Length ? bytes : bytes[..length];
    }
}
