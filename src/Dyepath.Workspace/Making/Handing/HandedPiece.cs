using System.Collections.Immutable;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Making.Handing;

/// <summary>What a tester is told of a piece before she begins it.</summary>
/// <param name="Gauge">Worked, washed, hung: as the pattern says it.</param>
/// <param name="Materials">The lines of the pattern's section of materials.</param>
/// <param name="Cautions">The pattern's own.</param>
public sealed record HandedWords(ImmutableArray<string> Gauge, ImmutableArray<string> Materials, ImmutableArray<string> Cautions);

/// <summary>A piece that was handed over, and what is to be told of it.</summary>
/// <param name="Making">The document, with an empty log.</param>
/// <param name="Words">In the terms and units of its edition.</param>
public sealed record HandedPiece(MakingDocument Making, HandedWords Words)
{
    /// <summary>Null where the text is no piece that can be made in its size.</summary>
    public static HandedPiece? TryOf(string text)
    {
        if (MakingReader.Read(Encoding.UTF8.GetBytes(text)).Making is not { } making
            || GarmentPlanner.Plan(making.Project).Plan is not { } plan || plan.Sizes.All(s => s.Name != making.Size))
        {
            return null;
        }
        var edition = making.Project.Edition with { Size = making.Size };
        var booklet = PatternWriter.Write(plan);
        var wording = new Wording(booklet, edition);
        var sections = booklet.For(edition).Sections;
        return new HandedPiece(
            making,
            new HandedWords(
                Bullets("gauge"), Bullets("materials"),
                [.. sections.SelectMany(s => s.Blocks).OfType<Caution>().Select(c => wording.Text(c.Text))]));

        ImmutableArray<string> Bullets(string section) =>
            sections.Single(s => s.Id == section).Blocks.OfType<Bullets>().FirstOrDefault() is { } first
                ? [.. first.Items.Select(wording.Text)] : [];
    }
}
