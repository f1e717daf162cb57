using System.Diagnostics;

namespace Dyepath.Web.Serving;

/// <summary>Structured logs on standard error: lines for a person at a terminal, JSON for a program that collects them.</summary>
internal static partial class Logs
{
    public static void AddLogs(this ILoggingBuilder logging)
    {
        logging.ClearProviders();
        logging.AddFilter("Microsoft", LogLevel.Warning).AddFilter("Dyepath", LogLevel.Information);
        // What fails there is tried again, or told once by what answers; that there is no table of migrations the first time is no failure.
        logging.AddFilter("Microsoft.EntityFrameworkCore", LogLevel.None);
        // In a build that is not published the client's files lie elsewhere, and are found there.
        logging.AddFilter("Microsoft.AspNetCore.StaticFiles", LogLevel.Error);
        if (Console.IsErrorRedirected)
            logging.AddJsonConsole(json => json.UseUtcTimestamp = true);
        else
            logging.AddSimpleConsole(simple => (simple.SingleLine, simple.TimestampFormat) = (true, "HH:mm:ss "));
        logging.Services.Configure<Microsoft.Extensions.Logging.Console.ConsoleLoggerOptions>(
            console => console.LogToStandardErrorThreshold = LogLevel.Trace);
    }

    /// <summary>One line a request of the API: never what it carries.</summary>
    public static void UseRequestLog(this WebApplication app)
    {
        var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Dyepath.Requests");
        app.Use(async (context, next) =>
        {
            var begun = Stopwatch.GetTimestamp();
            // Before: what answers for a fault has no route.
            var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "no route";
            await next(context);
            if (!context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) && context.Response.StatusCode < 400)
                return;
            var milliseconds = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
            Answered(logger, context.Request.Method, route, context.Response.StatusCode, milliseconds);
        });
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "{Method} {Route} answered {Status} in {Milliseconds:0.0} ms")]
    private static partial void Answered(ILogger logger, string method, string route, int status, double milliseconds);
}
