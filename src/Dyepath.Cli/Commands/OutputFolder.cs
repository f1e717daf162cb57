using System.Text.Json;

namespace Dyepath.Cli.Commands;

/// <summary>A folder that a command writes several files to.</summary>
internal static class OutputFolder
{
    /// <summary>Makes the folder where it is missing; files of the same names are replaced.</summary>
    /// <exception cref="BadInputException">The folder cannot be written.</exception>
    public static void Write(
        string folder, IReadOnlyList<(string Name, Action<Stream> Write)> files, IProgress<double>? progress, CancellationToken stop)
    {
        if (folder.Length == 0)
            throw new BadInputException("--out", "It is empty; name a folder for the files.");
        try
        {
            Directory.CreateDirectory(folder);
            var done = 0;
            foreach (var (name, write) in files)
            {
                stop.ThrowIfCancellationRequested();
                WholeFile.Write(Path.Combine(folder, name), write);
                progress?.Report(++done / (double)files.Count);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException("--out", $"The folder cannot be written: {fault.Message}");
        }
    }

    /// <summary>A list of texts, such as the files that were written.</summary>
    /// <param name="name">Of the list.</param>
    public static void WriteList(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
