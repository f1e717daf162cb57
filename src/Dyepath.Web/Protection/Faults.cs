using Dyepath.Contracts;
using Dyepath.Storage.Faults;
using Microsoft.AspNetCore.Diagnostics;

namespace Dyepath.Web.Protection;

/// <summary>What went wrong on the way is said without its inside.</summary>
internal sealed partial class Faults(ILogger<Faults> logger, StoreTroubles store) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (httpContext.RequestAborted.IsCancellationRequested)
            return true;
        await Answer(exception, httpContext).ExecuteAsync(httpContext);
        return true;
    }

    private IResult Answer(Exception exception, HttpContext context)
    {
        if (exception is BadHttpRequestException bad)
        {
            return bad.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? RequestBody.TooLarge
                : Problems.Of(
                    bad.StatusCode, "The request could not be read.",
                    "Send it again; if it fails again, it was not formed as the host expects.");
        }
        if (StoreFaults.Find(exception) is { } fault)
        {
            Refused(fault, ShownName.Of(exception.GetBaseException().Message));
            return store.Answer(fault, context);
        }
        Broke(exception);
        return Problems.Of(
            StatusCodes.Status500InternalServerError, "Something went wrong inside Dyepath.",
            "What you sent may not be stored; keep it and send it again. The host's log says more.");
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The store did not do what was asked: {Fault}: {Said}")]
    private partial void Refused(StoreFault fault, string said);

    [LoggerMessage(Level = LogLevel.Error, Message = "A request broke")]
    private partial void Broke(Exception exception);
}
