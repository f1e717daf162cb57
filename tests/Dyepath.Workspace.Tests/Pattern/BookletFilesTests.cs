using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Drawing;
using Dyepath.Workspace.Pattern;

namespace Dyepath.Workspace.Tests.Pattern;

public sealed class BookletFilesTests
{
    private static readonly Plan Plan = GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!, CancellationToken.None).Plan!;
    private static readonly Booklet Booklet = PatternWriter.Write(Plan);

    private readonly BookletFiles _files = new(new JobsHere());

    [Fact]
    public async Task The_text_is_what_the_check_reads()
    {
        var file = await Make(BookletForm.Text, Plan);
        Assert.Equal(("tideline-us.txt", "text/plain"), (file.Name, file.Type));
        Assert.Empty(PatternCheck.Text(Plan, Encoding.UTF8.GetString(file.Bytes)));
    }

    [Fact]
    public async Task One_size_is_named_in_the_file()
    {
        var file = await Make(BookletForm.Html, Plan with { Project = Plan.Project with { Edition = Plan.Project.Edition with { Size = "2X", Terms = Terms.Uk } } });
        Assert.Equal("tideline-uk-2x.html", file.Name);
        Assert.StartsWith("<!doctype html>", Encoding.UTF8.GetString(file.Bytes), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_second_runtime_the_web_page_is_made_on_the_page()
    {
        var here = await new BookletFiles(new JobsThatFail()).MakeAsync(BookletForm.Html, Plan, null, new Print(PageSize.A4), _ => { }, TestContext.Current.CancellationToken);
        Assert.Equal((await Make(BookletForm.Html, Plan)).Bytes, here.Bytes);
    }

    [Fact]
    public async Task The_pdf_says_how_far_it_is()
    {
        var said = new List<string>();
        var file = await _files.MakeAsync(BookletForm.Pdf, Plan, null, new Print(PageSize.A4), said.Add, TestContext.Current.CancellationToken);
        Assert.True(file.Bytes.AsSpan().StartsWith("%PDF-"u8));
        Assert.Contains("Laying out the pages: 100 %", said);
        // The page tree's leaves, counted in the file itself (ISO 32000-1, 7.7.3.3).
        Assert.Equal(System.Text.RegularExpressions.Regex.Count(Encoding.Latin1.GetString(file.Bytes), @"/Type\s*/Page\b(?!s)"), file.Pages);
    }

    /// <summary>A drawing and its words; pixels too where something makes them.</summary>
    [Fact]
    public async Task Pictures_for_posts_are_drawings_and_words_and_pixels_where_there_are_any()
    {
        var german = Plan with { Project = Plan.Project with { Edition = Plan.Project.Edition with { Language = Language.German } } };
        foreach (var (files, endings) in new[] { (_files, 2), (new BookletFiles(new JobsHere(), new NoPixels()), 2), (new BookletFiles(new JobsHere(), new Pixels()), 3) })
        {
            var file = await files.MakeAsync(BookletForm.Posts, german, null, new Print(PageSize.A4), _ => { }, TestContext.Current.CancellationToken);
            Assert.Equal(("tideline-posts.zip", "application/zip"), (file.Name, file.Type));
            using var zip = new ZipArchive(new MemoryStream(file.Bytes));
            Assert.Equal(9 * endings, zip.Entries.Select(e => e.Name).Distinct().Count());
            foreach (var drawing in zip.Entries.Where(e => e.Name.EndsWith(".svg", StringComparison.Ordinal)))
            {
                await using var svg = await drawing.OpenAsync(TestContext.Current.CancellationToken);
                using var words = new StreamReader(await zip.GetEntry(drawing.Name.Replace(".svg", ".txt", StringComparison.Ordinal))!.OpenAsync(TestContext.Current.CancellationToken));
                var root = (await XDocument.LoadAsync(svg, LoadOptions.None, TestContext.Current.CancellationToken)).Root!;
                var said = (await words.ReadToEndAsync(TestContext.Current.CancellationToken)).TrimEnd();
                Assert.Equal(root.Elements().Single(e => e.Name.LocalName == "desc").Value, said);
                Assert.EndsWith("Vom Computer nach den Zahlen der Anleitung gezeichnet.", said, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task The_zip_holds_every_picture_once()
    {
        var said = new List<string>();
        var file = await _files.MakeAsync(BookletForm.Pictures, Plan, null, new Print(PageSize.A4), said.Add, TestContext.Current.CancellationToken);
        using var zip = new ZipArchive(new MemoryStream(file.Bytes));
        Assert.Equal(BookletFiles.Pictures(Booklet).Count, zip.Entries.Select(e => e.FullName).Distinct().Count());
        Assert.All(zip.Entries, entry =>
        {
            using var stream = entry.Open();
            Assert.Equal("svg", XDocument.Load(stream).Root!.Name.LocalName);
        });
        Assert.Contains(said, s => s.StartsWith("Picture 1 of", StringComparison.Ordinal));
        Assert.Equal(file.Bytes, (await Make(BookletForm.Pictures, Plan)).Bytes);
    }

    [Fact]
    public async Task It_stops_between_two_pictures()
    {
        using var stop = new CancellationTokenSource();
        var done = 0;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _files.MakeAsync(
            BookletForm.Pictures, Plan, null, new Print(PageSize.A4),
            said =>
            {
                if (said.StartsWith("Picture 2", StringComparison.Ordinal))
                    stop.Cancel();
                done++;
            },
            stop.Token));
        Assert.Equal(3, done);
    }

    private Task<MadeFile> Make(BookletForm form, Plan plan) =>
        _files.MakeAsync(form, plan, null, new Print(PageSize.A4), _ => { }, TestContext.Current.CancellationToken);

    private sealed class Pixels : IRaster
    {
        public Task<byte[]?> PngAsync(string svg, int width, int height) => Task.FromResult<byte[]?>([1]);
    }

    private sealed class NoPixels : IRaster
    {
        public Task<byte[]?> PngAsync(string svg, int width, int height) => Task.FromResult<byte[]?>(null);
    }
}
