using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>Bleach or peroxide in a stock that is kept for longer than they last.</summary>
public sealed class ShelfLifeTooLong : StockRule, IProposesRepairs
{
    /// <summary>
    /// Second-order decay of sodium hypochlorite at 25 °C, per % w/v and day: 15 % loses half in 144 days, 10 % in 220
    /// (G. C. White, Handbook of Chlorination, recalled).
    /// </summary>
    internal const double BleachRate = 1 / (15.0 * 144);

    /// <summary>Factor of that rate for 10 °C more (G. Gordon, L. C. Adam and B. P. Bubnis, J. AWWA 87 (1995) 97, recalled).</summary>
    internal const double BleachTenDegrees = 3.5;

    /// <summary>g/mol of sodium hypochlorite.</summary>
    internal const double SodiumHypochlorite = 74.44;

    /// <summary>Unchelated iron, copper or manganese from which peroxide decays by them, mol/L (common practice, no source).</summary>
    internal const double Catalyses = 1e-6;

    internal static readonly string[] Catalysts = ["Fe+2", "Fe+3", "Cu+2", "Mn+2"];

    public override string Name => "shelf-life-too-long";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Keep?.For is not { } shelf)
        {
            yield break;
        }

        var decay = Bleach(stock, shelf.Value.Days) ?? Peroxide(stock, shelf.Value.Days, context.Number("catalysedHalfLife"));
        var least = context.Number("leastLeft");
        if (decay is null || stock.SuppliersOf(decay.Component).FirstOrDefault() is not { } source)
        {
            yield break;
        }

        var left = Rounding.SixDigits(decay.Left(shelf.Value.Days) * 100);
        if (left >= least)
        {
            yield break;
        }

        var days = LastsFor(decay, least / 100);
        var message = $"'{stock.Stock.Name}' is kept for {Say.Days(shelf.Value.Days)}, and by then {(left < 0.1 ? "next to nothing" : $"about {Say.Number(left)} %")} of its {decay.Name} is left: {decay.Why}. "
            + "Whoever doses it by the label then disinfects with a fraction of what is meant. "
            + $"Make what is used up within {Say.Days(Math.Max(1, Math.Floor(days)))}, or keep it {decay.Instead}.";
        yield return context.Find(shelf.Place, message) with
        {
            Related = [new RelatedPlace(source.Place, "brings it")],
            Measured = new Measured($"{decay.Name} left", left, least, "%"),
            Values = [new NamedValue($"{decay.Name} left", left, "%"), new NamedValue("time", shelf.Value.Days, "days"), new NamedValue("lasts for", days, "days")],
        };
    }

    private static Decay? Bleach(StockFacts stock, double days)
    {
        var percent = stock.Concentration("inert:ClO-1").MolesPerLitre * SodiumHypochlorite / 10;
        if (percent <= 0 || days <= 0)
        {
            return null;
        }

        var celsius = (stock.StorageTemperature.Low.Celsius + stock.StorageTemperature.High.Celsius) / 2;
        var rate = BleachRate * percent * Math.Pow(BleachTenDegrees, (celsius - 25) / 10);
        return new Decay(
            "inert:ClO-1",
            "hypochlorite",
            $"at {Say.Number(percent)} % w/v and {Say.Number(celsius)} °C it turns to chloride and chlorate",
            "cooler and weaker",
            d => 1 / (1 + (rate * d)));
    }

    private static Decay? Peroxide(StockFacts stock, double days, double halfLife)
    {
        var state = stock.Chemistry.Mixing;
        if (stock.Concentration("inert:H2O2").MolesPerLitre <= 0 || days <= 0 || !state.IsSolved)
        {
            return null;
        }

        var metal = state.Metals.Where(m => Catalysts.Contains(m.Metal)).OrderByDescending(m => m.Unchelated.MolesPerLitre).FirstOrDefault();
        if (metal is null || metal.Unchelated.MolesPerLitre < Catalyses)
        {
            return null;
        }

        return new Decay(
            "inert:H2O2",
            "hydrogen peroxide",
            $"{Say.Number(metal.Unchelated.MolesPerLitre * 1e6)} µmol/L unchelated {NameOf(metal)} breaks it down to water and oxygen",
            "apart from trace metals",
            d => Math.Pow(0.5, d / halfLife));
    }

    private static string NameOf(DissolvedMetal metal) => metal.Metal switch
    {
        "Cu+2" => "copper",
        "Mn+2" => "manganese",
        _ => "iron",
    };

    /// <summary>Days until the least is left; the decay is monotonous.</summary>
    private static double LastsFor(Decay decay, double least)
    {
        double low = 0, high = 1;
        while (decay.Left(high) > least && high < 1e5)
        {
            high *= 2;
        }

        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = decay.Left(middle) > least ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <param name="Left">Share left after so many days.</param>
    private sealed record Decay(string Component, string Name, string Why, string Instead, Func<double, double> Left);

    /// <summary>As long as it lasts, or cooler.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (RepairContext.Value(finding, "lasts for") is { } days)
        {
            yield return Keep.For(context, stock, days);
        }

        yield return Keep.Cooler(context, stock);
    }
}
