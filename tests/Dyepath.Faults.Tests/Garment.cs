using System.Globalization;
using System.Runtime.Loader;
using Dyepath.Faults.Sources;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Dyepath.Faults.Tests;

/// <summary>A small program to plant faults in.</summary>
internal sealed class Garment
{
    private static readonly MetadataReference[] References =
    [
        .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(p => Path.GetFileNameWithoutExtension(p) is "System.Private.CoreLib" or "System.Runtime" or "System.Linq" or "System.Collections")
            .Select(p => MetadataReference.CreateFromFile(p)),
    ];

    private Garment(CSharpCompilation compilation) => Compilation = compilation;

    public CSharpCompilation Compilation { get; }

    public static Garment Of(string members) => new(CSharpCompilation.Create(
        "Garment",
        [
            CSharpSyntaxTree.ParseText(
                $"using System; using System.Linq; using System.Globalization; public static class Garment {{ {members} }}", path: "Garment.cs"),
        ],
        References,
        new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary)));

    public Fault[] Faults() => [.. Finder.In(Compilation, _ => true)];

    public string[] Changes() => [.. Faults().Select(f => f.What)];

    /// <summary>What <c>Garment.Say()</c> says with a fault chosen, or with none.</summary>
    public static object Say(CSharpCompilation sown, int chosen)
    {
        using var stream = new MemoryStream();
        var result = sown.Emit(stream);
        Assert.True(result.Success, string.Join('\n', result.Diagnostics));
        stream.Position = 0;
        var context = new AssemblyLoadContext("planted", isCollectible: true);
        var assembly = context.LoadFromStream(stream);
        Environment.SetEnvironmentVariable(PlantedFault.Chosen, chosen.ToString(CultureInfo.InvariantCulture));
        var said = assembly.GetType("Garment")!.GetMethod("Say")!.Invoke(null, null)!;
        context.Unload();
        return said;
    }
}
