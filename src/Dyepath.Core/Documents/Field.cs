using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Documents;

/// <summary>One property of an object.</summary>
/// <param name="description">What it means, as sentences.</param>
/// <param name="leftOut">What holds when it is left out; null, it may not be.</param>
internal abstract class Field(string name, string description, string? leftOut)
{
    public string Name => name;

    public string Description => description;

    public bool IsRequired => leftOut is null;

    public string? LeftOut => leftOut;

    public abstract Shape Shape { get; }

    /// <summary>What it is when left out, as the document would say it; null where no text could say it.</summary>
    public abstract DocumentNode? Default { get; }

    /// <summary>A value to show where it is left out: its default, unless that is empty.</summary>
    public DocumentNode Shown =>
        Default is null or ListNode { Items.Length: 0 } or ObjectNode { Members.Length: 0 } ? Shape.Example : Default;
}

/// <inheritdoc/>
internal abstract class Field<TOwner>(string name, string description, string? leftOut, int index)
    : Field(name, description, leftOut)
{
    protected int Index => index;

    /// <summary>Reads it, or takes its default when it is left out.</summary>
    public abstract void Read(FieldValues values, FaultList faults);

    /// <summary>Null when it is left out.</summary>
    public abstract DocumentNode? Write(TOwner owner, Commentary? commentary);

    public abstract bool Same(TOwner a, TOwner b);
}

/// <inheritdoc cref="Field{TOwner}"/>
internal sealed class Field<TOwner, TValue>(
    string name, string description, Shape<TValue> shape, Func<TOwner, TValue> get, TValue otherwise, string? leftOut, int index)
    : Field<TOwner>(name, description, leftOut, index)
{
    public override Shape Shape => shape;

    public override DocumentNode? Default => IsRequired || otherwise is null ? null : shape.Write(otherwise);

    /// <summary>The value of an object whose fields are all good.</summary>
    public TValue From(FieldValues values) => (TValue)values[Index]!;

    /// <summary>False when the field could not be read.</summary>
    public bool TryFrom(FieldValues values, [MaybeNullWhen(false)] out TValue value)
    {
        value = values.Has(Index) ? From(values) : default;
        return values.Has(Index);
    }

    public override void Read(FieldValues values, FaultList faults)
    {
        var at = values.Place.Member(Name);
        if (values.Place.Node is ObjectNode node && node.Find(Name) is not null)
        {
            if (shape.TryRead(at, faults, out var value))
                values.Set(Index, value);
        }
        else if (IsRequired)
        {
            faults.Form(at, shape.Allowed, "Add it.", "nothing");
        }
        else
        {
            values.Set(Index, otherwise);
        }
    }

    public override DocumentNode? Write(TOwner owner, Commentary? commentary)
    {
        var value = get(owner);
        if (!IsRequired && (value is null || (otherwise is not null && shape.Same(value, otherwise))))
            return null;
        return shape.Write(value, commentary);
    }

    public override bool Same(TOwner a, TOwner b)
    {
        var (first, second) = (get(a), get(b));
        return first is null || second is null ? first is null && second is null : shape.Same(first, second);
    }
}

/// <summary>The fields of one object as far as they could be read.</summary>
internal sealed class FieldValues(Place place, int count)
{
    private readonly object?[] _values = new object?[count];
    private readonly bool[] _good = new bool[count];

    public Place Place => place;

    public object? this[int index] => _values[index];

    public bool Has(int index) => _good[index];

    public void Set(int index, object? value) => (_values[index], _good[index]) = (value, true);
}
