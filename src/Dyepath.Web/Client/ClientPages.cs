using System.IO.Compression;
using Dyepath.Contracts;
using Dyepath.Web.Protection;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web.Client;

/// <summary>
/// The client's files. Every address that is no file and no part of the API is one of its pages. The files hold nothing of the
/// designer's, and a maker to whom a piece was handed over opens it in them without the access token; of the pages only hers.
/// </summary>
internal static class ClientPages
{
    private const string Brotli = "br";

    /// <summary>What stands under a version's address never changes.</summary>
    private const string ForEver = "public, max-age=31536000, immutable";

    private static readonly string[] Reading = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>Files, versions, pages, and an answer for addresses of the API that nothing has.</summary>
    public static void MapClient(this WebApplication app)
    {
        app.Map("/api/{**rest}", () => Problems.Of(
            StatusCodes.Status404NotFound, "There is nothing at this address.", "See /openapi/v1.json for what the host answers."))
            .ExcludeFromDescription();
        app.MapMethods($"/{Release.Root}/{{version}}/{{**file}}", Reading, OfVersion).AllowAnonymous().WithMetadata(new OwnFile()).ExcludeFromDescription();
        // The service worker, the manifest and the icons have to be found under one address for ever; no page of ours asks for another
        // one so. One endpoint for all files: with one for each the first request took seconds, while the router was built.
        if (app.Services.GetRequiredService<Releases>().Present is { } present)
        {
            app.Map(RoutePatternFactory.Parse("/{**file}", defaults: null, new { file = new IsFileOf(present) }), OfPresent)
                .WithMetadata(new HttpMethodMetadata(Reading)).AllowAnonymous().WithMetadata(new OwnFile()).ExcludeFromDescription();
        }
        static IResult Page(Releases releases, HttpContext context) => OfPresent(Release.Page, releases, context);
        app.MapMethods($"/{ApiPaths.MakePage}/{{**rest:nonfile}}", Reading, Page).WithOrder(int.MaxValue).AllowAnonymous().WithMetadata(new OwnFile()).ExcludeFromDescription();
        app.MapMethods("/{**rest:nonfile}", Reading, Page).WithOrder(int.MaxValue).WithMetadata(new OwnFile()).ExcludeFromDescription();
    }

    private static IResult OfVersion(string version, string? file, Releases releases, HttpContext context)
    {
        if (file is not null && releases.Find(version)?[file] is { } found)
            return Answer(found, ForEver, context);
        return Problems.Of(
            StatusCodes.Status410Gone, "This host no longer has that version of Dyepath.", "Open the page again; what you saved stays.");
    }

    private static IResult OfPresent(string file, Releases releases, HttpContext context) =>
        releases.Present?[file] is { } found
            ? Answer(found, "no-cache", context)
            : Problems.Of(StatusCodes.Status404NotFound, "This host has no pages.", "Publish it again, with the client.");

    private static IResult Answer(ReleaseFile file, string caching, HttpContext context)
    {
        var headers = context.Response.Headers;
        headers[HeaderNames.CacheControl] = caching;
        if (!file.IsBrotli)
            return Results.Bytes(file.Bytes, file.Type, entityTag: file.Tag());
        headers[HeaderNames.Vary] = HeaderNames.AcceptEncoding;
        if (!context.Request.GetTypedHeaders().AcceptEncoding.Any(e => e.Value == Brotli && e.Quality != 0))
            return Results.Stream(
                new BrotliStream(new MemoryStream(file.Bytes), CompressionMode.Decompress), file.Type, entityTag: file.Tag("-plain"));
        headers[HeaderNames.ContentEncoding] = Brotli;
        return Results.Bytes(file.Bytes, file.Type, entityTag: file.Tag());
    }

    private sealed class IsFileOf(Release release) : IRouteConstraint
    {
        public bool Match(
            HttpContext? httpContext, IRouter? route, string routeKey, RouteValueDictionary values, RouteDirection routeDirection) =>
            values[routeKey] is string address && release[address] is not null;
    }
}
