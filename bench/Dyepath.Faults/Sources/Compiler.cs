using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.Json;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Dyepath.Faults.Sources;

/// <summary>Compiles a project as its own build does: with the arguments that the build gives to the compiler.</summary>
internal sealed class Compiler
{
    private readonly CSharpCommandLineArguments _arguments;

    private Compiler(CSharpCommandLineArguments arguments, CSharpCompilation compilation)
    {
        _arguments = arguments;
        Compilation = compilation;
    }

    public CSharpCompilation Compilation { get; }

    /// <summary>Builds the target's tests and asks the build how it compiles the target.</summary>
    public static async Task<Compiler> OfAsync(Target target)
    {
        await DotnetAsync("build", "-c", "Release", "-v", "quiet", target.TestFolder);
        // What source generators add is written to files, so that no generator needs to run here.
        var generated = Path.Combine(Target.Root, "out", "faults", $"{target.Name}.generated");
        Directory.CreateDirectory(generated);
        var answer = await DotnetAsync(
            "msbuild", target.Folder, "-t:PrepareResources;Compile", "-getItem:CscCommandLineArgs", "-p:Configuration=Release", "-p:BuildProjectReferences=false",
            "-p:ProvideCommandLineArgs=true", "-p:NonExistentFile=none", "-p:EmitCompilerGeneratedFiles=true", $"-p:CompilerGeneratedFilesOutputPath={generated}");
        using var items = JsonDocument.Parse(answer);
        var line = items.RootElement.GetProperty("Items").GetProperty("CscCommandLineArgs").EnumerateArray().Select(a => a.GetProperty("Identity").GetString()!);
        var arguments = CSharpCommandLineParser.Default.Parse(line, target.Folder, sdkDirectory: null);
        var parsing = arguments.ParseOptions.WithDocumentationMode(DocumentationMode.None);
        var files = arguments.SourceFiles.Select(f => f.Path)
            .Concat(Directory.EnumerateFiles(generated, "*.cs", SearchOption.AllDirectories));
        return new Compiler(arguments, CSharpCompilation.Create(
            arguments.CompilationName,
            files.Order(StringComparer.Ordinal).Select(path => CSharpSyntaxTree.ParseText(File.ReadAllText(path), parsing, path, System.Text.Encoding.UTF8)),
            arguments.MetadataReferences.Select(r => MetadataReference.CreateFromFile(r.Reference, r.Properties)),
            // A planted fault may well deserve a warning.
            arguments.CompilationOptions.WithGeneralDiagnosticOption(ReportDiagnostic.Default)
                .WithSpecificDiagnosticOptions(ImmutableDictionary<string, ReportDiagnostic>.Empty)));
    }

    /// <summary>Writes the assembly, with the resources that the build gives it.</summary>
    public void Emit(CSharpCompilation compilation, string path)
    {
        using var stream = File.Create(path);
        var result = compilation.Emit(stream, manifestResources: _arguments.ManifestResources, options: _arguments.EmitOptions);
        if (!result.Success)
            throw new InvalidOperationException($"It does not compile: {result.Diagnostics.First(d => d.Severity == DiagnosticSeverity.Error)}");
    }

    private static async Task<string> DotnetAsync(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", arguments) { RedirectStandardOutput = true, WorkingDirectory = Target.Root })
            ?? throw new InvalidOperationException("dotnet does not start.");
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? said : throw new InvalidOperationException($"dotnet {string.Join(' ', arguments)} fails.");
    }
}
