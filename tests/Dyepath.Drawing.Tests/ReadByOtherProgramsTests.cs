using System.ComponentModel;
using System.Diagnostics;

namespace Dyepath.Drawing.Tests;

/// <summary>What other readers of PDF say, where they are installed.</summary>
public sealed class ReadByOtherProgramsTests
{
    [Fact]
    public void Qpdf_finds_no_error()
    {
        // 3 means warnings only: PDFsharp's Flate streams lack the closing checksum, which readers do without.
        Assert.Contains(Run("qpdf", "--check").ExitCode, (int[])[0, 3]);
    }

    [Fact]
    public void Poppler_sees_a_tagged_document_in_order()
    {
        Assert.Contains("Tagged:          yes", Run("pdfinfo").Output, StringComparison.Ordinal);
        var structure = Run("pdfinfo", "-struct-text").Output;
        string[] order = ["H1", "\"Tideline\"", "TOC", "Sect", "\"Before you begin\"", "/Scope /Column", "/Scope /Row", "Figure"];
        var at = 0;
        foreach (var words in order)
        {
            var found = structure.IndexOf(words, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"{words} is missing or out of order.");
            at = found;
        }
    }

    private static (int ExitCode, string Output) Run(string program, params string[] arguments)
    {
        var file = Path.Combine(AppContext.BaseDirectory, $"{program}-{Guid.NewGuid():N}.pdf");
        try
        {
            using (var pdf = File.Create(file))
                PdfBooklet.Write(
                    SampleBooklet.Booklet, SampleBooklet.Everyone, SampleBooklet.Say, new Print(PageSize.A4), pdf,
                    cancel: TestContext.Current.CancellationToken);
            using var process = Process.Start(
                new ProcessStartInfo(program, [.. arguments, file]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, output + errors.Result);
        }
        catch (Win32Exception)
        {
            Assert.Skip($"{program} is not installed.");
            throw;
        }
        finally
        {
            File.Delete(file);
        }
    }
}
