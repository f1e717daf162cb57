using System.Collections.Concurrent;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Client;

/// <summary>
/// The client that this host came with, and the ones before it, for pages that are still open. They lie in the data folder, which outlives
/// the program's folder however the program is replaced. See docs/decisions/one-page-one-version.md.
/// </summary>
internal sealed partial class Releases(IWebHostEnvironment environment, HostSettings settings, ILogger<Releases> logger)
{
    /// <summary>Besides the present one.</summary>
    private const int Earlier = 3;

    private const string Ending = ".zip";

    private readonly string _folder = Path.Combine(settings.Database.Folder, "releases");
    private readonly ConcurrentDictionary<string, Release> _loaded = new(StringComparer.Ordinal);

    /// <summary>Missing where the host has no client beside it.</summary>
    public Release? Present { get; } = Release.Read(environment.WebRootFileProvider);

    /// <summary>The present one or an earlier one; null where it is neither.</summary>
    public Release? Find(string version)
    {
        if (version == Present?.Version)
            return Present;
        if (!Release.IsVersion(version))
            return null;
        if (_loaded.TryGetValue(version, out var known))
            return known;
        try
        {
            return File.Exists(FileOf(version)) ? _loaded.GetOrAdd(version, Release.Load(version, FileOf(version))) : null;
        }
        catch (Exception fault) when (fault is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            Unread(logger, version, fault.Message);
            return null;
        }
    }

    /// <summary>
    /// Keeps the present release for the hosts after this one, and forgets the oldest. A folder that takes nothing is no reason not to
    /// start.
    /// </summary>
    public void Keep()
    {
        if (Present is not { } present)
            return;
        try
        {
            DataFolder.Make(_folder);
            var file = FileOf(present.Version);
            if (File.Exists(file))
                File.SetLastWriteTimeUtc(file, DateTime.UtcNow);
            else
                Write(present, file);
            foreach (var old in new DirectoryInfo(_folder).GetFiles($"*{Ending}").Where(f => f.FullName != file)
                .OrderByDescending(f => f.LastWriteTimeUtc).Skip(Earlier))
            {
                old.Delete();
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            NotKept(logger, fault.Message);
        }
    }

    /// <summary>Beside it first, so that it is there whole or not at all.</summary>
    private static void Write(Release release, string file)
    {
        var part = $"{file}.{Environment.ProcessId}.part";
        using (var stream = File.Create(part))
            release.Save(stream);
        File.Move(part, file, overwrite: true);
    }

    private string FileOf(string version) => Path.Combine(_folder, version + Ending);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The program's files could not be kept for the next version: {Why}")]
    private static partial void NotKept(ILogger logger, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The files of version {Version} cannot be read: {Why}")]
    private static partial void Unread(ILogger logger, string version, string why);
}
