using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Projects.Description;

/// <summary>The whole project document: the one place where its form is said.</summary>
internal static class ProjectDescription
{
    private const int Version = Projects.Project.SchemaVersion;

    public static Edition UsualEdition { get; } = new(Terms.Us, Units.CentimetresThenInches, Hand.Right);

    private static readonly ObjectShape<Edition> EditionShape = new("edition", "How the pattern is worded.", o =>
    {
        var terms = o.Optional(
            "terms", "Stitch names as in the US or in the UK.", new ChoiceShape<Terms>(("US", Terms.Us), ("UK", Terms.Uk)), e => e.Terms,
            UsualEdition.Terms);
        var units = o.Optional(
            "units", "Which units are printed, the first one larger.",
            new ChoiceShape<Units>(
                ("cm (in)", Units.CentimetresThenInches), ("in (cm)", Units.InchesThenCentimetres), ("cm", Units.Centimetres),
                ("in", Units.Inches)),
            e => e.Units, UsualEdition.Units);
        var hand = o.Optional(
            "hand", "The hand that holds the hook.", new ChoiceShape<Hand>(("right", Hand.Right), ("left", Hand.Left)), e => e.Hand,
            UsualEdition.Hand);
        var size = o.OptionalObject("size", "Print this one size alone.", SizeDescription.SizeName, e => e.Size, "all sizes");
        var language = o.Optional(
            "language", "The language of the pattern's words. Another than English has its own names of stitches.",
            new ChoiceShape<Language>(("English", Language.English), ("German", Language.German), ("Spanish", Language.Spanish)), e => e.Language,
            UsualEdition.Language);
        var number = o.Optional(
            "number", "Which edition of the published pattern it is; raise it with every correction.", new WholeShape(1, Edition.MostNumber),
            e => e.Number, "not printed");
        var date = o.Optional("date", "The day on which the edition is published.", new DateShape(), e => e.Date, "not printed");
        return v => new Edition(terms.From(v), units.From(v), hand.From(v), size.From(v))
        {
            Language = language.From(v),
            Number = number.From(v),
            Date = date.From(v),
        };
    });

    public static ObjectShape<Project> Project { get; } = new(
        "project", "One crochet pattern in planned pooling, as a Dyepath project document.", o =>
    {
        o.Required("schemaVersion", "Version of this form of document.", new WholeShape(Version, Version), _ => Version);
        o.OptionalObject("$schema", "Where an editor finds the JSON Schema; not kept.", new TextShape(400), _ => (string?)null, "none");
        var title = o.Required("title", "Title of the pattern.", new TextShape(120), p => p.Title);
        var designer = o.OptionalObject(
            "designer", "Whose pattern it is.", new TextShape(120), p => p.Designer.Length == 0 ? null : p.Designer, "not printed");
        var yarn = o.Required("yarn", "The variegated yarn.", YarnDescription.Yarn, p => p.Yarn);
        var companion = o.OptionalObject("companion", "A solid yarn beside it.", YarnDescription.Companion, p => p.Companion, "none");
        var fabric = o.Required("fabric", "Stitch, swatch and tension.", FabricDescription.Fabric, p => p.Fabric);
        var garment = o.Required("garment", "What is made.", Repertoire.Garment, p => p.Garment);
        var sizes = o.Optional(
            "sizes", "Which sizes the pattern is written for.", SizeDescription.Sizes, p => p.Sizes, SizeDescription.None,
            "one size, of what is not made to the body");
        var edition = o.Optional(
            "edition", "Terms, units, hand, language; number and date.", EditionShape, p => p.Edition, UsualEdition, "each of its fields left out");
        var words = o.Optional(
            "words", "Your own words by place; kept when numbers change.",
            new MapShape<string>("places", WordPlaces.All, new TextShape(8_000, lines: true), 0), p => p.Words, MapShape<string>.Empty,
            "none");
        var photos = o.Optional(
            "photos", "Your photographs, in order, together at most 1 MB.",
            new ListShape<Photo>("photos", PhotoDescription.Photo, 0, Photo.Most), p => p.Photos, [], "none");
        o.Check((v, faults) =>
        {
            if (yarn.TryFrom(v, out var y) && fabric.TryFrom(v, out var f))
                FabricChecks.SequenceIsKnown(v.Place, y, f, faults);
            if (garment.TryFrom(v, out var g) && companion.TryFrom(v, out var c))
                GarmentChecks.CompanionIsThere(v.Place, g, c, faults);
            if (sizes.TryFrom(v, out var s))
            {
                edition.TryFrom(v, out var e);
                SizeChecks.NamesAreKnown(v.Place, s, g, e?.Size, faults);
            }
            if (photos.TryFrom(v, out var pictures))
                PhotoDescription.TogetherSmall(v.Place.Member("photos"), pictures, faults);
        });
        return v => new Project(
            title.From(v), designer.From(v) ?? "", yarn.From(v), fabric.From(v), garment.From(v), sizes.From(v),
            edition.From(v))
        {
            Companion = companion.From(v),
            Words = words.From(v),
            Photos = photos.From(v),
        };
    });
}
