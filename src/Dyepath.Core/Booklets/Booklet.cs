using System.Collections.Immutable;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Booklets;

/// <summary>
/// The instruction tree: what the pattern says, free of format, terms, units and hand. Renderers turn it into
/// text, HTML and PDF.
/// </summary>
/// <param name="Title">The garment's name, as the designer writes it.</param>
/// <param name="Designer">The name printed as the author's.</param>
/// <param name="Sizes">Names, smallest first; every <see cref="PerSize{T}"/> has as many values, or one.</param>
/// <param name="Edition">Terms, units, hand and size that the project asks for; another edition can be printed.</param>
/// <param name="Sections">In the order in which they are printed.</param>
public sealed record Booklet(
    string Title,
    string Designer,
    ImmutableArray<string> Sizes,
    Edition Edition,
    ImmutableArray<Section> Sections)
{
    /// <summary>Missing: the title stands alone.</summary>
    public BookletCover? Cover { get; init; }

    /// <summary>
    /// As an edition prints it: blocks for other sizes left out, the others in their place, neighbouring bullets one list; for one size
    /// without the bullets that only all sizes need.
    /// </summary>
    public Booklet For(Edition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        var isOne = edition.Size is not null || Sizes.Length == 1;
        return this with
        {
            Sections = [.. Sections.Select(section => section with { Blocks = Printed(section.Blocks, edition.Size, isOne) })],
        };
    }

    private static ImmutableArray<Block> Printed(ImmutableArray<Block> blocks, string? size, bool isOne)
    {
        var printed = ImmutableArray.CreateBuilder<Block>();
        foreach (var block in blocks)
        {
            ImmutableArray<Block> here = isOne && block is Bullets list ? list.InOneSize()
                : block is not ForSizes some ? [block]
                : size is null || some.Sizes.Contains(size) ? Printed(some.Blocks, size, isOne) : [];
            foreach (var one in here)
            {
                if (one is Bullets more && printed.Count > 0 && printed[^1] is Bullets before)
                    printed[^1] = new Bullets([.. before.Items, .. more.Items]);
                else
                    printed.Add(one);
            }
        }
        return printed.ToImmutable();
    }
}

/// <param name="Id">Stable name for links, such as <c>materials</c>.</param>
/// <param name="Title">The section's heading.</param>
/// <param name="Blocks">In the order in which they are printed.</param>
/// <param name="NewPage">Starts a page in print.</param>
public sealed record Section(string Id, Phrase Title, ImmutableArray<Block> Blocks, bool NewPage = false);

/// <summary>What stands in a section, one below the other: words, steps, a table or a picture.</summary>
public abstract record Block;

/// <summary>A heading within a section.</summary>
/// <param name="Text">Without a full stop.</param>
public sealed record Subheading(Phrase Text) : Block;

/// <summary>Running text.</summary>
/// <param name="Text">Whole sentences.</param>
public sealed record Paragraph(Phrase Text) : Block;

/// <summary>The designer's own words, at the place named.</summary>
/// <param name="Place">One of <see cref="WordPlaces.All"/>.</param>
/// <param name="Text">As the designer typed it, in any language; no terms or units are exchanged in it.</param>
public sealed record OwnWords(string Place, string Text) : Block;

/// <summary>Something that could hurt or spoil; shown apart, with a sign and not by colour alone.</summary>
/// <param name="Text">Whole sentences.</param>
public sealed record Caution(Phrase Text) : Block;

/// <summary>A list without numbers.</summary>
/// <param name="Items">In the order in which they are printed.</param>
public sealed record Bullets(ImmutableArray<Phrase> Items) : Block
{
    /// <summary>Without the items that say nothing to one size; nothing at all where no other is left.</summary>
    internal ImmutableArray<Block> InOneSize()
    {
        ImmutableArray<Phrase> said =
        [
            .. Items.Where(item => !item.Leaves.Any() || item.Leaves.Any(part => part is not InAllSizes and not Words { Text: "" })),
        ];
        return said.Length == Items.Length ? [this] : said.IsEmpty ? [] : [new Bullets(said)];
    }
}

/// <summary>Printed where one of these sizes is; <see cref="Booklet.For"/> puts what it holds in its place.</summary>
/// <param name="Sizes">Names of sizes as <see cref="Booklet.Sizes"/> has them.</param>
/// <param name="Blocks">What is said to these sizes alone.</param>
public sealed record ForSizes(ImmutableArray<string> Sizes, ImmutableArray<Block> Blocks) : Block;

/// <summary>Rows or rounds to work, each with its label, such as <c>Row 1 (RS)</c>.</summary>
/// <param name="Items">In the order in which they are worked.</param>
public sealed record Steps(ImmutableArray<Instruction> Items) : Block;

/// <summary>One row or round to work, or several that are alike.</summary>
/// <param name="Label">Which rows or rounds, such as <c>Row 1 (RS)</c>.</param>
/// <param name="Text">How they are worked.</param>
public sealed record Instruction(Phrase Label, Phrase Text);

/// <summary>A table with one header row and one header column.</summary>
/// <param name="Caption">Printed above the table.</param>
/// <param name="Head">One phrase a column, the header column's included.</param>
/// <param name="Rows">Each as long as <paramref name="Head"/>; the first cell heads its row.</param>
/// <param name="PerSizeColumns">Columns after the first are the sizes; a one-size edition keeps one of them.</param>
public sealed record Table(Phrase Caption, ImmutableArray<Phrase> Head, ImmutableArray<ImmutableArray<Phrase>> Rows, bool PerSizeColumns)
    : Block
{
    /// <summary>Empty boxes beside every row, to tick what is done: as often as the row is worked, or some of it.</summary>
    public int Ticks { get; init; }

    /// <summary>Header row and rows, of which a one-size edition keeps the first column and its own.</summary>
    /// <param name="only">Index of the size, or null for all.</param>
    public IEnumerable<ImmutableArray<Phrase>> ForSize(int? only)
    {
        ImmutableArray<ImmutableArray<Phrase>> all = [Head, .. Rows];
        return PerSizeColumns && only is { } size ? all.Select(row => ImmutableArray.Create(row[0], row[size + 1])) : all;
    }
}

/// <param name="Picture">What is drawn, free of format.</param>
/// <param name="Caption">Printed below the picture.</param>
/// <param name="Alternative">One or two sentences that say what a sighted person sees.</param>
public sealed record Figure(Picture Picture, Phrase Caption, Phrase Alternative) : Block;
