using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>The colours that a path draws: one section index a cell, rows one after the other, each from its right-hand edge.</summary>
public sealed class Fabric
{
    private readonly byte[] _cells;
    private readonly int[] _offsets;
    private readonly RingReader _reader;

    private Fabric(ColourRing ring, FabricPath path)
    {
        Ring = ring;
        Path = path;
        _reader = new RingReader(ring);
        _offsets = new int[path.Rows + 1];
        for (var row = 0; row < path.Rows; row++)
            _offsets[row + 1] = _offsets[row] + path.Cells(row);
        _cells = GC.AllocateUninitializedArray<byte>(_offsets[^1]);
        TwoToned = new FabricFill(_reader, path).Fill(_cells);
    }

    /// <summary>The colours that it is worked with.</summary>
    public ColourRing Ring { get; }

    /// <summary>Where its stitches lie along the yarn.</summary>
    public FabricPath Path { get; }

    /// <summary>Of the whole path.</summary>
    public int Rows => Path.Rows;

    /// <summary>Cells whose winning colour covers less than three quarters of them.</summary>
    public int TwoToned { get; }

    /// <summary>Section indices of all cells, row after row.</summary>
    public ReadOnlySpan<byte> Cells => _cells;

    /// <summary>The section shown at a column.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such row, or the row has no cell at that column.</exception>
    public int this[int row, int column]
    {
        get
        {
            var cells = Row(row);
            return cells[Guard.InRange(column - Path.FirstColumns[row], 0, cells.Length - 1, "cells", nameof(column))];
        }
    }

    /// <summary>Finds the colour of every cell of a path.</summary>
    public static Fabric Work(ColourRing ring, FabricPath path)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(path);
        return new Fabric(ring, path);
    }

    /// <summary>Section indices of a row, its rightmost cell first.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such row.</exception>
    public ReadOnlySpan<byte> Row(int row)
    {
        Guard.InRange(row, 0, Rows - 1, "rows");
        return _cells.AsSpan(_offsets[row], _offsets[row + 1] - _offsets[row]);
    }

    /// <summary>Whether the cell's winning colour covers less than three quarters of it.</summary>
    /// <inheritdoc cref="this[int, int]"/>
    public bool IsTwoToned(int row, int column)
    {
        Guard.InRange(row, 0, Rows - 1, "rows");
        return _reader.Show(Path.SpanAt(row, column)).TwoToned;
    }

    /// <summary>All rows as section indices, for documents.</summary>
    public ImmutableArray<ImmutableArray<int>> ToRows()
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<int>>(Rows);
        for (var row = 0; row < Rows; row++)
        {
            var cells = ImmutableArray.CreateBuilder<int>(Path.Cells(row));
            foreach (var cell in Row(row))
                cells.Add(cell);
            rows.Add(cells.MoveToImmutable());
        }
        return rows.MoveToImmutable();
    }
}
