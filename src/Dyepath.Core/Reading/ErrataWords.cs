using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>Says errata as a booklet of two sections: whom they touch, and what stood and stands at each place.</summary>
internal static class ErrataWords
{
    /// <summary>Places of one kind below one heading that are told one by one.</summary>
    private const int MostTold = 12;

    /// <summary>Of more than these, so many are told before the others are summed up.</summary>
    private const int ToldOfMany = 3;

    /// <summary>Characters from which only the sentences that differ are told.</summary>
    private const int Long = 120;

    /// <summary>Characters of both up to which what was and what is stand in one line.</summary>
    private const int Short = 60;

    private const string LeftOut = "…";

    public static string Text(Errata errata)
    {
        ArgumentNullException.ThrowIfNull(errata);
        var booklet = Written(errata);
        return TextBooklet.Write(booklet, booklet.Edition);
    }

    /// <summary>Such as <c>Sizes M, L</c>.</summary>
    public static Phrase Sizes(ImmutableArray<string> sizes)
    {
        var names = Phrase.Named(string.Join(", ", sizes));
        return sizes.Length == 1 ? Phrase.Of($"Size {names}") : Phrase.Of($"Sizes {names}");
    }

    private static Booklet Written(Errata errata)
    {
        var wording = new Wording(errata.Now, errata.Now.Edition);
        var sections = ImmutableArray.Create(new Section("touched", Phrase.Plain("Whom it touches"), [.. Touched(errata)]));
        if (!errata.Changes.IsEmpty)
            sections = sections.Add(new Section("changes", Phrase.Plain("What changed"), [.. Changes(errata)]));
        return new Booklet(
            wording.Text(Phrase.Of($"{Phrase.Named(errata.Now.Title)}: errata")),
            errata.Now.Designer, errata.Now.Sizes, errata.Now.Edition, sections);
    }

    private static IEnumerable<Block> Touched(Errata errata)
    {
        if (errata.WasEdition.Label is { } was)
            yield return new Paragraph(Phrase.Of($"Compared with: {was}."));
        if (errata.IsEmpty)
            yield return new Paragraph(Phrase.Plain("Nobody: nothing that a maker reads differs."));
        if (!errata.NewSizes.IsEmpty)
            yield return new Paragraph(Phrase.Of($"{Sizes(errata.NewSizes)}: new in this edition."));
        if (!errata.GoneSizes.IsEmpty)
        {
            yield return new Paragraph(
                Phrase.Of($"{Sizes(errata.GoneSizes)}: no longer in the pattern. If you make one of them, stay with the edition that you have."));
        }
        if (errata.Touched.Any(t => !t.Who.IsEmpty))
            yield return new Paragraph(Phrase.Plain("If you have not begun, work from the new edition: nothing below is needed."));
        foreach (var touch in errata.IsEmpty ? [] : errata.Touched)
        {
            if (touch.Who.IsEmpty)
                yield return new Paragraph(Of(errata, touch.Sizes, Phrase.Plain("nothing that a maker reads differs.")));
            else if (errata.Touched.Length > 1)
                yield return new Paragraph(Phrase.Of($"{Sizes(touch.Sizes)}:"));
            if (!touch.Who.IsEmpty)
                yield return new Bullets(touch.Who);
        }
        foreach (var (before, now, sizes) in errata.Charts)
            yield return new Paragraph(Of(errata, sizes, Phrase.Of($"chart {before} is chart {now} now; but for what is listed below it is the same.")));
    }

    private static Phrase Of(Errata errata, ImmutableArray<string> sizes, Phrase said) =>
        Phrase.Of($"{(sizes.Length == errata.Sizes.Length ? Phrase.Plain("All sizes") : Sizes(sizes))}: {said}");

    private static IEnumerable<Block> Changes(Errata errata)
    {
        foreach (var place in errata.Changes.GroupBy(c => (c.Section, c.Title, c.Heading)))
        {
            yield return new Subheading(place.Key switch
            {
                ("", _, _) => Phrase.Plain("Cover"),
                (_, var title, "") => Phrase.Named(title),
                var (_, title, heading) => Phrase.Named($"{title}, {heading}"),
            });
            var isLabelled = false;
            foreach (var kind in place.GroupBy(c => c.Kind))
            {
                if (isLabelled && Label(kind.First()) is null)
                    yield return new Paragraph(Phrase.Of($"{Phrase.Plain("In the text")}:"));
                isLabelled |= Label(kind.First()) is not null;
                var lines = kind.GroupBy(c => c.WasLabel.Length > 0 ? c.WasLabel : c.Was ?? c.Now!).ToArray();
                var told = lines.Length > MostTold ? ToldOfMany : lines.Length;
                foreach (var block in lines.Take(told).SelectMany(line => Line(errata, [.. line])))
                    yield return block;
                if (told < lines.Length)
                {
                    var last = lines[^1].First();
                    yield return new Bullets(
                    [
                        last.Label.Length > 0
                            ? Phrase.Of($"And {lines.Length - told} more, the last of them {Phrase.Named(last.Label)}: take them from the new edition.")
                            : Phrase.Of($"And {lines.Length - told} more: take them from the new edition."),
                    ]);
                }
            }
        }
    }

