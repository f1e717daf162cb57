using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Drawing;

namespace Dyepath.Workspace.Pattern;

/// <summary>Writes the booklet of a plan as a web page, in the second runtime.</summary>
public static class PageJob
{
    /// <summary>Under which the second runtime knows the job.</summary>
    public const string Name = "page";

    /// <inheritdoc cref="PlanAnew.Write"/>
    public static string Order(Plan plan, byte[]? decisions) => PlanAnew.Write(plan, decisions);

    /// <returns>HTML in UTF-8.</returns>
    /// <exception cref="InvalidOperationException">The document has no plan.</exception>
    public static byte[] Run(string order, IProgress<double> progress)
    {
        var booklet = PatternWriter.Write(PlanAnew.Read(order));
        var page = HtmlBooklet.OnScreen(booklet, booklet.Edition, new Wording(booklet, booklet.Edition).Say);
        return System.Text.Encoding.UTF8.GetBytes(page);
    }
}
