using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Documents;

/// <summary>
/// What one kind of value looks like in the document: one description from which it is read, written, explained and
/// put into the JSON Schema.
/// </summary>
internal abstract class Shape
{
    /// <summary>What may stand here, as the words after "allowed:".</summary>
    public abstract string Allowed { get; }

    /// <summary>Something that may stand here.</summary>
    public abstract DocumentNode Example { get; }

    /// <summary>The outermost values that may stand here, or all where they are few; none where the parts have them.</summary>
    public virtual IEnumerable<DocumentNode> Ends => [];

    /// <summary>The shapes that this one is made of.</summary>
    public virtual IEnumerable<Shape> Parts => [];

    /// <summary>This shape in JSON Schema 2020-12.</summary>
    public abstract ObjectNode Schema(SchemaDefinitions definitions);
}

/// <inheritdoc cref="Shape"/>
internal abstract class Shape<T> : Shape
{
    /// <summary>Reads the value, or adds at least one fault and returns false.</summary>
    public abstract bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value);

    /// <param name="commentary">Where given, comments explain the fields of each kind of object once.</param>
    public abstract DocumentNode Write(T value, Commentary? commentary = null);

    /// <summary>Whether the two say the same in the document.</summary>
    public virtual bool Same(T a, T b) => EqualityComparer<T>.Default.Equals(a, b);
}

/// <summary>Remembers which kinds of object have been explained.</summary>
internal sealed class Commentary
{
    private readonly HashSet<string> _explained = new(StringComparer.Ordinal);

    /// <summary>True the first time that it is asked for a name.</summary>
    public bool Begin(string name) => _explained.Add(name);
}

/// <summary>The named parts of a JSON Schema.</summary>
internal sealed class SchemaDefinitions
{
    private readonly List<(string Name, DocumentNode Schema)> _definitions = [];
    private readonly HashSet<string> _begun = new(StringComparer.Ordinal);

    public ObjectNode All => ObjectNode.Of(_definitions);

    /// <summary>A reference to the definition of that name, made on its first use.</summary>
    public ObjectNode Reference(string name, Func<ObjectNode> define)
    {
        if (_begun.Add(name))
            _definitions.Add((name, define()));
        return ObjectNode.Of(("$ref", new TextNode($"#/$defs/{name}")));
    }
}
