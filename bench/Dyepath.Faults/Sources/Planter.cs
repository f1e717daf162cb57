using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace Dyepath.Faults.Sources;

/// <summary>Faults that lie dormant in one compilation, each until it is chosen.</summary>
internal sealed record Sown(CSharpCompilation Compilation, ImmutableArray<Fault> Faults);

/// <summary>
/// Plants faults beside the good code, each behind a question: <c>a - b</c> becomes <c>(PlantedFault.Is(17) ? (a + b) : (a - b))</c>. One
/// compilation serves them all.
/// </summary>
internal static class Planter
{
    private const string Mark = "fault";
    private const int MostRounds = 100;

    /// <summary>Plants <paramref name="count"/> faults in the order given, passing over those with which it does not compile.</summary>
    public static Sown Plant(CSharpCompilation compilation, IReadOnlyList<Fault> order, int count)
    {
        var waiting = new Queue<Fault>(order.Select((f, i) => f with { Number = i }).Where(f => StandsAlone(f.Node)));
        var chosen = new List<Fault>();
        var withSwitch = compilation.AddSyntaxTrees(
            CSharpSyntaxTree.ParseText(PlantedFault.Source(order.Count), (CSharpParseOptions)compilation.SyntaxTrees[0].Options));
        for (var round = 0; round < MostRounds; round++)
        {
            while (chosen.Count < count && waiting.TryDequeue(out var next))
                chosen.Add(next);
            var sown = With(withSwitch, chosen);
            var errors = sown.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error).ToList();
            if (errors.Count == 0)
                return new Sown(sown, [.. chosen]);
            var blamed = errors.SelectMany(Blamed).ToHashSet();
            if (chosen.RemoveAll(f => blamed.Contains(f.Number)) == 0)
                throw new InvalidOperationException($"It does not compile, and no fault is to blame: {errors[0]}");
        }
        throw new InvalidOperationException($"After {MostRounds} rounds it still does not compile.");
    }

    /// <summary>What follows the question mark of <c>a?.B().C()</c> is no expression by itself, and the compiler stumbles over it.</summary>
    private static bool StandsAlone(SyntaxNode node) => node.DescendantNodesAndSelf()
        .Where(n => n is MemberBindingExpressionSyntax or ElementBindingExpressionSyntax)
        .All(n => n.Ancestors().OfType<ConditionalAccessExpressionSyntax>()
            .First(access => access.WhenNotNull.Span.Contains(n.Span)) is var access && node.Span.Contains(access.Span));

    private static CSharpCompilation With(CSharpCompilation compilation, IEnumerable<Fault> faults)
    {
        foreach (var file in faults.GroupBy(f => f.Node.SyntaxTree))
        {
            var at = file.ToLookup(f => f.Node);
            var constants = file.Select(f => Constants.Declaration(f.Node)?.Parent?.Parent).OfType<SyntaxNode>();
            var root = file.Key.GetRoot().ReplaceNodes(
                at.Select(g => g.Key).Concat(constants).Distinct(),
                (old, grown) => at[old].Aggregate(Loosened(grown), Planted));
            compilation = compilation.ReplaceSyntaxTree(file.Key, file.Key.WithRootAndOptions(root, file.Key.Options));
        }
        return compilation;
    }

    private static SyntaxNode Planted(SyntaxNode good, Fault fault) => good switch
    {
        StatementSyntax statement => Block(IfStatement(
            PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, Question(fault)), statement)).WithAdditionalAnnotations(Annotation(fault)),
        // A second fault of the same text is asked within the hole that the first has made.
        InterpolationSyntax hole => hole.WithExpression(Choice(fault, hole.Expression, fault.Change!(hole.Expression))),
        InterpolatedStringTextSyntax text => Interpolation(Choice(
            fault, LiteralExpression(SyntaxKind.StringLiteralExpression, Literal(text.TextToken.ValueText)), fault.Change!(null!))),
        ExpressionSyntax expression => Choice(fault, expression, fault.Change!(Unplanted(expression))).WithTriviaFrom(expression),
        _ => throw new ArgumentOutOfRangeException(nameof(good), good.Kind(), "No fault of this kind of node."),
    };

    /// <summary>Where two faults lie in one expression, the second too is made of the good one.</summary>
    private static ExpressionSyntax Unplanted(ExpressionSyntax expression) =>
        expression is ParenthesizedExpressionSyntax { Expression: ConditionalExpressionSyntax choice } && expression.HasAnnotations(Mark)
            ? Unplanted(((ParenthesizedExpressionSyntax)choice.WhenFalse).Expression)
            : expression;

    private static ParenthesizedExpressionSyntax Choice(Fault fault, ExpressionSyntax good, ExpressionSyntax faulty) => ParenthesizedExpression(
        ConditionalExpression(Question(fault), ParenthesizedExpression(faulty.WithoutTrivia()), ParenthesizedExpression(good.WithoutTrivia())))
        .WithAdditionalAnnotations(Annotation(fault));

    private static ExpressionSyntax Question(Fault fault) =>
        ParseExpression(string.Create(CultureInfo.InvariantCulture, $"global::{nameof(PlantedFault)}.Is({fault.Number})"));

    private static SyntaxAnnotation Annotation(Fault fault) => new(Mark, fault.Number.ToString(CultureInfo.InvariantCulture));

    /// <summary>A constant that holds a fault becomes a property, or a variable.</summary>
    private static SyntaxNode Loosened(SyntaxNode node) => node switch
    {
        FieldDeclarationSyntax { Declaration: { Variables: [var variable] } declaration } field when field.Modifiers.Any(SyntaxKind.ConstKeyword) =>
            PropertyDeclaration(declaration.Type, variable.Identifier)
                .WithModifiers(TokenList(field.Modifiers.Select(m => m.IsKind(SyntaxKind.ConstKeyword) ? Token(SyntaxKind.StaticKeyword).WithTriviaFrom(m) : m)))
                .WithExpressionBody(ArrowExpressionClause(variable.Initializer!.Value))
                .WithSemicolonToken(field.SemicolonToken),
        LocalDeclarationStatementSyntax { IsConst: true } local => local.WithModifiers(TokenList()),
        _ => node,
    };

    /// <summary>The faults nearest to an error.</summary>
    private static IEnumerable<int> Blamed(Diagnostic error)
    {
        var root = error.Location.SourceTree?.GetRoot();
        for (var node = root?.FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true); node is not null; node = node.Parent)
        {
            var marks = node.GetAnnotations(Mark).Concat(node.DescendantNodes().SelectMany(n => n.GetAnnotations(Mark))).ToList();
            if (marks.Count > 0)
                return marks.Select(m => int.Parse(m.Data!, CultureInfo.InvariantCulture));
        }
        return [];
    }
}
