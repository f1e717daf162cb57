using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Pricing;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Instructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Pricing;

public sealed class PriceSheetTests
{
    private static readonly Plan Demo = Tideline.Planned();

    private static readonly PriceInputs Typed = new()
    {
        Currency = "EUR",
        Ball = 9.50m,
        CompanionBall = 6m,
        Wage = 15m,
        Fixed = 400m,
        Copy = 7m,
        Fee = 0.10m,
        People = 8,
    };

    private static readonly Gen<Pace> Paces =
        from low in Gen.Double[1, 40]
        from wider in Gen.Double[1, 2]
        select Pace.Between(low, low * wider);

    private static readonly Gen<decimal> Money = Gen.Int[0, 1_000_000].Select(cents => cents / 100m);

    /// <summary>Size M, on paper: 6 balls at 9.50 and 2 at 6, an hour at 15, 7 less a tenth.</summary>
    [Fact]
    public void The_demo_by_hand()
    {
        var sheet = PriceSheet.Of(Demo, Typed);
        var medium = sheet.Sizes.Single(s => s.Name == "M");
        Assert.Equal((6, 2), (medium.Balls, medium.CompanionBalls));
        Assert.Equal(69m, medium.Yarn.Value);
        Assert.Equal(69m + 15m * (decimal)medium.Hours.Median, medium.Piece.Median.Value);
        Assert.Equal(6.30m, sheet.BreakEven.PerCopy.Value);
        Assert.Equal(64, sheet.BreakEven.Copies);
        // 48 balls and 5 more, 16 and 2 more; of front and back the neck's two marks and two armholes, and one for the row.
        Assert.Equal(new Kit(8, 53, 18, 8 * (2 * (2 + 2) + 1), null), medium.Kit);
        Assert.Equal(53 * 9.50m + 18 * 6m, medium.KitYarn!.Value);
    }

    /// <summary>Whoever works the table out again from what it prints comes to what it prints, to the unit that it is rounded to.</summary>
    [Fact]
    public void What_is_printed_adds_up()
    {
        var words = new PriceWords(PriceSheet.Of(Demo, Typed));
        decimal[] Row(string label) => [.. words.Rows.Single(r => r.Label == label).Cells.Select(c => decimal.Parse(c.Split(' ')[0], CultureInfo.InvariantCulture))];
        var (hours, yarn, piece) = (Row("Hours"), Row("Yarn costs"), Row("A finished piece, yarn and work"));
        Assert.All(Enumerable.Range(0, hours.Length), i => Assert.Equal(Math.Round(yarn[i] + 15m * hours[i], MidpointRounding.AwayFromZero), piece[i]));
    }

    /// <summary>A sheet that is taken along says from which prices it comes.</summary>
    [Fact]
    public void The_prices_typed_stand_in_the_sheet()
    {
        var text = new PriceWords(PriceSheet.Of(Demo, Typed)).Text("12 to 20");
        Assert.Contains("Worked out from the price of a ball, 9.50 EUR; the price of a ball of the companion yarn, 6.00 EUR; the wage of an hour, 15.00 EUR; the fixed costs, 400.00 EUR; the price of a copy, 7.00 EUR; the fee on a copy, 10 %.\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Worked out from", new PriceWords(PriceSheet.Of(Demo, new PriceInputs())).Text("12 to 20"), StringComparison.Ordinal);
    }

    [Fact]
    public void Law_half_the_pace_takes_twice_the_hours() => Paces.Where(p => p.Low >= 2).Holds(
        pace =>
        {
            var (own, slow) = (HoursOf(pace), HoursOf(Pace.Of(pace.Low / 2, pace.Median / 2, pace.High / 2)));
            Assert.All(own.Zip(slow), pair =>
            {
                // Each is rounded to a tenth.
                Assert.Equal(2 * pair.First.Low, pair.Second.Low, 0.1501);
                Assert.Equal(2 * pair.First.Median, pair.Second.Median, 0.1501);
                Assert.Equal(2 * pair.First.High, pair.Second.High, 0.1501);
                Assert.True(pair.First.Low <= pair.First.Median && pair.First.Median <= pair.First.High);
            });
        },
        seed: 31, cases: 50);

    [Fact]
    public void Law_more_stitches_take_more_hours() => Gen.Select(Gen.Double[1, 1e6], Gen.Double[0.1, 1e6], Paces).Holds(
        (work, more, pace) => HoursRange.Of(work + more, pace).Median > HoursRange.Of(work, pace).Median
            && HoursRange.Of(work + more, pace).Low > HoursRange.Of(work, pace).Low,
        seed: 32, cases: 200);

