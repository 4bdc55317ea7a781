using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Engine;

/// <summary>How far a solution is past a solid, from the activities of its ions: quoted from the engine, multiplied by hand.</summary>
internal static class Saturation
{
    public const string Engine = "engine";

    /// <summary>Writes the ion product and the saturation index.</summary>
    /// <returns>How many times the ion product is what stays dissolved, and the index, as printed.</returns>
    public static (Term Times, Term Index) Write(WorkingBuilder work, Equilibrium state, Solid solid)
    {
        var parts = solid.Composition.Where(c => c.Value != 0).OrderBy(c => c.Value < 0).ToList();
        var factors = new List<Term>();
        var divisors = new List<Term>();
        var words = new List<string>();
        var below = new List<string>();
        double logProduct = 0;
        foreach (var (component, count) in parts)
        {
            var (name, activity, exact) = Activity(work, state, component);
            var times = Math.Abs(count);
            var factor = times == 1 ? activity : Term.Power(activity, times);
            var word = times == 1 ? name : $"{name}^{((Term)times).Text}";
            logProduct += count * exact;
            (count > 0 ? factors : divisors).Add(factor);
            (count > 0 ? words : below).Add(word);
        }

        var formula = string.Join(" × ", words) + string.Concat(below.Select(b => " / " + b));
        var called = HasIons(solid) ? "ion product" : "activity";
        var product = work.Result(called, formula, divisors.Aggregate(Term.Product(factors), (quotient, d) => quotient / d));
        var index = state.SaturationIndex(solid.Name) ?? 0;
        var limit = work.Given(
            $"{called} of {solid.Formula} that stays dissolved (solubility product at {Say.Number(state.Celsius)} °C)",
            Math.Pow(10, logProduct - index), "", "constants");
        var past = work.Result("times the limit", $"{called} / solubility product", product / limit);
        return (past, work.Result("saturation index", "log10 of the times", Term.Log10(past)));
    }

    /// <summary>Whether a solid is made of ions; boric acid and silica are neutral molecules, and water belongs to neither.</summary>
    public static bool HasIons(Solid solid) =>
        solid.Composition.Any(c => c.Key != Component.Water && IonFacts.Charge(c.Key) != 0);

    /// <summary>The activity of one component, its name in a formula, and its unrounded logarithm.</summary>
    private static (string Name, Term Activity, double Log) Activity(WorkingBuilder work, Equilibrium state, string component)
    {
        if (component == Component.Water)
        {
            return ("a(H2O)", work.Given("activity of the water", state.WaterActivity, "", Engine), Math.Log10(state.WaterActivity));
        }

        if (component == Component.Hydrogen)
        {
            var pH = work.Given("pH before anything falls out", state.Ph, "", Engine);
            return ("a(H+)", work.Result("activity of the hydrogen ions", "10^(-pH)", Term.TenTo(-pH)), -state.Ph);
        }

        var log = state.LogActivity(component) ?? 0;
        var molality = state.Molality(component);
        var ion = IonWords.Of(component);
        var free = work.Given($"{ion} that is free as {component}", molality, "mol/kg", Engine);
        var coefficient = work.Given($"activity coefficient of {component}", Math.Pow(10, log) / molality, "", Engine);
        return ($"a({component})", work.Result($"activity of {component}", "free × activity coefficient", free * coefficient), log);
    }
}
