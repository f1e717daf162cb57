namespace Dyepath.Web.Serving;

/// <summary>Where the store lies when nothing else is said; readable by its owner alone.</summary>
internal static class DataFolder
{
    public static string Usual => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "dyepath");

    public static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
