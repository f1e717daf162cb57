using System.Collections.Immutable;
using System.Text;
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

    /// <summary>Neighbours that are alike in weight and size are one.</summary>
    public HtmlText Spans(ImmutableArray<SizedSpan> spans)
    {
        var text = new StringBuilder();
        for (var i = 0; i < spans.Length; i++)
        {
            text.Append(spans[i].Text);
            if (i + 1 < spans.Length && spans[i + 1] with { Text = "" } == spans[i] with { Text = "" })
                continue;
            if (text.Length > 0)
                Span(spans[i] with { Text = text.ToString() });
            text.Clear();
        }
        return this;
    }

    private void Span(SizedSpan span)
    {
        var attributes = ForWhom.Of(span).Attributes();
        if (attributes.Length > 0)
            Raw($"<span{attributes}>");
        if (span.Strong)
            Element("strong", span.Text);
        else
            Text(span.Text);
        if (attributes.Length > 0)
            Raw("</span>");
    }
}
