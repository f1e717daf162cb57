namespace Dyepath.Web.Serving;

/// <summary>Where the store lies when nothing else is said; readable by its owner alone.</summary>
internal static class DataFolder
{
    /// <summary>In the user's folder of local data.</summary>
    public static string Usual => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "dyepath");

    /// <summary>Where it is not there yet.</summary>
    public static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
