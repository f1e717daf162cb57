using System.Collections.Immutable;

namespace Dyepath.Faults;

/// <summary>A project to plant faults in, and the tests that ought to catch them.</summary>
/// <param name="Folders">Those looked at when none is asked for.</param>
/// <param name="Without">Test classes left out: they measure processor time, which other work on the machine disturbs.</param>
internal sealed record Target(string Name, ImmutableArray<string> Folders, ImmutableArray<string> Without)
{
    public static ImmutableArray<Target> All { get; } =
    [
        new("Core", ["Planning", "Instructions", "Edgings", "Making"], ["*.StopTests"]),
        new("Drawing", ["Html", "Lists", "Pdf", "Pictures", "Typography"], []),
        new("Workspace", ["Draft", "Fabric", "Fit", "Garment", "Keeping", "Making", "Store", "Swatch", "Work", "Yarn"], []),
    ];

    public static string Root { get; } = RootAbove(AppContext.BaseDirectory);

    public string Folder => Path.Combine(Root, "src", $"Dyepath.{Name}");

    public string Assembly => $"Dyepath.{Name}";

    public string TestFolder => Path.Combine(Root, "tests", $"Dyepath.{Name}.Tests");

    public string TestAssembly => $"Dyepath.{Name}.Tests";

    /// <summary>The uppermost folder of a source file, such as <c>Planning</c>; null outside the project's own folders.</summary>
    public string? FolderOf(string path)
    {
        var parts = Path.GetRelativePath(Folder, path).Split(Path.DirectorySeparatorChar);
        return parts.Length > 1 && parts[0] is not (".." or "obj") ? parts[0] : null;
    }

    private static string RootAbove(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Dyepath.slnx")))
                return at.FullName;
        }
        throw new InvalidOperationException($"No Dyepath.slnx above {folder}.");
    }
}
