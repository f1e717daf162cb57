using System.Text;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Drawing;

namespace Dyepath.Client.Pattern;

/// <summary>Lays out the PDF of a plan in the second runtime, which plans the project anew: the same document gives the same plan.</summary>
public static class PdfJob
{
    public const string Name = "pdf";

    /// <summary>Left out of the first visit, and fetched when a PDF is first asked for.</summary>
    public static string[] Assemblies { get; } = ["PdfSharp.wasm", "PdfSharp.Shared.wasm", "PdfSharp.System.wasm"];

    /// <summary>The paper's name on a line, then the document.</summary>
    public static string Order(Plan plan, PageSize paper) =>
        $"{(paper == PageSize.Letter ? nameof(PageSize.Letter) : nameof(PageSize.A4))}\n{ProjectWriter.Write(plan.Project)}";

    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        var line = order.IndexOf('\n', StringComparison.Ordinal);
        var paper = order[..line] == nameof(PageSize.Letter) ? PageSize.Letter : PageSize.A4;
        var project = ProjectReader.Read(Encoding.UTF8.GetBytes(order[(line + 1)..])).Project;
        var plan = (project is null ? null : GarmentPlanner.Plan(project).Plan)
            ?? throw new InvalidOperationException("A document without a plan has no PDF.");
        var booklet = PatternWriter.Write(plan);
        using var pdf = new MemoryStream();
        PdfBooklet.Write(booklet, booklet.Edition, new Wording(booklet, booklet.Edition).Say, paper, pdf, progress: progress);
        return pdf.ToArray();
    }
}
