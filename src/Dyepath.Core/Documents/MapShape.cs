using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Documents;

/// <summary>The names of a map.</summary>
internal interface IMapShape
{
    ImmutableArray<string> Names { get; }
}

/// <summary>Values of one kind under names from a known list, any of which may be left out.</summary>
internal sealed class MapShape<T>(string what, ImmutableArray<string> names, Shape<T> item, int fewest)
    : Shape<ImmutableSortedDictionary<string, T>>, IMapShape
{
    public ImmutableArray<string> Names => names;

    public static ImmutableSortedDictionary<string, T> Empty { get; } = ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);

    public override string Allowed => $"an object with {what}: {string.Join(", ", names)}";

    public override DocumentNode Example => ObjectNode.Of((names[0], item.Example));

    public override IEnumerable<Shape> Parts => [item];

    public override bool TryRead(
        Place place, FaultList faults, [MaybeNullWhen(false)] out ImmutableSortedDictionary<string, T> value)
    {
        var before = faults.Count;
        var map = Empty.ToBuilder();
        value = null;
        if (!Members.Check(place, names, Allowed, faults, out var node))
            return false;
        if (node.Members.Length < fewest)
            faults.Form(place, Allowed, FormattableString.Invariant($"Give at least {fewest}."), "too few");
        foreach (var member in node.Members.DistinctBy(m => m.Name).Where(m => names.Contains(m.Name)))
        {
            if (item.TryRead(place.Member(member.Name), faults, out var read))
                map[member.Name] = read;
        }
        value = map.ToImmutable();
        return faults.Count == before;
    }

    public override DocumentNode Write(ImmutableSortedDictionary<string, T> value, Commentary? commentary = null) =>
        ObjectNode.Of(names.Where(value.ContainsKey).Select(n => (n, item.Write(value[n], commentary))));

    public override bool Same(ImmutableSortedDictionary<string, T> a, ImmutableSortedDictionary<string, T> b) =>
        a.Count == b.Count && a.All(pair => b.TryGetValue(pair.Key, out var other) && item.Same(pair.Value, other));

    public override ObjectNode Schema(SchemaDefinitions definitions) => ObjectNode.Of(
        ("type", new TextNode("object")),
        ("properties", ObjectNode.Of(names.Select(n => (n, (DocumentNode)item.Schema(definitions))))),
        ("minProperties", NumberNode.Of(fewest)),
        ("additionalProperties", new FlagNode(false)));
}

/// <summary>What objects with known names have in common.</summary>
internal static class Members
{
    /// <summary>False when the value is no object; adds a fault for each unknown or doubled name.</summary>
    public static bool Check(
        Place place, ImmutableArray<string> names, string allowed, FaultList faults, [NotNullWhen(true)] out ObjectNode? node)
    {
        node = place.Node as ObjectNode;
        if (node is null)
        {
            faults.Form(place, allowed, "Write an object: { … }.");
            return false;
        }
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (name, value, _) in node.Members)
        {
            if (faults.IsFull)
                break;
            var at = place.Member(name, value);
            if (seen.TryGetValue(name, out var line))
                faults.Form(
                    at, "each property once", $"Keep one of the two; the other is on line {line}.", $"{Shown.Text(name)} a second time");
            else if (!names.Contains(name))
                faults.Form(
                    at, string.Join(", ", names), Nearest.Suggest(name, names, "Take it out."), $"the unknown property {Shown.Text(name)}");
            seen.TryAdd(name, value.Line);
        }
        return true;
    }
}
