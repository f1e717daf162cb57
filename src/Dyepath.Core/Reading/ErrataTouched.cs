using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>A maker of one size who has to look at a change.</summary>
/// <param name="Stage">In the order of work.</param>
/// <param name="Order">Within the stage.</param>
/// <param name="Who">A sentence.</param>
internal sealed record TouchedMaker(int Stage, int Order, Phrase Who);

/// <summary>Derives from the places of changes who has come so far that they touch her, and from which row on.</summary>
internal sealed partial class ErrataTouched
{
    private const int Nothing = 0, Everybody = 1, Buying = 2, Beginning = 3, Working = 4, Pieces = 5, Sewing = 6, Edging = 7, After = 8;

    /// <summary>Steps of a piece that another one, which is worked as it is, has for itself.</summary>
    private static readonly ImmutableArray<string> OwnSteps = ["Chart", "Row 1 begins", "Round 1 begins", "Easy", "No waste", "Outside"];

    /// <summary>Steps of an edging that another one, whose rounds are worked as its are, has for itself.</summary>
    private static readonly ImmutableArray<string> OwnOfEdging = ["Yarn", "Pick up", "Work", "Width", "When", "Buttonholes"];

    private readonly ImmutableArray<ErrataLine> _was;
    private readonly ImmutableArray<ErrataLine> _now;
    private readonly List<TouchedMaker> _makers = [];

    private ErrataTouched(ImmutableArray<ErrataLine> was, ImmutableArray<ErrataLine> now) => (_was, _now) = (was, now);

    /// <summary>A change as it concerns one piece.</summary>
    /// <param name="Piece">Its part of the section.</param>
    /// <param name="See">Where it stands.</param>
    /// <param name="From">Row of the piece; 1 where it is begun otherwise; null where no row tells.</param>
    private sealed record InPiece(string Piece, string See, int? From);

    /// <summary>Sentences in the order of work.</summary>
    public static ImmutableArray<Phrase> By(
        ImmutableArray<ErrataPair> pairs, ImmutableArray<ErrataLine> was, ImmutableArray<ErrataLine> now)
    {
        var touched = new ErrataTouched(was, now);
        if (pairs.FirstOrDefault(p => p.Line.Kind == ErrataKind.Colour) is { } colour)
        {
            touched.Add(
                Working, -1, Phrase.Of($"A colour has another name or sign: see {Phrase.Named(colour.Line.Title)}. No stitch differs by it."));
        }
        if (2 * pairs.Length > now.Length)
            touched.Add(Nothing, 0, Phrase.Plain("More than half of the pattern differs: if you have begun, end with the edition that you have."));
        foreach (var section in pairs.Where(p => p.Line.Kind != ErrataKind.Colour).GroupBy(p => p.Line.Section))
            touched.Section(section.Key, [.. section]);
        touched.ByPiece(pairs);
        if (!pairs.IsEmpty && touched._makers.All(m => m.Stage is Everybody or Buying || m.Order < 0))
            touched.Add(Nothing, 0, Phrase.Plain("No row, seam or edging differs: what you have made stays as it is."));
        return [.. touched._makers.OrderBy(m => m.Stage).ThenBy(m => m.Order).Select(m => m.Who).Distinct()];
    }

