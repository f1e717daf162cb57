using System.Collections.Immutable;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Dyepath.Drawing.Tests;

/// <summary>
/// A page as it is seen on a screen with a size chosen, by the rules of its own style sheet: those for a size that is chosen and the hidden
/// attribute. Knows nothing of how the page was written.
/// </summary>
internal sealed partial class SeenPage
{
    private readonly XElement _body;
    private readonly ILookup<int, Rule> _rules;

    public SeenPage(string html)
    {
        _body = XElement.Parse(html[html.IndexOf("<body>", StringComparison.Ordinal)..html.IndexOf("</html>", StringComparison.Ordinal)]);
        var style = html[html.IndexOf("<style>", StringComparison.Ordinal)..html.LastIndexOf("</style>", StringComparison.Ordinal)];
        _rules = RuleOfSize().Matches(style).ToLookup(m => int.Parse(m.Groups["size"].Value, null), m => Rule.Of(m));
    }

    public XElement Body => _body;

    /// <summary>Below the picture of the cover, which is of one size and says of which.</summary>
    public SeenPage BelowCover()
    {
        _body.Descendants("figure").Where(f => f.Attribute("class")?.Value == "cover").Remove();
        return this;
    }

    /// <summary>Sizes that can be chosen.</summary>
    public int Sizes =>
        _body.Descendants("input").Count(i => i.Attribute("type")?.Value == "radio" && i.Attribute("id")?.Value != "all-sizes");

    /// <summary>What is read, in order: a line for each block, cell, and text of a picture, without the choice itself.</summary>
    /// <param name="size">Index of the size that is chosen, or null for all.</param>
    public ImmutableArray<string> Lines(int? size) =>
    [
        .. Seen(_body, size).Where(e => Block().IsMatch(e.Name.LocalName)).Select(e => $"{e.Name.LocalName}: {Text(e, size)}"),
    ];

    /// <summary>Elements that are seen, without the choice.</summary>
    public IEnumerable<XElement> Seen(XElement within, int? size) => IsShown(within, size) && within.Attribute("class")?.Value != "choice"
        ? within.Elements().SelectMany(e => Seen(e, size)).Prepend(within)
        : [];

    public string Text(XElement of, int? size) =>
        string.Join(' ', Raw(of, size).Split([' ', '\n', '\u00A0'], StringSplitOptions.RemoveEmptyEntries));

    private string Raw(XElement of, int? size) => string.Concat(of.Nodes().Select(node => node switch
    {
        XText text => text.Value,
        XElement inner when IsShown(inner, size) => Raw(inner, size),
        _ => "",
    }));

    private bool IsShown(XElement element, int? size)
    {
        var classes = element.Attribute("class")?.Value.Split(' ') ?? [];
        var shown = element.Attribute("hidden") is null;
        if (size is { } chosen)
        {
            foreach (var rule in _rules[chosen])
                shown = rule.AppliesTo(element, classes) ? rule.Shows : shown;
        }
        return shown;
    }

    /// <param name="Tag">Of the elements; empty: of any.</param>
    /// <param name="Any">One of these classes.</param>
    /// <param name="But">Not this class.</param>
    /// <param name="OnlyHidden">That have the attribute.</param>
    /// <param name="Shows">And not hides.</param>
    private sealed record Rule(string Tag, string[] Any, string But, bool OnlyHidden, bool Shows)
    {
        public static Rule Of(Match match) => new(
            match.Groups["tag"].Value,
            [.. match.Groups["any"].Value.Split(',').Select(name => name.Trim().TrimStart('.'))],
            match.Groups["not"].Value, match.Groups["hidden"].Success, match.Groups["display"].Value != "none");

        public bool AppliesTo(XElement element, string[] classes) => (Tag.Length == 0 || element.Name.LocalName == Tag)
            && classes.Intersect(Any).Any() && !classes.Contains(But) && (!OnlyHidden || element.Attribute("hidden") is not null);
    }

    [GeneratedRegex(
        @"^:root:has\(#size-(?<size>\d+):checked\) (?<tag>[a-z]*)(:is\((?<any>[^)]*)\)|(?<any>\.\w+))(:not\(\.(?<not>\w+)\))?(?<hidden>\[hidden\])? \{ display: (?<display>\w+); \}$",
        RegexOptions.Multiline)]
    private static partial Regex RuleOfSize();

    [GeneratedRegex("^(h[1-6]|p|li|dt|dd|caption|th|td|figcaption|title|desc|text)$")]
    private static partial Regex Block();
}
