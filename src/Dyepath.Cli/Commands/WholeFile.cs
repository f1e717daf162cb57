namespace Dyepath.Cli.Commands;

/// <summary>A file that is there whole or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes beside and then moves into place, so that a stop in between leaves no half file.</summary>
    public static void Write(string path, Action<Stream> write)
    {
        var beside = path + ".part";
        try
        {
            using (var file = File.Create(beside))
                write(file);
            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
