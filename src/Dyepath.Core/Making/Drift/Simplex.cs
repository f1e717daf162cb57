namespace Dyepath.Core.Making.Drift;

/// <summary>Nelder and Mead, "A simplex method for function minimization", The Computer Journal 7, 1965, turned upside down.</summary>
internal static class Simplex
{
    private const int MostSteps = 300;

    /// <param name="function">What is to be largest.</param>
    /// <param name="corners">One more than there are coordinates; taken over.</param>
    /// <param name="tolerance">Ends when the corners' values differ by less.</param>
    public static (double[] At, double Value) Maximise(Func<double[], double> function, double[][] corners, double tolerance)
    {
        double[] values = [.. corners.Select(function)];
        int worst = corners.Length - 1;
        for (int step = 0; step < MostSteps; step++)
        {
            Array.Sort(values, corners, Comparer<double>.Create((a, b) => b.CompareTo(a)));
            if (values[0] - values[worst] < tolerance) break;
            double[] Along(double part) => [.. Enumerable.Range(0, worst).Select(i =>
            {
                double middle = corners.Take(worst).Average(corner => corner[i]);
                return middle + part * (corners[worst][i] - middle);
            })];
            bool Take(double part, double atLeast)
            {
                double[] there = Along(part);
                double value = function(there);
                if (value <= atLeast) return false;
                (corners[worst], values[worst]) = (there, value);
                return true;
            }

            double[] mirrored = Along(-1), beyond = Along(-2);
            double mirror = function(mirrored);
            if (mirror > values[worst - 1])
            {
                (double[] kept, double value) = (mirrored, mirror);
                if (mirror > values[0] && function(beyond) is var far && far > mirror) (kept, value) = (beyond, far);
                (corners[worst], values[worst]) = (kept, value);
            }
            else if (!(mirror > values[worst] ? Take(-0.5, mirror) : Take(0.5, values[worst])))
            {
                for (int corner = 1; corner <= worst; corner++)
                {
                    corners[corner] = [.. corners[corner].Zip(corners[0], (a, b) => (a + b) / 2)];
                    values[corner] = function(corners[corner]);
                }
            }
        }
        int best = Array.IndexOf(values, values.Max());
        return (corners[best], values[best]);
    }
}
