using System.Data.Common;
using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace Dyepath.Web.Serving;

/// <summary>Text that may stand in a log: nothing that a reader cannot see, and nothing that a user wrote.</summary>
internal static class LogText
{
    /// <summary>
    /// What broke and where. The message is told where it comes from the system or the database, which say nothing of what
    /// they were given; any other may quote a document.
    /// </summary>
    public static string Of(Exception exception)
    {
        var text = new StringBuilder();
        for (var fault = exception; fault is not null; fault = fault.InnerException)
        {
            if (text.Length > 0)
                text.Append(" <- ");
            text.Append(fault.GetType().FullName);
            if (fault is DbException or IOException or SocketException or TimeoutException)
                text.Append(": ").Append(fault.Message);
            text.Append('\n').Append(fault.StackTrace);
        }
        return Clean(text.ToString());
    }

    /// <summary>
    /// Control characters, invisible ones and those that turn the direction of writing, as their numbers; line ends stay.
    /// </summary>
    public static string Clean(string text)
    {
        if (text.All(c => !IsUnseen(c)))
            return text;
        var clean = new StringBuilder(text.Length + 16);
        foreach (var c in text)
        {
            if (IsUnseen(c))
                clean.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            else
                clean.Append(c);
        }
        return clean.ToString();
    }

    private static bool IsUnseen(char c) => c != '\n' && char.GetUnicodeCategory(c) is UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse
        or UnicodeCategory.OtherNotAssigned;
}
