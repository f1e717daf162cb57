using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Findings;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Adapting;

/// <summary>
/// A pattern for a reader's own yarn, gauge and hands: as it is written, with another hook, worked out anew, or not of this yarn
/// (docs/adapting.md). The same materials give the same answer on every machine.
/// </summary>
public static class Adapter
{
    /// <param name="plan">Of the whole pattern, in every size.</param>
    /// <param name="sizeName">The reader's size, one of the plan's.</param>
    /// <param name="own">Counts and lengths as she measured them; what no document can say leads to faults.</param>
    /// <exception cref="ArgumentException">The plan has no such size.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static AdaptResult Adapt(Plan plan, string sizeName, OwnMaterials own, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(own);
        var size = SizeOf(plan, sizeName);
        var one = new OneSize(plan, size, cancel);
        var document = new OwnDocument(plan, own);
        var reading = ProjectReader.Read(ProjectWriter.WriteUtf8(document.Free(one.Project)));
        if (reading.Project is not { } free)
            return new AdaptResult(null, [.. reading.Faults]);
        if (!MeasuredYarn.TryMeasure(free.Yarn, free.Fabric, out var measured, out var reasons))
            return new AdaptResult(null, [.. reasons]);
        var words = new AdaptWords(plan, size, document, free, measured);
        if (IsOneColour(free))
            return Answer(AdaptVerdict.NotSuited, words.OneColour(), null);
        var (published, misfit) = new AsPublished(plan, size, one).Find(document, measured, own.Yarn.Sections, AdaptLimits.HookReach);
        if (published is not null)
        {
            return published.Hook == measured.Fabric.Swatch.HookMillimetres
                ? Answer(AdaptVerdict.AsWritten, words.AsWritten(published), published.Plan)
                : Answer(AdaptVerdict.OtherHook, words.OtherHook(published), published.Plan);
        }
        // A document that cannot be planned whatever the motif is a fault in what she gave, such as a ball shorter than one sequence.
        var asked = GarmentPlanner.Plan(free, cancel);
        if (asked.Outcome == PlanOutcome.BadInput)
            return new AdaptResult(null, asked.Reasons);
        var piece = Rederiving.Find(plan, size, free, cancel);
        if (piece.Plan is { } rederived)
            return Answer(AdaptVerdict.ReDerived, words.ReDerived(rederived, misfit!), rederived);
        var others = OtherGarments.Of(free, cancel);
        var no = Answer(AdaptVerdict.NotSuited, words.NotSuited(piece, others), null);
        return no with { Adaptation = no.Adaptation! with { Others = others } };

        AdaptResult Answer(AdaptVerdict verdict, string why, Plan? made) => new(
            new Adaptation(verdict, words.Cause, why, made, made is null ? [] : AdaptChanges.Of(plan, size, made)) { Document = free },
            []);
    }

    internal static SizePlan SizeOf(Plan plan, string name) => plan.Sizes.FirstOrDefault(s => s.Name == name)
        ?? throw new ArgumentException($"The pattern has no size {name}.", nameof(name));

    /// <summary>One colour, or several that nobody tells apart.</summary>
    private static bool IsOneColour(Project own)
    {
        var colours = own.Yarn.Sections.Select(s => s.Colour).Distinct().ToArray();
        return colours.All(c => LookAlikes.Difference(c, colours[0], Viewing.Normal) < LookAlikeLimits.Default.Adjacent);
    }
}
