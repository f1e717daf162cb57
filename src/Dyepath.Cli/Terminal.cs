using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Spectre.Console;

namespace Dyepath.Cli;

/// <summary>Where a command reads and writes; tests give it strings.</summary>
internal sealed class Terminal(TextReader input, TextWriter output, TextWriter errors, CancellationToken stop)
{
    private const string Trace = "DYEPATH_TRACE";

    private static readonly JsonWriterOptions Indented = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public TextReader Input => input;

    public TextWriter Output => output;

    public TextWriter Errors => errors;

    /// <summary>Whether results, and faults too, are written as JSON.</summary>
    public bool Json { get; set; }

    /// <summary>Writes one JSON value and a line feed to the output.</summary>
    /// <exception cref="OperationCanceledException">The command was stopped meanwhile.</exception>
    public void WriteJson(Action<Utf8JsonWriter> write) => Write(json =>
    {
        write(json);
        stop.ThrowIfCancellationRequested();
    });

    private void Write(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Indented))
            write(json);
        output.Write(Encoding.UTF8.GetString(bytes.GetBuffer().AsSpan(0, (int)bytes.Length)));
        output.Write('\n');
    }

    /// <summary>Runs long work, with a progress bar beside the output where someone is watching.</summary>
    public T Progress<T>(string what, Func<IProgress<double>?, T> work)
    {
        if (Console.IsErrorRedirected)
            return work(null);
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(errors) });
        return console.Progress().AutoClear(true).Start(context =>
        {
            var task = context.AddTask(what, maxValue: 1);
            return work(new Progress<double>(share => task.Value = share));
        });
    }

    /// <summary>Lists every fault of the input and returns the exit code for it.</summary>
    public int Fail(ImmutableArray<InputFault> faults)
    {
        if (Json)
            WriteFaults(faults);
        foreach (var fault in faults)
            errors.WriteLine($"{fault.Place}: {fault.Text}");
        return ExitCode.BadInput;
    }

    /// <summary>Says that the work was stopped and returns the exit code for it.</summary>
    public int Stopped()
    {
        const string text = "Stopped; nothing was left half-written.";
        if (Json)
            WriteFaults([new InputFault("dyepath", text)]);
        errors.WriteLine(text);
        return ExitCode.Cancelled;
    }

    /// <summary>Owns up to a fault of the program and returns the exit code for it; where it happened is shown on request only.</summary>
    public int Broken(Exception fault)
    {
        var text = $"Something went wrong inside dyepath, not in what you gave it: {fault.GetType().Name}: {fault.Message}";
        if (Json)
            WriteFaults([new InputFault("dyepath", text)]);
        errors.WriteLine(text);
        errors.WriteLine(Environment.GetEnvironmentVariable(Trace) is null
            ? $"Set {Trace}=1 and run it again to see where; please report it with that."
            : fault.StackTrace);
        return ExitCode.InternalFault;
    }

    private void WriteFaults(ImmutableArray<InputFault> faults) => Write(json =>
    {
        json.WriteStartObject();
        WriteFaults(json, faults);
        json.WriteEndObject();
    });

    public static void WriteFaults(Utf8JsonWriter json, ImmutableArray<InputFault> faults)
    {
        json.WriteStartArray("faults");
        foreach (var fault in faults)
        {
            json.WriteStartObject();
            json.WriteString("place", fault.Place);
            json.WriteString("text", fault.Text);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>The bytes of a file, or of standard input for <c>-</c>; at most 2 MB are of use.</summary>
    /// <exception cref="BadInputException">The file is missing, unreadable or too large.</exception>
    public byte[] ReadDocument(string file, int mostBytes)
    {
        if (file.Length == 0)
            throw new BadInputException("FILE", "It is empty; name a project document, or - for standard input.");
        if (file == "-")
        {
            var text = new char[mostBytes + 1];
            var read = ReadInput(text);
            if (read > mostBytes)
                throw TooLarge(file, mostBytes);
            return Encoding.UTF8.GetBytes(text, 0, read);
        }
        try
        {
            var info = new FileInfo(file);
            if (info.Exists && info.Length > mostBytes)
                throw TooLarge(file, mostBytes);
            return File.ReadAllBytes(file);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException(file, $"It could not be read: {fault.Message}");
        }
    }

    private int ReadInput(char[] text)
    {
        try
        {
            return input.ReadBlock(text, 0, text.Length);
        }
        catch (DecoderFallbackException)
        {
            throw new BadInputException("-", "It has bytes that are not UTF-8; save it in the encoding UTF-8.");
        }
    }

    private static BadInputException TooLarge(string file, int mostBytes) =>
        new(file, $"It is larger than {mostBytes:N0} bytes, the most that a project document may have.");
}
