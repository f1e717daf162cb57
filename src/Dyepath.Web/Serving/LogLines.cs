using System.Globalization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;

namespace Dyepath.Web.Serving;

/// <summary>A line for a person at a terminal, whom no text in it can deceive.</summary>
internal sealed class LogLines() : ConsoleFormatter(Key)
{
    /// <summary>Under which the formatter is registered.</summary>
    public const string Key = "dyepath-lines";

    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        var time = DateTime.Now.ToString("HH:mm:ss", CultureInfo.InvariantCulture);
        var text = logEntry.Formatter(logEntry.State, logEntry.Exception);
        if (logEntry.Exception is { } exception)
            text = $"{text} {LogText.Of(exception)}";
        // One entry, one line: what begins a line at the left is ours.
        textWriter.WriteLine($"{time} {Word(logEntry.LogLevel)} {LogText.Clean(text).Replace("\n", "\n    ", StringComparison.Ordinal)}");
    }

    private static string Word(LogLevel level) => level switch
    {
        LogLevel.Critical or LogLevel.Error => "error:",
        LogLevel.Warning => "warning:",
        _ => "info:",
    };
}
