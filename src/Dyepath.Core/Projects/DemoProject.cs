namespace Dyepath.Core.Projects;

/// <summary>The project that ships with Dyepath: the tunic Tideline.</summary>
public static class DemoProject
{
    /// <summary>Its document, as in demo/tideline.json.</summary>
    public static ReadOnlySpan<byte> Utf8
    {
        get
        {
            using var stream = typeof(DemoProject).Assembly.GetManifestResourceStream("tideline.json")!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
    }
}
