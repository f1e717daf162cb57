using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Dyepath.Faults.Sources;

/// <summary>A small fault that could be planted.</summary>
/// <param name="Node">What it changes: an expression, a statement to leave out, or the text between the holes of an interpolated string.</param>
/// <param name="What">The change, for people, such as <c>a - b → a + b</c>.</param>
/// <param name="Change">Makes the faulty expression of the good one, which may hold further planted faults.</param>
/// <param name="Number">Its place in the seed's order, from 0.</param>
internal sealed record Fault(SyntaxNode Node, string Kind, string What, Func<ExpressionSyntax, ExpressionSyntax>? Change = null, int Number = -1)
{
    public string Path => Node.SyntaxTree.FilePath;

    /// <summary>From 1.</summary>
    public int Line => Node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;
}
