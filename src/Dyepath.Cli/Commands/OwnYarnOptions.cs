using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Dyepath.Core.Adapting;
using Dyepath.Core.Colours;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Cli.Commands;

/// <summary>A reader's own yarn, gauge and hook, as options.</summary>
internal sealed class OwnYarnOptions
{
    private const int MostRepeats = 200;

    private readonly Option<string?> _sections = new("--sections")
    {
        Description = "Stitches of each colour along your yarn, as you counted them, in order: 5,4,3,5,4; several repeats with a slash between: 5,4,3,5,4/5,4,4,5,4. Or the length of each: 31.8cm,25cm,19.4cm. In linen stitch pairs of single crochet, chain 1.",
    };

    private readonly Option<string?> _taps = new("--taps")
    {
        Description = "In place of --sections: a text with the colour that each stitch of a swatch met, one word or letter a stitch; - reads standard input (see dyepath yarn --help).",
        HelpName = "FILE",
    };

    private readonly Option<string?> _colours = new("--colours")
    {
        Description = "A colour for each section: #1d4e5a, or a name, as the pattern's or CSS's (teal), or both: rust=#a14a2a. Without it, the pattern's in its order.",
    };

    private readonly Option<string?> _name = new("--yarn") { Description = "What your yarn is called. Without it, “your own yarn”." };

    private readonly Option<string?> _gauge = new("--gauge")
    {
        Description = "Your stitches x rows over 10 cm, such as 13x15, of a swatch finished as the pattern's is (washed and dried). Without it, the pattern's.",
    };

    private readonly Option<string?> _lambda = new("--lambda")
    {
        Description = "Yarn that one of your stitches takes, such as 6.4cm: unravel 20 and measure. In linen stitch that of a pair. Without it, the pattern's at your gauge.",
    };

    private readonly Option<string?> _hook = new("--hook") { Description = "The hook that you counted and swatched with, such as 5mm. Without it, the pattern's." };

    private readonly Option<string?> _ball = new("--ball-length") { Description = "Yarn on one of your balls, such as 200m. Without it, as on the pattern's." };

    public void AddTo(Command command)
    {
        foreach (var option in All)
            command.Options.Add(option);
    }

    /// <summary>The name of the first that was given; null where none was.</summary>
    public string? Given(ParseResult parsed) => All.FirstOrDefault(option => parsed.GetValue(option) is not null)?.Name;

    private Option<string?>[] All => [_sections, _taps, _colours, _name, _gauge, _lambda, _hook, _ball];

    /// <exception cref="BadInputException">An option that is missing, or cannot be read.</exception>
    public OwnMaterials Read(Terminal terminal, ParseResult parsed, Project pattern) =>
        new(parsed.GetValue(_taps) is { } taps ? Tapped(terminal, taps, parsed, pattern) : Counted(parsed, pattern))
        {
            Gauge = parsed.GetValue(_gauge) is { } gauge ? SequenceOptions.ReadGauge(gauge) : null,
            YarnPerStitch = parsed.GetValue(_lambda) is { } lambda
                ? Measure("--lambda", lambda, "the yarn of a stitch", Length.FromMillimetres(2), Length.FromMetres(6)) : null,
            HookMillimetres = parsed.GetValue(_hook) is { } hook ? Hook(hook) : null,
            Ball = parsed.GetValue(_ball) is { } ball ? Measure("--ball-length", ball, "a ball", Length.FromMetres(1), Length.FromMetres(20_000)) : null,
        };

    private string Name(ParseResult parsed) => parsed.GetValue(_name) ?? "your own yarn";

    /// <summary>Sections, their order and their counts as the taps show them.</summary>
    private OwnYarnCount Tapped(Terminal terminal, string file, ParseResult parsed, Project pattern)
    {
        if (parsed.GetValue(_sections) is not null)
            throw new BadInputException("--taps", "Give the stitches by --taps or by --sections, not by both.");
        var reading = TapReport.Taps(terminal, file).Read(HandsPrior.Default, []);
        if (reading.Sections.IsEmpty || reading.Balls.IsEmpty)
            throw new BadInputException("--taps", $"The sequence cannot be told from these stitches yet. {reading.Words}");
        var named = new List<(string Name, Srgb Colour)>();
        if (parsed.GetValue(_colours) is { } colours)
            named = [.. Colours(colours, reading.Sections.Length, pattern.Yarn)];
        else
        {
            foreach (var name in reading.Sections)
                named.Add(Colour("--colours", name, pattern.Yarn, named));
        }
        return new OwnYarnCount(
            Name(parsed), [.. named.Select(c => new YarnSection(c.Name, c.Colour))], [.. reading.Balls.SelectMany(b => b.Repeats)]);
    }

    private OwnYarnCount Counted(ParseResult parsed, Project pattern)
    {
        if (parsed.GetValue(_sections) is not { } text)
            throw new BadInputException("--sections", "Give the stitches that each colour of your yarn takes, in order, such as --sections 5,4,3,5,4.");
        var repeats = text.Split('/');
        if (repeats.Length > MostRepeats)
            throw new BadInputException("--sections", $"{repeats.Length} repeats were given; at most {MostRepeats} are read.");
        var words = repeats.Select(r => r.Split(',', StringSplitOptions.TrimEntries)).ToArray();
        var count = words[0].Length;
        if (count > ColourRing.MostSections)
            throw new BadInputException("--sections", $"{count} sections were given; at most {ColourRing.MostSections} are allowed.");
        for (var r = 1; r < words.Length; r++)
        {
            if (words[r].Length != count)
                throw new BadInputException("--sections", $"Repeat {r + 1} has {words[r].Length} colours and the first has {count}: give every repeat all of its colours.");
        }
        var lengths = words.Length == 1 && words[0].Any(w => w.Length > 1 && char.IsDigit(w[0]) && !char.IsDigit(w[^1]))
            ? words[0].Select((w, i) => Measure($"--sections[{i}]", w, "a section", Length.FromMillimetres(1), Length.FromMetres(100))).ToArray() : null;
        var colours = Colours(parsed.GetValue(_colours), count, pattern.Yarn);
        return new OwnYarnCount(
            Name(parsed), [.. colours.Select((c, i) => new YarnSection(c.Name, c.Colour, lengths?[i]))],
            lengths is not null ? [] : [.. words.Select(Counts)]);
    }

