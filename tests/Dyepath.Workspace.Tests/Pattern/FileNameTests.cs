using CsCheck;
using Dyepath.Workspace.Shell;

namespace Dyepath.Workspace.Tests.Pattern;

public sealed class FileNameTests
{
    [Theory]
    [InlineData("Tideline", "tideline.pdf")]
    [InlineData("  Sea & Sand / no. 2  ", "sea-sand-no-2.pdf")]
    [InlineData("..\\..\\Windows", "windows.pdf")]
    [InlineData("../../etc/passwd", "etc-passwd.pdf")]
    [InlineData("Été à la plage", "été-à-la-plage.pdf")]
    [InlineData("浜辺", "浜辺.pdf")]
    [InlineData("🌊🌊", "pattern.pdf")]
    [InlineData("", "pattern.pdf")]
    [InlineData("CON", "pattern-con.pdf")]
    [InlineData("lpt1", "pattern-lpt1.pdf")]
    public void Names_follow_the_title(string title, string name) => Assert.Equal(name, FileName.Of(title, ".pdf"));

    [Fact]
    public void No_title_makes_a_dangerous_name() => Gen.String.Holds(
        title =>
        {
            var name = FileName.Of(title, ".pdf");
            Assert.InRange(name.Length, 5, 70);
            Assert.Matches(@"^[\p{L}\p{Nd}][\p{L}\p{Nd}-]*\.pdf$", name);
        },
        seed: 41, cases: 1_000);
}
