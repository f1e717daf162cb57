using System.Text;
using Dyepath.Bench;
using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Tests.Garment;

/// <summary>
/// The page of the docs that shows every garment. Its pictures follow the planner and are drawn anew with <c>DYEPATH_REWRITE=1</c>; a run
/// without it asks only that none is missing.
/// </summary>
public sealed class GarmentsDocPageTests
{
    private const string Folder = "docs/garments";

    private sealed record Shown(string Title, IReadOnlyList<(string File, string Words, Func<string> Draw)> Pictures);

    [Fact]
    public void The_page_of_garments_is_up_to_date()
    {
        var shown = Repertoire.All.Select(Garment).Append(Necks()).ToArray();
        if (RepositoryFile.IsRewritten)
        {
            Directory.CreateDirectory(RepositoryFile.Find(Folder));
            foreach (var (file, _, draw) in shown.SelectMany(s => s.Pictures))
                File.WriteAllText(RepositoryFile.Find($"{Folder}/{file}"), draw());
        }
        Assert.Equal(
            shown.SelectMany(s => s.Pictures).Select(p => p.File).Order(StringComparer.Ordinal),
            Directory.GetFiles(RepositoryFile.Find(Folder)).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        RepositoryFile.IsUpToDate("docs/garments.md", Page(shown));
    }

    private static Shown Garment(GarmentKind kind)
    {
        var starter = Starter.Of(kind, kind.IsToBody ? kind.Chart : null).First();
        var plan = GarmentPictures.PlanOf(starter);
        return new Shown(kind.Title, [
            .. Worn(plan, kind.Name),
            ($"{kind.Name}-pieces.svg", "its pieces", () => GarmentPictures.Pieces(plan)),
            ($"{kind.Name}-fabric.svg", "their fabric", () => GarmentPictures.Fabric(plan)),
        ]);
    }

    private static Shown Necks() => new("Necks", [
        .. Repertoire.All.Where(k => k.Name == "pullover").SelectMany(k => Starter.Of(k, k.Chart)).SelectMany(
            s => Worn(GarmentPictures.PlanOf(s), $"neck-{s.Neck}").Select(p => p with { Words = $"{s.Neck}, {p.Words}" })),
    ]);

    private static IEnumerable<(string File, string Words, Func<string> Draw)> Worn(Plan plan, string name)
    {
        yield return ($"{name}-front.svg", "from the front", () => GarmentPictures.Worn(plan, WornGarment.Front(plan, plan.Sizes[0])));
        if (WornGarment.Behind(plan, plan.Sizes[0]) is { } behind)
            yield return ($"{name}-behind.svg", "from behind", () => GarmentPictures.Worn(plan, behind));
    }

    private static string Page(IEnumerable<Shown> shown)
    {
        var page = new StringBuilder("""
            # Garments

            Every garment as it is begun, in the middle size of its chart and the starter's yarn: as worn, its pieces as in the booklet, and
            their fabric laid out as it is worn. [constructions.md](constructions.md) says how they are described. This page and its pictures are
            made from the code:
            `DYEPATH_REWRITE=1 dotnet tests/Dyepath.Workspace.Tests/bin/Release/net10.0/Dyepath.Workspace.Tests.dll -method "*up_to_date*"`.

            """);
        foreach (var (title, pictures) in shown)
        {
            page.Append('\n').Append("## ").Append(title).Append("\n\n");
            foreach (var (file, words, _) in pictures)
                page.Append($"<img src=\"garments/{file}\" alt=\"{title}, {words}\">\n");
        }
        return page.ToString();
    }
}
