using System.Globalization;
using System.IO.Compression;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Drawing;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Pattern;

/// <summary>What a booklet can be had as.</summary>
public enum BookletForm
{
    /// <summary>Pages to print.</summary>
    Pdf,

    /// <summary>One web page.</summary>
    Html,

    /// <summary>Plain text.</summary>
    Text,

    /// <summary>Every picture as SVG, in a zip.</summary>
    Pictures,

    /// <summary>What a buyer asks before she buys, as plain text.</summary>
    Listing,

    /// <summary>The same as a table for a spreadsheet.</summary>
    ListingTable,

    /// <summary>Pictures to show the pattern with, each with its alternative text, in a zip.</summary>
    Posts,
}

/// <summary>What makes pixels of a drawing: the browser, where there is one.</summary>
public interface IRaster
{
    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <returns>A PNG; null where the browser makes none.</returns>
    Task<byte[]?> PngAsync(string svg, int width, int height);
}

/// <param name="Name">With its ending.</param>
/// <param name="Type">Its media type.</param>
/// <param name="Bytes">The file.</param>
public sealed record MadeFile(string Name, string Type, byte[] Bytes)
{
    /// <summary>Of a PDF; missing where the file has none.</summary>
    public int? Pages { get; init; }
}

/// <summary>Makes the files of a booklet.</summary>
/// <param name="jobs">Where the PDF and the web page are laid out, so that the page goes on answering.</param>
/// <param name="raster">Makes the PNG beside each picture for posts; missing, there is none.</param>
public sealed class BookletFiles(IJobs jobs, IRaster? raster = null)
{
    private static string TypeName(TypeSize type) => type switch
    {
        TypeSize.Large => "-large-print",
        TypeSize.Compact => "-compact",
        _ => "",
    };

    /// <summary>English by its terms, which readers ask for.</summary>
    private static string LanguageOf(Edition edition) => edition.Language == Language.English
        ? edition.Terms == Terms.Us ? "us" : "uk" : LanguageTags.Of(edition.Language, edition.Terms);

    /// <param name="decisions">What the plan's searches found, so that they are not made again.</param>
    /// <param name="progress">Told what is being done, in a maker's words.</param>
    /// <exception cref="JobException">The PDF or the web page could not be made.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; a PDF at any time, pictures between two of them.</exception>
    public async Task<MadeFile> MakeAsync(
        BookletForm form, Plan plan, byte[]? decisions, Print print, Action<string> progress, CancellationToken cancel)
    {
        var edition = plan.Project.Edition;
        var title = plan.Project.Title;
        var name = $"-{LanguageOf(edition)}{(edition.Size is { } size ? $"-{FileName.Of(size, "")}" : "")}";
        progress("Beginning…");
        await Breathe(cancel);
        switch (form)
        {
            case BookletForm.Pdf:
                var (pages, pdf) = PdfJob.Read(await jobs.RunAsync(
                    PdfJob.Name, PdfJob.Order(plan, decisions, print), share => progress(string.Create(CultureInfo.InvariantCulture, $"Laying out the pages: {share:0 %}")),
                    cancel, PdfJob.Assemblies));
                return new(FileName.Of(title, $"{name}{TypeName(print.Type)}.pdf"), "application/pdf", pdf) { Pages = pages };
            case BookletForm.Html:
                return new(
                    FileName.Of(title, $"{name}.html"), "text/html", await jobs.RunOrHereAsync(PageJob.Name, PageJob.Order(plan, decisions), _ => { }, cancel));
            case BookletForm.Text:
                return new(FileName.Of(title, $"{name}.txt"), "text/plain", Encoding.UTF8.GetBytes(TextBooklet.Write(PatternWriter.Write(plan, cancel), edition)));
            case BookletForm.Pictures:
                return new(FileName.Of(title, $"{name}-pictures.zip"), "application/zip", await Zip(PatternWriter.Write(plan, cancel), progress, cancel));
            case BookletForm.Posts:
                return new(FileName.Of(title, "-posts.zip"), "application/zip", await Posts(plan, progress, cancel));
            case BookletForm.Listing:
                return new(FileName.Of(title, $"{name}-listing.txt"), "text/plain", Listed(ListingSheet.Text));
            case BookletForm.ListingTable:
                return new(FileName.Of(title, $"{name}-listing.csv"), "text/csv", Listed(ListingSheet.Spreadsheet));
            default:
                throw new ArgumentOutOfRangeException(nameof(form), form, "No such file of a booklet.");
        }

        byte[] Listed(Func<Plan, Booklet, string> write) => Encoding.UTF8.GetBytes(write(plan, PatternWriter.Write(plan, cancel)));
    }