    [Fact]
    public void A_larger_size_of_more_stitches_takes_longer()
    {
        var sizes = PriceSheet.Of(Demo, Typed).Sizes.OrderBy(s => s.Work.SingleCrochets).ToArray();
        Assert.Equal(sizes.OrderBy(s => s.Hours.Median).Select(s => s.Name), sizes.Select(s => s.Name));
        Assert.Equal("XS", sizes[0].Name);
        Assert.Equal("5X", sizes[^1].Name);
    }

    /// <summary>Put back into its own equation: so many copies bring the costs in, and one fewer does not.</summary>
    [Fact]
    public void Law_the_copies_to_sell_solve_their_equation() => Gen.Select(Money, Money, Gen.Int[0, 99], Gen.Int[0, 300]).Holds(
        (costs, copy, fee, perCopy) =>
        {
            var even = BreakEven.Of(new PriceInputs { Fixed = costs, Copy = copy, Fee = fee / 100m, FeePerCopy = perCopy / 100m });
            decimal Brings(long copies) => copies * (copy - copy * fee / 100m - perCopy / 100m);
            if (even.Copies is { } copies)
            {
                Assert.True(Brings(copies) >= costs);
                Assert.True(copies == 0 || Brings(copies - 1) < costs);
            }
            else
                Assert.True(Brings(1) < BreakEven.LeastPerCopy);
        },
        seed: 33, cases: 500);

    [Fact]
    public void Law_a_kit_covers_each_person_and_one_ball_in_ten_more() => Gen.Select(Gen.Int[1, PriceInputs.MostPeople], Gen.Int[0, 8]).Holds(
        (people, at) =>
        {
            var (kit, yarn) = (Kit.For(Demo, at, people), Demo.Sizes[at].Yarn);
            Assert.True(kit.Balls >= people * yarn.BallsSafe * 1.1m && kit.Balls < people * yarn.BallsSafe * 1.1m + 1);
            Assert.True(kit.CompanionBalls >= people * yarn.Companion!.Balls * 1.1m && kit.CompanionBalls < people * yarn.Companion.Balls * 1.1m + 1);
            Assert.Equal(people, kit.Hooks);
            Assert.True(kit.Markers >= people && kit.Markers % people == 0);
        },
        seed: 34, cases: 200);

    [Fact]
    public void A_kit_for_a_cardigan_has_everybody_s_buttons()
    {
        var plan = StarterDocument.Of(Repertoire.All.First(k => k.Name == "cardigan")).Planned();
        var buttons = Notions.Buttons(plan)!;
        Assert.Equal(buttons.Values.Select(b => (int?)(5 * b)), plan.Sizes.Select((_, at) => Kit.For(plan, at, 5).Buttons));
    }

    /// <summary>Whatever one field is left empty: the figures that need it are gone, the others stay, and it is named.</summary>
    [Theory]
    [InlineData(PriceField.Ball)]
    [InlineData(PriceField.CompanionBall)]
    [InlineData(PriceField.Wage)]
    [InlineData(PriceField.Fixed)]
    [InlineData(PriceField.Copy)]
    [InlineData(PriceField.Fee)]
    public void An_empty_field_gives_no_figure_and_is_named(PriceField field)
    {
        var sheet = PriceSheet.Of(Demo, field switch
        {
            PriceField.Ball => Typed with { Ball = null },
            PriceField.CompanionBall => Typed with { CompanionBall = null },
            PriceField.Wage => Typed with { Wage = null },
            PriceField.Fixed => Typed with { Fixed = null },
            PriceField.Copy => Typed with { Copy = null },
            _ => Typed with { Fee = null },
        });
        var isYarn = field is PriceField.Ball or PriceField.CompanionBall;
        Assert.All(sheet.Sizes, s =>
        {
            Assert.Equal(isYarn, s.Yarn.Value is null);
            Assert.Equal(isYarn, s.KitYarn!.Value is null);
            Assert.Equal(isYarn || field == PriceField.Wage, s.Piece.Median.Value is null);
            Assert.Equal(s.Piece.Median.Value is null ? [field] : [], s.Piece.Median.Missing);
        });
        Assert.Equal(field is PriceField.Fixed or PriceField.Copy or PriceField.Fee, sheet.BreakEven.Copies is null);
        Assert.Contains(new PriceWords(sheet).Lines, l => l.StartsWith("No figure for ", StringComparison.Ordinal) && l.Contains(PriceInputs.Words(field), StringComparison.Ordinal));
        Assert.DoesNotContain(new PriceWords(PriceSheet.Of(Demo, Typed)).Lines, l => l.StartsWith("No figure", StringComparison.Ordinal));
    }

