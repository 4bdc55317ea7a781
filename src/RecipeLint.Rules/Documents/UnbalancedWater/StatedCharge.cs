using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>One figure of an analysis, or several that add up, by charge.</summary>
internal sealed record StatedCharge(string Name, IReadOnlyList<StatedCharge.Part> Parts)
{
    private const double Milli = 1000;

    /// <summary>meq/L, the lowest of the year.</summary>
    public double Low { get; } = Parts.Sum(p => p.Low);

    /// <summary>meq/L, the highest of the year.</summary>
    public double High { get; } = Parts.Sum(p => p.High);

    /// <summary>meq/L; a value that is a range counts by its middle.</summary>
    public double Middle => (Low + High) / 2;

    public bool IsStated => Parts.Count > 0;

    public static StatedCharge Of(string name, Located<Interval<ChargeConcentration>>? stated) =>
        new(name, stated is null ? [] : [Of(name, 1, stated.Value)]);

    public static StatedCharge Of(string name, IEnumerable<StatedIon> ions) =>
        new(name, [.. ions.Select(i => Of(i.Key, Math.Abs(i.Charge), i.Equivalents))]);

    public StatedCharge With(StatedCharge other) => new(Name, [.. Parts, .. other.Parts]);

    /// <summary>How it adds up.</summary>
    /// <param name="end">Which value of a range counts.</param>
    /// <param name="which">The same in words.</param>
    public Term Write(WorkingBuilder work, Func<Part, double> end, string which)
    {
        var terms = Parts.Select(p => p.Write(work, end(p), which)).ToList();
        return terms.Count == 1 ? terms[0] : work.Result(Name, "sum", Term.Sum(terms), "meq/L");
    }

    private static Part Of(string name, int charge, Interval<ChargeConcentration> value) =>
        new(name, charge, value.Low.EquivalentsPerLitre * Milli, value.High.EquivalentsPerLitre * Milli);

    /// <summary>One figure.</summary>
    /// <param name="Charge">Of one ion, without its sign.</param>
    /// <param name="Low">meq/L.</param>
    /// <param name="High">meq/L.</param>
    internal sealed record Part(string Name, int Charge, double Low, double High)
    {
        public double Middle => (Low + High) / 2;

        public Term Write(WorkingBuilder work, double value, string which)
        {
            if (Charge <= 1)
            {
                return work.Given($"{Name}, {which}", value, "meq/L", From.File);
            }

            var moles = work.Given($"{Name}, {which}", value / Charge, "mmol/L", From.File);
            return work.Result("its charge", $"mmol/L × {Charge}", moles * Charge, "meq/L");
        }
    }
}
