using System.Collections.Immutable;
using Dyepath.Core.Documents;

namespace Dyepath.Core.Tests.Projects;

/// <summary>A document with one value at an end of its range.</summary>
/// <param name="Place">Where, such as <c>yarn.ball.length = 1 m</c>.</param>
internal sealed record Edge(string Place, DocumentNode Document);

/// <summary>
/// Walks a document beside its description and puts the ends of every documented range in turn where they may stand: what the description
/// allows is found in the description, and a field that is added to it is walked without a line here.
/// </summary>
internal static class Edges
{
    public static DocumentNode Parse(ReadOnlySpan<byte> utf8) => DocumentParser.Parse(utf8, new FaultList())!;

    public static IEnumerable<Edge> Of(Shape shape, DocumentNode document) => Vary(shape, document, "");

    private static IEnumerable<Edge> Vary(Shape shape, DocumentNode? node, string place)
    {
        foreach (var end in shape.Ends)
            yield return new Edge($"{place} = {DocumentPrinter.Inline(end)}", end);
        var further = shape switch
        {
            IVariantShape variant => Cases(variant, node, place),
            IObjectShape made => Fields(made, node as ObjectNode ?? (ObjectNode)shape.Example, place),
            IListShape list => Items(list, shape, node as ListNode ?? (ListNode)shape.Example, place),
            IMapShape map => Names(map, shape.Parts.Single(), node as ObjectNode ?? ObjectNode.Of(), place),
            _ => shape.Parts.SelectMany(part => Vary(part, node, place)),
        };
        foreach (var edge in further)
            yield return edge;
    }

    private static IEnumerable<Edge> Cases(IVariantShape variant, DocumentNode? node, string place)
    {
        var word = ((node as ObjectNode)?.Find(variant.Key)?.Value as TextNode)?.Text;
        return variant.Cases.Where(c => word is null || c.Names.Contains(word))
            .SelectMany(c => Vary((Shape)c.Shape, word is null ? null : node, place));
    }

    private static IEnumerable<Edge> Fields(IObjectShape shape, ObjectNode node, string place)
    {
        foreach (var field in shape.Fields)
        {
            foreach (var edge in Vary(field.Shape, node.Find(field.Name)?.Value, $"{place}.{field.Name}"))
                yield return edge with { Document = With(node, field.Name, edge.Document) };
            if (!field.IsRequired && node.Find(field.Name) is not null)
            {
                yield return new Edge(
                    $"{place}.{field.Name} left out", node with { Members = [.. node.Members.Where(m => m.Name != field.Name)] });
            }
        }
    }

    private static IEnumerable<Edge> Items(IListShape list, Shape shape, ListNode node, string place)
    {
        var item = shape.Parts.Single();
        var known = node.Items.IsEmpty ? [item.Example] : node.Items;
        foreach (var count in new[] { list.Fewest, list.Most }.Where(count => count <= 400))
        {
            yield return new Edge(
                $"{place} of {count}", new ListNode([.. Enumerable.Range(0, count).Select(i => known[i % known.Length])]));
        }
        foreach (var at in new[] { 0, known.Length - 1 }.Distinct())
        {
            foreach (var edge in Vary(item, known[at], $"{place}[{at}]"))
                yield return edge with { Document = new ListNode(known.SetItem(at, edge.Document)) };
        }
    }

    private static IEnumerable<Edge> Names(IMapShape map, Shape item, ObjectNode node, string place) => map.Names
        .SelectMany(name => Vary(item, node.Find(name)?.Value, $"{place}.{name}")
            .Select(edge => edge with { Document = With(node, name, edge.Document) }));

    private static ObjectNode With(ObjectNode node, string name, DocumentNode value) => node with
    {
        Members = node.Find(name) is null
            ? node.Members.Add(new Member(name, value))
            : [.. node.Members.Select(m => m.Name == name ? new Member(name, value) : m)],
    };
}
