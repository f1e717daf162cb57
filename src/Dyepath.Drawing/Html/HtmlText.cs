using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Html;

/// <summary>Writes HTML as it comes; everything that is not said to be raw is escaped.</summary>
internal sealed class HtmlText(TextWriter output)
{
    /// <param name="markup">Ours, never a user's.</param>
    public HtmlText Raw(string markup)
    {
        output.Write(markup);
        return this;
    }

    public HtmlText Text(string text) => Raw(SafeText.Markup(text));

    public HtmlText Element(string tag, string text) => Raw($"<{tag}>").Text(text).Raw($"</{tag}>");

    public HtmlText Spans(ImmutableArray<TextSpan> spans)
    {
        foreach (var span in spans)
        {
            if (span.Strong)
                Element("strong", span.Text);
            else
                Text(span.Text);
        }
        return this;
    }
}
