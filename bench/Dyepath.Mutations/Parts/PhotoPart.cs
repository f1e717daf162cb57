using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Projects;
using Dyepath.Drawing;
using Dyepath.Mutations.Agreement;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Parts;

/// <summary>Photographs whose files are damaged, read in a document and printed on a page and in a PDF.</summary>
internal sealed class PhotoPart : IPart
{
    private static readonly Edition Edition = new(Terms.Us, Units.Centimetres, Hand.Right);

    private JsonTree _document = JsonTree.Value("0");

    public string Name => "photos";

    public Task PrepareAsync(int seed)
    {
        _document = JsonTree.Parse(Bases.Projects(seed, 3)[1]);
        return Task.CompletedTask;
    }

    public byte[] Input(int seed, int number)
    {
        var random = new Random(unchecked(seed * 1_000_003 + number));
        var file = random.Next(3) == 0 ? SampleJpeg.Of(random) : Mutator.DamageBytes(SampleJpeg.Of(random), random);
        var document = _document.Clone();
        var photos = document.Children[document.Names.IndexOf("\"photos\"")];
        var photo = photos.Children[0];
        photo.Children[photo.Names.IndexOf("\"jpeg\"")] = JsonTree.Value(JsonTree.Quoted(Convert.ToBase64String(file)));
        var list = Mutator.Damage(photos.ToString(), random);
        // In one of four the list around them is damaged too.
        if (random.Next(4) == 0 && System.Text.Unicode.Utf8.IsValid(list))
            document.Children[document.Names.IndexOf("\"photos\"")] = JsonTree.Value(Encoding.UTF8.GetString(list));
        return Encoding.UTF8.GetBytes(document.ToString());
    }

    public Task<string> TryAsync(byte[] input, int number, CancellationToken cancel)
    {
        var reading = ProjectReader.Read(input);
        Located.Check(reading.Faults);
        if (reading.Project is not { } project)
            return Task.FromResult(reading.Faults[0].Kind == FaultKind.NotJson ? "no JSON" : "refused by the reader");
        var written = ProjectWriter.WriteUtf8(project);
        if (Same.Difference(project, ProjectReader.Read(written).Project) is { } difference)
            throw new Broken($"written and read again it differs: {difference}");
        Kept.Check(input, written, text => Same.Difference(project, ProjectReader.Read(text).Project) is null);
        var booklet = new Booklet("Photos", "", ["S"], Edition, [new Section("photos", Phrase.Plain("Photos"), [.. project.Photos])]);
        var say = new Wording(booklet, Edition).Say;
        HtmlAsText.Read(HtmlBooklet.Write(booklet, Edition, say, cancel));
        using var pdf = new MemoryStream();
        PdfBooklet.Write(booklet, Edition, say, new Print(PageSize.A4), pdf, cancel: cancel);
        return Task.FromResult("printed");
    }

    public ValueTask DisposeAsync() => default;
}

/// <summary>JPEG files written marker by marker (ITU-T T.81, annex B), with whatever may stand between.</summary>
internal static class SampleJpeg
{
    public static byte[] Of(Random random)
    {
        var (width, height) = (random.Next(1, 3_000), random.Next(1, 3_000));
        var components = random.Next(3) == 0 ? 1 : 3;
        var other = new byte[random.Next(0, 60)];
        random.NextBytes(other);
        var picture = new byte[random.Next(2, 200)];
        random.NextBytes(picture);
        return
        [
            0xff, 0xd8, 0xff, 0xe0, 0, 16, .. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0,
            .. random.Next(2) == 0 ? [0xff, 0xfe, 0, (byte)(other.Length + 2), .. other] : Array.Empty<byte>(),
            .. random.Next(4) == 0 ? [0xff, 0xe1, 0, 14, .. "Exif\0\0"u8, .. "II*\0\b\0"u8] : Array.Empty<byte>(),
            0xff, random.Next(3) == 0 ? (byte)0xc2 : (byte)0xc0, 0, (byte)(8 + 3 * components), 8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, (byte)components,
            .. Enumerable.Range(1, components).SelectMany(c => new byte[] { (byte)c, 0x11, 0 }),
            0xff, 0xda, 0, (byte)(6 + 2 * components), (byte)components, .. Enumerable.Range(1, components).SelectMany(c => new byte[] { (byte)c, 0 }), 0, 63, 0,
            .. picture.Where(b => b != 0xff), 0xff, 0xd9,
        ];
    }
}
