using System.Text;
using System.Xml.Linq;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Documents;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Projects;
using Dyepath.Drawing;
using Dyepath.Mutations.Agreement;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Parts;

/// <summary>Project documents, through everything that is made of one.</summary>
internal sealed class DocumentPart : IPart
{
    /// <summary>Of the patterns, one in so many is also printed: a PDF takes as long as all the rest.</summary>
    private const int PerPdf = 10;

    private string[] _bases = [];

    public string Name => "documents";

    public Task PrepareAsync(int seed)
    {
        _bases = Bases.Projects(seed, 60);
        foreach (var json in _bases.Take(6))
            Try(Encoding.UTF8.GetBytes(json), 0, default);
        return Task.CompletedTask;
    }

    public byte[] Input(int seed, int number)
    {
        var random = new Random(unchecked(seed * 1_000_003 + number));
        return Mutator.Damage(_bases[random.Next(_bases.Length)], random);
    }

    public Task<string> TryAsync(byte[] input, int number, CancellationToken cancel) => Task.FromResult(Try(input, number, cancel));

    public static string Try(byte[] input, int number, CancellationToken cancel)
    {
        var reading = ProjectReader.Read(input);
        if (reading.IsGood == !reading.Faults.IsEmpty)
            throw new Broken("it is read and has faults, or neither");
        Located.Check(reading.Faults);
        if (reading.Project is not { } project)
            return reading.Faults[0].Kind == FaultKind.NotJson ? "no JSON" : "refused by the reader";
        var written = ProjectWriter.WriteUtf8(project);
        if (Same.Difference(project, ProjectReader.Read(written).Project) is { } difference)
            throw new Broken($"written and read again it differs: {difference}");
        Kept.Check(input, written, text => Same.Difference(project, ProjectReader.Read(text).Project) is null);
        var result = GarmentPlanner.Plan(project, cancel);
        Located.Check(result, input);
        if (result.Plan is not { } plan)
            return result.Outcome == PlanOutcome.BadInput ? "refused by the planner" : "no design";
        return Made(plan, number, cancel);
    }

    /// <summary>Everything that is made of a plan.</summary>
    private static string Made(Plan plan, int number, CancellationToken cancel)
    {
        // Every edition of a good document is tried in the part "agreement"; here the plan's numbers and one edition.
        if (PlanCheck.Verify(plan, cancel) is { IsEmpty: false } found)
            throw new Broken($"the technical check disagrees: {found[0].Place}: {found[0].Text}");
        cancel.ThrowIfCancellationRequested();
        var booklet = PatternWriter.Write(plan, cancel);
        var edition = plan.Project.Edition with { Size = number % 2 == 0 ? null : booklet.Sizes[number % booklet.Sizes.Length] };
        var wording = new Wording(booklet, edition);
        if (PatternCheck.Text(plan, TextBooklet.Write(booklet, edition)) is { IsEmpty: false } inText)
            throw new Broken($"the text disagrees: {inText[0].Place}: {inText[0].Text}");
        var page = HtmlAsText.Read(HtmlBooklet.Write(booklet, edition, wording.Say, cancel));
        if (PatternCheck.Text(plan, page) is { IsEmpty: false } onPage)
            throw new Broken($"the page disagrees: {onPage[0].Place}: {onPage[0].Text}");
        foreach (var figure in booklet.For(edition).Sections.SelectMany(s => s.Blocks).OfType<Figure>())
            XDocument.Parse(SvgDrawing.Write(figure, edition, wording.Say, cancel));
        if (number % PerPdf != 0)
            return "a pattern";
        using var pdf = new MemoryStream();
        PdfBooklet.Write(booklet, edition, wording.Say, new Print(PageSize.A4), pdf, cancel: cancel);
        if (!pdf.GetBuffer().AsSpan(0, (int)pdf.Length).StartsWith("%PDF-"u8))
            throw new Broken("the PDF does not begin as one");
        return "a pattern, printed";
    }

    public ValueTask DisposeAsync() => default;
}
