using Microsoft.Net.Http.Headers;

namespace Dyepath.Web;

/// <summary>What a change says of the stored text that it was made from.</summary>
internal static class Preconditions
{
    /// <summary>The ETag in If-Match. A bare one is understood too, and one that a compressing proxy has marked as weak.</summary>
    public static string? Seen(HttpRequest request)
    {
        if (request.Headers.IfMatch is not [{ } only])
            return null;
        var tag = (only.StartsWith("W/", StringComparison.Ordinal) ? only[2..] : only).Trim('"');
        return tag is "" or "*" ? null : $"\"{tag}\"";
    }

    /// <summary>If-None-Match: * asks that nothing be stored there yet.</summary>
    public static bool IsNew(HttpRequest request) => request.Headers.IfNoneMatch is ["*"];

    /// <summary>In the answer's header.</summary>
    public static void TellEtag(HttpContext context, string etag) => context.Response.Headers[HeaderNames.ETag] = etag;
}
