namespace Dyepath.Tests;

/// <summary>
/// Files of the repository that are made from the code. With the environment variable DYEPATH_REWRITE set to 1 they
/// are written anew instead of compared.
/// </summary>
internal static class RepositoryFile
{
    public static bool IsRewritten => Environment.GetEnvironmentVariable("DYEPATH_REWRITE") == "1";

    public static void IsUpToDate(string path, string expected)
    {
        var full = Find(path);
        if (IsRewritten)
            File.WriteAllText(full, expected);
        Assert.True(
            File.Exists(full) && File.ReadAllText(full) == expected,
            $"{path} is out of date: run this test with DYEPATH_REWRITE=1.");
    }

    public static string Find(string path) => Path.Combine(Root(), path);

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Dyepath.slnx")))
            folder = folder.Parent ?? throw new InvalidOperationException("The tests run outside the repository.");
        return folder.FullName;
    }
}
