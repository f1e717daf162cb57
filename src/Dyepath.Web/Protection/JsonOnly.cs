using Microsoft.AspNetCore.Http.Features;

namespace Dyepath.Web.Protection;

/// <summary>What a change carries is JSON and says so: no form of a page elsewhere can say that. Our own pages' forms are marked.</summary>
internal sealed class JsonOnly(RequestDelegate next)
{
    /// <summary>Lets it through, or refuses it.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        var carries = context.Features.Get<IHttpRequestBodyDetectionFeature>()?.CanHaveBody == true;
        return !carries || request.HasJsonContentType() || context.GetEndpoint()?.Metadata.GetMetadata<TakesForm>() is not null
            ? next(context)
            : Problems.Of(
                StatusCodes.Status415UnsupportedMediaType, "Only JSON is taken here.", "Send it with Content-Type: application/json.")
                .ExecuteAsync(context);
    }
}
