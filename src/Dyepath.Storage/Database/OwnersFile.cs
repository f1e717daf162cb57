namespace Dyepath.Storage.Database;

/// <summary>
/// Files that their owner alone may read: unpublished patterns are in them. (Windows gives files the rights of their folder.)
/// </summary>
public static class OwnersFile
{
    private const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>To be read and written, and by nobody else meanwhile; a new one is readable by its owner alone.</summary>
    public static FileStream Open(string file, FileMode mode)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = Owner;
        return new FileStream(file, options);
    }

    /// <summary>Makes an empty one where there is none.</summary>
    internal static void Make(string file)
    {
        if (File.Exists(file))
            Close(file);
        else
            Open(file, FileMode.CreateNew).Dispose();
    }

    /// <summary>Takes others' rights to a file that is there, perhaps from an earlier program.</summary>
    internal static void Close(string file)
    {
        if (OperatingSystem.IsWindows() || !File.Exists(file))
            return;
        try
        {
            if (File.GetUnixFileMode(file) != Owner)
                File.SetUnixFileMode(file, Owner);
        }
        catch (UnauthorizedAccessException)
        {
            // Somebody else's file, who chose its rights.
        }
    }
}
