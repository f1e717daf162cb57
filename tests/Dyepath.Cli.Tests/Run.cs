using System.Text.Json;
using Dyepath.Cli;

namespace Dyepath.Cli.Tests;

/// <summary>Runs the command line in this process, with strings for its streams.</summary>
internal static class Run
{
    public static async Task<(int Code, string Output, string Errors)> Dyepath(string command, string input = "")
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        using var reader = new StringReader(input);
        var code = await App.RunAsync(command.Split(' ', StringSplitOptions.RemoveEmptyEntries), reader, output, errors);
        return (code, output.ToString(), errors.ToString());
    }

    public static async Task<JsonElement> Json(string command, string input = "", int code = 0)
    {
        var (exit, output, errors) = await Dyepath(command + " --json", input);
        Assert.True(exit == code, $"exit {exit}: {output}{errors}");
        return JsonDocument.Parse(output).RootElement;
    }
}