    private void Section(string id, ErrataPair[] pairs)
    {
        var title = Phrase.Named(pairs[0].Line.Title);
        switch (id)
        {
            case "":
                Add(Everybody, 0, Phrase.Plain("Everybody: the cover differs."));
                break;
            case "sizes":
                Add(Buying, 0, Phrase.Of($"Before you choose your size: see {title}."));
                break;
            case "materials":
                if (pairs.Any(p => p.Line.Key.StartsWith("Ball ", StringComparison.Ordinal)))
                    Add(Working, -1, Phrase.Of($"While you work, where a ball is expected to end: see {title}."));
                if (pairs.Any(p => !p.Line.Key.StartsWith("Ball ", StringComparison.Ordinal)))
                    Add(Buying, 1, Phrase.Of($"Before you buy: see {title}. If you have bought, see whether it is enough."));
                break;
            case "gauge":
                Add(Beginning, 0, Phrase.Of($"Before you begin: see {title}. If you have begun, hold your gauge against it."));
                break;
            case "before" or "colours":
                Add(Working, id == "before" ? 1 : 2, Phrase.Of($"Before you begin, and while you work: see {title}."));
                break;
            case "pieces":
                if (pairs.Any(p => p.Line.Part.Length == 0))
                    Add(Pieces, 0, Phrase.Of($"Before you begin a piece: see {title}."));
                break;
            case "charts":
                if (pairs.Any(p => p.Line.Kind is ErrataKind.Paragraph or ErrataKind.Caption or ErrataKind.Step))
                    Add(Working, 3, Phrase.Of($"If you read rows from charts or row starts: see {title}."));
                break;
            case "making-up":
                Add(Sewing, 0, Phrase.Of($"If you have begun to sew or to finish: see {title}. If not, nothing that you have made changes."));
                break;
            case "edgings":
                Edgings(title, pairs);
                break;
            case "finishing":
                Add(After, 0, Phrase.Of($"If you have edged: see {title}. If not, nothing that you have made changes."));
                break;
            default:
                Add(Everybody, 1 + Order(_now, line => line.Section == id), Phrase.Of($"Everybody: see {title}."));
                break;
        }
    }

    private void Edgings(Phrase title, ErrataPair[] pairs)
    {
        if (pairs.Any(p => p.Line.Part.Length == 0))
            Add(Edging, 0, Phrase.Of($"Before you edge: see {title}."));
        foreach (var part in pairs.Where(p => p.Line.Part.Length > 0).GroupBy(p => p.Line.Part))
        {
            Edged(part.Key, part.First().Line);
            if (part.Any(p => p.Line.Kind == ErrataKind.Step && !OwnOfEdging.Contains(p.Line.Key)))
            {
                foreach (var like in WorkedAs("edgings", part.Key))
                    Edged(like, part.First().Line);
            }
        }

        void Edged(string part, ErrataLine see) => Add(
            Edging, 1 + Order(_now, line => line.Section == "edgings" && line.Part == part),
            Phrase.Of($"If you have begun to edge the {Small(part)}: see {Phrase.Named(ErrataLines.Short(see.Heading))}. If not, nothing that you have made changes."));
    }

    /// <summary>Changes of pieces and of the charts that they are worked from.</summary>
    private void ByPiece(ImmutableArray<ErrataPair> pairs)
    {
        var found = pairs.SelectMany(InPieces).Concat(pairs.SelectMany(InCharts));
        foreach (var piece in found.GroupBy(f => f.Piece))
        {
            var name = Small(piece.Key);
            var see = Phrase.List(piece.Select(f => f.See).Distinct().Select(Phrase.Named));
            var rounds = _now.Any(line =>
                line.Section == "pieces" && line.Part == piece.Key && line.Key.StartsWith("Round", StringComparison.Ordinal));
            var first = piece.Any(f => f.From is null) ? null : piece.Min(f => f.From);
            var order = 1 + Order(_now, line => line.Section == "pieces" && line.Part == piece.Key);
            Add(Pieces, order, (piece.Min(f => f.From), first, rounds) switch
            {
                (1, _, _) => Phrase.Of($"If you have begun the {name}: see {see}, from its beginning on."),
                (_, { } row, true) => Phrase.Of($"If you have begun the {name}: see {see}, from round {row} on. What lies before that round stays as it is."),
                (_, { } row, false) => Phrase.Of($"If you have begun the {name}: see {see}, from row {row} on. What lies before that row stays as it is."),
                _ => Phrase.Of($"If you have begun the {name}: see {see}."),
            });
        }
    }

    private IEnumerable<InPiece> InPieces(ErrataPair pair)
    {
        var line = pair.Line;
        if (line.Section != "pieces" || line.Part.Length == 0)
            return [];
        var alike = line.Kind == ErrataKind.Step && !OwnSteps.Contains(line.Key) ? WorkedAs("pieces", line.Part) : [];
        return alike.Prepend(line.Part).Select(piece => new InPiece(piece, ErrataLines.Short(line.Heading), From(pair)));
    }

