using System.Text.RegularExpressions;

namespace Dyepath.Web;

/// <summary>An id is a GUID or 26 letters and digits; a client may choose its own, so that what is begun offline keeps it.</summary>
internal static partial class DocumentId
{
    /// <summary>A GUID that begins with the time, so that newer ones sort later.</summary>
    public static string New() => Guid.CreateVersion7().ToString();

    /// <summary>Whether a text has an id's form.</summary>
    public static bool IsValid(string id) => Form().IsMatch(id);

    /// <summary>For an id that has not the form.</summary>
    public static IResult Refusal(string whose) => Problems.Of(
        StatusCodes.Status400BadRequest, $"The {whose}'s id is not of the right form.", "An id is a GUID, or 26 letters and digits.");

    [GeneratedRegex(@"^([0-9A-Za-z]{26}|[0-9A-Fa-f]{8}(-[0-9A-Fa-f]{4}){3}-[0-9A-Fa-f]{12})\z")]
    private static partial Regex Form();
}
