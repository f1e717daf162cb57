using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Instructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Reading;

/// <summary>What a corrected pattern says otherwise, and to whom. Expectations are from the trade: where a maker would look for each correction.</summary>
public sealed class ErrataTests
{
    private static readonly Plan Published = Tideline.Planned();

    /// <summary>Corrections of every kind, each with the place that gave it its name.</summary>
    public static TheoryData<string> Corrections => ["cuffs", "words", "colour", "gauge", "length", "neck", "sizes", "edging", "yarn", "turned", "garment"];

    private static Project Corrected(string name) => name switch
    {
        "cuffs" => Tideline.With(g => g with { Edgings = [.. g.Edgings.Select(e => e.Where == EdgingPlace.Cuffs ? e with { Rounds = 5 } : e)] }),
        "words" => Tideline with { Words = Tideline.Words.SetItem("notes", "Deep water begins the front, and nothing else.\nA second line.") },
        "colour" => Called(Tideline, 2, "sea foam"),
        "gauge" => Tideline with { Fabric = Tideline.Fabric with { Swatch = Tideline.Fabric.Swatch with { Blocked = new(13.75, 16, Cm(10)) } } },
        "length" => Tideline.WithTop(t => t with { BelowWaist = Cm(34) }),
        "neck" => Tideline.WithTop(t => t with { Neck = t.Neck with { Width = Cm(29) } }),
        "sizes" => Tideline with { Sizes = Tideline.Sizes with { Sizes = ["M", "L", "1X"], Base = "M" } },
        "edging" => Tideline.With(g => g with { Edgings = [.. g.Edgings.Where(e => e.Where != EdgingPlace.Neck)] }),
        "yarn" => Tideline with { Yarn = Tideline.Yarn with { Name = "Ebbstone Heavy" } },
        "turned" => Tideline.Directed(Direction.Up),
        "garment" => Patterns.Named("cowl in rounds"),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such correction."),
    };

    [Theory]
    [InlineData("tunic")]
    [InlineData("V with inserts")]
    [InlineData("linen spiral cowl")]
    [InlineData("child's pullover")]
    public void Where_nothing_changed_it_says_so(string name)
    {
        var plan = Patterns.Named(name).Planned();
        var again = plan with { Project = plan.Project with { Edition = plan.Project.Edition with { Number = 2 } } };
        var errata = Errata.Of(plan, again, TestContext.Current.CancellationToken);
        Assert.True(errata.IsEmpty);
        Assert.Empty(errata.Changes);
        Assert.Empty(Assert.Single(errata.Touched).Who);
        Assert.Contains("Nobody: nothing that a maker reads differs.", errata.Text(), StringComparison.Ordinal);
        Assert.DoesNotContain("WHAT CHANGED", errata.Text(), StringComparison.Ordinal);
    }

