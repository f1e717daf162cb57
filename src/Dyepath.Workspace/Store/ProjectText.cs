using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Dyepath.Contracts;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Store;

/// <summary>A project's document as it is kept, and what the shelf shows of it.</summary>
/// <param name="Text">The document.</param>
/// <param name="Name">The document's title, or <see cref="ProjectSummary.Untitled"/>.</param>
/// <param name="Swatch">Missing where it was not planned here.</param>
public sealed record ProjectText(string Text, string Name, SwatchPicture? Swatch)
{
    /// <summary>With the title that the document has, and without a picture.</summary>
    public static ProjectText Of(string text) => new(text, ProjectDocument.TryParse(text)?.Title ?? ProjectSummary.Untitled, null);
}

/// <summary>Documents cannot be put together: where two were changed apart, the designer chooses.</summary>
public sealed record ProjectKeeping : KeepingRules<ProjectText>
{
    public override TimeSpan Quiet => TimeSpan.FromMilliseconds(700);

    public override bool KeepsFirst => false;

    public override bool OpensFromDevice => false;

    public override bool Same(ProjectText one, ProjectText other) => one.Text == other.Text;

    public override ProjectText? Join(ProjectText one, ProjectText other) => Same(one, other) ? one : null;

    public override bool WritesOver(ProjectText before, ProjectText shown, ProjectText now)
    {
        var (was, seen, written) = (Root(before), Root(shown), Root(now));
        var places = DocumentDifference.Between(was, seen).Select(d => d.Place).ToHashSet(StringComparer.Ordinal);
        return DocumentDifference.Between(seen, written).Any(d => places.Contains(d.Place));
    }

    private static JsonNode? Root(ProjectText text) => ProjectDocument.TryParse(text.Text)?.Root;

    public override string EtagOf(ProjectText content) => Etags.Of(Encoding.UTF8.GetBytes(content.Text));
}

/// <summary>A <see cref="Copy{T}"/> of a project in the browser's database.</summary>
/// <param name="Id">Of the project.</param>
/// <param name="Writer">The tab that wrote the copy.</param>
/// <param name="Stamp">See <see cref="Copy{T}.Stamp"/>.</param>
/// <param name="Lineage">See <see cref="Keeping.Lineage.Changes"/>.</param>
/// <param name="Name">See <see cref="ProjectText.Name"/>.</param>
/// <param name="At">When it was written.</param>
public sealed record ProjectCopy(
    string Id,
    string Writer,
    int Stamp,
    ImmutableSortedDictionary<string, int> Lineage,
    string Name,
    DateTimeOffset At)
{
    /// <summary>Missing in a list.</summary>
    public string? Text { get; init; }

    /// <summary>See <see cref="ProjectText.Swatch"/>.</summary>
    public SwatchPicture? Swatch { get; init; }

    /// <summary>See <see cref="Copy{T}.Etag"/>.</summary>
    public string? Etag { get; init; }

    /// <summary>See <see cref="Copy{T}.Made"/>.</summary>
    public string? Made { get; init; }

    /// <summary>See <see cref="Copy{T}.IsSent"/>.</summary>
    public bool IsSent { get; init; }

    /// <summary>See <see cref="Copy{T}.Includes"/>.</summary>
    public ImmutableArray<string> Includes { get; init; }

    /// <summary>Of a project that is on this device alone; of a list only.</summary>
    public bool Archived { get; init; }

    /// <summary>As the device keeps a copy, its text included.</summary>
    public static ProjectCopy Of(string id, Copy<ProjectText> copy) =>
        new(id, copy.Writer, copy.Stamp, copy.Lineage.Changes, copy.Content.Name, copy.At)
        {
            Text = copy.Content.Text,
            Swatch = copy.Content.Swatch,
            Etag = copy.Etag,
            Made = copy.Made,
            IsSent = copy.IsSent,
            Includes = copy.Includes,
        };

    /// <summary>The copy again.</summary>
    public Copy<ProjectText> Read() => new(Writer, Stamp, new Lineage(Lineage), new ProjectText(Text ?? "", Name, Swatch), At)
    {
        Etag = Etag,
        Made = Made,
        IsSent = IsSent,
        Includes = Includes.IsDefault ? [] : Includes,
    };
}

/// <summary>What came of writing a copy; <see cref="Lineage"/> and text are as they were sent.</summary>
internal sealed record CopyWritten(bool Ahead, bool Others, string? Etag, string? Made, bool IsSent, ImmutableArray<string> Includes)
{
    /// <param name="copy">As it was sent.</param>
    public DeviceWriting<T> Of<T>(Copy<T> copy)
        where T : class => Ahead ? new(null, true)
            : new(copy with { Etag = Etag, Made = Made, IsSent = IsSent, Includes = Includes }, Others);
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(ProjectCopy))]
[JsonSerializable(typeof(ProjectCopy[]))]
[JsonSerializable(typeof(CopyWritten))]
internal sealed partial class DeviceJson : JsonSerializerContext
{
    /// <summary>Never shown as HTML, so that the photos' base64 need not be escaped sign by sign.</summary>
    public static DeviceJson Plain { get; } = new(
        new JsonSerializerOptions(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
}
