using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What directions give, and why one of them was taken.</summary>
public static class DirectionWords
{
    /// <summary>As a sentence has it: worked up, or sideways.</summary>
    public static string Of(Direction direction) => direction == Direction.Up ? "up" : "sideways";

    /// <summary>Which direction a plan has and how it fits, and the same of the other direction where there is one.</summary>
    public static string Why(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (chosen, asked) = (plan.Chosen, plan.Project.Garment.Direction is not null);
        var begin = $"Worked {Of(chosen.Direction)}{(asked ? ", as asked" : "")}: {Reason(chosen, plan.Project.Edition.Units)}{(plan.FurthestBeyond is { } furthest ? $" Furthest off of all measures: {furthest.Say(plan.Project.Edition.Units)}." : "")}";
        if (plan.Options.FirstOrDefault(o => o.Direction != chosen.Direction) is not { } other)
            return begin;
        if (chosen.LostShare > 0)
            begin += $" Where edges are cut, {Lost(chosen)}.";
        if (!other.Feasible)
            return $"{begin} Worked {Of(other.Direction)}, no counts serve.";
        var lost = chosen.LostShare > 0 || other.LostShare > 0 ? $", and {Lost(other)}" : "";
        var choice = asked ? "" : $" The one whose furthest size is nearer is taken; a further count has to bring {Wording.Say(Grader.CountSaving, plan.Project.Edition.Units)}, and what a count forgives is worth something too{(lost.Length > 0 ? $", as a tenth of the motif is worth {Wording.Say(Length.FromCentimetres(1), plan.Project.Edition.Units)}" : "")}.";
        return $"{begin} Worked {Of(other.Direction)} it would be {Counts(other)}; {Furthest(other, plan.Project.Edition.Units)}{lost}.{choice}";
    }

    /// <summary>Its counts, how they fit and what they forgive; or why there are none.</summary>
    public static string Reason(DirectionOption option, Units units = Units.Centimetres)
    {
        ArgumentNullException.ThrowIfNull(option);
        return option.Feasible
            ? FormattableString.Invariant($"{Counts(option)}; {Furthest(option, units)}. {(option.Counts.Length == 1 ? "It forgives" : "They forgive")} {option.Forgives:0.0 %} of yarn per {(option.Ruler.StitchesPerUnit == 1 ? "stitch" : "pair of stitches")}, all through, before the motif is lost.")
            : string.Join(" ", option.Reasons.Select(r => r.Text));
    }

    /// <summary>Such as <c>furthest off of width and length: size M, width, 3.6 cm too wide</c>.</summary>
    public static string Furthest(DirectionOption option, Units units = Units.Centimetres)
    {
        ArgumentNullException.ThrowIfNull(option);
        return $"furthest off{(option.Decides.IsEmpty ? "" : $" of {Wording.List(option.Decides.Select(GarmentMeasures.Words))}")}: {option.Furthest?.Say(units) ?? "no size"}";
    }

    /// <summary>Such as <c>9 % of the stitches are lost to the motif</c>.</summary>
    public static string Lost(DirectionOption option)
    {
        ArgumentNullException.ThrowIfNull(option);
        return option.LostShare switch
        {
            0 => "the motif goes on unbroken",
            < 0.005 => "hardly a stitch is lost to the motif",
            var share => FormattableString.Invariant($"{share:0 %} of the stitches are lost to the motif"),
        };
    }

    /// <summary>Such as <c>2 stitch counts (84, 96)</c>.</summary>
    private static string Counts(DirectionOption option) => option.Counts is [var only]
        ? $"one stitch count ({only}) for every size" : $"{option.Counts.Length} stitch counts ({string.Join(", ", option.Counts)})";
}