    /// <summary>Two of the fields of one figure are both named.</summary>
    [Fact]
    public void Nothing_typed_gives_hours_and_names_every_field()
    {
        var sheet = PriceSheet.Of(Demo, new PriceInputs());
        Assert.Equal([PriceField.Ball, PriceField.CompanionBall, PriceField.Wage], sheet.Sizes[0].Piece.Median.Missing);
        Assert.Equal([PriceField.Fixed, PriceField.Copy, PriceField.Fee], sheet.BreakEven.Missing);
        Assert.All(sheet.Sizes, s => Assert.True(s.Hours.Median > 1 && s.Kit is null));
    }

    [Fact]
    public void A_garment_of_one_yarn_needs_no_other_price()
    {
        var plan = Patterns.Named("blanket").Planned();
        var sheet = PriceSheet.Of(plan, new PriceInputs { Ball = 10 });
        Assert.Null(sheet.Sizes[0].CompanionBalls);
        Assert.Equal(10m * plan.Sizes[0].Yarn.BallsSafe, sheet.Sizes[0].Yarn.Value);
        Assert.DoesNotContain(new PriceWords(sheet).Rows, r => r.Label.Contains("companion", StringComparison.Ordinal));
    }

    [Fact]
    public void A_copy_that_leaves_nothing_never_brings_the_costs_in()
    {
        var even = BreakEven.Of(Typed with { Copy = 1, FeePerCopy = 0.95m });
        Assert.Equal((-0.05m, null), (even.PerCopy.Value, even.Copies));
        Assert.Contains("So no number of copies brings the fixed costs in: raise the price of a copy.", new PriceWords(PriceSheet.Of(Demo, Typed with { Copy = 1, FeePerCopy = 0.95m })).Lines);
        Assert.Equal(0, BreakEven.Of(Typed with { Fixed = 0 }).Copies);
        Assert.Equal(1, BreakEven.Of(Typed with { Fixed = 6.30m }).Copies);
        Assert.Equal(2, BreakEven.Of(Typed with { Fixed = 6.31m }).Copies);
        // The largest costs against the least that a copy may leave.
        Assert.Equal(100_000_000, BreakEven.Of(Typed with { Fixed = PriceInputs.MostMoney, Copy = 0.01m, Fee = 0 }).Copies);
        Assert.Null(BreakEven.Of(Typed with { Fixed = PriceInputs.MostMoney, Copy = 0.0000000000000000000000000001m, Fee = 0 }).Copies);
    }

    public static TheoryData<PriceInputs> OutOfRange => new(
        Typed with { Ball = -0.01m }, Typed with { CompanionBall = 1_000_000.01m }, Typed with { Wage = decimal.MaxValue }, Typed with { Fixed = -1 },
        Typed with { Copy = decimal.MinValue }, Typed with { Fee = 1 }, Typed with { Fee = -0.1m }, Typed with { FeePerCopy = -1 },
        Typed with { People = 0 }, Typed with { People = 1_001 }, Typed with { Currency = "ninechars" }, Typed with { Currency = "=1+1" },
        Typed with { Currency = "€\r\n" }, Typed with { Currency = "2" }, Typed with { Currency = "\u202e€" });

    [Theory]
    [MemberData(nameof(OutOfRange), DisableDiscoveryEnumeration = true)]
    public void What_is_out_of_range_is_refused(PriceInputs inputs) => Assert.Throws<ArgumentOutOfRangeException>(() => PriceSheet.Of(Demo, inputs));

    [Fact]
    public void The_largest_of_everything_is_still_worked_out()
    {
        var sheet = PriceSheet.Of(Demo, Typed with
        {
            Ball = PriceInputs.MostMoney,
            CompanionBall = PriceInputs.MostMoney,
            Wage = PriceInputs.MostMoney,
            Pace = Pace.Between(1, 1),
            People = PriceInputs.MostPeople,
        });
        Assert.All(sheet.Sizes, s => Assert.True(s.Piece.High.Value > s.Yarn.Value && s.KitYarn!.Value > s.Yarn.Value));
    }

