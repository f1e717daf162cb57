namespace Dyepath.Client.Shell;

internal static class FileNames
{
    private const int Longest = 60;

    /// <summary>A file name from a title: letters and digits of any script, the rest hyphens.</summary>
    public static string Of(string title, string extension)
    {
        var name = string.Join('-', new string([.. title.Select(c => char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return $"{(name.Length == 0 ? "pattern" : name[..Math.Min(Longest, name.Length)])}.{extension}";
    }
}
