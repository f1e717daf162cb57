using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Cli.Commands;

/// <summary>Options that several commands share, and what their values must be.</summary>
internal sealed class SequenceOptions
{
    public Option<string> Sections { get; } = new("--sections")
    {
        Description = "Stitches of each colour along the yarn, in order, such as 5,4,6,7 or 5.2,4.1,6,7.3; at most 64. In linen stitch pairs of single crochet, chain 1.",
        Required = true,
    };

    public Option<string?> Colours { get; } = new("--colours")
    {
        Description = "A colour for each section, such as #1d4e5a,#d9c7a3,…; equal colours count as one. Without it every section is a colour of its own.",
    };

    public Option<string> Worked { get; } = new("--worked")
    {
        Description = "How rows follow each other: turned, rounds, rounds-turned or spiral.",
        DefaultValueFactory = _ => "turned",
    };

    public Option<string> Stitch { get; } = new("--stitch")
    {
        Description = $"What is worked: {string.Join(", ", FabricStitch.All.Select(s => s.Id))}. Where a turning chain counts as a stitch, it is the row's first.",
        DefaultValueFactory = _ => FabricStitch.SingleCrochet.Id,
    };

    public Option<double> TurnCost { get; } = new("--turn-cost")
    {
        CustomParser = NumberText.Read<double>,
        Description = "Yarn that each turn or join takes, in stitches, in linen stitch in pairs; negative allowed. 0: absorbed. A chain 1 left to itself is about 0.45.",
    };

    public Option<string> Gauge { get; } = new("--gauge")
    {
        Description = "Stitches x rows over 10 cm, such as 14x16.",
        DefaultValueFactory = _ => "14x16",
    };

    public Option<bool> Json { get; } = new("--json") { Description = "Write the result as JSON." };

    public void AddTo(Command command)
    {
        command.Options.Add(Sections);
        command.Options.Add(Colours);
        command.Options.Add(Worked);
        command.Options.Add(Stitch);
        command.Options.Add(TurnCost);
        command.Options.Add(Gauge);
        command.Options.Add(Json);
    }

    public ColourRing Ring(ParseResult parsed)
    {
        var sections = Numbers("--sections", parsed.GetRequiredValue(Sections));
        if (sections.Length > ColourRing.MostSections)
            throw new BadInputException("--sections", $"{sections.Length} sections were given; at most {ColourRing.MostSections} are allowed.");
        for (var i = 0; i < sections.Length; i++)
        {
            if (!(sections[i] >= 1e-6 && sections[i] <= ColourRing.LongestSequence))
                throw new BadInputException($"--sections[{i}]", $"{Said(sections[i])} was given; a section has over 0 and at most {ColourRing.LongestSequence} stitches.");
        }
        if (sections.Sum() > ColourRing.LongestSequence)
            throw new BadInputException("--sections", $"Together they have {Said(sections.Sum())} stitches; at most {ColourRing.LongestSequence} are allowed.");
        return Palette(parsed) is { } colours
            ? ColourRing.FromUnits(sections, colours.Length == sections.Length
                ? colours
                : throw new BadInputException("--colours", $"{colours.Length} colours were given for {sections.Length} sections; give one for each."))
            : ColourRing.FromUnits(sections);
    }

    public Srgb[]? Palette(ParseResult parsed)
    {
        if (parsed.GetValue(Colours) is not { } text)
            return null;
        var words = text.Split(',');
        var colours = new Srgb[words.Length];
        for (var i = 0; i < words.Length; i++)
        {
            var word = words[i].Trim();
            if (!Srgb.TryParse(word.StartsWith('#') ? word : "#" + word, out colours[i]))
                throw new BadInputException($"--colours[{i}]", $"“{word}” is not a colour; write it as #rrggbb, such as #1d4e5a.");
        }
        return colours;
    }

    /// <summary>The colours' contrasts, where colours are given.</summary>
    public Palette? LabPalette(ParseResult parsed, ColourRing ring) => Palette(parsed) is { } colours
        ? Core.Motifs.Palette.FromLab(ring, [.. colours.Select(c => c.ToLab())
            .Select(lab => (Math.Clamp(lab.Lightness, 0, 100), lab.A, lab.B))])
        : null;

