using System.Text;

namespace Dyepath.Drawing.Pdf;

/// <summary>
/// Puts the PDF/UA identifier (ISO 14289-1, clause 5) into the XMP metadata. PDFsharp writes none and lets none be
/// added, so a description that says little more than the file's identity gives up its bytes, one for one: offsets stay right.
/// </summary>
internal static class PdfUaMark
{
    private const string Mark =
        "<rdf:Description rdf:about=\"\" xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\"><pdfuaid:part>1</pdfuaid:part></rdf:Description>";

    /// <returns>False, and nothing changed, where the metadata has no such description.</returns>
    public static bool Set(Span<byte> pdf)
    {
        var name = pdf.IndexOf("xmlns:xmpMM="u8);
        if (name < 0)
            return false;
        var start = pdf[..name].LastIndexOf("<rdf:Description"u8);
        var length = pdf[name..].IndexOf("</rdf:Description>"u8);
        if (start < 0 || length < 0)
            return false;
        var description = pdf[start..(name + length + "</rdf:Description>"u8.Length)];
        if (description.Length < Mark.Length)
            return false;
        description.Fill((byte)' ');
        Encoding.ASCII.GetBytes(Mark, description);
        return true;
    }
}
