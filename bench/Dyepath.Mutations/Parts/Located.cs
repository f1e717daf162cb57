using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Documents;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Parts;

/// <summary>What every refusal says: where, and what to do.</summary>
internal static partial class Located
{
    public static void Check(ImmutableArray<Fault> faults)
    {
        foreach (var fault in faults)
        {
            if (!PlaceInDocument().IsMatch(fault.Path) || fault.Line < 1)
                throw new Broken($"a fault is nowhere: {fault}");
            if (fault.Found.Length == 0 || fault.Allowed.Length == 0 || fault.Next.Length == 0 || fault.Next[^1] is not ('.' or '?'))
                throw new Broken($"a fault does not say what to do: {fault}");
            Printable(fault.ToString(), System.Text.Encoding.UTF8.GetBytes(fault.Path));
        }
    }

    /// <param name="said">Everything that the document says; its own words may be any.</param>
    public static void Check(PlanResult result, byte[] said)
    {
        if (result.Plan is null && result.Reasons.IsEmpty)
            throw new Broken("there is no plan and no reason");
        foreach (var reason in result.Plan?.Findings ?? result.Reasons)
        {
            // The net under the planner turns what it throws into a finding; here it is what it is.
            if (reason.Cause is { } cause)
                throw new Broken($"planning throws {cause.GetType().Name}: {cause.Message} {cause.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("Dyepath", StringComparison.Ordinal))?.Trim()}");
            if (reason.Place.Length == 0 || reason.Text.Length == 0 || reason.Text[^1] is not ('.' or '?'))
                throw new Broken($"a reason is nowhere or unfinished: {reason.Place}: {reason.Text}");
            Printable(reason.Text, said);
        }
    }

    private static void Printable(string text, byte[]? said = null)
    {
        if (text.Any(char.IsControl) || text.Length > 4_000)
            throw new Broken($"a refusal cannot be printed: {text.Length} characters");
        if (Number().Match(text) is { Success: true } program && said?.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(program.Value)) is null or < 0)
            throw new Broken($"a refusal speaks as a program: {text}");
    }

    [GeneratedRegex(@"^[^\n]+$")]
    private static partial Regex PlaceInDocument();

    [GeneratedRegex(@"\b(NaN|Infinity|System\.|Exception)\b(?<!""[^""]*)")]
    private static partial Regex Number();
}
