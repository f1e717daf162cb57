using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Projects;

namespace Dyepath.Mutations.Parts;

/// <summary>Good documents to damage: every kind of design, small ones before all.</summary>
internal static class Bases
{
    /// <summary>The same for the same seed on every machine.</summary>
    public static string[] Projects(int seed, int count)
    {
        var bases = new List<string> { StarterDocument.Write(), ProjectWriter.Write(WithPhotos()) };
        for (var i = 0; bases.Count < count; i++)
        {
            var project = DesignGen.Of(unchecked(seed * 7_919 + i));
            var json = ProjectWriter.Write(project);
            // Most damages are tried on what is soon done; a fabric's cells are what takes time.
            if (ProjectReader.Read(Encoding.UTF8.GetBytes(json)).IsGood && GarmentPlanner.Plan(project).Plan is { } plan
                && plan.Sizes.Length <= 2 && plan.Sizes.Sum(s => s.Pieces.Sum(p => (long)p.Stitches * p.Rows)) < 25_000)
                bases.Add(json);
        }
        bases[Math.Min(count - 1, 5)] = Encoding.UTF8.GetString(DemoProject.Utf8);
        return [.. bases];
    }

    /// <summary>A blanket with two photographs: the smallest files that the format's markers allow.</summary>
    private static Project WithPhotos()
    {
        var jpeg = Convert.ToBase64String(Jpeg);
        if (!JpegPicture.TryRead(jpeg, out var picture, out var next))
            throw new InvalidOperationException(next);
        for (var seed = 1; ; seed++)
        {
            var project = DesignGen.Of(seed);
            if (project.Garment.Shape is Wrap && GarmentPlanner.Plan(project).HasPlan)
                return project with { Photos = [new Photo("introduction", "A blanket <on> a wall.", picture), new Photo("closing", "The same, \"folded\".", picture)] };
        }
    }

    /// <summary>A grey JPEG of 64 × 40 (ITU-T T.81, annex B): start, JFIF, frame, scan, end.</summary>
    private static byte[] Jpeg =>
    [
        0xff, 0xd8, 0xff, 0xe0, 0, 16, .. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0, 0xff, 0xc0, 0, 11, 8, 0, 40, 0, 64, 1, 1, 0x11, 0,
        0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0, 0, 0xff, 0xd9,
    ];

}
