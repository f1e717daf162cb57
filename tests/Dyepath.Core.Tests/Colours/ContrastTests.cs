using Dyepath.Core.Colours;
using Dyepath.Core.Tests.Data;

namespace Dyepath.Core.Tests.Colours;

public sealed class ContrastTests
{
    [Fact]
    public void Ratios_and_verdicts_agree_with_the_table()
    {
        // wcag_golden.csv: the formula of WCAG 2.2, four decimals.
        foreach (var row in PublishedTable.Read("wcag_golden"))
        {
            var ratio = Contrast.Ratio(Srgb.Parse(row["fg"]), Srgb.Parse(row["bg"]));
            Assert.Equal(row.Number("ratio"), ratio, 1e-4);
            Assert.Equal(row["pass_4_5"] == "True", ratio >= Contrast.SmallText);
            Assert.Equal(row["pass_3"] == "True", ratio >= Contrast.LargeTextAndMarks);
            Assert.Equal(ratio, Contrast.Ratio(Srgb.Parse(row["bg"]), Srgb.Parse(row["fg"])));
        }
    }

    [Fact]
    public void Ink_is_legible_on_every_ground() =>
        SrgbTests.Any.Holds(ground =>
            Contrast.Ratio(Contrast.InkOn(ground), ground) >= Contrast.SmallText && Contrast.Ratio(ground, ground) == 1,
            seed: 5, cases: 1_000);
}