    public Working Working(ParseResult parsed) => parsed.GetRequiredValue(Worked) switch
    {
        "turned" => Core.Fabrics.Working.Turned,
        "rounds" => Core.Fabrics.Working.Rounds,
        "rounds-turned" => Core.Fabrics.Working.RoundsTurned,
        "spiral" => Core.Fabrics.Working.Spiral,
        var other => throw new BadInputException("--worked", $"“{other}” is not a way of working; use turned, rounds, rounds-turned or spiral."),
    };

    public FabricStitch ReadStitch(ParseResult parsed)
    {
        var id = parsed.GetRequiredValue(Stitch);
        return FabricStitch.All.FirstOrDefault(s => s.Id == id)
            ?? throw new BadInputException("--stitch", $"“{id}” is not a stitch; use {string.Join(", ", FabricStitch.All.Select(s => s.Id))}.");
    }

    /// <summary>How the yarn runs, from the sequence's start.</summary>
    public PathOptions Path(ParseResult parsed, Working working)
    {
        var stitch = ReadStitch(parsed);
        var cost = ReadTurnCost(parsed, working);
        if (stitch.TurningChainCounts && PathOptions.TakesNoChain(cost))
            throw new BadInputException("--turn-cost", $"A turning chain that counts takes some yarn: over {PathOptions.CountingChainOver}, not {Said(cost)}.");
        return new() { TurnCost = cost, StitchesPerUnit = stitch.StitchesPerUnit, TurningChainCounts = stitch.TurningChainCounts };
    }

    /// <summary>Refuses rows whose turn takes back all of their yarn.</summary>
    /// <param name="stitches">Of the shortest row.</param>
    public static void RequireYarn(int stitches, PathOptions path)
    {
        if (path.TakesBack(stitches, path.TurnCost))
            throw new BadInputException("--turn-cost", $"It takes back the whole row of {stitches} stitches.");
    }

    public Gauge ReadGauge(ParseResult parsed) => ReadGauge(parsed.GetRequiredValue(Gauge));

    /// <summary>A gauge as <c>--gauge</c> has it.</summary>
    /// <exception cref="BadInputException">It is none.</exception>
    public static Gauge ReadGauge(string text)
    {
        var parts = text.Split('x', 'X', '×');
        if (parts.Length == 2
            && TryNumber(parts[0], out var stitches) && TryNumber(parts[1], out var rows)
            && stitches is > 0 and <= 400 && rows is > 0 and <= 400)
        {
            return new Gauge(stitches, rows, Length.FromCentimetres(10));
        }
        throw new BadInputException("--gauge", $"“{text}” was given; write stitches x rows over 10 cm, such as 14x16, each over 0 and at most 400.");
    }

    private double ReadTurnCost(ParseResult parsed, Working working)
    {
        var cost = InRange(parsed, TurnCost, PathOptions.TurnCosts.Smallest, PathOptions.TurnCosts.Largest, "stitches");
        return working == Core.Fabrics.Working.Spiral && cost != 0
            ? throw new BadInputException("--turn-cost", "A spiral has no turn or join; leave the turn cost out.")
            : cost;
    }

    public static double InRange(ParseResult parsed, Option<double> option, double least, double most, string unit)
    {
        var value = parsed.GetValue(option);
        return value >= least && value <= most
            ? value
            : throw new BadInputException(option.Name, $"{Said(value)} was given; it must lie from {Said(least)} to {Said(most)} {unit}.".Replace(" .", ".", StringComparison.Ordinal));
    }

    public static int InRange(ParseResult parsed, Option<int> option, int least, int most, string unit)
    {
        var value = parsed.GetValue(option);
        return value >= least && value <= most
            ? value
            : throw new BadInputException(option.Name, $"{value} was given; it must lie from {least} to {most:N0} {unit}.".Replace(" .", ".", StringComparison.Ordinal));
    }

    public static string Said(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static double[] Numbers(string option, string text)
    {
        var words = text.Split(',');
        var numbers = new double[words.Length];
        for (var i = 0; i < words.Length; i++)
        {
            if (!TryNumber(words[i], out numbers[i]))
                throw new BadInputException($"{option}[{i}]", $"“{words[i].Trim()}” is not a number; write numbers with a decimal point, separated by commas.");
        }
        return numbers;
    }

    private static bool TryNumber(string text, out double number) =>
        double.TryParse(
            text.Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number)
        && double.IsFinite(number);
}
