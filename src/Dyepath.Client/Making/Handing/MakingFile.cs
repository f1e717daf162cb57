using System.Collections.Immutable;
using Dyepath.Client.Shell;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Making.Handing;
using Dyepath.Workspace.Shell;
using Microsoft.AspNetCore.Components.Forms;

namespace Dyepath.Client.Making.Handing;

/// <summary>Making documents as files.</summary>
public static class MakingFile
{
    private const int MostFaults = 5;

    /// <summary>Hands it to the reader's downloads.</summary>
    public static void Save(MakingDocument making) => Page.Download(
        FileName.Of($"{making.Project.Title} {making.Size}", "-making.json"), "application/json", MakingWriter.WriteUtf8(making));

    /// <returns>The document; or why there is none, in sentences.</returns>
    public static async Task<(MakingDocument? Making, ImmutableArray<string> Why)> ReadAsync(IBrowserFile file)
    {
        if (file.Size > MakingReader.MostBytes)
            return (null, [$"“{file.Name}” is larger than 2 MB; the file of a piece is at most that."]);
        byte[] bytes;
        try
        {
            await using var stream = file.OpenReadStream(MakingReader.MostBytes);
            using var copy = new MemoryStream();
            await stream.CopyToAsync(copy);
            bytes = copy.ToArray();
        }
        catch (IOException)
        {
            return (null, [$"“{file.Name}” cannot be read: choose it again."]);
        }
        var reading = MakingReader.Read(bytes);
        return reading.IsGood ? (reading.Making, []) : (null,
        [
            $"“{file.Name}” is not the file of a piece, or it was changed by hand:",
            .. reading.Faults.Take(MostFaults).Select(f => FormattableString.Invariant($"{(f.Path == "document" ? "The whole file" : f.Path)}, line {f.Line}: here stands {f.Found}. {f.Next}")),
            .. reading.Faults.Length > MostFaults ? [$"And {reading.Faults.Length - MostFaults} more."] : ImmutableArray<string>.Empty,
        ]);
    }
}
