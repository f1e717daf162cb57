using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Replays;
using static System.FormattableString;

namespace Dyepath.Core.Reading;

/// <summary>One line that differs, the same in one or more sizes. As the pattern prints it, without its label.</summary>
/// <param name="Section">Id of the section; empty on the cover.</param>
/// <param name="Title">Of the section; empty on the cover.</param>
/// <param name="Heading">Within the section, such as <c>Front</c>; empty before its first heading.</param>
/// <param name="Label">Such as <c>Row 3</c> or <c>Balls to buy</c>; empty where the line has none.</param>
/// <param name="WasLabel">What the label was; the same where only the words differ.</param>
public sealed record ErrataChange(string Section, string Title, string Heading, string Label, string WasLabel)
{
    /// <summary>Missing where the line is new.</summary>
    public string? Was { get; init; }

    /// <summary>Missing where the line falls away.</summary>
    public string? Now { get; init; }

    /// <summary>The line says the same, at another place in the order.</summary>
    public bool IsMoved { get; init; }

    /// <summary>The words of a picture, or a heading: what they tell stands in other lines, too.</summary>
    internal ErrataKind Kind { get; init; }

    /// <summary>In which it differs so, in the order of the new pattern.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];
}

/// <summary>What makers of some sizes have to look at, in the order of work.</summary>
/// <param name="Sizes">In the order of the new pattern; each size is in one such list alone.</param>
/// <param name="Who">Sentences that say how far somebody has come, and where to look; empty where nothing differs.</param>
public sealed record ErrataTouch(ImmutableArray<string> Sizes, ImmutableArray<Phrase> Who);

/// <summary>
/// What differs between a published pattern and the corrected one for somebody who makes it: every line of every size that both have, in
/// the words of the new one, and who is touched by it.
/// </summary>
public sealed record Errata
{
    /// <summary>The published pattern, worded as the new one is.</summary>
    public required Booklet Was { get; init; }

    /// <summary>As the published one says it of itself.</summary>
    public required Edition WasEdition { get; init; }

    /// <summary>The corrected pattern.</summary>
    public required Booklet Now { get; init; }

    /// <summary>Names of the sizes that both have, in the new one's order.</summary>
    public required ImmutableArray<string> Sizes { get; init; }

    /// <summary>In the order of the new pattern.</summary>
    public required ImmutableArray<ErrataChange> Changes { get; init; }

    /// <summary>Every size that both have is in one of them.</summary>
    public required ImmutableArray<ErrataTouch> Touched { get; init; }

    /// <summary>Charts that have another number, with the sizes that are worked from them.</summary>
    public required ImmutableArray<(int Was, int Now, ImmutableArray<string> Sizes)> Charts { get; init; }

    /// <summary>Sizes that only the new pattern has.</summary>
    public ImmutableArray<string> NewSizes => [.. Now.Sizes.Except(Was.Sizes)];

    /// <summary>Sizes that only the published pattern had.</summary>
    public ImmutableArray<string> GoneSizes => [.. Was.Sizes.Except(Now.Sizes)];

    /// <summary>Nothing that a maker reads differs in any size, and both have the same sizes.</summary>
    public bool IsEmpty => Touched.All(t => t.Who.IsEmpty) && NewSizes.IsEmpty && GoneSizes.IsEmpty;

    /// <summary>They say different things under one edition number: who hears of "edition 1" does not know which is meant.</summary>
    public bool HasOneNumber => !IsEmpty && WasEdition.Number is { } number && number == Now.Edition.Number;

