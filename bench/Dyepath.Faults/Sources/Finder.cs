using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace Dyepath.Faults.Sources;

/// <summary>Finds every small fault that could be planted. What does not compile is left to the <see cref="Planter"/> to drop.</summary>
internal sealed class Finder(SemanticModel model) : CSharpSyntaxWalker
{
    private static readonly Dictionary<SyntaxKind, SyntaxKind> Operators = new()
    {
        [SyntaxKind.AddExpression] = SyntaxKind.SubtractExpression,
        [SyntaxKind.SubtractExpression] = SyntaxKind.AddExpression,
        [SyntaxKind.MultiplyExpression] = SyntaxKind.DivideExpression,
        [SyntaxKind.DivideExpression] = SyntaxKind.MultiplyExpression,
        [SyntaxKind.ModuloExpression] = SyntaxKind.DivideExpression,
        [SyntaxKind.LessThanExpression] = SyntaxKind.LessThanOrEqualExpression,
        [SyntaxKind.LessThanOrEqualExpression] = SyntaxKind.LessThanExpression,
        [SyntaxKind.GreaterThanExpression] = SyntaxKind.GreaterThanOrEqualExpression,
        [SyntaxKind.GreaterThanOrEqualExpression] = SyntaxKind.GreaterThanExpression,
        [SyntaxKind.EqualsExpression] = SyntaxKind.NotEqualsExpression,
        [SyntaxKind.NotEqualsExpression] = SyntaxKind.EqualsExpression,
        [SyntaxKind.LogicalAndExpression] = SyntaxKind.LogicalOrExpression,
        [SyntaxKind.LogicalOrExpression] = SyntaxKind.LogicalAndExpression,
    };

