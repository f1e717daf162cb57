using System.Diagnostics;
using System.Security.Cryptography;
using Microsoft.Extensions.Logging.Console;

namespace Dyepath.Web.Serving;

/// <summary>Structured logs on standard error: lines for a person at a terminal, JSON for a program that collects them.</summary>
internal static partial class Logs
{
    private const string RequestIdHeader = "X-Request-Id";

    /// <summary>In place of the framework's own.</summary>
    public static void AddLogs(this ILoggingBuilder logging)
    {
        logging.ClearProviders();
        logging.AddFilter("Microsoft", LogLevel.Warning).AddFilter("Dyepath", LogLevel.Information);
        // What fails there is tried again, or told once by what answers; that there is no table of migrations the first time is no failure.
        logging.AddFilter("Microsoft.EntityFrameworkCore", LogLevel.None);
        // In a build that is not published the client's files lie elsewhere, and are found there.
        logging.AddFilter("Microsoft.AspNetCore.StaticFiles", LogLevel.Error);
        // JSON writes every letter beyond ASCII as its number; lines are cleaned by their own formatter.
        if (Console.IsErrorRedirected)
            logging.AddJsonConsole(json => json.UseUtcTimestamp = true);
        else
            logging.AddConsoleFormatter<LogLines, ConsoleFormatterOptions>().AddConsole(console => console.FormatterName = LogLines.Key);
        logging.Services.Configure<ConsoleLoggerOptions>(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
    }

    /// <summary>
    /// Gives every request an id of its own, which its answer tells too, and writes one line a request of the API: never what it
    /// carries, and of its address only the pattern.
    /// </summary>
    public static void UseRequestLog(this WebApplication app)
    {
        var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Dyepath.Requests");
        app.Use(async (context, next) =>
        {
            var begun = Stopwatch.GetTimestamp();
            context.TraceIdentifier = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));
            context.Response.OnStarting(() =>
            {
                context.Response.Headers[RequestIdHeader] = context.TraceIdentifier;
                return Task.CompletedTask;
            });
            // Now: an answer that is begun anew after a fault has no route.
            var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "no route";
            await next(context);
            if (!logger.IsEnabled(LogLevel.Information))
                return;
            if (!context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) && context.Response.StatusCode < 400)
                return;
            var milliseconds = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
            var method = Known(context.Request.Method);
            Answered(logger, method, route, context.Response.StatusCode, milliseconds, context.TraceIdentifier);
        });
    }

    /// <summary>A client may call its method anything.</summary>
    private static string Known(string method) => method is "GET" or "HEAD" or "POST" or "PUT" or "DELETE" or "OPTIONS" ? method : "another method";

    [LoggerMessage(Level = LogLevel.Information, Message = "{Method} {Route} answered {Status} in {Milliseconds:0.0} ms, request {RequestId}")]
    private static partial void Answered(ILogger logger, string method, string route, int status, double milliseconds, string requestId);
}
