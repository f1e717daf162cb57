using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Reading;

/// <summary>Follows the instructions of every piece, size by size.</summary>
internal sealed partial class PieceReader(ImmutableArray<string> sizes, List<string> wrong)
{
    private readonly List<ReadPiece> _pieces = [];

    public ImmutableArray<ReadPiece> Read(ImmutableArray<TextPart> parts)
    {
        foreach (var part in parts.Where(p => p.Heading.Length > 0))
        {
            var steps = part.Lines.Select(l => Step().Match(l)).Where(m => m.Success)
                .Select(m => (Label: m.Groups["label"].Value, Words: m.Groups["words"].Value)).ToArray();
            var only = OneSize().Match(part.Heading) is { Success: true } one ? sizes.IndexOf(one.Groups["size"].Value) : -1;
            for (var size = 0; size < sizes.Length; size++)
            {
                if (only < 0 || only == size)
                    Follow(only < 0 ? part.Heading : OneSize().Match(part.Heading).Groups["name"].Value, steps, size);
            }
        }
        return [.. _pieces];
    }

    private void Follow(string heading, (string Label, string Words)[] steps, int size)
    {
        var place = $"{heading}, size {sizes[size]}";
        var piece = new ReadPiece(heading, sizes[size], -1, [], 0, [], 0, null);
        foreach (var (label, all) in steps)
        {
            var words = SizeLists.For(all, size, sizes.Length);
            switch (label)
            {
                case "Foundation":
                    piece = piece with { Chains = Number(Chains().Match(words), "n", place, words) };
                    break;
                case "Foundation and rows":
                    piece = AsBefore(piece, words, place);
                    break;
                case "Chart":
                    var chart = Chart().Match(words);
                    piece = piece with { Beginning = Begin(piece) with { Chart = Number(chart, "chart", place, words), ChartRow = Number(chart, "row", place, words) } };
                    break;
                case "Easy":
                    var easy = Easy().Match(words);
                    piece = piece with { Beginning = Begin(piece) with { EasyColour = easy.Groups["colour"].Value, ExtraChains = Number(easy, "n", place, words) } };
                    break;
                case "No waste":
                    var knot = Knot().Match(words);
                    piece = piece with { Beginning = Begin(piece) with { Knot = knot.Groups["length"].Value, KnotColour = knot.Groups["colour"].Value } };
                    break;
                case "Mark":
                    piece = piece with { Marks = piece.Marks.Add(Number(Mark().Match(words), "n", place, words)) };
                    break;
                case "Side bands":
                    piece = piece with { BandRows = Number(Bands().Match(words), "n", place, words) };
                    break;
                default:
                    piece = Rows(piece, label, words, place);
                    break;
            }
        }
        _pieces.Add(piece);
    }

    private ReadPiece Rows(ReadPiece piece, string label, string words, string place)
    {
        if (Begins().IsMatch(label))
            return piece with { Beginning = Begin(piece) with { FirstStitch = First().Match(words).Groups["first"].Value } };
        if (From().Match(label) is { Success: true } from)
        {
            var repeat = Until().Match(words);
            var last = repeat.Groups["b"].Success ? "b" : "a";
            if (Number(from, "n", place, label) != piece.RowStitches.Length + 1 || Number(repeat, last, place, words) != piece.RowStitches.Length)
                wrong.Add($"{place}: “{label}: {words}” follows row {piece.RowStitches.Length}");
            return piece with { Rows = Number(repeat, "n", place, words) };
        }
        if (Row().Match(label) is not { Success: true } row)
            return piece;
        if (Number(row, "n", place, label) != piece.RowStitches.Length + 1)
            wrong.Add($"{place}: “{label}” follows row {piece.RowStitches.Length}");
        var match = Worked().Match(words);
        var stated = Number(match, "n", place, words);
        var below = piece.RowStitches.IsEmpty ? piece.Chains : piece.RowStitches[^1];
        var (made, stuck) = RowCounter.Follow(match.Groups["work"].Value, below);
        if (stuck is not null)
            wrong.Add($"{place}, {label}: cannot be followed at “{stuck}”");
        else if (made != stated)
            wrong.Add($"{place}, {label}: its words make {made} stitches, it says {stated}");
        if (Turning().Match(words) is { Success: true } turning)
            piece = piece with { TurningChains = piece.TurningChains.Add(Number(turning, "n", place, words)) };
        return piece with { RowStitches = piece.RowStitches.Add(stated), Rows = piece.RowStitches.Length + 1 };
    }

    private ReadPiece AsBefore(ReadPiece piece, string words, string place)
    {
        var name = As().Match(words).Groups["name"].Value;
        if (_pieces.Find(p => p.Size == piece.Size && p.Name.StartsWith(name, StringComparison.OrdinalIgnoreCase)) is not { } before || name.Length == 0)
        {
            wrong.Add($"{place}: “{words}” names no piece before it");
            return piece;
        }
        return before with { Name = piece.Name, Beginning = piece.Beginning };
    }

    private static ReadBeginning Begin(ReadPiece piece) => piece.Beginning ?? new ReadBeginning(0, 0, "", "", 0, "", "");

    private int Number(Match match, string group, string place, string words)
    {
        if (match.Success && int.TryParse(match.Groups[group].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return number;
        wrong.Add($"{place}: “{words}” cannot be read");
        return -1;
    }

    [GeneratedRegex("^(?<label>[^:]+): (?<words>.*)$")]
    private static partial Regex Step();

    [GeneratedRegex("^(?<name>.*), size (?<size>.+)$")]
    private static partial Regex OneSize();

    [GeneratedRegex(@"^Ch (?<n>\d+)\.")]
    private static partial Regex Chains();

    [GeneratedRegex(@"^As the (?<name>[^,.]+)")]
    private static partial Regex As();

    [GeneratedRegex(@"^(?<chart>\d+); (?:row|round) 1 is chart (?:row|round) (?<row>\d+)\.$")]
    private static partial Regex Chart();

    [GeneratedRegex(@"^slip knot at the beginning of (?<colour>\S+); extra chains: (?<n>\d+)\.$")]
    private static partial Regex Easy();

    [GeneratedRegex(@"^slip knot (?<length>.+) after the beginning of (?<colour>\S+)\.$")]
    private static partial Regex Knot();

    [GeneratedRegex(@"^(?:row|stitch) (?<n>\d+) ")]
    private static partial Regex Mark();

    [GeneratedRegex(@"until the band has (?<n>[0-9]+) rows \(0: no band\)\.$")]
    private static partial Regex Bands();

    [GeneratedRegex(@"^Ch (?<n>\d+)[, ]")]
    private static partial Regex Turning();

    [GeneratedRegex("^(?:Row|Round) 1 begins$")]
    private static partial Regex Begins();

    [GeneratedRegex(@"^at (?<first>\S+)\.$")]
    private static partial Regex First();

    [GeneratedRegex(@"^From (?:row|round) (?<n>\d+)$")]
    private static partial Regex From();

    [GeneratedRegex(@"^Repeat (?:row|round)s? (?<a>\d+)(?: and (?<b>\d+))? until you have (?<n>\d+) (?:row|round)s, then fasten off\.$")]
    private static partial Regex Until();

    [GeneratedRegex(@"^(?:Row|Round) (?<n>\d+)(?: \((?:RS|WS)\))?$")]
    private static partial Regex Row();

    [GeneratedRegex(@"^(?<work>.*)\. (?<n>\d+) sts\.$")]
    private static partial Regex Worked();
}