    /// <summary>Which option a place of the document comes from that her materials led to.</summary>
    public static string OptionOf(string place) => place switch
    {
        _ when place.StartsWith("yarn.name", StringComparison.Ordinal) => "--yarn",
        _ when place.StartsWith("yarn.ball", StringComparison.Ordinal) => "--ball-length",
        _ when place.Contains(".colour", StringComparison.Ordinal) || place.EndsWith(".name", StringComparison.Ordinal) => "--colours",
        _ when place.StartsWith("yarn", StringComparison.Ordinal) || place.StartsWith("fabric.sectionStitches", StringComparison.Ordinal) => "--sections",
        _ when place.Contains("yarnUsed", StringComparison.Ordinal) => "--lambda",
        _ when place.EndsWith("hook", StringComparison.Ordinal) => "--hook",
        _ when place.StartsWith("fabric", StringComparison.Ordinal) => "--gauge",
        _ => place,
    };

    private static ImmutableArray<int> Counts(string[] words, int repeat) =>
    [
        .. words.Select((word, i) => int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var stitches)
            && CountedBall.Counts.Holds(stitches) ? stitches
            : throw new BadInputException(
                $"--sections[{i}]", $"“{Shortened(word)}”{(repeat == 0 ? "" : $", in repeat {repeat + 1},")} is not a count: write whole stitches, 0 to {CountedBall.Counts.Largest:N0}. What lies between two counts is said by more repeats: 5,4/5,5. A length has its unit: 31.8cm.")),
    ];

    private static double Hook(string text) => TypedQuantity.TryHook(text, out var millimetres) ? millimetres
        : throw new BadInputException("--hook", $"“{Shortened(text)}” is not a hook; write its diameter, {Swatch.Hooks.Smallest} to {Swatch.Hooks.Largest} mm, such as 5.5mm.");

    private static Length Measure(string option, string text, string what, Length least, Length most)
    {
        if (!TypedQuantity.TryYarn(text, out var length))
            throw new BadInputException(option, $"“{Shortened(text)}” is not a length; write it with its unit, such as 6.4cm, 2.5in or 200m.");
        return length >= least && length <= most ? length
            : throw new BadInputException(option, string.Create(CultureInfo.InvariantCulture, $"“{Shortened(text)}” was given; {what} has {least.Centimetres:0.##} cm to {most.Metres:0.##} m."));
    }

    private static (string Name, Srgb Colour)[] Colours(string? text, int count, Yarn pattern)
    {
        if (text is null)
        {
            var sections = pattern.FromOtherEnd ? pattern.Sections.Reverse().ToArray() : [.. pattern.Sections];
            return count % sections.Length == 0
                ? [.. Enumerable.Range(0, count).Select(i => (sections[i % sections.Length].Name, sections[i % sections.Length].Colour))]
                : throw new BadInputException("--colours", $"Your yarn has {count} sections and the pattern's has {sections.Length}: give a colour for each of yours, such as --colours teal,#d9c7a3,rust=#a14a2a.");
        }
        var words = text.Split(',', StringSplitOptions.TrimEntries);
        if (words.Length != count)
            throw new BadInputException("--colours", $"{words.Length} colours were given for {count} sections; give one for each.");
        var named = new List<(string Name, Srgb Colour)>();
        for (var i = 0; i < count; i++)
            named.Add(Colour($"--colours[{i}]", words[i], pattern, named));
        return [.. named];
    }

    private static (string Name, Srgb Colour) Colour(
        string option, string word, Yarn pattern, IReadOnlyList<(string Name, Srgb Colour)> before)
    {
        var (name, code) = word.Split('=', 2, StringSplitOptions.TrimEntries) switch
        {
            [var both, var hex] => (both, hex),
            [var only] when only.StartsWith('#') => ("", only),
            [var only] => (only, ""),
            _ => ("", ""),
        };
        if (code.Length > 0)
        {
            if (!Srgb.TryParse(code, out var colour))
                throw new BadInputException(option, $"“{Shortened(code)}” is not a colour; write it as #rrggbb, such as #1d4e5a.");
            return (name.Length > 0 ? name : Described(colour, before), colour);
        }
        if (pattern.Sections.FirstOrDefault(s => s.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } section)
            return (section.Name, section.Colour);
        return ColourNames.Find(name) is { } known
            ? (name, known)
            : throw new BadInputException(option, $"“{Shortened(name)}” is no colour that is known by name: say which it is, such as {(name.Length is > 0 and < 20 ? name : "rust")}=#a14a2a.");
    }

    /// <summary>A colour without a name is called by what it looks like; of two that look alike, each by a number.</summary>
    private static string Described(Srgb colour, IReadOnlyList<(string Name, Srgb Colour)> before)
    {
        if (before.FirstOrDefault(b => b.Colour == colour) is { Name: { } same })
            return same;
        var words = ColourWords.Describe(colour);
        var name = words;
        for (var n = 2; before.Any(b => b.Name == name); n++)
            name = $"{words} {n}";
        return name;
    }

    private static string Shortened(string text) => text.Length <= 40 ? text : $"{text[..40]}…";
}
