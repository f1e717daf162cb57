namespace Dyepath.Contracts;

/// <summary>Where the host's features answer; relative, so that they follow the page's own address.</summary>
public static class ApiPaths
{
    public const string Projects = "api/projects";

    public const string Demo = "api/demo";

    /// <summary>Where a browser gives the access token of a host that asks for one.</summary>
    public const string SignIn = "sign-in";

    public static string Shelf(bool archived) => archived ? $"{Projects}?archived=true" : Projects;

    /// <summary>POST with the document creates it under an id that the client chose.</summary>
    public static string NewProject(string id) => $"{Projects}?id={id}";

    public static string Project(string id) => $"{Projects}/{id}";

    public static string Archive(string id) => $"{Projects}/{id}/archive";

    /// <summary>Back from the archive.</summary>
    public static string Restore(string id) => $"{Projects}/{id}/restore";

    public static string Copy(string id) => $"{Projects}/{id}/copy";

    public static string Versions(string id) => $"{Projects}/{id}/versions";

    public static string Version(string id, int number) => FormattableString.Invariant($"{Projects}/{id}/versions/{number}");

    public static string RestoreVersion(string id, int number) => FormattableString.Invariant($"{Projects}/{id}/versions/{number}/restore");
}
