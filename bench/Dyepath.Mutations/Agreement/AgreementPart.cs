using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Projects;
using Dyepath.Drawing;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Agreement;

/// <summary>Good designs: planned, checked, written in every edition and read back. No two routes may disagree.</summary>
internal sealed class AgreementPart : IPart
{
    public string Name => "agreement";

    public Task PrepareAsync(int seed) => Task.CompletedTask;

    public byte[] Input(int seed, int number) => ProjectWriter.WriteUtf8(DesignGen.Of(unchecked(seed * 1_000_003 + number)));

    public Task<string> TryAsync(byte[] input, int number, CancellationToken cancel)
    {
        // A few designs come out under one stitch a sequence, which the reader refuses.
        if (ProjectReader.Read(input).Project is not { } project)
            return Task.FromResult("no document");
        if (GarmentPlanner.Plan(project, cancel).Plan is not { } plan)
            return Task.FromResult("no design");
        return Disagreement(plan, number) is { } wrong ? throw new Broken(wrong) : Task.FromResult("agrees");
    }

    /// <summary>The first thing that disagrees, in any edition of the text or in two of the page.</summary>
    public static string? Disagreement(Plan plan, int number)
    {
        if (PatternCheck.Run(plan) is { IsEmpty: false } found)
            return $"{found[0].Place}: {found[0].Text}";
        var booklet = PatternWriter.Write(plan);
        var random = new Random(number);
        foreach (var size in new[] { null, booklet.Sizes[random.Next(booklet.Sizes.Length)] })
        {
            var edition = new Edition(
                random.Next(2) == 0 ? Terms.Us : Terms.Uk, (Units)random.Next(4), random.Next(2) == 0 ? Hand.Left : Hand.Right, size);
            if (PatternCheck.Text(plan, TextBooklet.Write(booklet, edition)) is { IsEmpty: false } inText)
                return $"text, {edition}: {inText[0].Place}: {inText[0].Text}";
            var html = HtmlBooklet.Write(booklet, edition, new Wording(booklet, edition).Say);
            if (PatternCheck.Text(plan, HtmlAsText.Read(html)) is { IsEmpty: false } onPage)
                return $"page, {edition}: {onPage[0].Place}: {onPage[0].Text}";
        }
        return null;
    }

    public ValueTask DisposeAsync() => default;
}
