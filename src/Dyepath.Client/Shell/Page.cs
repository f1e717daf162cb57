using System.Runtime.InteropServices.JavaScript;

namespace Dyepath.Client.Shell;

/// <summary>What a page asks of the browser that Blazor has no word for.</summary>
internal static partial class Page
{
    public const string Module = "dyepath/page";

    [JSImport("theme", Module)]
    public static partial string Theme();

    [JSImport("setTheme", Module)]
    public static partial void SetTheme(string theme);

    /// <summary>Hands a file to the reader's downloads.</summary>
    [JSImport("download", Module)]
    public static partial void Download(string name, string type, byte[] bytes);

    [JSImport("focus", Module)]
    public static partial void Focus(string id);

    [JSImport("shortcuts", Module)]
    public static partial void Shortcuts([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> pressed);
}
