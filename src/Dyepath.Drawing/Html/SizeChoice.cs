using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Booklets;

namespace Dyepath.Drawing.Html;

/// <summary>
/// The choice of a size on a page that holds them all: radio buttons, and rules by which a size that is chosen hides the others. There
/// is none where one size is printed.
/// </summary>
internal sealed class SizeChoice(Booklet booklet, Reader reader)
{
    private readonly Wording? _wording =
        reader.Edition.Size is null && booklet.Sizes.Length > 1 ? new Wording(booklet, reader.Edition) : null;

    public bool IsOffered => _wording is not null;

    public static string Class(int size) => string.Create(CultureInfo.InvariantCulture, $"s{size}");

    /// <summary>What the reader says, where the words of the sizes can be told apart.</summary>
    public ImmutableArray<SizedSpan> Say(Phrase phrase)
    {
        var said = reader.Say(phrase);
        if (_wording?.SayBySize(phrase) is { } sized && sized.Any(span => !span.InAll || !span.InOne || span.Size is not null)
            && string.Concat(sized.Where(s => s.InAll).Select(s => s.Text)) == string.Concat(said.Select(s => s.Text)))
            return sized;
        return [.. said.Select(span => new SizedSpan(span.Text, span.Strong))];
    }

    /// <summary>For narrow columns: the stroke between two units stays with the number before it.</summary>
    public ImmutableArray<SizedSpan> SayCell(Phrase phrase) =>
        [.. Say(phrase).Select(span => span with { Text = Reader.InCell(span.Text) })];

    /// <summary>Such as <c>Sizes S (M, L)</c>, and for one <c>Size M</c>, unless its name says that it is one.</summary>
    public ImmutableArray<SizedSpan> SizesLine()
    {
        if (!IsOffered)
            return [new SizedSpan(reader.SizesLine(booklet), Strong: false)];
        var line = ImmutableArray.CreateBuilder<SizedSpan>();
        line.Add(new SizedSpan(reader.Text("Sizes") + " ", Strong: false, InOne: false));
        line.AddRange(booklet.Sizes.Select((_, i) => i).Where(i => !Reader.SaysSize(booklet.Sizes[i]))
            .Select(i => new SizedSpan(reader.Text("Size") + " ", Strong: false, InAll: false, Size: i)));
        line.AddRange(_wording!.SayBySize(new Phrase([new WordChoice(new PerSize<string>(booklet.Sizes))])));
        return line.ToImmutable();
    }

    public ForWhom For(ForSizes some)
    {
        ImmutableArray<int> sizes = [.. some.Sizes.Select(name => booklet.Sizes.IndexOf(name)).Where(i => i >= 0).Distinct().Order()];
        return !IsOffered || sizes.Length == booklet.Sizes.Length ? ForWhom.Everyone : new ForWhom(true, true, sizes);
    }

    public ForWhom Column(int size) => IsOffered ? new ForWhom(true, true, [size]) : ForWhom.Everyone;

    /// <summary>A reader of each size, to draw what a picture shows of it alone.</summary>
    public IEnumerable<(ForWhom For, Reader Reader)> EachSize()
    {
        for (var i = 0; IsOffered && i < booklet.Sizes.Length; i++)
        {
            var edition = reader.Edition with { Size = booklet.Sizes[i] };
            yield return (new ForWhom(false, true, [i]), new Reader(edition, new Wording(booklet, edition).Say, reader.Effort));
        }
    }

    public void Write(HtmlText html)
    {
        if (!IsOffered)
            return;
        html.Raw("<fieldset class=\"choice\">\n<legend>").Text(reader.Text("Size to show")).Raw("</legend>\n<div class=\"options\">\n");
        html.Raw("<label><input type=\"radio\" name=\"size\" id=\"all-sizes\" checked=\"\"/><span>").Text(reader.Text("All sizes")).Raw("</span></label>\n");
        for (var i = 0; i < booklet.Sizes.Length; i++)
        {
            html.Raw(string.Create(CultureInfo.InvariantCulture, $"<label><input type=\"radio\" name=\"size\" id=\"size-{i}\"/><span>"));
            html.Text(booklet.Sizes[i]).Raw("</span></label>\n");
        }
        html.Raw("</div>\n<p class=\"shown\" role=\"status\">").Spans(Shown()).Raw("</p>\n</fieldset>\n");
    }

    private ImmutableArray<SizedSpan> Shown() =>
    [
        new SizedSpan(reader.Text("All sizes are shown. Choose yours, and the page shows and prints its numbers alone."), Strong: false, InOne: false),
        .. booklet.Sizes.Select((name, i) => new SizedSpan(
            reader.Text(Phrase.Of($"Only size {Phrase.Named(name)} is shown and printed.")), Strong: false, InAll: false, Size: i)),
    ];

    /// <summary>Not the classes of the sizes alone: an element for several is shown with each of them.</summary>
    public string Rules()
    {
        if (!IsOffered)
            return "";
        var rules = new StringBuilder();
        var classes = booklet.Sizes.Select((_, i) => "." + Class(i)).ToArray();
        for (var i = 0; i < classes.Length; i++)
        {
            var others = string.Join(", ", classes.Where((_, other) => other != i));
            rules.Append(CultureInfo.InvariantCulture, $":root:has(#size-{i}:checked) :is(.all, {others}):not({classes[i]}) {{ display: none; }}\n");
            rules.Append(CultureInfo.InvariantCulture, $":root:has(#size-{i}:checked) span:is(.one, {classes[i]})[hidden] {{ display: inline; }}\n");
            rules.Append(CultureInfo.InvariantCulture, $":root:has(#size-{i}:checked) div{classes[i]}[hidden] {{ display: block; }}\n");
        }
        return rules.ToString();
    }
}
