using System.Text;
using Dyepath.Core.Documents;

namespace Dyepath.Core.Making.Log;

/// <summary>Writes making documents; one that <see cref="MakingReader"/> accepts reads back equal.</summary>
public static class MakingWriter
{
    /// <returns>UTF-8 without byte order mark.</returns>
    public static byte[] WriteUtf8(MakingDocument making)
    {
        ArgumentNullException.ThrowIfNull(making);
        return Encoding.UTF8.GetBytes(DocumentPrinter.PrintWithin(MakingDescription.Making.Write(making), MakingReader.MostBytes));
    }
}
