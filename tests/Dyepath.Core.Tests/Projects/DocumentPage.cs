using System.Text;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;
using Dyepath.Core.Projects.Description;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Makes docs/project-document.md from the document's description.</summary>
internal static class DocumentPage
{
    private const string Opening = """
        # The project document

        One JSON file holds everything that a designer says about one pattern. It is UTF-8 text of at most 2 MB; comments
        (`//`) and trailing commas are allowed. `dyepath new` writes a commented one to begin with,
        [demo/tideline.json](../demo/tideline.json) is a complete one, and
        [schema/project-1.schema.json](../schema/project-1.schema.json) is its JSON Schema (2020-12) for editors.

        - **Lengths** are texts with a unit: `"41 cm"`, `"12 mm"`, `"2.1 m"`, `"16.5 in"`, `"16½ in"`, `"230 yd"`. They are kept to the
          nanometre, so that centimetres and inches are both exact. Weights are `"100 g"` or `"3.5 oz"`.
        - **Counts** are plain whole numbers. Yarn per turn is said in stitches of yarn: `"0.45 stitches"`.
        - What is **left out** has the value in the last column. `null` is never allowed.
        - Written again by Dyepath, the document is the same in meaning: fields in this order, what equals its default left out,
          comments gone.
        - A document with faults is not used; every fault is listed with its place (`yarn.sections[2].length`), its line, what was found,
          what is allowed and what to do.

        This page is made from the code that reads the document.

        """;

    public static string Write()
    {
        var text = new StringBuilder(Opening);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        Append(text, ProjectDescription.Project, "", seen);
        return text.ToString();
    }

    private static void Append(StringBuilder text, Shape shape, string path, HashSet<string> seen)
    {
        (IVariantShape? variant, (string Case, IObjectShape Shape)[] cases) = shape switch
        {
            IObjectShape one => (null, [("", one)]),
            IVariantShape several => (several, [.. several.Cases.Select(c => (string.Join(", ", c.Names), c.Shape))]),
            _ => ((IVariantShape?)null, Array.Empty<(string, IObjectShape)>()),
        };
        if (cases.Length == 0)
        {
            foreach (var part in shape.Parts)
                Append(text, part, path, seen);
        }
        else if (seen.Add(cases[0].Shape.Name))
        {
            text.Append(path.Length == 0 ? "\n## The whole\n\n" : $"\n## `{path}`\n\n");
            text.AppendJoin(' ', cases.Select(c => c.Shape.Description).Distinct()).Append("\n\n");
            AppendTable(text, variant, cases);
            foreach (var field in cases.SelectMany(c => c.Shape.Fields))
                Append(text, field.Shape, path.Length == 0 ? field.Name : $"{path}.{field.Name}", seen);
        }
    }

    /// <summary>One row for each field; a field that is the same in several cases stands once, with the cases it belongs to.</summary>
    private static void AppendTable(StringBuilder text, IVariantShape? variant, (string Case, IObjectShape Shape)[] cases)
    {
        text.Append(variant is null ? "" : $"| `{variant.Key}` ").Append("| field | meaning | allowed | left out |\n");
        text.Append(variant is null ? "" : "| --- ").Append("| --- | --- | --- | --- |\n");
        var rows = cases
            .SelectMany(c => c.Shape.Fields.Select(f => (c.Case, Row: RowOf(f, variant))))
            .GroupBy(r => r.Row, r => r.Case);
        foreach (var row in rows)
        {
            if (variant is not null)
                text.Append($"| {(row.Count() == cases.Length ? "any" : string.Join(", ", row))} ");
            text.Append(row.Key);
        }
    }

    private static string RowOf(Field field, IVariantShape? variant)
    {
        var allowed = field.Name == variant?.Key
            ? string.Join(", ", variant.Cases.SelectMany(c => c.Names).Select(n => $"\"{n}\""))
            : Allowed(field.Shape);
        return $"| `{field.Name}` | {field.Description} | {allowed} | {field.LeftOut ?? "required"} |\n";
    }

    private static string Allowed(Shape shape)
    {
        if (shape is IObjectShape or IVariantShape)
            return "an object, see below";
        var either = shape.Allowed.IndexOf(", or an object", StringComparison.Ordinal);
        return either < 0 ? shape.Allowed : $"{shape.Allowed[..either]}, or an object, see below";
    }
}
