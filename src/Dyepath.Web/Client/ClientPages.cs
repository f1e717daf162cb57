using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Client;

/// <summary>The client's files. Every address that is no file and no part of the API is one of its pages.</summary>
internal static class ClientPages
{
    public static void MapClient(this WebApplication app)
    {
        app.Map("/api/{**rest}", () => Problems.Of(
            StatusCodes.Status404NotFound, "There is nothing at this address.", "See /openapi/v1.json for what the host answers."))
            .ExcludeFromDescription();
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html", new StaticFileOptions
        {
            OnPrepareResponse = page => page.Context.Response.Headers[HeaderNames.CacheControl] = "no-cache",
        });
    }
}
