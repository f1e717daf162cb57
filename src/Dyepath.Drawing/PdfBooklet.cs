using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Pdf;
using Dyepath.Drawing.Typography;
using PdfSharp.Pdf;

namespace Dyepath.Drawing;

/// <summary>The booklet as a PDF to print or to read: tagged, with its fonts, contents and bookmarks.</summary>
public static class PdfBooklet
{
    /// <param name="print">Paper and type.</param>
    /// <param name="output">Written to from its current place, once the whole file is made; not closed.</param>
    /// <param name="progress">Told the share of the sections that is laid out, in (0, 1].</param>
    /// <returns>The number of its pages.</returns>
    /// <exception cref="ArgumentException">A picture or table contradicts itself.</exception>
    /// <exception cref="TooMuchWorkException">More charts than <see cref="Core.Instructions.BookletSize"/> allows.</exception>
    /// <exception cref="OperationCanceledException">Cancelled before anything was written.</exception>
    public static int Write(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, Print print, Stream output,
        IProgress<double>? progress = null, CancellationToken cancel = default) =>
        Write(booklet, edition, say, print, output, progress, new Effort(cancel: cancel));

    internal static int Write(
        Booklet booklet, Edition edition, Func<Phrase, ImmutableArray<TextSpan>> say, Print print, Stream output,
        IProgress<double>? progress, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(booklet);
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(say);
        ArgumentNullException.ThrowIfNull(print);
        ArgumentNullException.ThrowIfNull(output);
        booklet = BookletParts.Sized(booklet, edition);
        var reader = new Reader(edition, say, effort);
        var frame = PageFrame.Of(print);
        var flow = new Flow(frame, booklet.Title, edition.Label is { } label ? reader.Text(label) : "");
        CoverPages.Write(flow, booklet, reader);
        var blocks = new PageBlocks(flow, booklet, reader);
        for (var i = 0; i < booklet.Sections.Length; i++)
        {
            blocks.Write(booklet.Sections[i], i);
            progress?.Report((i + 1.0) / booklet.Sections.Length);
        }
        using var document = new PdfDocument();
        document.Info.Title = SafeText.OneLine(booklet.Title);
        document.Info.Author = SafeText.OneLine(booklet.Designer);
        document.Info.Creator = "Dyepath";
        document.Options.CompressContentStreams = true;
        TaggedPages.Write(document, flow.Ops, frame, reader.Language, effort);
        effort.Spend(1);
        using var bytes = new MemoryStream();
        document.Save(bytes, false);
        var file = bytes.GetBuffer().AsSpan(0, (int)bytes.Length);
        PdfUaMark.Set(file);
        output.Write(file);
        return flow.Page;
    }
}