    /// <summary>Rows of a chart come again and again, counted from the one that is the piece's first.</summary>
    private IEnumerable<InPiece> InCharts(ErrataPair pair)
    {
        var line = pair.Line;
        if (line.Section != "charts" || line.Kind != ErrataKind.Row || FirstRow().Match(line.Key) is not { Success: true } match)
            yield break;
        var inNow = pair.Now is not null;
        var text = inNow ? _now : _was;
        ImmutableArray<ErrataLine> chart = [.. text.Where(l => l.Section == "charts" && l.Part == line.Part)];
        var rows = chart.Count(l => l.Kind == ErrataKind.Row);
        var again = chart.Any(l => l.Kind == ErrataKind.Caption && l.English.Contains("begin again", StringComparison.Ordinal));
        foreach (var (piece, number, start) in ErrataLines.Charted(text))
        {
            if (line.Part != string.Create(CultureInfo.InvariantCulture, $"Chart {number}"))
                continue;
            if (Whole(match) is var row && (again || row >= start))
                yield return new InPiece(piece, ErrataLines.Short(line.Heading), 1 + (row - start + rows) % rows);
        }
    }

    /// <summary>The first row of a piece that a change of its words concerns.</summary>
    private static int? From(ErrataPair pair)
    {
        var rows = new[] { pair.Was, pair.Now }.OfType<ErrataLine>().Select(line => FirstRow().Match(line.Key)).ToArray();
        if (rows.All(m => m.Success))
        {
            // More or fewer of the same rows.
            if (pair is { Was: { } was, Now: { } now } && was.English == now.English
                && rows.All(m => m.Groups["last"].Success) && Whole(rows[0]) == Whole(rows[1]))
                return 1 + rows.Min(m => Whole(m, "last"));
            return rows.Min(m => Whole(m));
        }
        var marks = new[] { pair.Was, pair.Now }.OfType<ErrataLine>().Select(line => MarkedRow().Match(line.English)).ToArray();
        if (pair.Line.Key == "Mark")
            return marks.All(m => m.Success) ? marks.Min(m => Whole(m)) : null;
        return pair.Line.Key is "Foundation" or "Foundation and rows" || OwnSteps.Contains(pair.Line.Key)
            || pair.Line.Kind == ErrataKind.Paragraph ? 1 : null;
    }

    /// <summary>Parts of a section that the new or the old text has worked as another one is.</summary>
    private IEnumerable<string> WorkedAs(string section, string part) => _was.Concat(_now)
        .Where(line => line.Section == section && line.Part != part && As().Match(line.English) is { Success: true } match
            && (section == "edgings" || line.Key == "Foundation and rows")
            && match.Groups["name"].Value.Equals(part, StringComparison.OrdinalIgnoreCase))
        .Select(line => line.Part).Distinct();

    private void Add(int stage, int order, Phrase who) => _makers.Add(new TouchedMaker(stage, order, who));

    private static int Order(ImmutableArray<ErrataLine> lines, Func<ErrataLine, bool> isIt) =>
        lines.Select((line, i) => (line, i)).Where(l => isIt(l.line)).Select(l => l.i).FirstOrDefault(lines.Length);

    /// <summary>What the pattern calls the piece or the edge within a sentence.</summary>
    private static Phrase Small(string part) => Phrase.Plain(char.ToLowerInvariant(part[0]) + part[1..]);

    private static int Whole(Match match, string group = "n") => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("^(?:Row|Round)s? (?<n>[0-9]{1,8})(?: to (?<last>[0-9]{1,8}))?(?: \\((?:RS|WS)\\))?(?:, .*)?$")]
    private static partial Regex FirstRow();

    [GeneratedRegex("^(?:row|round) (?<n>[0-9]{1,8}) (?!.*counted from the last)")]
    private static partial Regex MarkedRow();

    [GeneratedRegex("^(?:As|Work the (?:rounds|rows) as for) the (?<name>[^,.]+)")]
    private static partial Regex As();
}