    /// <summary>What the plan's pattern says otherwise than that of an earlier version, and whom it touches.</summary>
    /// <param name="earlier">The document as it was kept.</param>
    /// <returns>The file, or why there is none: a sentence.</returns>
    /// <inheritdoc cref="MakeAsync"/>
    public async Task<(MadeFile? File, string Why)> ErrataAsync(
        string earlier, Plan plan, byte[]? decisions, Action<string> progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(progress);
        progress("Beginning…");
        await Breathe(cancel);
        var (isCompared, text) = ErrataJob.Read(await jobs.RunOrHereAsync(
            ErrataJob.Name, ErrataJob.Order(earlier, plan, decisions), share => progress(ErrataJob.Doing(share)), cancel));
        return isCompared
            ? (new MadeFile(FileName.Of(plan.Project.Title, "-errata.txt"), "text/plain", Encoding.UTF8.GetBytes(text)), "")
            : (null, text);
    }

    /// <summary>The pictures that an edition prints, in order, each with its caption.</summary>
    public static IReadOnlyList<(Figure Figure, string Caption)> Pictures(Booklet booklet)
    {
        var wording = new Wording(booklet, booklet.Edition);
        return [.. booklet.For(booklet.Edition).Sections.SelectMany(s => s.Blocks).OfType<Figure>()
            .Select(f => (f, wording.Text(f.Caption)))];
    }

    /// <summary>One picture as SVG, by its index in <see cref="Pictures"/>.</summary>
    public static MadeFile Picture(Booklet booklet, int index)
    {
        var (figure, caption) = Pictures(booklet)[index];
        return new(PictureName(index, caption), "image/svg+xml", Svg(figure, booklet));
    }

    private static async Task<byte[]> Zip(Booklet booklet, Action<string> progress, CancellationToken cancel)
    {
        var pictures = Pictures(booklet);
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            for (var i = 0; i < pictures.Count; i++)
            {
                progress(string.Create(CultureInfo.InvariantCulture, $"Picture {i + 1} of {pictures.Count}…"));
                await Breathe(cancel);
                await Put(zip, PictureName(i, pictures[i].Caption), Svg(pictures[i].Figure, booklet), cancel);
            }
        }
        return bytes.ToArray();
    }

    private async Task<byte[]> Posts(Plan plan, Action<string> progress, CancellationToken cancel)
    {
        var booklet = PatternWriter.Write(plan, cancel);
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var picture in PostPictures.Of(booklet, booklet.Edition, new Wording(booklet, booklet.Edition).Say, cancel))
            {
                progress($"{Wording.Capital(picture.Name.Replace('-', ' '))}…");
                await Breathe(cancel);
                await Put(zip, $"{picture.Name}.svg", Encoding.UTF8.GetBytes(picture.Svg), cancel);
                await Put(zip, $"{picture.Name}.txt", Encoding.UTF8.GetBytes(picture.Alternative + "\n"), cancel);
                if (raster is not null && await raster.PngAsync(picture.Svg, picture.Width, picture.Height) is { } png)
                    await Put(zip, $"{picture.Name}.png", png, cancel);
            }
        }
        return bytes.ToArray();
    }

    /// <summary>The same booklet makes the same file, whenever it is made.</summary>
    private static async Task Put(ZipArchive zip, string name, byte[] content, CancellationToken cancel)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = new DateTimeOffset(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
        await using var stream = entry.Open();
        await stream.WriteAsync(content, cancel);
    }

    private static string PictureName(int index, string caption) =>
        FileName.Of(string.Create(CultureInfo.InvariantCulture, $"{index + 1:00} {caption}"), ".svg");

    private static byte[] Svg(Figure figure, Booklet booklet) =>
        Encoding.UTF8.GetBytes(SvgDrawing.Write(figure, booklet.Edition, new Wording(booklet, booklet.Edition).Say));

    /// <summary>Lets the page show how far it has come, and a cancelling hand in between.</summary>
    private static Task Breathe(CancellationToken cancel) => Task.Delay(20, cancel);
}
