namespace Dyepath.Contracts;

/// <summary>Where the host's features answer; relative, so that they follow the page's own address.</summary>
public static class ApiPaths
{
    /// <summary>Documents of projects.</summary>
    public const string Projects = "api/projects";

    /// <summary>Pieces under way.</summary>
    public const string Makings = "api/makings";

    /// <summary>What a key in <see cref="HandedKeyHeader"/> opens, with or without the access token.</summary>
    public const string Handed = "api/handed";

    /// <summary>The request header with the key of a handover.</summary>
    public const string HandedKeyHeader = "Dyepath-Key";

    /// <summary>
    /// The request header with the picture that the shelf shows of a text: base64 of <see cref="SwatchPicture"/> as JSON in UTF-8, at
    /// most <see cref="LongestPicture"/> characters. A save without it keeps the earlier picture.
    /// </summary>
    public const string PictureHeader = "Dyepath-Picture";

    /// <summary>Characters of <see cref="PictureHeader"/>.</summary>
    public const int LongestPicture = 8192;

    /// <summary>A list goes on behind this place; the answer before says it in its Link header, with rel="next".</summary>
    public const string After = "after";

    /// <summary>Most entries that one answer lists.</summary>
    public const int MostListed = 200;

    /// <summary>
    /// The response header of a text with <see cref="ProjectSummary.Made"/>.
    /// </summary>
    public const string MadeHeader = "Dyepath-Made";

    /// <summary>The example project.</summary>
    public const string Demo = "api/demo";

    /// <summary>The client's page on which pieces are made: the only one that opens without the access token.</summary>
    public const string MakePage = "make";

    /// <summary>Where a browser gives the access token of a host that asks for one.</summary>
    public const string SignIn = "sign-in";

    /// <summary>POST ends this browser's session; the page says that it has ended.</summary>
    public const string SignOut = "sign-in/out";

    /// <summary>The page of the signed-in devices.</summary>
    public const string Devices = "sign-in/devices";

    /// <summary>Whether this browser is signed in.</summary>
    public const string Session = "api/session";

    /// <summary>GET lists projects, those on the shelf or those in the archive.</summary>
    public static string Shelf(bool archived) => archived ? $"{Projects}?archived=true" : Projects;

    /// <summary>POST with the document creates it under an id that the client chose.</summary>
    public static string NewProject(string id) => $"{Projects}?id={id}";

    /// <summary>GET reads, PUT saves, DELETE removes the document.</summary>
    public static string Project(string id) => $"{Projects}/{id}";

    /// <summary>POST takes a project off the shelf.</summary>
    public static string Archive(string id) => $"{Projects}/{id}/archive";

    /// <summary>Back from the archive.</summary>
    public static string Restore(string id) => $"{Projects}/{id}/restore";

    /// <summary>POST makes another project with the same text.</summary>
    public static string Copy(string id) => $"{Projects}/{id}/copy";

    /// <summary>GET lists the kept versions of a project.</summary>
    public static string Versions(string id) => $"{Projects}/{id}/versions";

    /// <summary>GET reads the text of a version.</summary>
    public static string Version(string id, int number) => FormattableString.Invariant($"{Projects}/{id}/versions/{number}");

    /// <summary>POST makes a version the project's text again.</summary>
    public static string RestoreVersion(string id, int number) => FormattableString.Invariant($"{Projects}/{id}/versions/{number}/restore");

    /// <summary>POST with a document publishes it under its edition number: kept as it is, it is listed among the versions.</summary>
    public static string Editions(string id) => $"{Projects}/{id}/editions";

    /// <summary>DELETE takes the publishing back.</summary>
    public static string Edition(string id, int edition) => FormattableString.Invariant($"{Projects}/{id}/editions/{edition}");

    /// <summary>GET reads, PUT saves, DELETE removes a piece under way.</summary>
    public static string Making(string id) => $"{Makings}/{id}";

    /// <summary>PUT with If-None-Match: * stores it for the first time.</summary>
    /// <param name="projectId">The project that the piece was begun from; missing where it came from nobody's shelf.</param>
    public static string NewMaking(string id, string? projectId) =>
        projectId is null ? Making(id) : $"{Making(id)}?project={projectId}";

    /// <summary>GET lists the handovers of a project that stand, POST makes one.</summary>
    public static string Handovers(string projectId) => $"{Projects}/{projectId}/handovers";

    /// <summary>DELETE ends a handover.</summary>
    public static string Handover(string projectId, string id) => $"{Projects}/{projectId}/handovers/{id}";

    /// <summary>PUT with the key stores what a maker has done.</summary>
    public static string HandedLog(string makingId) => $"{Handed}/logs/{makingId}";

    /// <summary>What the makers to whom a project was handed over have sent.</summary>
    public static string Logs(string projectId) => $"{Projects}/{projectId}/logs";

    /// <summary>GET reads, DELETE removes what one maker has sent.</summary>
    public static string Log(string projectId, string id) => $"{Projects}/{projectId}/logs/{id}";
}
