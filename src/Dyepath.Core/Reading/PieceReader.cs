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

    /// <summary>Stitches of the row below; null before the first.</summary>
    private int? _below;

    /// <summary>Parts begun before the one at hand.</summary>
    private int _part;

    /// <summary>Chains that wait at an edge, and the row that goes on over them.</summary>
    private int _chains;
    private int _chainsRow;

    /// <summary>The table of the piece's gores; empty where it has none.</summary>
    private ImmutableArray<ImmutableArray<string>> _gores = [];

    /// <summary>How the first, the second and the third row of each is worked.</summary>
    private readonly List<string> _goreRows = [];

    /// <summary>Ways to work a triangle's rows, which of them decrease, and whether by two, and the last row; 0 of other pieces.</summary>
    private readonly Dictionary<string, string> _ways = [];
    private readonly Dictionary<int, bool> _decreasing = [];
    private int _lastOfWays;

    public ImmutableArray<ReadPiece> Read(ImmutableArray<TextPart> parts)
    {
        foreach (var part in parts.Where(p => p.Heading.Length > 0))
        {
            var steps = part.Lines.Select(l => Step().Match(l)).Where(m => m.Success)
                .Select(m => (Label: m.Groups["label"].Value, Words: m.Groups["words"].Value)).ToArray();
            _gores = part.Tables.FirstOrDefault(t => t.Head[0] == "Gore")?.Rows ?? [];
            _goreRows.Clear();
            _goreRows.AddRange(steps.Where(s => s.Label.StartsWith("Gore, ", StringComparison.Ordinal)).Select(s => s.Words));
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
        var piece = new ReadPiece(heading, sizes[size], -1, [], 0, [], 0);
        (_below, _part, _chains, _chainsRow, _lastOfWays) = (null, 0, 0, 0, 0);
        _ways.Clear();
        _decreasing.Clear();
        foreach (var (head, all) in steps)
        {
            // “Rows 3 to 84 (90, 96)”, and not “Row 1 (RS)”.
            var label = Many().IsMatch(head) ? SizeLists.For(head, size, sizes.Length) : head;
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
                    piece = piece with
                    {
                        Marks = piece.Marks.Add(Number(Mark().Match(words), "n", place, words)),
                        MarkedPlaces = piece.MarkedPlaces + (TwoPlaces().IsMatch(words) ? 2 : 1),
                    };
                    break;
                case "Chain":
                    var chain = AtEdge().Match(words);
                    // A chain of one is closed by a second.
                    (_chains, _chainsRow) = (Number(chain, "n", place, words) - (chain.Groups["one"].Success ? 1 : 0), Number(chain, "row", place, words));
                    if (Number(chain, "on", place, words) != _chainsRow - 1)
                        wrong.Add($"{place}: “{words}” joins the chain to another row than the one before");
                    break;
                case "Motif":
                    break;
                case "Plain row":
                case var way when Decreasing().IsMatch(way):
                    if (!_ways.TryAdd(label, words))
                        wrong.Add($"{place}: “{label}” is told twice");
                    break;
                case var many when From().Match(many) is { Success: true } span && InRows().Match(words) is { Success: true } listed:
                    if (Number(span, "n", place, many) != 2)
                        wrong.Add($"{place}: “{many}” follows row 1");
                    _lastOfWays = Number(span, "last", place, many);
                    List(listed, place);
                    break;
                case "Count" when Counted().Match(words) is { Success: true } counted:
                    piece = Narrow(piece, place);
                    var (at, last) = (Number(counted, "row", place, words), Number(counted, "last", place, words));
                    var has = piece.RowStitches.ElementAtOrDefault(at - 1);
                    if (!_decreasing.ContainsKey(at) || has != Number(counted, "n", place, words))
                        wrong.Add($"{place}: row {at} does not decrease to what “{words}” says, but has {has}");
                    if (last != piece.Rows || piece.RowStitches.LastOrDefault() != 1)
                        wrong.Add($"{place}: “{words}” names another last row");
                    break;
                case var purpose when Triangle().Match($"{purpose}: {words}") is { Success: true } triangle:
                    piece = piece with { Triangle = new ReadTriangle(triangle.Groups["of"].Value, triangle.Groups["opening"].Value, triangle.Groups["wearers"].Value, triangle.Groups["slope"].Value, triangle.Groups["width"].Value, triangle.Groups["height"].Value) };
                    break;
                case "Then" when _lastOfWays > 0:
                    if (Number(Ended().Match(words), "n", place, words) != piece.Rows)
                        wrong.Add($"{place}: “{words}” follows row {piece.Rows}");
                    break;
                case "Then":
                    piece = piece with { Rows = Number(Ended().Match(words), "n", place, words) };
                    break;
                case "Cuff":
                    piece = piece with { Cuff = words };
                    break;
                case "Side bands":
                    piece = piece with { BandRows = Number(Bands().Match(words), "n", place, words), BandStitches = Number(Bands().Match(words), "stitches", place, words), BandMark = BandMark().Match(words) is { Success: true } mark ? Number(mark, "n", place, words) : 0 };
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
        if (Side().IsMatch(label))
            return Begin(piece, label, words, place);
        if (From().Match(label) is { Success: true } alike && Each().Match(words) is { Success: true } each)
            return Alike(piece, Span(alike, place, label), each, place);
        if (From().Match(label) is { Success: true } pair && InTurn().Match(words) is { Success: true } turns)
            return InTurns(piece, Span(pair, place, label), turns, place);
        if (From().Match(label) is { Success: true } from && Until().Match(words) is { Success: true } repeat)
        {
            var span = Span(from, place, label);
            if (span.First != piece.RowStitches.Length + 1 || Number(repeat, "b", place, words) != piece.RowStitches.Length || Number(repeat, "a", place, words) != piece.RowStitches.Length - 1)
                wrong.Add($"{place}: “{label}: {words}” follows row {piece.RowStitches.Length}");
            return piece with { Rows = span.Last };
        }
        if (Row().Match(label) is not { Success: true } row)
            return piece;
        var number = Number(row, "n", place, label);
        if (number != piece.Rows + 1)
            wrong.Add($"{place}: “{label}” follows row {piece.Rows}");
        var match = Worked().Match(words);
        var stated = Number(match, "n", place, words);
        var below = _below ?? piece.Chains;
        var (made, stuck) = RowCounter.Follow(match.Groups["work"].Value, below, out var followed);
        if (stuck is not null)
            wrong.Add($"{place}, {label}: cannot be followed at “{stuck}”");
        else if (made != stated)
            wrong.Add($"{place}, {label}: its words make {made} stitches, it says {stated}");
        if (Turning().Match(words) is { Success: true } turning)
            piece = piece with { TurningChains = piece.TurningChains.Add(Number(turning, "n", place, words)) };
        if (followed.Chains > 0 && (followed.Chains, number) != (_chains, _chainsRow))
            wrong.Add($"{place}, {label}: {_chains} chains wait for row {_chainsRow}");
        _below = stated;
        return piece with
        {
            RowStitches = piece.RowStitches.Add(stated),
            Rows = piece.Rows + 1,
            Shaped = piece.Shaped.Add(new ReadRow(_part, number, stated, followed.Unworked, followed.Chains)
            {
                Standing = followed.Standing,
                Last = match.Groups["last"].Success ? match.Groups["last"].Value : null,
                Here = match.Groups["here"].Value,
            }),
        };
    }

    /// <summary>“Decrease in rows 2, 4 and 7; decrease by two in row 9; work the others plain.”</summary>
    private void List(Match words, string place)
    {
        foreach (var (group, twice) in new[] { ("one", false), ("two", true) })
        {
            foreach (Match named in Numbers().Matches(words.Groups[group].Value))
            {
                var number = int.Parse(named.Value, CultureInfo.InvariantCulture);
                if (number < 2 || number > _lastOfWays || !_decreasing.TryAdd(number, twice))
                    wrong.Add($"{place}: row {number} cannot decrease so");
            }
        }
        if (words.Groups["plain"].Success != (_decreasing.Count < _lastOfWays - 1))
            wrong.Add($"{place}: “{words.Value}” says otherwise whether rows are plain");
    }

    /// <summary>Every row of a triangle by the way that its number asks for.</summary>
    private ReadPiece Narrow(ReadPiece piece, string place)
    {
        piece = piece with { TurningChains = [.. _ways.Values.Select(w => Number(Turning().Match(w), "n", place, w))] };
        for (var row = 2; row <= _lastOfWays; row++)
        {
            var label = !_decreasing.TryGetValue(row, out var twice) ? "Plain row"
                : $"Decrease{(twice ? " by two" : "")} in {(row % 2 == 1 ? "odd" : "even")}-numbered rows";
            if (!_ways.TryGetValue(label, out var way)
                || RowCounter.Follow(way, _below ?? 0, out var followed) is not { Stitches: { } made })
            {
                wrong.Add($"{place}: row {row} over {_below} stitches cannot be followed");
                return piece;
            }
            _below = made;
            piece = piece with
            {
                RowStitches = piece.RowStitches.Add(made),
                Rows = row,
                Shaped = piece.Shaped.Add(new ReadRow(_part, row, made, 0, 0) { TogetherAtEnd = followed.TogetherAtEnd }),
            };
        }
        return piece;
    }

    private (int First, int Last) Span(Match label, string place, string words)
    {
        var first = Number(label, "n", place, words);
        return (first, label.Groups["last"].Success ? Number(label, "last", place, words) : first);
    }

    /// <summary>“As row 2, 67 sts each.”</summary>
    private ReadPiece Alike(ReadPiece piece, (int First, int Last) rowsAlike, Match words, string place)
    {
        var (from, last) = rowsAlike;
        var (repeated, each) = (Number(words, "row", place, words.Value), Number(words, "each", place, words.Value));
        var like = piece.Shaped.FirstOrDefault(r => r.Row == repeated);
        if (from != piece.Rows + 1 || last < from - 1 || like is not { Left: 0, Chains: 0, Standing: 0 } || repeated < 2 || each != _below)
            wrong.Add($"{place}: “{words.Value}” cannot follow row {piece.Rows} of {_below} stitches");
        var rows = Enumerable.Range(from, Math.Clamp(last - from + 1, 0, Dyepath.Core.Fabrics.FabricPath.MostRows))
            .Select(row => new ReadRow(_part, row, each, 0, 0)).ToArray();
        if (words.Groups["gores"].Success)
            Gores(rows, each, place);
        return piece with { Rows = last, Shaped = piece.Shaped.AddRange(rows) };
    }

    /// <summary>Each gore of the table, its words followed with its own number: three of the rows are worked so.</summary>
    private void Gores(ReadRow[] rows, int each, string place)
    {
        if (_gores.IsEmpty || _goreRows.Count != 3)
            wrong.Add($"{place}: gores are named and not told");
        for (var i = 0; i < _gores.Length && _goreRows.Count == 3; i++)
        {
            if (_gores[i] is not [var nth, var first, var n, var stitches, var firstEnds, var thirdEnds]
                || !int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var row)
                || !int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out var left)
                || !int.TryParse(stitches, NumberStyles.None, CultureInfo.InvariantCulture, out var has)
                || nth != (i + 1).ToString(CultureInfo.InvariantCulture)
                || Array.FindIndex(rows, r => r.Row == row) is not (>= 0 and var at) || at + 2 >= rows.Length)
            {
                wrong.Add($"{place}: gore {i + 1} cannot be read");
                continue;
            }
            var shortened = Work(_goreRows[0], left, each, has);
            Work(_goreRows[1], left, has, has);
            var over = Work(_goreRows[2], left, has, each);
            rows[at] = rows[at] with { Stitches = has, Left = shortened.Unworked, Last = firstEnds, Here = "This shapes a gore." };
            rows[at + 1] = rows[at + 1] with { Stitches = has };
            rows[at + 2] = rows[at + 2] with { Standing = over.Standing, Last = thirdEnds };
        }

        RowCounter Work(string told, int left, int below, int makes)
        {
            var work = told.Split(". ")[0].TrimEnd('.').Replace("N sts", $"{left} sts", StringComparison.Ordinal);
            var (made, stuck) = RowCounter.Follow(work, below, out var followed);
            if (stuck is not null || made != makes)
                wrong.Add($"{place}: “{told}” makes {made} stitches, the table says {makes}");
            return followed;
        }
    }

    /// <summary>“As rows 2 and 3 in turn, 66 and 68 sts, each row 3 over a new chain: ….”</summary>
    private ReadPiece InTurns(ReadPiece piece, (int First, int Last) rowsInTurn, Match words, string place)
    {
        var (from, last) = rowsInTurn;
        var chains = Number(words, "ch", place, words.Value);
        if (piece.Shaped is not [_, { Chains: 0 } second, { Left: 0 } third] || from != 4 || last < from || third.Chains != chains
            || second.Stitches != Number(words, "one", place, words.Value) || third.Stitches != Number(words, "other", place, words.Value))
        {
            wrong.Add($"{place}: “{words.Value}” cannot follow row {piece.Rows}");
            return piece;
        }
        var rows = Enumerable.Range(from, Math.Clamp(last - from + 1, 0, Dyepath.Core.Fabrics.FabricPath.MostRows))
            .Select(row => (row % 2 == 0 ? second : third) with { Row = row, Repeats = true });
        return piece with { Rows = last, Shaped = piece.Shaped.AddRange(rows) };
    }

    /// <summary>A part that goes on from the last row, or is joined on to an earlier one.</summary>
    private ReadPiece Begin(ReadPiece piece, string label, string words, string place)
    {
        _part++;
        if (GoesOn().Match(words) is { Success: true } on)
        {
            if (Number(on, "row", place, words) != piece.Rows)
                wrong.Add($"{place}: “{label}: {words}” follows row {piece.Rows}");
            return piece;
        }
        var match = JoinOn().Match(words);
        if (!match.Success)
        {
            wrong.Add($"{place}: “{label}: {words}” cannot be read");
            return piece;
        }
        var join = new ReadJoin(
            _part, Number(match, "row", place, words), match.Groups["face"].Value == "right", match.Groups["over"].Success ? Number(match, "over", place, words) : 0,
            match.Groups["beside"].Success ? match.Groups["beside"].Value : null, match.Groups["first"].Value)
        {
            Here = match.Groups["here"].Value,
        };
        // What is left of the row that it stands on, once earlier sides and what lies between are taken off.
        var all = piece.Shaped.LastOrDefault(r => r.Row == join.On)?.Stitches ?? 0;
        var sides = piece.Shaped.Where(r => r.Row == join.On + 1 && join.Beside is not null).Sum(r => r.Stitches);
        _below = all - sides - join.Over;
        return piece with { Rows = join.On, Joined = piece.Joined.Add(join) };
    }

    private ReadPiece AsBefore(ReadPiece piece, string words, string place)
    {
        var name = As().Match(words).Groups["name"].Value;
        if (_pieces.Find(p => p.Size == piece.Size && p.Name.StartsWith(name, StringComparison.OrdinalIgnoreCase)) is not { } before
            || name.Length == 0)
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

    [GeneratedRegex("^Decrease(?: by two)? in (?:odd|even)-numbered rows$")]
    private static partial Regex Decreasing();

    [GeneratedRegex("^(?:Decrease in rows? (?<one>[0-9, and]+))?(?:; )?(?:[Dd]ecrease by two in rows? (?<two>[0-9, and]+))?(?<plain>; work the others plain)?\\.$")]
    private static partial Regex InRows();

    [GeneratedRegex("^(?<n>[0-9]+) sts? in row (?<row>[0-9]+), 1 st in row (?<last>[0-9]+)\\.$")]
    private static partial Regex Counted();

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Numbers();

    [GeneratedRegex(@"^A triangle for the lower corner of the (?<of>[a-z ]+) at the wearer's (?<wearers>left|right), in rows of (?:sc|dc) from its lower edge up to a tip of one stitch\. Rows become shorter where odd-numbered rows (?<slope>end|begin): that is its slanted edge; the opposite edge stays upright\. It is (?<width>.+) wide and (?<height>.+) tall before it is sewn in; if yours is not, change the hook for it\. Both its sides look alike: the outside is the one with which its upright edge meets the (?<opening>[a-z ]+)'s\.$")]
    private static partial Regex Triangle();

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

    [GeneratedRegex(@": pick up and \S+ (?<stitches>[0-9]+) stitches .* until the band has (?<n>[0-9]+) rows \(0: no band\)\.")]
    private static partial Regex Bands();

    [GeneratedRegex(@" Mark its last row after stitch (?<n>[0-9]+), ")]
    private static partial Regex BandMark();

    [GeneratedRegex(@"^Ch (?<n>\d+)[, ]")]
    private static partial Regex Turning();

    [GeneratedRegex("^(?:Row|Round) 1 begins$")]
    private static partial Regex Begins();

    [GeneratedRegex(@"^at (?<first>\S+)\.$")]
    private static partial Regex First();

    [GeneratedRegex(@"^(?:Row|Round)s? (?<n>\d+)(?: to (?<last>\d+))?$")]
    private static partial Regex From();

    [GeneratedRegex(@"^Fasten off after (?:row|round) (?<n>\d+)\.$")]
    private static partial Regex Ended();

    [GeneratedRegex("^(?:Rows|Rounds) ")]
    private static partial Regex Many();

    [GeneratedRegex(@"^As (?:row|round)s (?<a>\d+) and (?<b>\d+) in turn, then fasten off\.$")]
    private static partial Regex Until();

    [GeneratedRegex("^(?:First|Second|Third|Fourth|Fifth|Sixth) side$|^Side [0-9]+$")]
    private static partial Regex Side();

    [GeneratedRegex(@"^Go on from row (?<row>\d+) without a cut\.$")]
    private static partial Regex GoesOn();

    [GeneratedRegex(@"^Into row (?<row>\d+), with the (?<face>right|wrong) side of the piece facing: (?:leave (?<over>\d+) sts? unworked (?:at the edge|beside the (?<beside>[a-z]+ side|side [0-9]+)) and )?join .* in the (?:next st|first st(?: at the edge| beside the (?<beside>[a-z]+ side|side [0-9]+))), at (?<first>\S+), (?:stitch|pair) [0-9]+ of .*?; cut away what comes before it\.(?: The stitches left are the lower edge of the (?<here>[a-z ]+)\.)?$")]
    private static partial Regex JoinOn();

    [GeneratedRegex(@"^Join .* with (?:sl st|ss) in the first st of row (?<on>\d+), at the edge where row (?<row>\d+) will end, ch (?<n>\d+) and (?:fasten off(?<one>; the row goes into the first of them only)?; the loop of row \k<on> waits on a marker|leave its loop on a marker)\.$")]
    private static partial Regex AtEdge();

    [GeneratedRegex(@"^As (?:row|round) (?<row>\d+), (?<each>\d+) sts? each(?<gores>, but for the gores in the table)?(?:, then fasten off)?\.(?: The last row is the edge of the [a-z ]+\.)?$")]
    private static partial Regex Each();

    [GeneratedRegex(@"^As rows 2 and 3 in turn, (?<one>\d+) and (?<other>\d+) sts, each row 3 over a new chain: draw the loop of .+ up, (?:sl st|ss) in the first st of the row just worked, ch (?<ch>\d+)\. Then fasten off both yarns\.$")]
    private static partial Regex InTurn();

    [GeneratedRegex(@"^(?:Row|Round) (?<n>\d+)(?: \((?:RS|WS)\))?$")]
    private static partial Regex Row();

    [GeneratedRegex("both side edges|the first row and the last row")]
    private static partial Regex TwoPlaces();

    [GeneratedRegex(@"^(?<work>.*)\. (?<n>\d+) sts?(?:, the last at (?<last>\S+))?\.(?: (?<here>Here .*?\.|This shapes .*?\.))?(?: Fasten off\.(?: The last row is the edge of the [a-z ]+\.)?)?$")]
    private static partial Regex Worked();
}
