namespace Dyepath.Core.Garments;

internal static class RectanglePlanner
{
    public static PlanResult Plan(Fabrication fabrication, CancellationToken cancel) => throw new NotImplementedException();
}
