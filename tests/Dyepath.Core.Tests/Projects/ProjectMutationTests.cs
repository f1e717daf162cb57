using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

public sealed partial class ProjectMutationTests
{
    private static readonly string Starter = StarterDocument.Write();

    private static readonly string Demo = Encoding.UTF8.GetString(DemoProject.Utf8);

    [Fact]
    public void Reader_and_schema_agree_on_the_form_of_damaged_documents() => Damaged.Holds(
        json =>
        {
            var faults = ProjectReader.Read(Encoding.UTF8.GetBytes(json)).Faults;
            Assert.DoesNotContain(faults, f => f.Kind == FaultKind.NotJson);
            Assert.Equal(DocumentSchema.Allows(json), !faults.Any(f => f.Kind == FaultKind.Form));
        },
        seed: 201, cases: 400);

    [Fact]
    public void Every_damage_is_located_and_explained_or_harmless() => Damaged.Holds(
        json =>
        {
            var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(json));
            Assert.Equal(reading.IsGood, reading.Faults.IsEmpty);
            Assert.All(reading.Faults, AssertExplained);
            if (reading.Project is { } project)
                Assert.Null(Same.Difference(project, ProjectReader.Read(ProjectWriter.WriteUtf8(project)).Project));
        },
        seed: 202, cases: 400);

    [Fact]
    public void Damaged_bytes_never_throw() => Gen.Int.Holds(
        seed =>
        {
            var random = new Random(seed);
            var bytes = Encoding.UTF8.GetBytes(random.Next(2) == 0 ? Demo : Starter);
            for (var times = random.Next(1, 8); times > 0; times--)
                bytes = DamageBytes(bytes, random);
            Assert.All(ProjectReader.Read(bytes).Faults, AssertExplained);
        },
        seed: 203, cases: 800);

    private static Gen<string> Damaged { get; } = Gen.Select(
        Gen.OneOf(Gen.Const(Demo), ProjectGen.Project.Select(ProjectWriter.Write)),
        Gen.Int,
        (json, seed) =>
        {
            var random = new Random(seed);
            for (var times = random.Next(1, 4); times > 0; times--)
                json = Mutation.Mutate(json, random);
            return json;
        });

    private static void AssertExplained(Fault fault)
    {
        Assert.Matches(PathPattern(), fault.Path);
        Assert.True(fault.Line >= 1);
        Assert.NotEmpty(fault.Found);
        Assert.NotEmpty(fault.Allowed);
        Assert.Contains(fault.Next[^1], ".?");
        Assert.DoesNotContain(fault.ToString(), char.IsControl);
    }

    private static byte[] DamageBytes(byte[] bytes, Random random)
    {
        var at = random.Next(bytes.Length);
        switch (random.Next(4))
        {
            case 0:
                return bytes[..at].Length == 0 ? bytes : bytes[..at];
            case 1:
                return [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + random.Next(1, 20))..], (byte)'}'];
            case 2:
                return [.. bytes[..at], .. "{}[],:\"\\9e-"u8.Slice(random.Next(11), 1), .. bytes[at..]];
            default:
                bytes[at] = (byte)random.Next(256);
                return bytes;
        }
    }

    [GeneratedRegex(@"^(document|[a-zA-Z$""\[][^\n]*)$")]
    private static partial Regex PathPattern();
}
