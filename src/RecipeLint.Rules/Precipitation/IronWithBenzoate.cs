using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// Ferric iron that no chelate holds beside benzoate. No constant of basic ferric benzoate is known; what is known is that it separates at
/// once from weakly acid solutions, so the pH and the two amounts decide.
/// </summary>
public sealed class IronWithBenzoate : StockRule, IProposesRepairs
{
    /// <summary>Trinuclear basic ferric benzoate holds six benzoates to three irons (its cation [Fe3O(C7H5O2)6]+).</summary>
    internal const double BenzoatesPerIron = 2;

    /// <summary>g/mol of iron as Fe(C7H5O2)2OH, from CIAAW weights.</summary>
    internal const double GramsPerMoleIron = 315.08;

    internal const string Benzoate = "Benzoate-";

    public override string Name => "iron-with-benzoate";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var benzoate = stock.Concentration(Benzoate).MolesPerLitre;
        if (!(benzoate > 0))
        {
            yield break;
        }

        SolutionState?[] states = [stock.Chemistry.Mixing, stock.Chemistry.Aged];
        var worst = states.OfType<SolutionState>()
            .Where(s => s.IsSolved && s.PhBeforeDeposit >= context.Number("fromPh"))
            .Select(s => (State: s, Iron: Unprotected(stock, s)))
            .OrderByDescending(w => Rounding.SixDigits(w.Iron))
            .FirstOrDefault();
        if (worst.State is null)
        {
            yield break;
        }

        var grams = Rounding.SixDigits(Math.Min(worst.Iron, benzoate / BenzoatesPerIron) * GramsPerMoleIron);
        if (grams < context.Number("visible"))
        {
            yield break;
        }

        var iron = stock.SuppliersOf(worst.State.Moment == StateMoment.Aged ? "Fe+2" : "Fe+3").First();
        var preservative = stock.SuppliersOf(Benzoate).First();
        var when = worst.State.Moment == StateMoment.Aged ? "once the air has oxidised it" : "as it is mixed";
        var message = $"Up to {Say.Grams(grams)}/L of iron benzoate can fall out of '{stock.Stock.Name}': {Say.Number(worst.Iron * 1000)} mmol/L iron(III) that no chelate holds, "
            + $"{when}, stands beside {Say.Number(benzoate * 1000)} mmol/L benzoate at pH {Say.Number(Math.Round(worst.State.PhBeforeDeposit, 1))}. "
            + "The buff flakes take the iron and the preservative with them, so the stock loses both. "
            + $"Buy the iron as a chelate, keep the pH below {context.Word("fromPh")}, or preserve with sorbate instead of {preservative.Substance.Name}.";
        yield return context.Find(preservative.Place, message) with
        {
            Related = [new RelatedPlace(iron.Place, "brings the iron")],
            Measured = new Measured("iron benzoate that can fall out", grams, context.Number("visible"), "g/L"),
            Values =
            [
                new NamedValue("can fall out", grams, "g/L"),
                new NamedValue("unprotected iron(III)", Rounding.SixDigits(worst.Iron * 1000), "mmol/L"),
                new NamedValue("benzoate", Rounding.SixDigits(benzoate * 1000), "mmol/L"),
                new NamedValue("pH", Rounding.SixDigits(worst.State.PhBeforeDeposit), ""),
            ],
        };
    }

    /// <summary>mol/L of iron(III) that no chelating agent holds, dissolved or already a deposit without benzoate.</summary>
    internal static double Unprotected(StockFacts stock, SolutionState state)
    {
        var all = stock.Concentration("Fe+3").MolesPerLitre
            + (state.Moment == StateMoment.Aged ? stock.Concentration("Fe+2").MolesPerLitre : 0);
        var held = state.Metals.FirstOrDefault(m => m.Metal == "Fe+3") is { } iron ? iron.Dissolved.MolesPerLitre - iron.Unchelated.MolesPerLitre : 0;
        return Math.Max(0, all - held);
    }

    /// <summary>Sorbate for benzoate, chelated iron, less benzoate, or more acid.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock || context.AdditionAt(stock, finding.Place) is not { } preservative)
        {
            yield break;
        }

        if (Additions.Swap(context, preservative, "potassium-sorbate", Benzoate, "Sorbate-") is { } sorbate)
        {
            yield return sorbate;
        }

        foreach (var iron in finding.Related.Select(r => context.AdditionAt(stock, r.Place)).OfType<AdditionFacts>().SelectMany(a => Additions.OtherIron(context, a)))
        {
            yield return iron;
        }

        foreach (var acid in Additions.Acid(context, stock))
        {
            yield return acid;
        }

        yield return Additions.Less(context, preservative);
    }
}
