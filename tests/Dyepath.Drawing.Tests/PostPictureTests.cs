using System.Globalization;
using System.Xml.Linq;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Tests;

/// <summary>Pictures for posts: their shapes, their words and what is kept off their edges.</summary>
public sealed class PostPictureTests
{
    private const string Said = "Drawn by computer from the pattern's numbers.";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly Project Demo = ProjectReader.Read(DemoProject.Utf8).Project!;

    private static readonly Lazy<PostPicture[]> Pictures = new(() => Draw(Demo, "M"));

    [Fact]
    public void Garment_fabric_and_both_come_in_three_shapes() => Assert.Equal(
        [
            ("cover-square", 1080, 1080), ("fabric-square", 1080, 1080), ("both-square", 1080, 1080),
            ("cover-portrait", 1080, 1350), ("fabric-portrait", 1080, 1350), ("both-portrait", 1080, 1350),
            ("cover-tall", 1080, 1620), ("fabric-tall", 1080, 1620), ("both-tall", 1080, 1620),
        ],
        Pictures.Value.Select(p => (p.Name, p.Width, p.Height)));

    /// <summary>A pixel is 25.4/96 mm (CSS Values 3, section 5.2).</summary>
    [Fact]
    public void A_screen_shows_as_many_pixels_as_are_told() => Assert.All(Pictures.Value, p =>
    {
        var root = Read(p);
        Assert.Equal(p.Width, Millimetres(root, "width") * 96 / 25.4, 0.1);
        Assert.InRange(Millimetres(root, "height") * 96 / 25.4, p.Height - 0.2, p.Height);
    });

    [Fact]
    public void Each_has_title_designer_and_that_a_computer_drew_it() => Assert.All(Pictures.Value, p =>
        Assert.Equal([Demo.Title, Demo.Designer, Said], Read(p).Descendants(Svg + "text").Select(t => t.Value)));

    [Fact]
    public void The_alternative_text_is_in_the_picture_and_beside_it() => Assert.All(Pictures.Value, p =>
    {
        var root = Read(p);
        Assert.Equal(Demo.Title, root.Element(Svg + "title")!.Value);
        Assert.Equal(p.Alternative, root.Element(Svg + "desc")!.Value);
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.EndsWith(Said, p.Alternative, StringComparison.Ordinal);
        Assert.Equal(!p.Name.StartsWith("fabric", StringComparison.Ordinal), p.Alternative.Contains("size M", StringComparison.Ordinal));
        Assert.Equal(!p.Name.StartsWith("cover", StringComparison.Ordinal), p.Alternative.Contains("The fabric of Tideline", StringComparison.Ordinal));
    });

    /// <summary>Letters of at least 3 % of the width, all of them a twentieth or more from every edge.</summary>
    [Fact]
    public void Words_are_read_on_a_phone_and_lie_off_the_edges() => Assert.All(
        Pictures.Value.Concat(Draw(Demo with { Title = new string('W', 200), Designer = new string('m', 120) }, "M")), p =>
        {
            var (width, height) = Size(Read(p));
            foreach (var text in Read(p).Descendants(Svg + "text"))
            {
                var size = Number(text, "font-size");
                Assert.True(size >= 0.03 * width, $"{p.Name}: {size / width:0.000}");
                Assert.InRange(Number(text, "x"), 0.05 * width, 0.06 * width);
                Assert.InRange(Number(text, "y"), 0.05 * height, 0.95 * height);
                Assert.True(Number(text, "x") + Typeface.Regular.Width(text.Value, size) <= 0.95 * width, text.Value);
            }
        });

    [Fact]
    public void Another_size_is_another_picture()
    {
        var other = Draw(Demo, "2X");
        Assert.NotEqual(Pictures.Value[0].Svg, other[0].Svg);
        Assert.Contains("size 2X", other[0].Alternative, StringComparison.Ordinal);
        Assert.Equal(Pictures.Value[0].Svg, Draw(Demo, "M")[0].Svg);
    }

    [Fact]
    public void A_title_of_markup_stays_words()
    {
        const string hostile = "</title><script>alert(1)</script>&\u202e\ud800";
        Assert.All(Draw(Demo with { Title = hostile, Designer = "" }, "M"), p =>
        {
            var root = Read(p);
            Assert.Empty(root.Descendants().Where(e => e.Name.LocalName == "script"));
            Assert.Equal(2, root.Descendants(Svg + "text").Count());
        });
    }

    [Fact]
    public void Nothing_is_fetched_from_elsewhere() => Assert.All(Pictures.Value, p =>
    {
        Assert.DoesNotContain("url(", p.Svg, StringComparison.Ordinal);
        Assert.DoesNotContain("href", p.Svg, StringComparison.Ordinal);
    });

    private static PostPicture[] Draw(Project project, string size)
    {
        var edition = project.Edition with { Size = size };
        var plan = GarmentPlanner.Plan(project with { Edition = edition }, TestContext.Current.CancellationToken).Plan!;
        var booklet = PatternWriter.Write(plan, TestContext.Current.CancellationToken);
        return [.. PostPictures.Of(booklet, edition, new Wording(booklet, edition).Say, TestContext.Current.CancellationToken)];
    }

    private static XElement Read(PostPicture picture) => XDocument.Parse(picture.Svg).Root!;

    private static (double Width, double Height) Size(XElement root) => (Millimetres(root, "width"), Millimetres(root, "height"));

    private static double Millimetres(XElement root, string name) =>
        double.Parse(root.Attribute(name)!.Value.Replace("mm", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
