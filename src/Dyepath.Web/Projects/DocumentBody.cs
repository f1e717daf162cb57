using Dyepath.Core.Documents;
using Dyepath.Core.Projects;

namespace Dyepath.Web.Projects;

/// <summary>Reads the project document that a request carries.</summary>
internal static class DocumentBody
{
    /// <summary>The text, or the answer that says why it is none.</summary>
    public static async Task<(DocumentText? Text, IResult? Refusal)> ReadAsync(HttpRequest request, CancellationToken stop)
    {
        if (await RequestBody.ReadAsync(request, stop) is not { } bytes)
            return (null, RequestBody.TooLarge);
        var (text, fault) = DocumentText.Read(bytes);
        return fault is null ? (text, null) : (null, Refusal(fault));
    }

    private static IResult Refusal(Fault fault) => Problems.Of(
        StatusCodes.Status400BadRequest, "The text is no project document.",
        FormattableString.Invariant($"Line {fault.Line}: found {fault.Found}; allowed: {fault.Allowed}. {fault.Next}"));
}
