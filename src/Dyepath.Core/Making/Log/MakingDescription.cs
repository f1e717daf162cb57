using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Projects.Description;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making.Log;

/// <summary>The whole making document: the one place where its form is said.</summary>
internal static class MakingDescription
{
    private static readonly Bounds Milliseconds = new(0, 253_402_300_799_999, "ms");

    private static readonly ObjectShape<Entry> EntryShape = new("entry", "One thing that the maker did.", o =>
    {
        var did = o.Required("did", "What she did.", new ChoiceShape<EntryKind>(
            ("step", EntryKind.Step), ("row", EntryKind.Row), ("run", EntryKind.Run), ("read", EntryKind.Read), ("at", EntryKind.At), ("part", EntryKind.Part),
            ("back", EntryKind.Back), ("edge", EntryKind.Edge), ("turn", EntryKind.Turn), ("hook", EntryKind.Hook),
            ("look", EntryKind.Look), ("join", EntryKind.Join)), e => e.Kind);
        var at = o.Required(
            "at", "When, in milliseconds since the beginning of 1970, UTC.",
            new MappedShape<double, DateTimeOffset>(
                new RealShape(1_764_000_000_000, Milliseconds, whole: true), ms => DateTimeOffset.FromUnixTimeMilliseconds((long)ms),
                time => time.ToUnixTimeMilliseconds()),
            e => e.At);
        var phase = o.Optional(
            "phase", "By how many stitches (in linen stitch: pairs) colours came early; negative, late.", new WholeShape(Entry.Phases),
            e => e.Phase, "she did not look");
        var to = o.Optional("to", "Which row, part or colour of the row, from 1; or one more (1) or less (-1).", new WholeShape(Entry.Numbers), e => e.To, "none");
        return v => new Entry(did.From(v), at.From(v), phase.From(v), to.From(v));
    });

    public static ObjectShape<MakingDocument> Making { get; } = new("making", "A piece being made from a Dyepath project, with its maker's log.", o =>
    {
        o.Required("makingVersion", "Version of this form of document.", new WholeShape(MakingDocument.Version, MakingDocument.Version), _ => MakingDocument.Version);
        var project = o.Required("project", "The design as it was when the piece was begun.", ProjectDescription.Project, m => m.Project);
        var size = o.Required("size", "The size that is made.", SizeDescription.SizeName, m => m.Size);
        var counted = o.Optional(
            "counted", "Stitches of each section in the maker's own yarn, repeat after repeat, in the order of the sections.",
            new ListShape<ImmutableArray<int>>(
                "repeats",
                new ListShape<int>("stitch counts", new WholeShape(CountedBall.Counts), 1, ColourRing.MostSections), 0, MakingDocument.MostCounted),
            m => m.Counted, [], "not counted");
        var log = o.Optional(
            "log", "What she did, the oldest first.", new ListShape<Entry>("entries", EntryShape, 0, MakingDocument.MostEntries), m => m.Log, [],
            "not begun");
        o.Check((v, faults) =>
        {
            if (!project.TryFrom(v, out var p))
                return;
            if (size.TryFrom(v, out var s))
                SizeChecks.Among(v.Place.Member("size"), s, p.Sizes.Names(p.Garment.Shape.IsToBody), "pattern", faults);
            if (!counted.TryFrom(v, out var c))
                return;
            for (var i = 0; i < c.Length; i++)
                YarnChecks.Sequence(v.Place.Member("counted").Item(i), c[i], p.Yarn.Sections.Length, faults);
        });
        return v => new MakingDocument(project.From(v), size.From(v), counted.From(v), log.From(v));
    });
}
