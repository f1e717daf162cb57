using System.Collections.Immutable;

namespace Dyepath.Core.Documents;

/// <summary>Gathers the faults of one reading, at most a hundred.</summary>
internal sealed class FaultList
{
    public const int Most = 100;

    private readonly List<Fault> _faults = [];

    public int Count { get; private set; }

    /// <summary>True when no further fault would be listed, so that none need be looked for.</summary>
    public bool IsFull => Count > Most;

    public void Form(Place place, string allowed, string next, string? found = null) =>
        Add(place, FaultKind.Form, found ?? Shown.Node(place.Node), allowed, next);

    public void Meaning(Place place, string allowed, string next, string? found = null) =>
        Add(place, FaultKind.Meaning, found ?? Shown.Node(place.Node), allowed, next);

    public void NotJson(int line, string found, string allowed, string next) =>
        Add(new Fault(Place.Whole, line, FaultKind.NotJson, found, allowed, next));

    public ImmutableArray<Fault> ToImmutable() => Count <= Most
        ? [.. _faults]
        : [
            .. _faults,
            new Fault(Place.Whole, 1, _faults[0].Kind, "more faults", $"{Most} are listed", "Mend these first, then read again."),
        ];

    private void Add(Place place, FaultKind kind, string found, string allowed, string next) =>
        Add(new Fault(place.Path.Length == 0 ? Place.Whole : place.Path, Math.Max(1, place.Node.Line), kind, found, allowed, next));

    private void Add(Fault fault)
    {
        Count++;
        if (_faults.Count < Most)
            _faults.Add(fault);
    }
}
