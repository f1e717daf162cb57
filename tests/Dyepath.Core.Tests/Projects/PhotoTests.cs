using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Projects.Description;
using Dyepath.Core.Reading;

namespace Dyepath.Core.Tests.Projects;

public sealed class PhotoTests
{
    [Fact]
    public void The_example_of_the_page_is_a_picture_of_one_point()
    {
        var example = Assert.IsType<TextNode>(new JpegShape().Example).Text;
        Assert.True(JpegPicture.TryRead(example, out var picture, out _));
        Assert.Equal((1, 1), (picture.Width, picture.Height));
        Assert.Equal(example, Convert.ToBase64String(picture.ToBytes()));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(JpegPicture.MostPixels, 1)]
    [InlineData(640, JpegPicture.MostPixels)]
    public void Width_and_height_are_read_from_the_frame(int width, int height)
    {
        foreach (byte frame in (byte[])[0xc0, 0xc1, 0xc2])
        {
            var picture = TestJpeg.Read(TestJpeg.Of(width, height, frame, components: 3, before: [0xff, 0xe0, 0, 4, 1, 2, 0xff]));
            Assert.Equal((width, height), (picture.Width, picture.Height));
        }
    }

    public static TheoryData<string, byte[], string> Refused => new()
    {
        { "text", Encoding.ASCII.GetBytes("<svg onload=alert(1)>"), "no whole JPEG" },
        { "cut off", TestJpeg.Of(8, 8)[..^1], "no whole JPEG" },
        { "nothing between its ends", [0xff, 0xd8, 0xff, 0xd9], "damaged" },
        { "no frame", [0xff, 0xd8, .. TestJpeg.Jfif, 0xff, 0xda, 0, 2, 0, 0xff, 0xd9], "dimensions are missing" },
        { "a segment beyond the end", [0xff, 0xd8, 0xff, 0xe0, 0xff, 0xf0, 0, 0xff, 0xd9], "damaged" },
        { "a segment of length 0", [0xff, 0xd8, 0xff, 0xe0, 0, 0, 0, 0xff, 0xd9], "damaged" },
        { "no width", TestJpeg.Of(0, 8), "0 by 8 pixels" },
        { "no height", TestJpeg.Of(8, 0), "8 by 0 pixels" },
        { "too wide", TestJpeg.Of(JpegPicture.MostPixels + 1, 8), "at most 2400 a side" },
        { "too tall", TestJpeg.Of(8, 65_535), "at most 2400 a side" },
        { "four inks", TestJpeg.Of(8, 8, components: 4), "red, green and blue" },
        { "twelve bits", TestJpeg.Of(8, 8, frame: 0xc1, precision: 12), "8 bits" },
        { "lossless", TestJpeg.Of(8, 8, frame: 0xc3), "rare kind" },
        { "arithmetic", TestJpeg.Of(8, 8, frame: 0xc9), "rare kind" },
        { "two frames", TestJpeg.Of(8, 8, before: TestJpeg.Of(8, 8)[20..33]), "rare kind" },
        { "no JFIF", [0xff, 0xd8, .. TestJpeg.Of(8, 8)[20..]], "rare kind" },
        { "colours in scans of their own", Scanned(TestJpeg.Of(8, 8, components: 3)), "rare kind" },
        { "no picture behind its markers", [.. TestJpeg.Of(8, 8)[..^4], 0xff, 0xd9], "damaged" },
        { "a camera's notes", TestJpeg.Of(8, 8, before: [0xff, 0xe1, 0, 4, 1, 2]), "notes of the camera" },
        { "an editor's notes", TestJpeg.Of(8, 8, before: [0xff, 0xff, 0xed, 0, 4, 1, 2]), "notes of the camera" },
    };

