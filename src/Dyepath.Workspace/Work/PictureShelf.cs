using Dyepath.Core.Booklets;

namespace Dyepath.Workspace.Work;

/// <summary>
/// Photographs set aside while a project is open: the document being edited holds a short name for each, so that a megabyte of
/// pictures is neither written, read nor remembered anew with every letter that is typed.
/// </summary>
public sealed class PictureShelf
{
    private readonly Dictionary<string, JpegPicture> _pictures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _names = new(StringComparer.Ordinal);

    /// <summary><see cref="ProjectDocument.Implied"/>, which all states of the project share.</summary>
    internal Dictionary<string, string> Implied { get; } = new(StringComparer.Ordinal);

    /// <summary>By name.</summary>
    public IReadOnlyDictionary<string, JpegPicture> Pictures => _pictures;

    /// <param name="jpeg">A picture's name, or itself as base64.</param>
    public JpegPicture? Find(string jpeg) =>
        _pictures.TryGetValue(jpeg, out var picture) || (SetAside(jpeg) is { } name && _pictures.TryGetValue(name, out picture))
            ? picture : null;

    /// <returns>The name that stands for the picture; null where the text is none.</returns>
    public string? SetAside(string base64)
    {
        if (_names.TryGetValue(base64, out var name))
            return name;
        if (!JpegPicture.TryRead(base64, out var picture, out _))
            return null;
        // Not to be guessed, so that a document from elsewhere cannot name a picture of this one; # is not in base64.
        name = $"#{Guid.NewGuid():N}";
        _pictures.Add(name, picture);
        _names.Add(base64, name);
        return name;
    }
}
