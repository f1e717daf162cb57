using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;

namespace Dyepath.Bench.Makers;

/// <summary>The page beside the hook as a maker meets it: a sentence, tiles and what can be tapped. Nothing else gets through to her.</summary>
internal sealed class BesidePage
{
    private static readonly DateTimeOffset Then = DateTimeOffset.UnixEpoch;
    private readonly IReadOnlyList<string> _names;
    private MakingState _state;

    /// <param name="order">Its first part in the yarn's colours is worked.</param>
    public BesidePage(MakingOrder order)
    {
        _names = [.. order.Plan.Sequence.Colours.Select(c => c.Name)];
        _state = MakingState.Begin(order);
        while (_state.Part.Planned is null) _state = _state.Apply(new Entry(EntryKind.Part, Then, To: _state.PartIndex + 2));
        ToRow();
    }

    /// <summary>What is made.</summary>
    public MakingPart Part => _state.Part;

    /// <summary>From 0; missing when all rows are worked.</summary>
    public int? Row => _state.Row?.Row;

    /// <summary>What it advises; missing where it has nothing to say.</summary>
    public string? Sentence => AdviceWords.Say(_state, [.. _names]);

    /// <summary>The row's colours in the order of work.</summary>
    public IEnumerable<(string Colour, int Stitches)> Tiles => _state.Runs.Select(run => (_names[run.Section], run.Units));

    /// <summary>Which tile is marked, from 0.</summary>
    public int? Marked => AdviceWords.Mark(_state);

    /// <summary>At the beginning of which tile it asks for a second look, from 0; missing where it asks for none.</summary>
    public int? AsksToLookAt => AdviceWords.Look(_state);

    /// <summary>What the engine has in mind for a stitch: for makers who follow numbers, which no maker does.</summary>
    public double Meant(int stitch) => _state.Drift!.CorrectionAt(stitch);

    /// <summary>Whether it asks to look twice.</summary>
    public bool Doubts(EntryKind did, int phase) => _state.AsksForRecount(did, phase);

    /// <summary>Whether it asks to look twice.</summary>
    public bool DoubtsLook(int tile, int phase) => _state.AsksForRecount(EntryKind.Look, phase, tile);

    /// <param name="tile">The tile that begins there, from 0.</param>
    public void Looked(int tile, int phase) => Tap(EntryKind.Look, phase, tile);

    public void RowDone(int? phase)
    {
        Tap(EntryKind.Row, phase);
        ToRow();
    }

    public void RunDone(int? phase)
    {
        Tap(EntryKind.Run, phase);
        ToRow();
    }

    /// <param name="row">From 0.</param>
    public void Ripped(int row) => Tap(EntryKind.At, to: row + 1);

    public void Did(EntryKind what, int? to = null) => Tap(what, to: to);

    private void Tap(EntryKind did, int? phase = null, int? to = null) => _state = _state.Apply(new Entry(did, Then, phase, to));

    private void ToRow()
    {
        while (_state is { Row: null, Step: not null }) Tap(EntryKind.Step);
    }
}
