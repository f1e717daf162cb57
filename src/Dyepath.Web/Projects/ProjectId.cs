using System.Text.RegularExpressions;

namespace Dyepath.Web.Projects;

/// <summary>An id is a GUID or 26 letters and digits; a client may choose its own, so that a project begun offline keeps it.</summary>
internal static partial class ProjectId
{
    public static string New() => Guid.CreateVersion7().ToString();

    public static bool IsValid(string id) => Form().IsMatch(id);

    [GeneratedRegex(@"^([0-9A-Za-z]{26}|[0-9A-Fa-f]{8}(-[0-9A-Fa-f]{4}){3}-[0-9A-Fa-f]{12})\z")]
    private static partial Regex Form();
}
