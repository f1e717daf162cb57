using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Protection;

/// <summary>The few fields that our own pages send, and no more than they need.</summary>
internal static class BoundedForm
{
    /// <summary>No token is longer, nor any other field.</summary>
    public const int LongestField = 1_000;

    private const int MostBytes = 4_000;

    private static readonly FormOptions Bounds = new()
    {
        ValueCountLimit = 2,
        KeyLengthLimit = 20,
        ValueLengthLimit = LongestField,
    };

    /// <summary>
    /// A form whose length is not told is read until a bound is passed. What is left of it is then taken off the line, up to the host's own
    /// limit: a line that was closed instead would break while the sender still sends, and the answer would be lost with it.
    /// </summary>
    /// <returns>Null where it is no such form.</returns>
    public static async Task<IFormCollection?> ReadAsync(HttpContext context)
    {
        var request = context.Request;
        if (!IsForm(request) || request.ContentLength > MostBytes)
            return null;
        try
        {
            return await new FormFeature(request, Bounds).ReadFormAsync(context.RequestAborted);
        }
        catch (Exception bad) when (bad is InvalidDataException or BadHttpRequestException)
        {
            return null;
        }
    }

    private static bool IsForm(HttpRequest request) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase));
}

/// <summary>Marks an endpoint that takes a form instead of JSON.</summary>
internal sealed class TakesForm;