    /// <summary>Compares two plans in the language, terms, units and hand of the new one.</summary>
    /// <param name="was">The published one.</param>
    /// <param name="now">The corrected one.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    /// <exception cref="TooMuchWorkException">The patterns are too large to be written for every size.</exception>
    public static Errata Of(Plan was, Plan now, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(now);
        var effort = Effort.OfPlan(cancel);
        var published = was.Project.Edition;
        var edition = now.Project.Edition with { Size = null };
        // Charts that are too many are left out of both alike.
        was = was with { Project = was.Project with { Edition = edition } };
        var before = PatternWriter.Write(was, effort);
        var after = PatternWriter.Write(now with { Project = now.Project with { Edition = edition } }, effort);
        var called = ErrataColours.Called(was, now);
        var asCalled = called.IsEmpty ? before
            : PatternWriter.Write(was with { Sequence = was.Sequence.Called(now.Sequence.Colours) }, effort);
        ImmutableArray<string> sizes = [.. after.Sizes.Where(before.Sizes.Contains)];
        var bySize = sizes.Select(size => OneSize(edition with { Size = size })).ToArray();
        return new Errata
        {
            Was = before,
            WasEdition = published,
            Now = after,
            Sizes = sizes,
            Changes = Grouped(sizes, bySize),
            Touched =
            [
                .. sizes.Zip(bySize).GroupBy(one => new Phrase([.. one.Second.Touched.Select(who => new Nested(who))]), one => one.First)
                    .Select(g => new ErrataTouch([.. g], [.. g.Key.Parts.OfType<Nested>().Select(who => who.Content)])),
            ],
            Charts =
            [
                .. bySize.SelectMany((one, i) => one.Charts.Select(chart => (chart.Key, chart.Value, Size: sizes[i])))
                    .GroupBy(c => (c.Key, c.Value), c => c.Size).OrderBy(g => g.Key)
                    .Select(g => (g.Key.Key, g.Key.Value, g.ToImmutableArray())),
            ],
        };

        OfSize OneSize(Edition one)
        {
            var (said, read, next) = (ErrataLines.Of(before, one), ErrataLines.Of(asCalled, one), ErrataLines.Of(after, one));
            effort.Spend(said.Concat(next).Sum(line => 10L * (line.Text.Length + line.English.Length)));
            ImmutableArray<ErrataPair> pairs = [.. ErrataMatch.Between(said, read, next, effort), .. ErrataColours.Pairs(called, next)];
            // A chart that is another one altogether says so in its heading.
            var other = pairs.Where(p => p is { Line: { Kind: ErrataKind.Heading, Section: "charts" } })
                .Select(p => p.Line.Part).ToHashSet();
            return new(
                pairs, ErrataTouched.By(pairs, read, next),
                [.. ErrataLines.Charts(read, next).Where(c => c.Key != c.Value && !other.Contains(Invariant($"Chart {c.Value}")))]);
        }
    }

    /// <summary>As plain text, a booklet's of its own.</summary>
    public string Text() => ErrataWords.Text(this);

    /// <param name="Touched">Sentences, in the order of work.</param>
    /// <param name="Charts">Old numbers with new ones, where they differ.</param>
    private sealed record OfSize(
        ImmutableArray<ErrataPair> Pairs, ImmutableArray<Phrase> Touched, ImmutableArray<KeyValuePair<int, int>> Charts);

    /// <summary>The same change of several sizes once, each where the first size has it.</summary>
    private static ImmutableArray<ErrataChange> Grouped(ImmutableArray<string> sizes, OfSize[] bySize)
    {
        var found =
            from i in Enumerable.Range(0, sizes.Length)
            from pair in bySize[i].Pairs
            group (Size: sizes[i], pair.At) by Change(pair) into same
            orderby same.Min(s => s.At)
            select same.Key with { Sizes = [.. same.Select(s => s.Size).Distinct()] };
        // Charts and pieces of some sizes only lie at the same place as others' do.
        return [.. found.GroupBy(c => (c.Section, c.Heading)).SelectMany(place => place)];
    }

    private static ErrataChange Change(ErrataPair pair)
    {
        var line = pair.Line;
        return new ErrataChange(line.Section, line.Title, line.Heading, line.Label, pair.Was?.Label ?? line.Label)
        {
            Was = pair.Was?.Text,
            Now = pair.Now?.Text,
            IsMoved = pair.IsMoved,
            Kind = line.Kind,
        };
    }
}
