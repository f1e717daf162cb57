using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace Dyepath.Tests;

/// <summary>Every project's tests hold this to those of our assemblies that they bring along.</summary>
public sealed class SignatureTests
{
    private const int MostParameters = 7;

    /// <summary>Each with its reason.</summary>
    private static readonly ImmutableHashSet<string> Exceptions = [];

    [Fact]
    public void A_method_or_record_takes_seven_parameters_at_most() => Assert.Equal(Exceptions, OurTypes().SelectMany(LongSignatures).ToImmutableHashSet());

    /// <summary>The rule sees what it forbids, in records, constructors and methods.</summary>
    [Fact]
    public void A_long_signature_would_be_seen() => Assert.Equal(
        [$"{nameof(LongRecord)}(8)", $"{nameof(LongRecord)}.{nameof(LongRecord.Sum)}(8)"], LongSignatures(typeof(LongRecord)).Order());

    private sealed record LongRecord(int A, int B, int C, int D, int E, int F, int G, int H)
    {
        public static int Sum(int a, int b, int c, int d, int e, int f, int g, int h) => a + b + c + d + e + f + g + h;
    }

    private static IEnumerable<Type> OurTypes() => Directory.EnumerateFiles(AppContext.BaseDirectory, "Dyepath.*.dll")
        .Select(Path.GetFileNameWithoutExtension).Where(name => !name!.EndsWith(".Tests", StringComparison.Ordinal))
        .SelectMany(name => Assembly.Load(name!).GetTypes()).Where(t => !IsGenerated(t));

    /// <summary>A record's <c>Deconstruct</c> has the parameters of its constructor, and is the compiler's.</summary>
    private static IEnumerable<string> LongSignatures(Type type) => type
        .GetMembers(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly)
        .OfType<MethodBase>()
        .Where(m => m.GetParameters().Length > MostParameters && !m.IsDefined(typeof(CompilerGeneratedAttribute)) && !m.Name.Contains('<', StringComparison.Ordinal))
        .Select(m => $"{type.Name}{(m.IsConstructor ? "" : "." + m.Name)}({m.GetParameters().Length})");

    /// <summary>Made by the compiler or by a source generator, or within what is.</summary>
    private static bool IsGenerated(Type type) =>
        type.Name.Contains('<', StringComparison.Ordinal) || type.IsDefined(typeof(CompilerGeneratedAttribute))
        || type.IsDefined(typeof(System.CodeDom.Compiler.GeneratedCodeAttribute)) || (type.DeclaringType is { } outer && IsGenerated(outer));
}