    /// <summary>
    /// An edging's rounds are found at the edging, in the yarn that it takes, and at the sleeve, whose length they are a part of; and
    /// nowhere else.
    /// </summary>
    [Fact]
    public void Rounds_of_an_edging_are_found_at_the_edging()
    {
        var errata = To("cuffs");
        var work = Assert.Single(errata.Changes, c => c is { Section: "edgings", Label: "Work" });
        Assert.StartsWith("Cuffs", work.Heading, StringComparison.Ordinal);
        Assert.StartsWith("4 rounds", work.Was, StringComparison.Ordinal);
        Assert.StartsWith("5 rounds", work.Now, StringComparison.Ordinal);
        Assert.Equal(errata.Sizes, work.Sizes);
        Assert.Subset(new HashSet<string> { "edgings", "sizes", "materials", "pieces" }, errata.Changes.Select(c => c.Section).ToHashSet());
        Assert.All(errata.Changes.Where(c => c.Section == "sizes"), c => Assert.Contains("sleeve", c.Label, StringComparison.OrdinalIgnoreCase));
        Assert.All(errata.Changes.Where(c => c.Section == "pieces"), c => Assert.StartsWith("Sleeve", c.Heading, StringComparison.Ordinal));
        Assert.All(errata.Changes.Where(c => c is { Section: "materials", Label.Length: > 0 }), c => Assert.StartsWith("Companion yarn", c.Label, StringComparison.Ordinal));
        var text = Flat(errata.Text());
        Assert.Contains("If you have begun to edge the cuffs: see Cuffs. If not, nothing that you have made changes.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("If you have begun the front", text, StringComparison.Ordinal);
        Assert.DoesNotContain("If you have begun the back", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_typo_in_the_designers_words_is_one_line_and_touches_no_stitch()
    {
        var typo = Tideline with { Words = Tideline.Words.SetItem("notes", "Deep water begins the front.\nWork tigth.") };
        var mended = typo with { Words = typo.Words.SetItem("notes", "Deep water begins the front.\nWork tight.") };
        var errata = Errata.Of(typo.Planned(), mended.Planned(), TestContext.Current.CancellationToken);
        var change = Assert.Single(errata.Changes);
        Assert.Equal(("notes", "Work tigth.", "Work tight."), (change.Section, change.Was, change.Now));
        Assert.Equal(errata.Sizes, change.Sizes);
        var text = Flat(errata.Text());
        Assert.Contains("No row, seam or edging differs: what you have made stays as it is.", text, StringComparison.Ordinal);
        Assert.Contains("Everybody: see Notes.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_colours_name_is_told_once()
    {
        var change = Assert.Single(To("colour").Changes);
        Assert.StartsWith("foam (", change.Was, StringComparison.Ordinal);
        Assert.StartsWith("sea foam (", change.Now, StringComparison.Ordinal);
        Assert.Contains("No stitch differs by it.", Flat(To("colour").Text()), StringComparison.Ordinal);
    }

    /// <summary>Colours that change places are another yarn, not another name.</summary>
    [Fact]
    public void Colours_that_change_places_are_no_new_names()
    {
        var sections = Tideline.Yarn.Sections;
        var swapped = Called(Called(Tideline, 0, sections[1].Name), 1, sections[0].Name);
        var errata = Errata.Of(Published, swapped.Planned(), TestContext.Current.CancellationToken);
        Assert.Contains(errata.Changes, c => c.Section == "charts" && c.Label.StartsWith("Row 1 ", StringComparison.Ordinal));
        Assert.DoesNotContain(errata.Touched.SelectMany(t => t.Who), who => Say(errata, who).Contains("another name", StringComparison.Ordinal));
    }

    [Fact]
    public void A_gauge_is_to_be_looked_at_before_anything_is_begun()
    {
        var errata = To("gauge");
        var gauge = Assert.Single(errata.Changes, c => c.Section == "gauge");
        Assert.Contains("15.75 rows", gauge.Was, StringComparison.Ordinal);
        Assert.Contains("16 rows", gauge.Now, StringComparison.Ordinal);
        Assert.All(errata.Touched, t => Assert.Contains(t.Who, who => Say(errata, who).StartsWith("Before you begin: see Gauge.", StringComparison.Ordinal)));
    }

    [Fact]
    public void Sizes_that_come_and_go_are_named()
    {
        var errata = To("sizes");
        Assert.Equal(["M", "L", "1X"], errata.Sizes);
        Assert.Equal(Published.Sizes.Select(s => s.Name).Except(errata.Sizes), errata.GoneSizes);
        var back = Errata.Of(Corrected("sizes").Planned(), Published, TestContext.Current.CancellationToken);
        Assert.Equal(errata.GoneSizes, back.NewSizes);
        Assert.Empty(back.GoneSizes);
        Assert.Contains("no longer in the pattern", errata.Text(), StringComparison.Ordinal);
        Assert.Contains("new in this edition", back.Text(), StringComparison.Ordinal);
    }

    /// <summary>A piece that goes on longer as before is as it was up to where the shorter one ends; the plan says where that is.</summary>
    [Fact]
    public void More_rows_of_the_same_touch_who_has_come_so_far()
    {
        var was = Patterns.Named("worked up").Planned();
        var now = Patterns.Named("worked up").WithTop(t => t with { BelowWaist = Cm(40) }).Planned();
        var errata = Errata.Of(was, now, TestContext.Current.CancellationToken);
        var touchedFront = 0;
        foreach (var size in errata.Sizes)
        {
            var (before, after) = (Front(was, size), Front(now, size));
            if (before.Stitches != after.Stitches || before.Rows == after.Rows || before.Start != after.Start)
                continue;
            var rows = errata.Changes.Where(c => c.Section == "pieces" && c.Heading == "Front" && c.Label.StartsWith("Rows ", StringComparison.Ordinal) && c.Sizes.Contains(size)).ToArray();
            Assert.Contains($"to {before.Rows}", Assert.Single(rows).WasLabel, StringComparison.Ordinal);
            var touch = Assert.Single(errata.Touched, t => t.Sizes.Contains(size));
            var who = Assert.Single(touch.Who, w => Say(errata, w).StartsWith("If you have begun the front", StringComparison.Ordinal));
            Assert.Contains(touch.Who, w => Say(errata, w).StartsWith("If you have begun the back: see Front", StringComparison.Ordinal));
            Assert.DoesNotContain("from its beginning", Say(errata, who), StringComparison.Ordinal);
            touchedFront++;
        }
        Assert.True(touchedFront > 0);

        static PiecePlan Front(Plan plan, string size) => plan.Sizes.Single(s => s.Name == size).Pieces.Single(p => p.Name == "front");
    }

    /// <summary>What was and what is stand in the texts that a buyer of each size has, and nothing that is told is told as no change.</summary>
    [Theory]
    [MemberData(nameof(Corrections))]
    public void Every_line_is_in_the_old_or_the_new_text(string name)
    {
        var now = Corrected(name).Planned();
        var errata = Errata.Of(Published, now, TestContext.Current.CancellationToken);
        foreach (var size in errata.Sizes)
        {
            var (before, after) = (Texts(Published, now.Project.Edition, size), Texts(now, now.Project.Edition, size));
            foreach (var change in errata.Changes.Where(c => c.Sizes.Contains(size)))
            {
                Assert.NotEqual((change.WasLabel, change.Was), change.IsMoved ? default : (change.Label, change.Now));
                Stands(change.Was, before);
                Stands(change.Now, after);
            }
        }

        // A row of several columns is told cell by cell, each after its column's name.
        static void Stands(string? said, string text)
        {
            foreach (var part in said?.Split("; ") ?? [])
            {
                var words = new[] { "begins with ", "then ", "ends with ", "stitches " }.FirstOrDefault(h => part.StartsWith(h, StringComparison.Ordinal)) is { } head && !text.Contains(part, StringComparison.Ordinal)
                    ? part[head.Length..] : part;
                Assert.Contains(words, text, StringComparison.Ordinal);
            }
        }
    }

    /// <summary>No line of the new text that the old one lacks is left out, and no size is called untouched that has one.</summary>
    [Theory]
    [MemberData(nameof(Corrections))]
    public void Nothing_that_differs_is_left_out(string name)
    {
        var now = Corrected(name).Planned();
        var errata = Errata.Of(Published, now, TestContext.Current.CancellationToken);
        if (errata.Changes.Any(c => c.Kind == ErrataKind.Colour))
            return;
        foreach (var size in errata.Sizes)
        {
            var (before, after) = (Lines(Published, now.Project.Edition, size), Lines(now, now.Project.Edition, size));
            Told(after.Except(before), c => c.Now, c => c.Label);
            Told(before.Except(after), c => c.Was, c => c.WasLabel);

            void Told(IEnumerable<string> lines, Func<ErrataChange, string?> said, Func<ErrataChange, string> label)
            {
                var told = errata.Changes.Where(c => c.Sizes.Contains(size) && said(c) is not null).ToArray();
                var charts = errata.Charts.Any(c => c.Sizes.Contains(size));
                foreach (var line in lines.Where(l => l.Any(char.IsLetterOrDigit) && !l.EndsWith(" –", StringComparison.Ordinal) && !(charts && l.Contains("hart", StringComparison.Ordinal))))
                {
                    Assert.True(
                        told.Any(c => line.Contains(said(c)!, StringComparison.Ordinal)
                            || (c.Section == "charts" && line.StartsWith(label(c).Replace("Row ", "", StringComparison.Ordinal), StringComparison.Ordinal))),
                        $"{size}: {line}");
                }
            }
        }
    }

    /// <summary>The other way round the same places differ, and what was is what is.</summary>
    [Theory]
    [MemberData(nameof(Corrections))]
    public void The_other_way_round_it_is_the_same(string name)
    {
        var now = Corrected(name).Planned();
        var (there, back) = (Errata.Of(Published, now, TestContext.Current.CancellationToken), Errata.Of(now, Published, TestContext.Current.CancellationToken));
        Assert.Equal(
            there.Changes.SelectMany(c => c.Sizes.Select(s => (s, c.Section, c.Was, c.Now))).Order(),
            back.Changes.SelectMany(c => c.Sizes.Select(s => (s, c.Section, c.Now, c.Was))).Order());
    }

    [Fact]
    public void Of_long_words_only_the_sentences_that_differ_are_told()
    {
        var (was, now) = ErrataWords.Differing("One. Two is here. Three.", "One. Two was here. Three.");
        Assert.Equal(("… Two is here. …", "… Two was here. …"), (was, now));
        Assert.Equal(("… One.", "… One. Two."), ErrataWords.Differing("Nought. One.", "Nought. One. Two."));
        Assert.Equal(("One. …", "Nought. …"), ErrataWords.Differing("One. Two.", "Nought. Two."));
    }

    private static Errata To(string name) => Errata.Of(Published, Corrected(name).Planned(), TestContext.Current.CancellationToken);

    private static Project Called(Project project, int section, string name) => project with
    {
        Yarn = project.Yarn with { Sections = project.Yarn.Sections.SetItem(section, project.Yarn.Sections[section] with { Name = name }) },
    };

    private static string Say(Errata errata, Phrase phrase) => new Wording(errata.Now, errata.Now.Edition).Text(phrase);

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Texts(Plan plan, Edition edition, string size) => Flat(Written(plan, edition, size));

    /// <summary>Whole lines, put together again as docs say that they are parted.</summary>
    private static string[] Lines(Plan plan, Edition edition, string size) =>
        [.. Written(plan, edition, size).Replace("\n    ", " ", StringComparison.Ordinal).Split('\n').Select(Flat)];

    private static string Written(Plan plan, Edition edition, string size)
    {
        plan = plan with { Project = plan.Project with { Edition = edition with { Size = null } } };
        return TextBooklet.Write(PatternWriter.Write(plan, TestContext.Current.CancellationToken), edition with { Size = size });
    }
}
