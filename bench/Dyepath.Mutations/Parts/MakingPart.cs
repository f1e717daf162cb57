using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Projects;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Parts;

/// <summary>Pieces under way, read, planned and followed entry by entry as beside the hook.</summary>
internal sealed class MakingPart : IPart
{
    private static readonly DateTimeOffset Begun = DateTimeOffset.FromUnixTimeMilliseconds(1_764_000_000_000);

    private readonly Dictionary<string, Plan?> _plans = [];
    private string[] _bases = [];

    public string Name => "makings";

    public Task PrepareAsync(int seed)
    {
        _bases = [.. Bases.Projects(seed, 25).Select((json, i) => Write(json, new Random(unchecked(seed + i))))];
        return Task.CompletedTask;
    }

    public static string Write(string project, Random random)
    {
        var read = ProjectReader.Read(Encoding.UTF8.GetBytes(project)).Project!;
        var plan = GarmentPlanner.Plan(read).Plan!;
        var making = MakingDocument.Begin(read, plan.Sizes[random.Next(plan.Sizes.Length)].Name);
        var log = Enumerable.Range(0, random.Next(3, 60)).Select(i => new Entry(
            random.Next(5) switch { 0 => (EntryKind)random.Next(10), 1 or 2 => EntryKind.Row, 3 => EntryKind.Step, _ => EntryKind.Run }, Begun.AddMinutes(i),
            random.Next(3) == 0 ? random.Next(-3, 4) : null, random.Next(4) == 0 ? random.Next(1, 20) : null));
        var repeats = Enumerable.Range(0, random.Next(3)).Select(_ => read.Yarn.Sections.Select(_ => random.Next(1, 9)).ToArray()).ToArray();
        return Encoding.UTF8.GetString(MakingWriter.WriteUtf8(making with { Log = [.. log], Counted = [.. repeats.Select(r => System.Collections.Immutable.ImmutableArray.Create(r))] }));
    }

    public byte[] Input(int seed, int number)
    {
        var random = new Random(unchecked(seed * 1_000_003 + number));
        var json = _bases[random.Next(_bases.Length)];
        if (random.Next(4) == 0)
            return Mutator.Damage(json, random);
        // The design is tried elsewhere: here mostly the log.
        var tree = JsonTree.Parse(json);
        var at = tree.Names.IndexOf("\"project\"");
        var project = tree.Children[at].Clone();
        tree.Children[at] = JsonTree.Value("0");
        var damaged = Encoding.UTF8.GetString(Mutator.Damage(tree.ToString(), random));
        return Encoding.UTF8.GetBytes(damaged.Replace("\"project\":0", $"\"project\":{project}", StringComparison.Ordinal));
    }

    public Task<string> TryAsync(byte[] input, int number, CancellationToken cancel) => Task.FromResult(Try(input, cancel));

    private string Try(byte[] input, CancellationToken cancel)
    {
        var reading = MakingReader.Read(input);
        if (reading.IsGood == !reading.Faults.IsEmpty)
            throw new Broken("it is read and has faults, or neither");
        Located.Check(reading.Faults);
        if (reading.Making is not { } making)
            return reading.Faults[0].Kind == FaultKind.NotJson ? "no JSON" : "refused by the reader";
        var written = MakingWriter.WriteUtf8(making);
        if (Same.Difference(making, MakingReader.Read(written).Making) is { } difference)
            throw new Broken($"written and read again it differs: {difference}");
        Kept.Check(input, written, text => Same.Difference(making, MakingReader.Read(text).Making) is null);
        var design = ProjectWriter.Write(making.Project);
        if (!_plans.TryGetValue(design, out var plan))
        {
            if (_plans.Count > 200)
                _plans.Clear();
            var result = GarmentPlanner.Plan(making.Project, cancel);
            Located.Check(result, input);
            _plans.Add(design, plan = result.Plan);
        }
        if (plan is null)
            return "no plan";
        if (plan.Sizes.All(s => s.Name != making.Size))
            throw new Broken($"a making of size {making.Size} is accepted, which its design has not");
        Follow(plan, making);
        return "followed";
    }

    /// <summary>As the page beside the hook does.</summary>
    private static void Follow(Plan plan, MakingDocument making)
    {
        var own = making.Counted.IsEmpty ? null : OwnYarn.Of(making.Project, plan.Sequence.Ring, making.Counted);
        var order = MakingOrder.Of(plan, making.Size);
        var wording = new Wording([making.Size], making.Project.Edition with { Size = null });
        var state = MakingState.Begin(order, own);
        foreach (var entry in making.Log)
        {
            state = state.Apply(entry);
            if (state.PartIndex < 0 || state.PartIndex >= order.Parts.Length || state.Here.Step < 0 || state.Here.Step > state.Part.Steps.Length)
                throw new Broken("the log leads out of the piece");
            if (state.Drift is { } drift && !(double.IsFinite(drift.Filter.PhaseMean) && double.IsFinite(drift.Filter.PhaseSd)))
                throw new Broken("the drift is no number");
        }
        _ = state.Runs;
        wording.Text(state.Part.Title);
        if (state.Step is { } step)
            wording.Text(step.Label);
        HandsLog.Of(state);
        if (own is not null && GarmentPlanner.Plan(OwnYarn.Rederive(making.Project, making.Counted)) is { Plan: null, Reasons.IsEmpty: true })
            throw new Broken("the design for her own yarn has no plan and no reason");
    }

    public ValueTask DisposeAsync() => default;
}
