using System.Buffers.Binary;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Drawing;

namespace Dyepath.Workspace.Pattern;

/// <summary>Lays out the PDF of a plan in the second runtime.</summary>
public static class PdfJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "pdf";

    /// <summary>Left out of the first visit, and fetched when a PDF is first asked for.</summary>
    public static string[] Assemblies { get; } = ["PdfSharp.wasm", "PdfSharp.Shared.wasm", "PdfSharp.System.wasm"];

    /// <summary>The names of paper and type on a line, then the plan.</summary>
    public static string Order(Plan plan, byte[]? decisions, Print print) =>
        $"{Enum.GetName(print.Paper)} {Enum.GetName(print.Type)}\n{PlanAnew.Write(plan, decisions)}";

    /// <summary>What a run made.</summary>
    public static (int Pages, byte[] File) Read(byte[] made) => (BinaryPrimitives.ReadInt32LittleEndian(made), made[sizeof(int)..]);

    /// <summary>The number of pages in four bytes, the least significant first, then the file.</summary>
    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        var line = order.IndexOf('\n', StringComparison.Ordinal);
        var names = order[..line].Split(' ');
        var print = new Print(Enum.Parse<PageSize>(names[0]), Enum.Parse<TypeSize>(names[1]));
        var booklet = PatternWriter.Write(PlanAnew.Read(order[(line + 1)..]));
        using var pdf = new MemoryStream();
        pdf.Write(new byte[sizeof(int)]);
        var pages = PdfBooklet.Write(booklet, booklet.Edition, new Wording(booklet, booklet.Edition).Say, print, pdf, progress: progress);
        var made = pdf.ToArray();
        BinaryPrimitives.WriteInt32LittleEndian(made, pages);
        return made;
    }
}
