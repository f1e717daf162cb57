using System.Globalization;
using Dyepath.Contracts;
using Dyepath.Storage;
using Microsoft.Net.Http.Headers;

namespace Dyepath.Web;

/// <summary>Long lists come in parts; the Link header of each names the next one (RFC 8288).</summary>
internal static class Paging
{
    /// <summary>For a place that is none.</summary>
    public static IResult NoSuchPlace { get; } = Problems.Of(
        StatusCodes.Status400BadRequest, "The list has no such place.", "Take the address from the Link header of the part before.");

    /// <summary>Where the list is to go on; null where that is no place.</summary>
    public static Place? Read(HttpRequest request)
    {
        if (request.Query[ApiPaths.After] is not [var after])
            return request.Query.ContainsKey(ApiPaths.After) ? null : Place.Start;
        var parts = after?.Split('_', 2);
        return parts is [var moment, var id] && DocumentId.IsValid(id)
            && long.TryParse(moment, NumberStyles.None, CultureInfo.InvariantCulture, out var ticks)
            && ticks <= DateTimeOffset.MaxValue.Ticks
            ? new Place(new DateTimeOffset(ticks, TimeSpan.Zero), id)
            : null;
    }

    /// <param name="list">The list's own address.</param>
    public static IResult Answer<T>(HttpContext context, Page<T> page, string list)
    {
        if (page.Next is { } next)
            Tell(context, list, FormattableString.Invariant($"{next.Moment.UtcTicks}_{next.Id}"));
        return TypedResults.Ok(page.Items);
    }

    /// <summary>Names the next part in the Link header.</summary>
    public static void Tell(HttpContext context, string list, string after) =>
        context.Response.Headers[HeaderNames.Link] = $"</{list}{(list.Contains('?', StringComparison.Ordinal) ? '&' : '?')}{ApiPaths.After}={after}>; rel=\"next\"";
}
