using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Instructions;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Html;

/// <summary>Collects HTML; everything that is not said to be raw is escaped.</summary>
internal sealed class HtmlText
{
    private readonly StringBuilder _html = new();

    /// <param name="markup">Ours, never a user's.</param>
    public HtmlText Raw(string markup)
    {
        _html.Append(markup);
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

    public override string ToString() => _html.ToString();
}