    private static readonly Dictionary<string, string> Methods = new()
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
        ["First"] = "Last",
        ["Last"] = "First",
        ["Any"] = "All",
        ["All"] = "Any",
        ["Skip"] = "Take",
        ["Take"] = "Skip",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
    };

    private readonly List<Fault> _found = [];

    /// <summary>In the order of files and places, so that a seed means the same faults for as long as the sources do not change.</summary>
    public static ImmutableArray<Fault> In(CSharpCompilation compilation, Func<string, bool> asked)
    {
        var found = ImmutableArray.CreateBuilder<Fault>();
        var constants = new Constants(compilation);
        foreach (var tree in compilation.SyntaxTrees.Where(t => asked(t.FilePath)).OrderBy(t => t.FilePath, StringComparer.Ordinal))
        {
            var finder = new Finder(compilation.GetSemanticModel(tree));
            finder.Visit(tree.GetRoot());
            found.AddRange(finder._found.Where(f => constants.CanChange(f.Node)).OrderBy(f => f.Node.SpanStart));
        }
        return found.ToImmutable();
    }

    // What a programmer's mistake is told, how values are hashed and guards against null are promised to nobody.
    public override void VisitThrowExpression(ThrowExpressionSyntax node)
    {
    }

    public override void VisitThrowStatement(ThrowStatementSyntax node)
    {
    }

    public override void VisitMethodDeclaration(MethodDeclarationSyntax node)
    {
        if (node.Identifier.ValueText != "GetHashCode")
            base.VisitMethodDeclaration(node);
    }

    public override void VisitExpressionStatement(ExpressionStatementSyntax node)
    {
        if (node.Expression is InvocationExpressionSyntax call && call.Expression.ToString() is ['A', 'r', 'g', 'u', 'm', 'e', 'n', 't', ..])
            return;
        _found.Add(new Fault(node, "statement", $"left out: {Short(node)}"));
        base.VisitExpressionStatement(node);
    }

    public override void VisitYieldStatement(YieldStatementSyntax node)
    {
        if (node.IsKind(SyntaxKind.YieldReturnStatement))
            _found.Add(new Fault(node, "statement", $"left out: {Short(node)}"));
        base.VisitYieldStatement(node);
    }

    public override void VisitBinaryExpression(BinaryExpressionSyntax node)
    {
        if (Operators.TryGetValue(node.Kind(), out var kind) && model.GetTypeInfo(node).Type?.SpecialType != SpecialType.System_String)
        {
            Change(node, "operator", good =>
            {
                var binary = (BinaryExpressionSyntax)good;
                return BinaryExpression(kind, binary.Left, binary.Right);
            });
        }
        base.VisitBinaryExpression(node);
    }

    public override void VisitPrefixUnaryExpression(PrefixUnaryExpressionSyntax node)
    {
        if (node.Kind() is SyntaxKind.LogicalNotExpression or SyntaxKind.UnaryMinusExpression)
            Change(node, "operator", good => ((PrefixUnaryExpressionSyntax)good).Operand);
        base.VisitPrefixUnaryExpression(node);
    }

    public override void VisitIfStatement(IfStatementSyntax node)
    {
        Change(node.Condition, "condition", Not);
        base.VisitIfStatement(node);
    }

    public override void VisitConditionalExpression(ConditionalExpressionSyntax node)
    {
        Change(node.Condition, "condition", Not);
        base.VisitConditionalExpression(node);
    }

    public override void VisitInvocationExpression(InvocationExpressionSyntax node)
    {
        if (node.Expression is MemberAccessExpressionSyntax { Name: IdentifierNameSyntax name } && Methods.TryGetValue(name.Identifier.ValueText, out var other))
        {
            Change(node, "method", good =>
            {
                var call = (InvocationExpressionSyntax)good;
                return call.WithExpression(((MemberAccessExpressionSyntax)call.Expression).WithName(IdentifierName(other)));
            });
        }
        if (node.Expression is not MemberAccessExpressionSyntax { Name.Identifier.ValueText: "Min" or "Max" or "Equals" or "SequenceEqual" })
            Swaps(node, node.ArgumentList);
        base.VisitInvocationExpression(node);
    }

    public override void VisitObjectCreationExpression(ObjectCreationExpressionSyntax node)
    {
        Swaps(node, node.ArgumentList);
        base.VisitObjectCreationExpression(node);
    }

    public override void VisitImplicitObjectCreationExpression(ImplicitObjectCreationExpressionSyntax node)
    {
        Swaps(node, node.ArgumentList);
        base.VisitImplicitObjectCreationExpression(node);
    }

    public override void VisitLiteralExpression(LiteralExpressionSyntax node)
    {
        switch (node.Token.Value)
        {
            case int n:
                Change(node, "number", _ => Number(Literal(n + 1)));
                if (n > 0)
                    Change(node, "number", _ => Number(Literal(n - 1)));
                break;
            case double d when d != 0:
                Change(node, "number", _ => Number(Literal((d / 2).ToString("R", CultureInfo.InvariantCulture) + "d", d / 2)));
                break;
            case bool b:
                Change(node, "bool", _ => LiteralExpression(b ? SyntaxKind.FalseLiteralExpression : SyntaxKind.TrueLiteralExpression));
                break;
            case string text:
                foreach (var (right, wrong, changed) in Opposites.Of(text))
                    _found.Add(new Fault(node, "word", Slip(right, wrong, text), _ => Text(changed)));
                break;
        }
    }

    public override void VisitInterpolatedStringText(InterpolatedStringTextSyntax node)
    {
        var text = node.TextToken.ValueText;
        foreach (var (right, wrong, changed) in Opposites.Of(text))
            _found.Add(new Fault(node, "word", Slip(right, wrong, text), _ => Text(changed)));
    }

    private static ParenthesizedExpressionSyntax Bracketed(ExpressionSyntax expression) => ParenthesizedExpression(expression.WithoutTrivia());

    private static PrefixUnaryExpressionSyntax Not(ExpressionSyntax good) => PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, Bracketed(good));

    private static LiteralExpressionSyntax Number(SyntaxToken token) => LiteralExpression(SyntaxKind.NumericLiteralExpression, token);

    private static LiteralExpressionSyntax Text(string text) => LiteralExpression(SyntaxKind.StringLiteralExpression, Literal(text));

    private static string Slip(string right, string wrong, string text) => $"“{right.Trim()}” → “{wrong}” in “{Cut(text)}”";

    private static string Short(SyntaxNode node) => Cut(string.Join(' ', node.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));

    private static string Cut(string text) => text.Length <= 90 ? text : text[..90] + "…";

    private static ArgumentListSyntax Swapped(ArgumentListSyntax list, int at)
    {
        var (a, b) = (list.Arguments[at], list.Arguments[at + 1]);
        return list.WithArguments(list.Arguments.Replace(a, a.WithExpression(b.Expression)) is var half
            ? half.Replace(half[at + 1], b.WithExpression(a.Expression))
            : default);
    }

    private void Change(ExpressionSyntax node, string kind, Func<ExpressionSyntax, ExpressionSyntax> change) =>
        _found.Add(new Fault(node, kind, $"{Short(node)} → {Short(change(node).NormalizeWhitespace())}", change));

    /// <summary>Neighbouring arguments of one type, exchanged.</summary>
    private void Swaps(ExpressionSyntax node, ArgumentListSyntax? list)
    {
        for (var i = 0; i + 1 < (list?.Arguments.Count ?? 0); i++)
        {
            var at = i;
            var (a, b) = (list!.Arguments[at], list.Arguments[at + 1]);
            if (a.NameColon is not null || b.NameColon is not null || !a.RefKindKeyword.IsKind(SyntaxKind.None) || !b.RefKindKeyword.IsKind(SyntaxKind.None)
                || a.Expression.IsEquivalentTo(b.Expression) || model.GetTypeInfo(a.Expression).Type is not { } type
                || !SymbolEqualityComparer.Default.Equals(type, model.GetTypeInfo(b.Expression).Type))
                continue;
            Change(node, "arguments", good => good switch
            {
                InvocationExpressionSyntax call => call.WithArgumentList(Swapped(call.ArgumentList, at)),
                ObjectCreationExpressionSyntax made => made.WithArgumentList(Swapped(made.ArgumentList!, at)),
                ImplicitObjectCreationExpressionSyntax made => made.WithArgumentList(Swapped(made.ArgumentList, at)),
                _ => good,
            });
        }
    }
}
