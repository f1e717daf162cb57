using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Constructions;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Instructions;
using Dyepath.Core.Tests.Projects;

namespace Dyepath.Core.Tests.Languages;

/// <summary>Patterns of every kind, for whoever asks of every sentence.</summary>
internal static class SaidPhrases
{
    private static readonly string[] Kinds =
    [
        "tunic", "tunic in three sizes", "continued seams", "worked up", "side bands", "alternating rows", "double crochet", "half double crochet", "linen stitch",
        "free", "other end, no waste", "plain sleeves", "cowl in rounds", "cowl turned round", "spiral cowl", "sewn cowl", "sideways cowl",
        "double crochet cowl", "linen cowl in rounds", "linen cowl turned round", "linen spiral cowl", "child's pullover", "V with inserts", "unedged", "blanket",
    ];

    /// <summary>Of each kind of pattern; of every garment in both directions, with every edging it can have; of drawn designs.</summary>
    /// <param name="seeds">How many drawn designs.</param>
    public static IEnumerable<Plan> Plans(int seeds)
    {
        foreach (var kind in Kinds)
            yield return Patterns.Named(kind).Planned();
        var turn = 0;
        foreach (var garment in Repertoire.All)
        {
            foreach (var stitch in new[] { "sc", "hdc", "dc" })
            {
                foreach (var direction in Enum.GetValues<Direction>())
                {
                    foreach (var form in Formed(GarmentTrials.Of(garment.Name, stitch).Directed(direction)))
                    {
                        if (form.Tried().Plan is { } plain)
                            yield return plain;
                        if (Edged(GarmentTrials.WithCompanion(form), ref turn).Tried().Plan is { } edged)
                            yield return edged;
                    }
                }
            }
        }
        for (var seed = 20_001; seed < 20_001 + seeds; seed++)
        {
            if (ProjectReader.Read(ProjectWriter.WriteUtf8(DesignGen.Of(seed))).Project is { } drawn && drawn.Tried().Plan is { } plan)
                yield return plan;
        }
    }

    /// <summary>With each neck, gores and crown that it can have.</summary>
    private static IEnumerable<Project> Formed(Project project)
    {
        IEnumerable<GarmentShape> shapes = project.Garment.Shape switch
        {
            BoxyTop top => Neck.Forms.Select(f => top with { Neck = top.Neck with { Form = f.Form } }),
            Vest vest => Neck.Forms.Select(f => vest with { Neck = vest.Neck with { Form = f.Form } }),
            Cardigan cardigan => Neck.Forms.Select(f => cardigan with { Neck = cardigan.Neck with { Form = f.Form } }),
            Skirt skirt => [skirt, skirt with { Flare = TestProjects.Cm(24) }],
            Hat hat => [hat, hat with { Gored = !hat.Gored }],
            var other => [other],
        };
        return shapes.Select(shape => project.With(g => g with { Shape = shape, Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true } }));
    }

    /// <summary>Every edge with an edging, the library's in turn.</summary>
    private static Project Edged(Project project, ref int turn)
    {
        var construction = project.Garment.Shape.Construct(project.Garment);
        var choices = new List<EdgingChoice>();
        foreach (var edge in construction.Edgings.Where(e => e.Place != construction.Held?.Place).DistinctBy(e => e.Place))
        {
            var fit = EdgingLibrary.At(edge.Place, edge.IsOpen, children: false).ToArray();
            if (fit.Length > 0)
                choices.Add(new EdgingChoice(edge.Place, fit[turn++ % fit.Length].Id, null));
        }
        var held = project.Garment.Edgings.Where(e => construction.Held?.Place == e.Where);
        return project.With(g => g with { Edgings = [.. held, .. choices] });
    }

    /// <summary>Every phrase of the booklet and of the work beside the hook is said, in all sizes and in one.</summary>
    public static void Say(Plan plan, Action<Wording, Phrase> said, Func<ImmutableArray<string>, Edition, Wording> wording)
    {
        var booklet = PatternWriter.Write(plan);
        foreach (var size in new[] { null, plan.Sizes[^1].Name })
        {
            var edition = plan.Project.Edition with { Size = size, Hand = size is null ? Hand.Left : Hand.Right };
            var say = wording(booklet.Sizes, edition);
            foreach (var section in booklet.For(edition).Sections)
            {
                said(say, section.Title);
                foreach (var phrase in section.Blocks.SelectMany(Phrases))
                    said(say, phrase);
            }
        }
        var order = MakingOrder.Of(plan, plan.Sizes[0].Name);
        var one = wording([plan.Sizes[0].Name], plan.Project.Edition with { Size = null });
        said(one, GarmentSentence.Behind(plan, plan.Sizes[0]));
        foreach (var part in order.Parts)
        {
            said(one, part.Title);
            foreach (var step in part.Steps)
            {
                said(one, step.Label);
                said(one, step.Text);
                foreach (var note in step is RowStep row ? row.Notes : [])
                    said(one, note);
            }
        }
    }

    private static IEnumerable<Phrase> Phrases(Block block) => block switch
    {
        Subheading heading => [heading.Text],
        Paragraph paragraph => [paragraph.Text],
        Bullets bullets => bullets.Items,
        Caution caution => [caution.Text],
        Steps steps => steps.Items.SelectMany(step => new[] { step.Label, step.Text }),
        ForSizes some => some.Blocks.SelectMany(Phrases),
        Table table => [table.Caption, .. table.Head, .. table.Rows.SelectMany(row => row)],
        Figure figure => [figure.Caption, figure.Alternative],
        _ => [],
    };
}
