using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace Dyepath.Mutations.Agreement;

/// <summary>
/// Reads a page as a browser does, tag by tag, and says it in the form of the plain text: so the reader of one can read the other. Knows
/// nothing of how the page was written.
/// </summary>
internal sealed partial class HtmlAsText
{
    private readonly StringBuilder _lines = new();
    private readonly StringBuilder _text = new();
    private readonly List<string> _row = [];
    private readonly Stack<(string Tag, string Attributes)> _open = [];
    private string _label = "";
    private string _described = "";

    public static string Read(string html)
    {
        var reader = new HtmlAsText();
        var at = 0;
        foreach (Match tag in Tag().Matches(html))
        {
            if (!reader.IsHidden)
                reader._text.Append(WebUtility.HtmlDecode(html[at..tag.Index]));
            at = tag.Index + tag.Length;
            if (tag.Groups["name"].Value is not { Length: > 0 } name)
                continue;
            if (tag.Groups["end"].Success)
                reader.End(name);
            else
                reader.Begin(name, tag.Groups["attributes"].Value);
        }
        return reader._lines.ToString();
    }

    private void Begin(string name, string attributes)
    {
        if (name is "meta" or "img" or "path" || attributes.EndsWith('/'))
        {
            if (name == "img" && Alternative().Match(attributes) is { Success: true } alt)
                Line("", $"[Photo: {WebUtility.HtmlDecode(alt.Groups["alt"].Value)}]");
            return;
        }
        if (name is not ("strong" or "span") && !IsHidden)
            _text.Clear();
        if (name == "figure")
            _described = "";
        _open.Push((name, attributes));
    }

    private void End(string name)
    {
        var (tag, attributes) = _open.Pop();
        if (tag != name)
            throw new FormatException($"<{tag}> is ended by </{name}>.");
        if (name is "strong" or "span" || IsHidden || Hides(attributes))
            return;
        var text = string.Join(' ', _text.ToString().Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        _text.Clear();
        var drawn = Within("svg");
        switch (name)
        {
            case "h1":
                Line("", text);
                Line("", "=====");
                break;
            case "p" when attributes.Contains("class=\"sizes\"", StringComparison.Ordinal):
                Line("Sizes: ", text.StartsWith("Sizes ", StringComparison.Ordinal) ? text[6..] : text.StartsWith("Size ", StringComparison.Ordinal) ? text[5..] : text);
                break;
            case "h2" when Within("section"):
                Line("", "");
                Line("", text.ToUpperInvariant());
                Line("", "-----");
                break;
            case "h3":
                Line("## ", text);
                break;
            case "p" when Within("section") && attributes.Contains("dir=\"auto\"", StringComparison.Ordinal):
                Line("> ", text);
                break;
            case "p" when Within("section"):
                Line(_open.Any(o => o.Attributes.Contains("\"caution\"", StringComparison.Ordinal)) ? "! " : "", text);
                break;
            case "li" when Within("section") && !_open.Any(o => o.Attributes.Contains("\"key\"", StringComparison.Ordinal)):
                Line("- ", text);
                break;
            case "dt":
                _label = text;
                break;
            case "dd":
                Line("", $"{_label}: {text}");
                break;
            case "caption":
                Line("", text);
                break;
            case "th" or "td":
                _row.Add(text.Replace("\u00A0/ ", " / ", StringComparison.Ordinal));
                break;
            case "tr":
                Line("  ", string.Join("  ", _row));
                _row.Clear();
                break;
            case "desc" when drawn && _described.Length == 0:
                _described = text;
                break;
            case "figcaption":
                Line("", $"[Picture: {text} {_described}]");
                break;
        }
    }

    private bool IsHidden => _open.Any(o => Hides(o.Attributes));

    /// <summary>What one size alone needs, and pages of paper.</summary>
    private static bool Hides(string attributes) => attributes.Contains(" hidden=\"\"", StringComparison.Ordinal);

    private bool Within(string name) => _open.Any(o => o.Tag == name);

    private void Line(string lead, string text) => _lines.Append(lead).Append(text).Append('\n');

    [GeneratedRegex(@"<style>.*?</style>|<!doctype[^>]*>|<(?<end>/)?(?<name>[a-zA-Z][a-zA-Z0-9]*)(?<attributes>[^>]*)>", RegexOptions.Singleline)]
    private static partial Regex Tag();

    [GeneratedRegex("alt=\"(?<alt>[^\"]*)\"")]
    private static partial Regex Alternative();
}
