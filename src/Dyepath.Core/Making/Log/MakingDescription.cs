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

    private static readonly ObjectShape<Said> SaidShape = new("said", "What a maker was told. Grades: 0 her natural hands, 1 a touch, 2 a little, 3 plainly, 4 much; negative tighter.", o =>
    {
        var hold = o.Required("hold", "The grade to go on at.", new WholeShape(Said.Grades), s => s.Hold);
        var work = o.Optional("work", "The grade to begin with.", new WholeShape(Said.Grades), s => s.Work, "hold");
        var stitches = o.Optional(
            "for", "So many stitches of it, up to a mark or the row's end.", new WholeShape(Said.Numbers), s => s.For, "nothing to watch for");
        var look = o.Optional("look", "Look again after so many stitches.", new WholeShape(Said.Numbers), s => s.Look, "not asked");
        var act = o.Optional("act", "What to do at once.", new ChoiceShape<SaidAct>(
            ("tight-turn", SaidAct.TightTurn), ("loose-turn", SaidAct.LooseTurn), ("skip", SaidAct.Skip), ("add", SaidAct.Add),
            ("hook-down", SaidAct.HookDown), ("hook-up", SaidAct.HookUp), ("join", SaidAct.Join), ("rip", SaidAct.Rip)), s => s.Act, "nothing");
        var rip = o.Optional("rip", "Rip back to the beginning of this row, from 1.", new WholeShape(Said.Numbers), s => s.Rip, "not to be ripped");
        var cut = o.Optional("out", "Stitches of yarn to leave out.", new RealShape(13.5, Said.Outs), s => s.Out, "not to be cut");
        return v => new Said(hold.From(v), work.From(v), stitches.From(v), look.From(v))
        {
            Act = act.From(v),
            Rip = rip.From(v),
            Out = cut.From(v),
        };
    });

    private static readonly ObjectShape<Entry> EntryShape = new("entry", "One thing that the maker did.", o =>
    {
        var did = o.Required("did", "What she did.", new ChoiceShape<EntryKind>(
            ("step", EntryKind.Step), ("row", EntryKind.Row), ("run", EntryKind.Run), ("read", EntryKind.Read), ("at", EntryKind.At), ("part", EntryKind.Part),
            ("back", EntryKind.Back), ("edge", EntryKind.Edge), ("turn", EntryKind.Turn), ("hook", EntryKind.Hook),
            ("look", EntryKind.Look), ("join", EntryKind.Join), ("ball", EntryKind.Ball), ("knot", EntryKind.Knot), ("stop", EntryKind.Stop)), e => e.Kind);
        var at = o.Required(
            "at", "When, in milliseconds since the beginning of 1970, UTC.",
            new MappedShape<double, DateTimeOffset>(
                new RealShape(1_764_000_000_000, Milliseconds, whole: true), ms => DateTimeOffset.FromUnixTimeMilliseconds((long)ms),
                time => time.ToUnixTimeMilliseconds()),
            e => e.At);
        var phase = o.Optional(
            "phase", "By how many stitches (in linen stitch: pairs) colours came early; negative, late.", new WholeShape(Entry.Phases),
            e => e.Phase, "she did not look");
        var to = o.Optional("to", "Which row, part, colour or stitch of the row, from 1; or one more (1) or less (-1).", new WholeShape(Entry.Numbers), e => e.To, "none");
        var said = o.OptionalObject("said", "What she was told in answer.", SaidShape, e => e.Said, "nothing, or it is not known");
        return v => new Entry(did.From(v), at.From(v), phase.From(v), to.From(v), said.From(v));
    });

    public static ObjectShape<MakingDocument> Making { get; } = new("making", "A piece being made from a Dyepath project, with its maker's log.", o =>
    {
        var version = o.Required(
            "makingVersion", "Version of this form of document: 2 where the log holds what was said, or what only that version knows.",
            new WholeShape(MakingDocument.First, MakingDocument.Latest), m => m.Version);
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
            if (version.TryFrom(v, out var form) && log.TryFrom(v, out var entries))
                OfVersion(v.Place.Member("log"), form, entries, faults);
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

    /// <summary>The first entry that the document's own version has no form for.</summary>
    private static void OfVersion(Place log, int version, ImmutableArray<Entry> entries, FaultList faults)
    {
        for (var i = 0; i < entries.Length; i++)
        {
            if (MakingDocument.VersionOf(entries[i]) <= version)
                continue;
            faults.Form(log.Item(i), "an entry of version 1", "Write 2 for makingVersion.");
            return;
        }
    }
}
