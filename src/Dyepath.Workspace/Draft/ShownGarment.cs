using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Draft;

/// <summary>The drawings of the size that is shown, made once for all who show it.</summary>
public sealed class ShownGarment
{
    private Plan? _plan;
    private SizePlan? _size;
    private GarmentDrawing? _front;
    private Lazy<GarmentDrawing?>? _behind;

    /// <summary>Seen from the front.</summary>
    public GarmentDrawing Front(Plan plan, SizePlan size)
    {
        if (_front is null || plan != _plan || size != _size)
        {
            (_plan, _size) = (plan, size);
            (_front, _behind) = (WornGarment.Front(plan, size), new(() => WornGarment.Behind(plan, size)));
        }
        return _front;
    }

    /// <summary>Missing where it has no other side, or none that differs.</summary>
    public GarmentDrawing? Behind(Plan plan, SizePlan size)
    {
        Front(plan, size);
        return _behind!.Value;
    }
}
