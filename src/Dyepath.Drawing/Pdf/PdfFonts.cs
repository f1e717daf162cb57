using Dyepath.Drawing.Typography;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Dyepath.Drawing.Pdf;

/// <summary>Gives PDFsharp our embedded fonts, whatever is installed on the machine.</summary>
internal sealed class PdfFonts : IFontResolver
{
    private static readonly Lock Gate = new();
    private static bool _registered;

    private readonly Dictionary<(string Family, bool Bold, bool Italic, double Size), XFont> _made = [];

    /// <summary>PDFsharp keeps one resolver for the process; another's stays first and ours answers what it cannot.</summary>
    public static PdfFonts Registered()
    {
        lock (Gate)
        {
            if (!_registered)
            {
                if (GlobalFontSettings.FontResolver is null)
                    GlobalFontSettings.FontResolver = new PdfFonts();
                else
                    GlobalFontSettings.FallbackFontResolver ??= new PdfFonts();
                _registered = true;
            }
        }
        return new PdfFonts();
    }

    public XFont Font(Typeface face, bool sign, double size)
    {
        var key = sign ? (Typeface.SignFamily, false, false, size) : (face.Family, face.Bold, face.Italic, size);
        if (_made.TryGetValue(key, out var font))
            return font;
        var style = key.Item2 ? XFontStyleEx.Bold : key.Item3 ? XFontStyleEx.Italic : XFontStyleEx.Regular;
        font = new XFont(key.Item1, size, style, new XPdfFontOptions(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset));
        _made.Add(key, font);
        return font;
    }

    public byte[]? GetFont(string faceName) => faceName switch
    {
        "dyepath-signs" => Typeface.SignBytes,
        "dyepath-bold" => Typeface.BoldFace.Bytes,
        "dyepath-italic" => Typeface.ItalicFace.Bytes,
        "dyepath-regular" => Typeface.Regular.Bytes,
        _ => null,
    };

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic)
    {
        if (familyName == Typeface.SignFamily)
            return new FontResolverInfo("dyepath-signs");
        if (familyName != Typeface.Regular.Family)
            return null;
        return new FontResolverInfo(bold ? "dyepath-bold" : italic ? "dyepath-italic" : "dyepath-regular");
    }
}
