using System.Globalization;
using System.Text;

namespace Dyepath.Core.Tests.Data;

/// <summary>A row of one of this folder's csv files; its README says where each comes from.</summary>
internal sealed class PublishedRow(IReadOnlyDictionary<string, string> cells)
{
    public string this[string column] => cells[column];

    public double Number(string column) => double.Parse(cells[column], CultureInfo.InvariantCulture);
}

internal static class PublishedTable
{
    public static IReadOnlyList<PublishedRow> Read(string name)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", name + ".csv"));
        var header = Split(lines[0]);
        return [.. lines.Skip(1).Select(line => new PublishedRow(header.Zip(Split(line)).ToDictionary()))];
    }

    private static List<string> Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }
        cells.Add(cell.ToString());
        return cells;
    }
}
