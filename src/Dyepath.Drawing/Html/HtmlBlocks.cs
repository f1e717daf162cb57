using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;

namespace Dyepath.Drawing.Html;

/// <summary>What stands in a section, each block with the sizes that it is for.</summary>
internal sealed class HtmlBlocks(HtmlText html, Booklet booklet, Reader reader, SizeChoice choice, HtmlFigures figures)
{
    /// <summary>Of a label that leaves its line to the step, however narrow the page.</summary>
    private const int LongestNumber = 3;

    /// <summary>Of a cell that is not broken, such as <c>100.5 / 39½</c>.</summary>
    private const int LongestAmount = 13;

    private int _tables;

    /// <summary>Neighbouring bullets are one list, whoever they are for; other blocks for the same sizes stand in one division.</summary>
    public void Write(ImmutableArray<Block> blocks)
    {
        (ForWhom For, Block Block)[] all = [.. Flat(blocks, ForWhom.Everyone)];
        for (var i = 0; i < all.Length;)
        {
            var end = i + 1;
            if (all[i].Block is Bullets)
            {
                while (end < all.Length && all[end].Block is Bullets)
                    end++;
                WriteBullets(all[i..end]);
            }
            else
            {
                while (end < all.Length && all[end].Block is not Bullets && all[end].For.Equals(all[i].For))
                    end++;
                WriteGroup(all[i..end]);
            }
            i = end;
        }
    }

    private IEnumerable<(ForWhom For, Block Block)> Flat(ImmutableArray<Block> blocks, ForWhom outer) => blocks.SelectMany(block =>
        block is ForSizes some ? Flat(some.Blocks, Both(outer, choice.For(some))) : [(outer, block)]);

    private static ForWhom Both(ForWhom outer, ForWhom inner) => outer.Sizes is not { } some ? inner
        : inner.Sizes is not { } others ? outer : outer with { Sizes = [.. some.Intersect(others)] };

    private void WriteGroup((ForWhom For, Block Block)[] group)
    {
        var isForSome = group[0].For.Sizes is not null;
        if (isForSome)
            html.Raw($"<div{group[0].For.Attributes()}>\n");
        foreach (var (_, block) in group)
            WriteBlock(block);
        if (isForSome)
            html.Raw("</div>\n");
    }

    private void WriteBullets((ForWhom For, Block Block)[] lists)
    {
        (ForWhom For, ImmutableArray<SizedSpan> Words)[] items =
        [
            .. from bullets in lists
               from item in ((Bullets)bullets.Block).Items
               let words = choice.Say(item)
               select (OnlyToAll(words) ? new ForWhom(true, false, null) : bullets.For, words),
        ];
        // A list of which every item is hidden is no list.
        ForWhom[] inOne = [.. items.Select(item => item.For).Where(whom => whom.InOne)];
        var list = inOne.Any(whom => whom.Sizes is null) ? ForWhom.Everyone
            : new ForWhom(true, inOne.Length > 0, [.. inOne.SelectMany(whom => whom.Sizes!.Value).Distinct().Order()]);
        html.Raw($"<ul{list.Attributes("plain")}>\n");
        foreach (var (whom, words) in items)
            html.Raw($"<li{whom.Attributes()}>").Spans(words).Raw("</li>\n");
        html.Raw("</ul>\n");
    }

    private static bool OnlyToAll(ImmutableArray<SizedSpan> words) => words.Length > 0 && words.All(w => !w.InOne || w.Text.Length == 0);

    private void WriteBlock(Block block)
    {
        switch (block)
        {
            case Subheading heading:
                html.Raw("<h3>").Spans(choice.Say(heading.Text)).Raw("</h3>\n");
                break;
            case Paragraph paragraph:
                html.Raw("<p>").Spans(choice.Say(paragraph.Text)).Raw("</p>\n");
                break;
            case OwnWords own:
                foreach (var paragraph in BookletParts.Paragraphs(own))
                    html.Raw("<p dir=\"auto\">").Text(paragraph).Raw("</p>\n");
                break;
            case Caution caution:
                html.Raw("<div class=\"caution\" role=\"note\"><svg viewBox=\"0 0 24 24\" role=\"img\" aria-label=\"").Text(reader.Text("Caution")).Raw("\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\">");
                html.Raw("<path d=\"M12 3 22 21H2zM12 10v5M12 17.5v1\"/></svg><p>").Spans(choice.Say(caution.Text)).Raw("</p></div>\n");
                break;
            case Steps steps:
                var numbered = steps.Items.All(step => reader.Text(step.Label).Length <= LongestNumber);
                html.Raw($"<dl class=\"steps{(numbered ? " numbers" : "")}\">\n");
                foreach (var step in steps.Items)
                    html.Raw("<div><dt>").Spans(choice.Say(step.Label)).Raw("</dt><dd>").Spans(choice.Say(step.Text)).Raw("</dd></div>\n");
                html.Raw("</dl>\n");
                break;
            case Table table:
                WriteTable(table);
                break;
            case Figure figure:
                figures.Write(figure);
                break;
            case Photo photo:
                html.Raw(string.Create(CultureInfo.InvariantCulture, $"<figure class=\"photo\"><img width=\"{photo.Picture.Width}\" height=\"{photo.Picture.Height}\" alt=\""));
                html.Text(photo.Alternative).Raw("\" src=\"data:image/jpeg;base64,").Raw(photo.Picture.Base64).Raw("\"/></figure>\n");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "No HTML for this kind of block.");
        }
    }

    /// <summary>A row that is something to work is ticked off once it is.</summary>
    private void WriteTable(Table table)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"table{++_tables}");
        html.Raw($"<div class=\"table\" role=\"region\" tabindex=\"0\" aria-labelledby=\"{id}\">");
        var kind = !table.PerSizeColumns ? "by-row" : IsShort(table) ? "by-size short" : "by-size";
        html.Raw($"<table class=\"{kind}\">\n<caption id=\"{id}\">");
        html.Spans(choice.Say(table.Caption)).Raw("</caption>\n");
        var head = true;
        foreach (var row in table.ForSize(reader.OnlySize(booklet)))
        {
            html.Raw(head ? "<thead><tr>" : "<tr>");
            for (var column = 0; column < row.Length; column++)
            {
                var whom = table.PerSizeColumns && column > 0 ? choice.Column(column - 1) : ForWhom.Everyone;
                var tag = head || column == 0 ? "th" : "td";
                html.Raw($"<{tag}{whom.Attributes()}{(tag == "td" ? "" : head ? " scope=\"col\"" : " scope=\"row\"")}>");
                if (!head && column == 0 && table.Ticks > 0)
                    Tick($"{reader.Text(table.Head[0])} {reader.Text(row[0])}");
                html.Spans(choice.SayCell(row[column])).Raw($"</{tag}>");
            }
            html.Raw(head ? "</tr></thead>\n<tbody>\n" : "</tr>\n");
            head = false;
        }
        html.Raw("</tbody>\n</table></div>\n");
    }

    private bool IsShort(Table table) => table.Rows.All(row => row.Skip(1).All(cell => reader.Text(cell).Length <= LongestAmount));

    private void Tick(string row) => html.Raw("<input type=\"checkbox\" aria-label=\"").Text(reader.Text(Phrase.Of($"{Phrase.Named(row)} is worked"))).Raw("\"/>");
}
