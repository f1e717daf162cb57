namespace Dyepath.Web.Protection;

/// <summary>No id, size or place in a list is longer than these; what is longer is none and reaches no feature.</summary>
internal sealed class Bounds(RequestDelegate next)
{
    private const int LongestValue = 128;

    private const int LongestQuery = 512;

    /// <summary>Lets it through, or refuses it.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        return request.QueryString.Value is { Length: > LongestQuery } || !IsFile(context) && request.RouteValues.Values.Any(IsLong)
            ? Problems.Of(
                StatusCodes.Status400BadRequest, "The address is not of the right form.",
                "What names a project, a piece or a place in a list is shorter.").ExecuteAsync(context)
            : next(context);
    }

    /// <summary>The program's files and pages may lie as deep as they like; they are found by name or not.</summary>
    private static bool IsFile(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<OwnFile>() is not null;

    private static bool IsLong(object? value) => value is string { Length: > LongestValue };
}
