using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Yarn;

/// <summary>What a ruler of the yarn is divided into.</summary>
public enum RulerScale
{
    /// <summary>Lengths along the yarn.</summary>
    Centimetres,

    /// <summary>Lengths along the yarn.</summary>
    Inches,

    /// <summary>Lengths are not known, counted stitches are.</summary>
    Stitches,

    /// <summary>Neither is known: all sections stand equally wide.</summary>
    Nothing,
}

/// <summary>A section on the ruler, in the scale's unit.</summary>
/// <param name="Section">As it is typed.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Known">False where the width only holds its place.</param>
public sealed record RulerPart(SectionView Section, double From, double To, bool Known)
{
    /// <summary>How long it is.</summary>
    public double Extent => To - From;
}

/// <summary>One whole sequence along a ruler, as the hook meets it from left to right.</summary>
/// <param name="Scale">Lengths where any is typed, else stitches where any are counted.</param>
/// <param name="Parts">From left to right.</param>
/// <param name="FromOtherEnd">The ball is pulled from its other end, so that the yarn's last section is the first part.</param>
public sealed record SequenceRuler(RulerScale Scale, ImmutableArray<RulerPart> Parts, bool FromOtherEnd)
{
    /// <summary>In the scale's unit.</summary>
    public double Total => Parts.Length == 0 ? 0 : Parts[^1].To;

    /// <summary>Parts are as long as the yarn's sections.</summary>
    public bool HasLengths => Scale is RulerScale.Centimetres or RulerScale.Inches;

    /// <summary>As written beside the scale; empty where nothing is known.</summary>
    public string Unit => Scale switch
    {
        RulerScale.Centimetres => "cm",
        RulerScale.Inches => "in",
        RulerScale.Stitches => "stitches",
        _ => "",
    };

    /// <summary>Least change that hands can mean: a millimetre, an eighth of an inch.</summary>
    public decimal Step => Scale == RulerScale.Inches ? 0.125m : 0.1m;

    /// <summary>Divisions of the scale; every one with a number is drawn longer.</summary>
    public IEnumerable<(double At, bool Numbered)> Marks()
    {
        if (Total <= 0 || Scale == RulerScale.Nothing)
            yield break;
        var numbered = Scale == RulerScale.Stitches ? Math.Max(1, IntervalScale.Step(Total, 12)) : IntervalScale.Step(Total, 8);
        var fine = Scale switch
        {
            RulerScale.Stitches => 1,
            RulerScale.Inches => Math.Max(numbered / 10, 0.5),
            _ => numbered / 10,
        };
        var each = Math.Max(1, (int)Math.Round(numbered / fine));
        for (var n = 0; n * fine <= Total + 1e-9; n++)
            yield return (n * fine, n % each == 0);
    }

    /// <summary>Whether the boundary at the right end of a part can be moved.</summary>
    public bool CanMove(int boundary) =>
        HasLengths && Parts[boundary].Known && (boundary == Parts.Length - 1 || Parts[boundary + 1].Known);

    /// <summary>Where a boundary may go.</summary>
    public (double Least, double Most) Range(int boundary) => (
        Parts[boundary].From + (double)Step,
        boundary == Parts.Length - 1 ? Math.Max(2 * Total, Total + 10) : Parts[boundary + 1].To - (double)Step);

    /// <summary>Lengths, as the document writes them, after a boundary was moved; the sum changes only with the last one.</summary>
    /// <param name="to">In the scale's unit, kept within <see cref="Range"/>.</param>
    public ImmutableArray<(int Section, string Length)> Move(int boundary, double to)
    {
        var part = Parts[boundary];
        var (least, most) = Range(boundary);
        var wanted = Math.Clamp(to, least, Math.Max(least, most)) - part.From;
        var own = Math.Max(Step, Math.Round((decimal)wanted / Step, MidpointRounding.AwayFromZero) * Step);
        if (boundary == Parts.Length - 1)
            return [(part.Section.Index, Written(own))];
        var next = Parts[boundary + 1];
        var both = Exact(part.Extent) + Exact(next.Extent);
        own = Math.Clamp(own, Step, Math.Max(Step, both - Step));
        return [(part.Section.Index, Written(own)), (next.Section.Index, Written(both - own))];
    }

    /// <summary>Place among the parts of what lies at a share of the ruler.</summary>
    public int PartAt(double share)
    {
        var at = Math.Clamp(share, 0, 1) * Total;
        var before = Parts.Count(p => p.To <= at);
        return Math.Min(before, Parts.Length - 1);
    }

    /// <param name="counted">Stitches that each section takes, in the yarn's order; empty where nothing is known.</param>
    public static SequenceRuler Of(ImmutableArray<SectionView> sections, IReadOnlyList<double> counted, bool fromOtherEnd, bool inches)
    {
        var scale = sections.Any(s => s.Length is not null) ? (inches ? RulerScale.Inches : RulerScale.Centimetres)
            : counted.Count == sections.Length && sections.Length > 0 ? RulerScale.Stitches
            : RulerScale.Nothing;
        var known = sections.Select(s => Known(s, scale, counted)).ToArray();
        var usual = known.Any(k => k is not null) ? known.Average()!.Value : 1;
        var parts = ImmutableArray.CreateBuilder<RulerPart>();
        var from = 0.0;
        foreach (var section in fromOtherEnd ? sections.Reverse() : sections)
        {
            var to = from + (known[section.Index] ?? usual);
            parts.Add(new RulerPart(section, from, to, known[section.Index] is not null));
            from = to;
        }
        return new SequenceRuler(scale, parts.ToImmutable(), fromOtherEnd);
    }

    private static double? Known(SectionView section, RulerScale scale, IReadOnlyList<double> counted) => scale switch
    {
        RulerScale.Centimetres => section.Length?.Centimetres,
        RulerScale.Inches => section.Length?.Inches,
        RulerScale.Stitches => Math.Max(0.1, counted[section.Index]),
        _ => null,
    };

    private static decimal Exact(double value) => Math.Round((decimal)value, 6);

    private string Written(decimal value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.######} {Unit}");
}
