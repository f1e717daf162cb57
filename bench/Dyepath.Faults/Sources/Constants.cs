using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Dyepath.Faults.Sources;

/// <summary>Where a fault cannot be chosen while the program runs: what the compiler wants to be constant.</summary>
internal sealed class Constants
{
    private readonly HashSet<ISymbol> _needed = new(SymbolEqualityComparer.Default);
    private readonly CSharpCompilation _compilation;

    public Constants(CSharpCompilation compilation)
    {
        _compilation = compilation;
        foreach (var tree in compilation.SyntaxTrees)
        {
            var model = compilation.GetSemanticModel(tree);
            foreach (var name in tree.GetRoot().DescendantNodes().OfType<SimpleNameSyntax>().Where(n => IsConstant(n) || Declaration(n) is not null))
            {
                if (model.GetSymbolInfo(name).Symbol is { } symbol and (IFieldSymbol { IsConst: true } or ILocalSymbol { IsConst: true }))
                    _needed.Add(symbol);
            }
        }
    }

    /// <summary>True also within a constant that nothing needs as one: the <see cref="Planter"/> makes it a property.</summary>
    public bool CanChange(SyntaxNode node) =>
        !IsConstant(node)
        && (Declaration(node) is not { } variable
            || variable.Parent is VariableDeclarationSyntax { Variables.Count: 1 }
                && _compilation.GetSemanticModel(node.SyntaxTree).GetDeclaredSymbol(variable) is { } symbol && !_needed.Contains(symbol));

    /// <summary>The constant in whose value the node stands, or null.</summary>
    public static VariableDeclaratorSyntax? Declaration(SyntaxNode node) => node.Ancestors().OfType<VariableDeclaratorSyntax>().FirstOrDefault(v =>
        v.Parent?.Parent is FieldDeclarationSyntax { Modifiers: var field } && field.Any(SyntaxKind.ConstKeyword)
        || v.Parent?.Parent is LocalDeclarationStatementSyntax { IsConst: true });

    private static bool IsConstant(SyntaxNode node) => node.Ancestors().Any(a =>
        a is AttributeSyntax or PatternSyntax or CaseSwitchLabelSyntax or EnumMemberDeclarationSyntax or EqualsValueClauseSyntax { Parent: ParameterSyntax });
}
