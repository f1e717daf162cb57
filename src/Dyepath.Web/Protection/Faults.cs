using Dyepath.Storage.Faults;
using Dyepath.Web.Serving;
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

    /// <summary>What a bare status means, where the framework refuses without a word.</summary>
    public static IResult Said(int status) => status switch
    {
        StatusCodes.Status405MethodNotAllowed => Problems.Of(
            status, "That cannot be done at this address.", "See /openapi/v1.json for what the host answers."),
        StatusCodes.Status413PayloadTooLarge => Problems.Of(
            status, "What was sent is larger than it may be here.", "Send only what is asked for."),
        _ => Problems.Of(
            status, "The request could not be answered.", "Send it again; if it fails again, it was not formed as the host expects."),
    };

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
            Refused(context.TraceIdentifier, fault, LogText.Clean(exception.GetBaseException().Message));
            return store.Answer(fault, context);
        }
        Broke(context.TraceIdentifier, LogText.Of(exception));
        return Problems.Of(
            StatusCodes.Status500InternalServerError, "Something went wrong inside Dyepath.",
            $"What you sent may not be stored; keep it and send it again. The host's log says more, under {context.TraceIdentifier}.");
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The store did not do what request {RequestId} asked: {Fault}: {Said}")]
    private partial void Refused(string requestId, StoreFault fault, string said);

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {RequestId} broke: {What}")]
    private partial void Broke(string requestId, string what);
}
