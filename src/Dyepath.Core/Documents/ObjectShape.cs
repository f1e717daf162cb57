using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Documents;

/// <summary>An object with known fields.</summary>
internal sealed class ObjectShape<T> : Shape<T>, IObjectShape
{
    private readonly ImmutableArray<Field<T>> _fields;
    private readonly ImmutableArray<string> _names;
    private readonly Action<FieldValues, FaultList> _check;
    private readonly Func<FieldValues, T> _build;

    /// <param name="name">Of the definition in the JSON Schema.</param>
    /// <param name="define">Declares the fields and returns what makes the value of them once all are good.</param>
    public ObjectShape(string name, string description, Func<ObjectFields<T>, Func<FieldValues, T>> define)
    {
        Name = name;
        Description = description;
        var fields = new ObjectFields<T>();
        _build = define(fields);
        (_fields, _check) = (fields.All, fields.Checks);
        _names = [.. _fields.Select(f => f.Name)];
    }

    public string Name { get; }

    public string Description { get; }

    public IEnumerable<Field> Fields => _fields;

    public override string Allowed => $"an object with {string.Join(", ", _names)}";

    /// <summary>The required fields; where there are none, those that have defaults.</summary>
    public override DocumentNode Example => _fields.Any(f => f.IsRequired)
        ? ObjectNode.Of(_fields.Where(f => f.IsRequired).Select(f => (f.Name, f.Shape.Example)))
        : ObjectNode.Of(_fields.Where(f => f.Default is not null).Select(f => (f.Name, f.Default!)));

    public override IEnumerable<Shape> Parts => _fields.Select(f => f.Shape);

    public override bool TryRead(Place place, FaultList faults, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        var before = faults.Count;
        if (!Members.Check(place, _names, Allowed, faults, out _))
            return false;
        var values = new FieldValues(place, _fields.Length);
        foreach (var field in _fields)
            field.Read(values, faults);
        _check(values, faults);
        if (faults.Count > before)
            return false;
        value = _build(values);
        return true;
    }

    public override DocumentNode Write(T value, Commentary? commentary = null)
    {
        var explain = commentary is not null && commentary.Begin(Name);
        var members = ImmutableArray.CreateBuilder<Member>();
        var remarks = ImmutableArray.CreateBuilder<Remark>();
        foreach (var field in _fields)
        {
            if (field.Write(value, commentary) is { } written)
                members.Add(new Member(field.Name, written, explain ? field.Description : null));
            else if (explain)
                remarks.Add(new Remark(field.Name, $"{field.Description} Left out: {field.LeftOut}.", field.Shown));
        }
        return new ObjectNode(members.ToImmutable(), remarks.ToImmutable());
    }

    public override bool Same(T a, T b) => _fields.All(f => f.Same(a, b));

    public override ObjectNode Schema(SchemaDefinitions definitions) => definitions.Reference(Name, () => ObjectNode.Of(
        ("description", new TextNode(Description)),
        ("type", new TextNode("object")),
        ("properties", ObjectNode.Of(_fields.Select(f => (f.Name, (DocumentNode)FieldSchema(f, definitions))))),
        ("required", new ListNode([.. _fields.Where(f => f.IsRequired).Select(f => new TextNode(f.Name))])),
        ("additionalProperties", new FlagNode(false))));

    private static ObjectNode FieldSchema(Field<T> field, SchemaDefinitions definitions)
    {
        var schema = field.Shape.Schema(definitions);
        return schema with
        {
            Members =
            [
                new Member("description", new TextNode(field.Description)),
                .. schema.Members.Where(m => m.Name != "description"),
                .. field.Default is { } value ? [new Member("default", value)] : (ReadOnlySpan<Member>)[],
            ],
        };
    }
}

/// <summary>What a page about the document says of one kind of object.</summary>
internal interface IObjectShape
{
    string Name { get; }

    string Description { get; }

    IEnumerable<Field> Fields { get; }
}

/// <summary>Declares the fields of an object in the order in which they are written.</summary>
internal sealed class ObjectFields<T>
{
    private readonly List<Field<T>> _fields = [];

    public ImmutableArray<Field<T>> All => [.. _fields];

    public Action<FieldValues, FaultList> Checks { get; private set; } = (_, _) => { };

    public Field<T, TValue> Required<TValue>(string name, string description, Shape<TValue> shape, Func<T, TValue> get) =>
        Add(new Field<T, TValue>(name, description, shape, get, default!, null, _fields.Count));

    /// <summary>A field that has a value of its own when it is left out.</summary>
    public Field<T, TValue> Optional<TValue>(
        string name, string description, Shape<TValue> shape, Func<T, TValue> get, TValue otherwise, string? leftOut = null) =>
        Add(new Field<T, TValue>(
            name, description, shape, get, otherwise, leftOut ?? DocumentPrinter.Inline(shape.Write(otherwise)), _fields.Count));

    /// <summary>A field without a value when it is left out.</summary>
    public Field<T, TValue?> Optional<TValue>(
        string name, string description, Shape<TValue> shape, Func<T, TValue?> get, string leftOut)
        where TValue : struct =>
        Add(new Field<T, TValue?>(name, description, new NullableShape<TValue>(shape), get, null, leftOut, _fields.Count));

    /// <inheritdoc cref="Optional{TValue}(string, string, Shape{TValue}, Func{T, TValue?}, string)"/>
    public Field<T, TValue?> OptionalObject<TValue>(
        string name, string description, Shape<TValue> shape, Func<T, TValue?> get, string leftOut)
        where TValue : class =>
        Add(new Field<T, TValue?>(name, description, shape!, get, null, leftOut, _fields.Count));

    /// <summary>Runs after the fields are read, on those that could be.</summary>
    public void Check(Action<FieldValues, FaultList> check) => Checks += check;

    private Field<T, TValue> Add<TValue>(Field<T, TValue> field)
    {
        _fields.Add(field);
        return field;
    }
}
