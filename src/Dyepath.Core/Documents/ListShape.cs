using System.Collections.Immutable;

namespace Dyepath.Core.Documents;

/// <summary>How many a list may hold.</summary>
internal interface IListShape
{
    int Fewest { get; }

    int Most { get; }
}

/// <summary>A list of one kind of value.</summary>
/// <param name="what">The plural noun, such as <c>sections</c>.</param>
internal sealed class ListShape<T>(string what, Shape<T> item, int fewest, int most) : Shape<ImmutableArray<T>>, IListShape
{
    public int Fewest => fewest;

    public int Most => most;

    public override string Allowed => FormattableString.Invariant($"a list of {fewest} to {most} {what}");

    public override DocumentNode Example => new ListNode([item.Example]);

    public override IEnumerable<Shape> Parts => [item];

    public override bool TryRead(Place place, FaultList faults, out ImmutableArray<T> value)
    {
        value = [];
        if (place.Node is not ListNode list || list.Items.Length < fewest || list.Items.Length > most)
        {
            faults.Form(place, Allowed, place.Node is ListNode ? "Add or remove some." : "Write a list: [ … ].");
            return false;
        }
        var before = faults.Count;
        var items = ImmutableArray.CreateBuilder<T>(list.Items.Length);
        for (var i = 0; i < list.Items.Length; i++)
        {
            if (item.TryRead(place.Item(i), faults, out var read))
                items.Add(read);
        }
        value = items.ToImmutable();
        return faults.Count == before;
    }

    public override DocumentNode Write(ImmutableArray<T> value, Commentary? commentary = null) =>
        new ListNode([.. value.Select(i => item.Write(i, commentary))]);

    public override bool Same(ImmutableArray<T> a, ImmutableArray<T> b) =>
        a.Length == b.Length && a.Zip(b).All(pair => item.Same(pair.First, pair.Second));

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(
        ("type", new TextNode("array")),
        ("minItems", NumberNode.Of(fewest)),
        ("maxItems", NumberNode.Of(most)),
        ("items", item.Schema(definitions)));
}