    /// <summary>With one component in its first scan.</summary>
    private static byte[] Scanned(byte[] file)
    {
        var at = file.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xff, 0xda]);
        return [.. file[..(at + 2)], 0, 8, 1, 1, 0, 0, 63, 0, 0, 0, 0xff, 0xd9];
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_is_no_plain_picture_is_told_with_its_place(string what, byte[] file, string said)
    {
        var fault = Assert.Single(ProjectReader.Read(Demo(("notes", what, Convert.ToBase64String(file)))).Faults);
        Assert.Equal(("photos[0].jpeg", FaultKind.Meaning), (fault.Path, fault.Kind));
        Assert.Contains(said, fault.Next, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("AAA")]
    [InlineData("AAAA AAAA AAAA AA")]
    [InlineData("AAA\nAAAA")]
    [InlineData("=AAA")]
    [InlineData("A===")]
    [InlineData("AA==AAAA")]
    [InlineData("AAA_")]
    public void What_is_no_base64_is_a_fault_of_form_to_reader_and_schema(string text)
    {
        var document = Demo(("notes", "x", text));
        Assert.Equal(FaultKind.Form, Assert.Single(ProjectReader.Read(document).Faults).Kind);
        Assert.False(DocumentSchema.Allows(Encoding.UTF8.GetString(document)));
    }

    [Fact]
    public void A_picture_may_have_two_hundred_kilobytes_and_all_together_one_megabyte()
    {
        var largest = Convert.ToBase64String(TestJpeg.Of(900, 600, bytes: JpegPicture.MostBytes));
        var five = Enumerable.Repeat(("pieces", "The finished tunic.", largest), 5).ToArray();
        Assert.True(ProjectReader.Read(Demo(five)).IsGood);
        var fault = Assert.Single(ProjectReader.Read(Demo([.. five, ("care", "A seam.", Convert.ToBase64String(TestJpeg.Of(1, 1)))])).Faults);
        Assert.Equal(("photos", FaultKind.Meaning, "1001 kB"), (fault.Path, fault.Kind, fault.Found));
        var over = Convert.ToBase64String(TestJpeg.Of(900, 600, bytes: JpegPicture.MostBytes + 1));
        Assert.Equal("photos[0].jpeg", Assert.Single(ProjectReader.Read(Demo(("care", "x", over))).Faults).Path);
    }

    [Fact]
    public void Damaged_pictures_never_throw() => Gen.Select(Gen.Int[0, 60], Gen.Byte, Gen.Int[0, 60]).Holds(
        (at, value, cut) =>
        {
            var file = TestJpeg.Of(8, 8, before: [0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xdb, 0, 5, 1, 2, 3]);
            file[at % file.Length] = value;
            var read = JpegPicture.TryRead(Convert.ToBase64String(file[..(file.Length - cut % 3)]), out var picture, out var next);
            Assert.Equal(read, next.Length == 0);
            Assert.Equal(read, picture is { Width: >= 1 and <= JpegPicture.MostPixels, Height: >= 1 and <= JpegPicture.MostPixels });
        },
        seed: 231, cases: 2_000);

    [Fact]
    public void A_known_picture_is_read_by_the_text_that_stands_for_it()
    {
        var picture = TestJpeg.Read(TestJpeg.Of(30, 20));
        var known = ImmutableDictionary<string, JpegPicture>.Empty.Add("#1", picture);
        var document = Demo(("notes", "A seam.", "#1"));
        Assert.Same(picture, Assert.Single(ProjectReader.Read(document, known).Project!.Photos).Picture);
        Assert.Equal(FaultKind.Form, Assert.Single(ProjectReader.Read(document).Faults).Kind);
    }

    [Fact]
    public void Photos_follow_the_words_of_their_place_and_the_check_reads_over_them()
    {
        var picture = Convert.ToBase64String(TestJpeg.Of(30, 20));
        var photos = WordPlaces.All.Select(place => (place, $"Seen at {place}, 10 cm / 4 in wide.", picture)).ToArray();
        var plan = GarmentPlanner.Plan(ProjectReader.Read(Demo(photos)).Project!, TestContext.Current.CancellationToken).Plan!;
        var booklet = PatternWriter.Write(plan);
        Assert.Equal(
            photos.Select(p => p.Item2),
            booklet.Cover!.Own.Concat(booklet.Sections.SelectMany(s => s.Blocks)).OfType<Photo>().Select(p => p.Alternative).OrderBy(a => Array.FindIndex(photos, p => p.Item2 == a)));
        var text = TextBooklet.Write(booklet, plan.Project.Edition);
        Assert.Contains("[Photo: Seen at care, ", text, StringComparison.Ordinal);
        Assert.Empty(PatternCheck.Text(plan, text));
    }

    private static byte[] Demo(params (string Place, string Alternative, string Jpeg)[] photos)
    {
        var demo = JsonNode.Parse(DemoProject.Utf8)!;
        demo["photos"] = new JsonArray(
            [.. photos.Select(p => new JsonObject { ["place"] = p.Place, ["alternative"] = p.Alternative, ["jpeg"] = p.Jpeg })]);
        return Encoding.UTF8.GetBytes(demo.ToJsonString());
    }
}
