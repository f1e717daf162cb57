namespace Dyepath.Core.Projects;

/// <summary>The project document that ships with Dyepath: the tunic Tideline.</summary>
public static class DemoDocument
{
    /// <summary>Its text in UTF-8, as in demo/tideline.json.</summary>
    public static byte[] Utf8()
    {
        using var stream = typeof(DemoDocument).Assembly.GetManifestResourceStream("tideline.json")!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