    /// <summary>What differs at one label, or of one line without one; size by size where sizes differ.</summary>
    private static IEnumerable<Block> Line(Errata errata, ErrataChange[] changes)
    {
        if (Label(changes[0]) is { } label)
            yield return new Paragraph(Phrase.Of($"{label}:"));
        yield return new Bullets([.. changes.SelectMany(change => Said(errata, change))]);
    }

    private static Phrase? Label(ErrataChange change) => change switch
    {
        { Kind: ErrataKind.Step } when change.WasLabel.All(char.IsAsciiDigit) => Phrase.Of($"Step {Phrase.Named(change.WasLabel)}"),
        { Kind: ErrataKind.Own } => Phrase.Plain("In the designer's words"),
        { Kind: ErrataKind.Picture } => Phrase.Plain("Picture"),
        { Kind: ErrataKind.Colour } => Phrase.Plain("A colour, wherever it is named"),
        { Kind: ErrataKind.Heading } => Phrase.Plain("Heading"),
        { Kind: ErrataKind.Caption } => Phrase.Plain("Above a table"),
        { Kind: ErrataKind.Head } => null,
        { WasLabel.Length: > 0 } => Phrase.Named(change.WasLabel),
        _ => null,
    };

    private static IEnumerable<Phrase> Said(Errata errata, ErrataChange change)
    {
        var sizes = errata.Sizes.Length == 1 ? null
            : change.Sizes.Length == errata.Sizes.Length ? Phrase.Plain("All sizes") : Sizes(change.Sizes);
        if (change is { IsMoved: false, Was: { } old, Now: { } young } && change.Label == change.WasLabel
            && old.Length + young.Length <= Short
            && !$"{old}{young}".Contains(';', StringComparison.Ordinal) && !old.EndsWith('.') && !young.EndsWith('.'))
        {
            var both = Phrase.Of($"was {Phrase.Named(old)}; now {Phrase.Named(young)}");
            return [sizes is null ? both : Phrase.Of($"{sizes}: {both}")];
        }
        var said = change switch
        {
            { IsMoved: true, Now: { } now } => [(Phrase.Plain("at another place in the order now"), now)],
            { Was: { } was, Now: { } now } => Both(change, was, now),
            { Now: { } now } => [(Phrase.Plain("new"), now)],
            _ => ((Phrase, string)[])[(Phrase.Plain("falls away"), change.Was!)],
        };
        return said.Select(s => sizes is null
            ? Phrase.Of($"{s.Item1}: {Phrase.Named(s.Item2)}") : Phrase.Of($"{sizes}, {s.Item1}: {Phrase.Named(s.Item2)}"));
    }

    private static (Phrase, string)[] Both(ErrataChange change, string was, string now)
    {
        if (was.Length > Long && now.Length > Long)
            (was, now) = Differing(was, now);
        var isRenamed = change.Label != change.WasLabel && !change.Label.All(char.IsAsciiDigit);
        return
        [
            (Phrase.Plain("was"), isRenamed ? $"{change.WasLabel}: {was}" : was),
            (Phrase.Plain("now"), isRenamed ? $"{change.Label}: {now}" : now),
        ];
    }

    /// <summary>The sentences from the first that differs to the last, with a sign where others are left out.</summary>
    internal static (string Was, string Now) Differing(string was, string now)
    {
        string[] before = Sentences(was), after = Sentences(now);
        var (first, last) = (0, 0);
        while (first < before.Length && first < after.Length && before[first] == after[first])
            first++;
        while (last < before.Length - first && last < after.Length - first && before[^(last + 1)] == after[^(last + 1)])
            last++;
        // A sentence that is only new or only gone is told with the one before it.
        if (first > 0 && (first + last == before.Length || first + last == after.Length))
            first--;
        return (Cut(before), Cut(after));

        string Cut(string[] sentences) =>
            $"{(first > 0 ? $"{LeftOut} " : "")}{string.Join(' ', sentences[first..^last])}{(last > 0 ? $" {LeftOut}" : "")}";
    }

    private static string[] Sentences(string text)
    {
        var sentences = new List<string>();
        var from = 0;
        for (var i = 0; i + 1 < text.Length; i++)
        {
            if (text[i] is '.' or '!' or '?' or ';' && text[i + 1] == ' ')
            {
                sentences.Add(text[from..(i + 1)]);
                from = i + 2;
            }
        }
        sentences.Add(text[from..]);
        return [.. sentences];
    }
}
