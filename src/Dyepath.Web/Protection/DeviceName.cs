namespace Dyepath.Web.Protection;

/// <summary>What a browser calls itself, in plain words of ours: nothing of its own text is kept.</summary>
internal static class DeviceName
{
    /// <summary>The more special first: most browsers say the names of others too.</summary>
    private static readonly (string Mark, string Name)[] Browsers =
    [
        ("Edg", "Edge"), ("OPR/", "Opera"), ("SamsungBrowser/", "Samsung Internet"), ("Firefox/", "Firefox"), ("FxiOS/", "Firefox"),
        ("CriOS/", "Chrome"), ("Chrome/", "Chrome"), ("Chromium/", "Chrome"), ("Safari/", "Safari"),
    ];

    private static readonly (string Mark, string Name)[] Systems =
    [
        ("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("CrOS", "ChromeOS"), ("Windows", "Windows"),
        ("Macintosh", "Mac"), ("Linux", "Linux"),
    ];

    /// <returns>Such as <c>Firefox on Linux</c>.</returns>
    public static string Of(string userAgent)
    {
        var (browser, system) = (Find(Browsers, userAgent) ?? "A browser", Find(Systems, userAgent));
        return system is null ? browser : $"{browser} on {system}";
    }

    private static string? Find((string Mark, string Name)[] known, string text) =>
        known.FirstOrDefault(k => text.Contains(k.Mark, StringComparison.Ordinal)).Name;
}
