using System.Collections.Immutable;

namespace Dyepath.Core.Sizing;

/// <summary>What a pattern should tell its maker for safety.</summary>
/// <param name="Rule">The regulation as it is cited; missing, it is advice.</param>
/// <param name="Feature">What of the garment it is about.</param>
/// <param name="Scope">The ages or sizes it names, in its own words.</param>
/// <param name="Limit">What it forbids, limits or recommends.</param>
/// <param name="For">Whose garments it touches, by the chart's wearers.</param>
/// <param name="Source">Where it was read.</param>
public sealed record SafetyRule(string? Rule, string Feature, string Scope, string Limit, Wearers For, Citation Source)
{
    /// <summary>What of a garment it is about; <see cref="SafetyParts.None"/>: every garment.</summary>
    public SafetyParts About { get; init; }

    /// <summary>Only where the garment has a cord or a drawstring besides.</summary>
    public bool OfCords { get; init; }

    /// <summary>Who keeps a garment from being sleepwear has followed it.</summary>
    public bool OfSleepwear { get; init; }
}

/// <summary>What a garment has that rules of safety are about.</summary>
[Flags]
public enum SafetyParts
{
    /// <summary>Nothing that rules are about in particular.</summary>
    None = 0,

    /// <summary>It is worn on the upper body.</summary>
    Top = 1,

    /// <summary>It is worn on the lower body.</summary>
    Lower = 2,

    /// <summary>It is worn on the head.</summary>
    Head = 4,

    /// <summary>It has buttons.</summary>
    Buttons = 8,

    /// <summary>It has a cord or a drawstring.</summary>
    Cords = 16,
}

/// <summary>Facts to be checked against the regulations in force where the garment is sold.</summary>
public static class SafetyRules
{
    /// <summary>Belongs beside every rule that is printed.</summary>
    public const string Disclaimer = "This is not legal advice: check the rules in force where the garment is made and sold.";

    private const Wearers Children = Wearers.Child | Wearers.Youth;

    private static readonly Citation Register = new(Provenance.Published, "Federal Register 76 FR 42502 and the agency's answers");

    private static readonly Citation Authority = new(Provenance.Published, "a market-surveillance authority's page");

    private static readonly Citation CodeText = new(
        Provenance.Published, "text of the Code of Federal Regulations; char lengths from memory");

    private static readonly Citation Memory = new(Provenance.FromMemory, "from memory; check the standard");

    private static readonly Citation Practice = new(Provenance.CommonPractice, "common practice, no source");

    /// <summary>Regulations first, then advice.</summary>
    public static ImmutableArray<SafetyRule> All { get; } =
    [
        new("US 16 CFR 1120 (2011) and ASTM F1816-97", "drawstrings at hood and neck of upper outerwear", "sizes 2T to 12",
            "none allowed", Children, Register) { About = SafetyParts.Top | SafetyParts.Head, OfCords = true },
        new("US 16 CFR 1120 (2011) and ASTM F1816-97", "drawstrings at waist and bottom of upper outerwear", "sizes 2T to 16",
            "at most 3 in (75 mm) outside the channel at full width; no toggles or knots; a continuous string is bar-tacked",
            Children, Register) { About = SafetyParts.Top, OfCords = true },
        new("EN 14682:2014", "cords and drawstrings at hood, head and neck", "up to 7 years or 134 cm",
            "none allowed; no ties behind the neck", Wearers.Baby | Wearers.Child, Authority) { About = SafetyParts.Top | SafetyParts.Head, OfCords = true },
        new("EN 14682:2014", "drawstrings at hood and neck", "7 to 14 years (to 176 cm girls, 182 cm boys)",
            "no free ends", Children, Authority) { About = SafetyParts.Top | SafetyParts.Head, OfCords = true },
        new("EN 14682:2014", "functional and decorative cords at the neck", "7 to 14 years",
            "free ends at most 75 mm", Children, Memory) { About = SafetyParts.Top, OfCords = true },
        new("EN 14682:2014", "waist ties, sashes and drawstrings", "up to 14 years",
            "drawstring ends at most 140 mm with the garment fully open; no toggles; sashes at most 360 mm",
            Wearers.Baby | Children, Memory) { About = SafetyParts.Top | SafetyParts.Lower, OfCords = true },
        new("US 16 CFR 1615", "flammability of children's sleepwear", "above 9 months to 6X",
            "char length at most 7 in on average, 10 in singly", Wearers.Baby | Wearers.Child, CodeText) { About = SafetyParts.Top | SafetyParts.Lower, OfSleepwear = true },
        new("US 16 CFR 1616", "flammability of children's sleepwear", "sizes 7 to 14",
            "char length at most 7 in on average, 10 in singly", Children, CodeText) { About = SafetyParts.Top | SafetyParts.Lower, OfSleepwear = true },
        new("US 16 CFR 1615.1(c)", "infant garments exempt as sleepwear", "9 months or smaller",
            "one piece at most 64.8 cm (25.75 in), each of two at most 40 cm (15.75 in); must meet 16 CFR 1610", Wearers.Baby, CodeText) { About = SafetyParts.Top | SafetyParts.Lower, OfSleepwear = true },
        new("US 16 CFR 1501", "small parts such as buttons", "under 3 years",
            "what comes off must not fit into a cylinder 31.7 mm across and 25.4 to 57.1 mm deep, and every button here does: for a wearer under three sew it through all layers with doubled thread and pull hard at it before each wear, or use a closure that cannot come off", Wearers.Baby | Wearers.Child, Memory) { About = SafetyParts.Buttons },
        new(null, "sleepwear", "children",
            "crochet is open and loose: not to be used as children's sleepwear", Wearers.Baby | Children, Practice) { About = SafetyParts.Top | SafetyParts.Lower },
        new(null, "babies' garments", "babies",
            "no loose, hairy or shedding fibre; no gaps that trap fingers; no loose floats; no ties at the neck; weave in every end",
            Wearers.Baby, Practice),
        new(null, "dye", "all", "soak a strand on white cloth before pooling dark beside pale; wash cold", Wearers.Everyone, Practice),
        new(null, "hands", "makers",
            "pause every 30 to 60 minutes, hold the hook lightly, stop where a hand goes numb and ask a doctor",
            Wearers.Everyone, new(Provenance.Published, "craft advice, not medical guidance")),
    ];

    /// <summary>The rules that touch a garment for these wearers, in the order of <see cref="All"/>.</summary>
    /// <param name="parts">What it has, and where it is worn.</param>
    public static ImmutableArray<SafetyRule> Touching(Wearers wearers, SafetyParts parts) =>
        [.. All.Where(rule => (rule.For & wearers) != Wearers.None
            && (rule.About == SafetyParts.None || (rule.About & parts) != SafetyParts.None))];
}
