using Dyepath.Contracts;
using Dyepath.Web.Protection;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Client;

/// <summary>
/// The client's files. Every address that is no file and no part of the API is one of its pages. The files hold nothing of the
/// designer's, and a maker to whom a piece was handed over opens it in them without the access token; of the pages only hers.
/// </summary>
internal static class ClientPages
{
    private const string Page = "index.html";

    private static readonly StaticFileOptions Revalidated = new()
    {
        OnPrepareResponse = page => page.Context.Response.Headers[HeaderNames.CacheControl] = "no-cache",
    };

    public static void MapClient(this WebApplication app)
    {
        app.Map("/api/{**rest}", () => Problems.Of(
            StatusCodes.Status404NotFound, "There is nothing at this address.", "See /openapi/v1.json for what the host answers."))
            .ExcludeFromDescription();
        app.MapStaticAssets().AllowAnonymous().WithMetadata(new OwnFile());
        app.MapFallbackToFile($"/{ApiPaths.MakePage}/{{**rest:nonfile}}", Page, Revalidated).AllowAnonymous().WithMetadata(new OwnFile());
        app.MapFallbackToFile(Page, Revalidated).WithMetadata(new OwnFile());
    }
}