    /// <summary>Halves away from zero, with the sign behind.</summary>
    [Theory]
    [InlineData("9.505", "EUR", "9.51 EUR")]
    [InlineData("-0.005", "€", "-0.01 €")]
    [InlineData("1234.5", "", "1234.50")]
    [InlineData("0.004", " kr ", "0.00 kr")]
    public void Money_is_rounded_to_hundredths(string amount, string currency, string said) => Assert.Equal(
        said, new PriceWords(PriceSheet.Of(Demo, Typed with { Currency = currency })).Money(decimal.Parse(amount, CultureInfo.InvariantCulture)));

    [Fact]
    public void The_text_says_what_the_table_says()
    {
        var words = new PriceWords(PriceSheet.Of(Demo, Typed));
        var (text, table) = (words.Text("12 to 20"), words.Spreadsheet("12 to 20"));
        Assert.Contains("Size M\n", text, StringComparison.Ordinal);
        foreach (var row in words.Rows)
        {
            Assert.Equal(Demo.Sizes.Length, row.Cells.Length);
            Assert.Contains($"\n{row.Label}: {row.Cells[2]}\n", text, StringComparison.Ordinal);
            Assert.Contains($",{row.Cells[2]},", table, StringComparison.Ordinal);
        }
        Assert.Contains("\nA copy leaves 6.30 EUR once fees are taken off.\n64 copies bring the fixed costs of 400.00 EUR in.\n", text, StringComparison.Ordinal);
        Assert.Contains(PriceWords.ForYouAlone, text, StringComparison.Ordinal);
        Assert.Contains(PriceWords.ForYouAlone, table, StringComparison.Ordinal);
        Assert.DoesNotContain(PriceWords.None, text, StringComparison.Ordinal);
    }

    /// <summary>A title that a spreadsheet would work out as a formula, or that has quotes and commas, stays words.</summary>
    [Fact]
    public void A_hostile_title_stays_words_in_the_table()
    {
        var plan = Demo with { Project = Demo.Project with { Title = "=HYPERLINK(\"x\"),1" } };
        Assert.StartsWith("Pattern,\"'=HYPERLINK(\"\"x\"\"),1\"\r\n", new PriceWords(PriceSheet.Of(plan, Typed)).Spreadsheet("x"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_has_the_sheet_s_figures()
    {
        var json = Written(PriceSheet.Of(Demo, Typed));
        var medium = json.GetProperty("sizes")[2];
        Assert.Equal(69m, medium.GetProperty("yarn").GetDecimal());
        Assert.Equal(53, medium.GetProperty("kit").GetProperty("balls").GetInt32());
        Assert.Equal(64, json.GetProperty("breakEven").GetProperty("copies").GetInt32());
        var bare = Written(PriceSheet.Of(Demo, new PriceInputs()));
        Assert.Equal(["ball", "companionBall", "wage"], bare.GetProperty("sizes")[0].GetProperty("missing").EnumerateArray().Select(m => m.GetString()));
        Assert.Equal(JsonValueKind.Null, bare.GetProperty("breakEven").GetProperty("copies").ValueKind);
        Assert.False(bare.GetProperty("sizes")[0].TryGetProperty("kit", out _));
    }

    /// <summary>A buyer's files are written from the plan, which has no price: no line of the sheet is in them.</summary>
    [Fact]
    public void Nothing_of_it_is_in_what_a_buyer_gets()
    {
        var booklet = PatternWriter.Write(Demo);
        string[] files = [TextBooklet.Write(booklet, Demo.Project.Edition), ListingSheet.Text(Demo, booklet), ListingSheet.Spreadsheet(Demo, booklet), Encoding.UTF8.GetString(ProjectWriter.WriteUtf8(Demo.Project))];
        var words = new PriceWords(PriceSheet.Of(Demo, Typed));
        string[] ours = [.. words.Lines, .. PriceWords.Assumptions("12 to 20"), PriceWords.ForYouAlone, "Hours", "Kit for", "EUR", "9.50", "wage"];
        Assert.DoesNotContain(ours, line => files.Any(f => f.Contains(line, StringComparison.Ordinal)));
    }

    private static HoursRange[] HoursOf(Pace pace) => [.. PriceSheet.Of(Demo, Typed with { Pace = pace }).Sizes.Select(s => s.Hours)];

    private static JsonElement Written(PriceSheet sheet)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
            PriceJson.Write(json, sheet);
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }
}
