using RecipeLint.Analysis;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>Food for moulds and bacteria in a kept stock, and nothing that stops them.</summary>
public sealed class CarbonWithoutPreservative : StockRule, IProposesRepairs
{
    /// <summary>Water activity below which moulds stop (food microbiology textbooks, recalled).</summary>
    private const double DryEnough = 0.8;

    /// <summary>Undissociated acetic acid that preserves by itself, g/L: pickles hold 0.5 to 2 % (food preservation handbooks, recalled).</summary>
    private const double PicklingAcid = 10;

    /// <summary>Hypochlorite that disinfects, mol/L: about 0.1 g/L of chlorine (common practice, no source).</summary>
    private const double Bleach = 1.4e-3;

    /// <summary>g/mol of acetic acid.</summary>
    private const double AceticAcid = 60.05;

    public override string Name => "carbon-without-preservative";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= context.Number("freshDays"))
        {
            yield break;
        }

        if (stock.Additions.Any(a => a.Substance.IsPreservative && a.Mass.Grams > 0))
        {
            yield break;
        }

        var food = MicrobialFood.In(stock);
        var total = food.Sum(f => f.GramsPerLitre);
        if (food.Count == 0 || Rounding.SixDigits(total) < context.Number("minimumFood") || KeepsItself(stock, context))
        {
            yield break;
        }

        var worst = food[0].Addition;
        var kept = stock.Stock.Keep?.For is { } time ? $"kept for {Say.Days(time.Value.Days)}" : "that is kept";
        var message = $"'{stock.Stock.Name}' holds {Say.Number(total)} g/L of organic matter ({Say.List(food.Select(f => f.Addition.Substance.Name).Distinct(StringComparer.Ordinal))}) and no preservative. "
            + $"Moulds and bacteria live on it: a stock {kept} grows slime that eats the acid or chelate and clogs drippers. "
            + $"Add potassium sorbate or sodium benzoate ({context.Word("usualDose")} g/L) before the acid, use a mineral acid instead, or mix it fresh within {context.Word("freshDays")} days.";
        yield return context.Find(worst.Place, message) with
        {
            Related = [.. food.Skip(1).Select(f => new RelatedPlace(f.Addition.Place, "also feeds microbes"))],
            Measured = new Measured("organic matter", total, context.Number("minimumFood"), "g/L"),
            Values = [new NamedValue("organic matter", total, "g/L")],
        };
    }

    /// <summary>So acid, so salty or so full of vinegar or free copper that nothing grows in it.</summary>
    internal static bool KeepsItself(StockFacts stock, RuleContext context)
    {
        var state = stock.Chemistry.Mixing;
        if (!stock.IsComplete || !state.IsSolved || state.Solution is not { } solution)
        {
            return false;
        }

        // Bleach leaves nothing alive; that it must not be there is another family's matter.
        if (stock.Concentration("inert:ClO-1").MolesPerLitre >= Bleach)
        {
            return true;
        }

        var copper = state.Metals.Where(m => m.Metal == "Cu+2").Sum(m => m.Unchelated.MolesPerLitre) * 63.546;
        var acetic = solution.Molality("HAcetate") * state.KilogramsWaterPerLitre * AceticAcid;
        return state.Ph <= context.Number("safeBelowPh")
            || (state.WaterActivity is > 0 and < DryEnough && state.Validity.Trust == RecipeLint.Chemistry.Equilibrium.Trust.InRange)
            || copper >= context.Number("safeCopper")
            || acetic >= PicklingAcid;
    }

    /// <summary>A preservative before anything else, or a short life.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        // In the middle of the usual dose (common practice, no source); as much as the pH asks for is the next rule's to say.
        foreach (var id in new[] { "potassium-sorbate", "sodium-benzoate" })
        {
            yield return new RepairProposal.Tuned(
                grams => Additions.New(context, stock, id, grams * stock.Volume.Litres, Steps.AfterFirstWater(stock), "to the first water"), 0.25, 0.5);
        }

        yield return Keep.For(context, stock, context.Rule.Number("freshDays"));
    }
}
