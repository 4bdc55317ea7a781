using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Workbench.Tables;

/// <summary>Fits the constants of soluble salts so that the activity model of the product set returns the handbook solubility.</summary>
public static class Calibration
{
    public const string Path = "src/RecipeLint.Chemistry/Equilibrium/CalibratedSalts.generated.cs";

    /// <summary>As many as every processor agrees on: how wide it adds up decides the last ones.</summary>
    private const int Decimals = 10;

    public sealed record Row(string Solid, Reaction Of, string Source, IReadOnlyList<(double Celsius, double MolPerKg)> At, int? Coefficients, double? DH)
    {
        /// <summary>The saturated solution at one of the temperatures, scaled by a factor.</summary>
        public SolutionInput Saturated(int point, double factor = 1) => new()
        {
            Totals = new ComponentTotals(Of.Terms.Select(t => new KeyValuePair<string, double>(t.Component, t.Coefficient * At[point].MolPerKg * factor))),
            Celsius = At[point].Celsius,
        };
    }

    public static IReadOnlyList<Row> Rows()
    {
        using var doc = JsonDocument.Parse(File.ReadAllText(System.IO.Path.Combine(
            TableFolder.Root, "src", "RecipeLint.Chemistry", "Data", "thermo", "solubility.json")));
        return [.. doc.RootElement.GetProperty("rows").EnumerateArray().Select(e => new Row(
            e.GetProperty("solid").GetString()!, Reaction.Parse(e.GetProperty("of").GetString()!), e.GetProperty("source").GetString()!,
            [.. e.GetProperty("at").EnumerateObject().Select(p => (double.Parse(p.Name, CultureInfo.InvariantCulture), p.Value.GetDouble()))],
            e.TryGetProperty("coefficients", out var n) ? n.GetInt32() : null, e.TryGetProperty("dH", out var h) ? h.GetDouble() : null))];
    }

    /// <summary>log10 of the ion activity product of a solid in a solution, from the activities alone.</summary>
    public static double LogProduct(Chemistry.Equilibrium.Equilibrium state, Reaction solid)
    {
        double sum = 0;
        foreach (var (component, n) in solid.Terms)
            sum += n * (component == "H2O" ? Math.Log10(state.WaterActivity) : state.LogActivity(component)!.Value);
        return sum;
    }

    public static double[] Fit(Row row, Reaction solid)
    {
        var solver = new EquilibriumSolver(ConstantSet.Uncalibrated);
        var points = new List<(double T, double LogK)>();
        for (var i = 0; i < row.At.Count; i++)
        {
            var state = solver.Solve(row.Saturated(i));
            if (!state.Converged) throw new BenchException(row.Solid + ": " + state.Failure);
            points.Add((row.At[i].Celsius + 273.15, LogProduct(state, solid)));
        }
        // Of one temperature nothing follows for another: the constant stands still unless an enthalpy is given.
        if (row.DH is not null || points.Count == 1) return TableWriter.VanTHoff(Math.Round(points[0].LogK, Decimals), row.DH ?? 0, 0);
        var count = row.Coefficients ?? (points.Count >= 6 ? 4 : points.Count >= 4 ? 3 : 2);
        return Polynomial(points, count);
    }

    /// <summary>Least squares of a + b T, then f T², then c / T, by orthogonal columns around 20 °C.</summary>
    private static double[] Polynomial(List<(double T, double LogK)> points, int count)
    {
        const double middle = 293.15;
        Func<double, double>[] basis = [_ => 1, t => (t - middle) / 20, t => (t - middle) * (t - middle) / 400, t => (middle / t - 1 + (t - middle) / middle) * 200];
        var n = points.Count;
        var q = new double[count][];
        var r = new double[count, count];
        for (var j = 0; j < count; j++)
        {
            q[j] = [.. points.Select(p => basis[j](p.T))];
            for (var pass = 0; pass < 2; pass++)
                for (var k = 0; k < j; k++)
                {
                    var dot = q[k].Zip(q[j], (a, b) => a * b).Sum();
                    r[k, j] += dot;
                    for (var i = 0; i < n; i++) q[j][i] -= dot * q[k][i];
                }
            r[j, j] = Math.Sqrt(q[j].Sum(v => v * v));
            for (var i = 0; i < n; i++) q[j][i] /= r[j, j];
        }
        var c = new double[4];
        for (var j = count - 1; j >= 0; j--)
        {
            c[j] = q[j].Zip(points, (a, p) => a * p.LogK).Sum();
            for (var k = j + 1; k < count; k++) c[j] -= r[j, k] * c[k];
            c[j] /= r[j, j];
        }
        // Six decimals, so that the last bits of another machine's logarithm leave the table as it is.
        for (var j = 0; j < count; j++) c[j] = Math.Round(c[j], 6);
        // (T - m)/20, (T - m)²/400 and 200 (m/T - 1 + (T - m)/m) written out in the powers the table has.
        return
        [
            c[0] - c[1] * middle / 20 + c[2] * middle * middle / 400 - 400 * c[3],
            c[1] / 20 - c[2] * middle / 200 + 200 * c[3] / middle,
            200 * c[3] * middle, 0, 0, c[2] / 400,
        ];
    }

    public static string Write(ThermoData data)
    {
        var rows = Rows();
        var index = data.Solids.Select((s, i) => (s.Name, i)).ToDictionary(p => p.Name, p => p.i);
        var s = new StringBuilder();
        s.Append("// Written by the workbench from Data/thermo/solubility.json; do not edit by hand.\n");
        s.Append("#pragma warning disable\nnamespace RecipeLint.Chemistry.Equilibrium;\n\ninternal static class CalibratedSalts\n{\n");
        Line("ushort", "Solids", rows.Select(r => (double)index[r.Solid]));
        Line("double", "LogK", rows.SelectMany(r => Fit(r, data.Solids[index[r.Solid]].Reaction)));
        var start = new List<double> { 0 };
        foreach (var r in rows) start.Add(start[^1] + r.At.Count);
        Line("ushort", "Start", start);
        Line("double", "Celsius", rows.SelectMany(r => r.At).Select(p => p.Celsius));
        Line("double", "MolPerKg", rows.SelectMany(r => r.At).Select(p => p.MolPerKg));
        return s.Append("}\n").ToString();

        void Line(string type, string name, IEnumerable<double> values) => s.Append(CultureInfo.InvariantCulture,
            $"    public static ReadOnlySpan<{type}> {name} =>\n    [\n        {string.Join(", ", values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)))},\n    ];\n\n");
    }
}
