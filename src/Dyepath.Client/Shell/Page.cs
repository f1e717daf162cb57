using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Shell;

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

    /// <summary>The browser asks before it closes the page, or no longer.</summary>
    [JSImport("askBeforeLeaving", Module)]
    public static partial void AskBeforeLeaving(bool asks);

    [JSImport("focus", Module)]
    public static partial void Focus(string id);

    /// <summary>Puts a text on the clipboard.</summary>
    /// <returns>False where the browser does not let it.</returns>
    [JSImport("copy", Module)]
    public static partial Task<bool> Copy(string text);

    /// <summary>
    /// The key that stood behind the # of the page's address, from which it is taken at once; told once, empty without one.
    /// </summary>
    [JSImport("takeKey", Module)]
    public static partial string TakeKey();

    /// <summary>Where a point of the window lies in the first element of a selector, as shares of its width and height.</summary>
    [JSImport("placeIn", Module)]
    [return: JSMarshalAs<JSType.Array<JSType.Number>>]
    public static partial double[] PlaceIn(double x, double y, string selector);

    [JSImport("reveal", Module)]
    public static partial void Reveal(string selector);

    /// <summary>Lets the notice of last resort save the open document as it is in memory.</summary>
    [JSImport("keepInReach", Module)]
    public static partial void KeepInReach(
        [JSMarshalAs<JSType.Function<JSType.String>>] Func<string> text, [JSMarshalAs<JSType.Function<JSType.String>>] Func<string> name);

    [JSImport("letGo", Module)]
    public static partial void LetGo();

    [JSImport("shortcuts", Module)]
    public static partial void Shortcuts([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> pressed);
}
