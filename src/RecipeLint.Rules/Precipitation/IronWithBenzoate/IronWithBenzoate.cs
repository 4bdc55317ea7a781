using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// Ferric iron that no chelate holds beside benzoate. No constant of basic ferric benzoate is known; what is known is that it separates at
/// once from weakly acid solutions, so the pH and the two amounts decide.
/// </summary>
internal sealed class IronWithBenzoate : StockRule<IronWithBenzoate.Pair>, IProposesRepairs
{
    /// <summary>Trinuclear basic ferric benzoate holds six benzoates to three irons (its cation [Fe3O(C7H5O2)6]+).</summary>
    private const double BenzoatesPerIron = 2;

    /// <summary>g/mol of iron as Fe(C7H5O2)2OH, from CIAAW weights.</summary>
    private const double GramsPerMoleIron = 315.08;

    private const string Benzoate = Component.Benzoate;

    public const string RuleName = "iron-with-benzoate";

    public override string Name => RuleName;

    protected override IEnumerable<Pair> Judge(StockFacts stock, RuleContext context)
    {
        var benzoate = stock.Concentration(Benzoate).MolesPerLitre;
        var least = context.Options<IronWithBenzoateOptions>().FromPh;
        SolutionState?[] states = [stock.Chemistry.Mixing, stock.Chemistry.Aged];
        var worst = states.OfType<SolutionState>().Where(s => s.IsSolved)
            .OrderByDescending(s => s.PhBeforeDeposit >= least)
            .ThenByDescending(s => Rounding.SixDigits(Unprotected(stock, s)))
            .FirstOrDefault();
        if (!(benzoate > 0) || worst is null)
        {
            yield return new Pair(
                stock, null, 0, 0, 0)
            { Checks = [Check.That("it holds benzoate, and its equilibrium can be computed", false)] };
            yield break;
        }

        var iron = Unprotected(stock, worst);
        var grams = Rounding.SixDigits(Math.Min(iron, benzoate / BenzoatesPerIron) * GramsPerMoleIron);
        yield return new Pair(stock, worst, iron, benzoate, grams)
        {
            Checks =
            [
                new Check("the pH at which it separates", worst.PhBeforeDeposit, Relation.AtLeast, least),
                new Check("enough to see", grams, Relation.AtLeast, context.Options<IronWithBenzoateOptions>().Visible, "g/L"),
            ],
        };
    }

    protected override Finding Describe(Pair verdict, RuleContext context)
    {
        var (stock, state, grams) = (verdict.Stock, verdict.State!, verdict.Grams);
        var iron = stock.SuppliersOf(state.Moment == StateMoment.Aged ? Component.FerrousIron : Component.FerricIron).FirstOrDefault();
        var preservative = stock.SuppliersOf(Benzoate).FirstOrDefault();
        var when = state.Moment == StateMoment.Aged ? "once the air has oxidised it" : "as it is mixed";
        var message =
            $"Up to {Say.Grams(grams)}/L of iron benzoate can fall out of '{stock.Stock.Name}': {Say.Number(verdict.Iron * 1000)} mmol/L "
                + "iron(III) that no chelate holds, "
            + $"{when}, stands beside {Say.Number(verdict.Benzoate * 1000)} mmol/L benzoate "
                + $"{PhGuess.At(state, 1)}. "
            + "The buff flakes take the iron and the preservative with them, so the stock loses both. "
            + context.AdviceFor(stock).Sentence(
                new Way("buy the iron as a chelate", Puts.Chelate),
                new Way($"keep the pH below {Say.Number(context.Options<IronWithBenzoateOptions>().FromPh)}", Puts.Acid,
                    context.Options<IronWithBenzoateOptions>().FromPh),
                new Way($"preserve with sorbate instead of {preservative?.Substance.Name ?? "benzoate"}", Puts.Preservative));
        return context.Find(preservative?.Place ?? stock.Stock.Place, message, Harm.Damage, Odds.Certain) with
        {
            Related = iron is null ? [] : [new RelatedPlace(iron.Place, "brings the iron")],
            Measured = new Measured("iron benzoate that can fall out", grams, context.Options<IronWithBenzoateOptions>().Visible, "g/L"),
            Values =
            [
                new NamedValue("can fall out", grams, "g/L"),
                new NamedValue("unprotected iron(III)", Rounding.SixDigits(verdict.Iron * 1000), "mmol/L"),
                new NamedValue("benzoate", Rounding.SixDigits(verdict.Benzoate * 1000), "mmol/L"),
                .. PhGuess.Values(state, before: true),
            ],
        };
    }

    protected override Working Work(Pair verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"iron benzoate in '{verdict.Stock.Stock.Name}'");
        if (verdict.State is not { } state)
        {
            return work.Statements(verdict).Done();
        }

        var pH = work.Given(
            $"pH {Wording.When(verdict.Stock, state)}{(state.Moment == StateMoment.Aged ? ", once the air has oxidised the iron" : "")}",
            state.PhBeforeDeposit, "", Saturation.Engine);
        work.Check(verdict.Checks[0], pH, work.Option("lowest pH", context.Options<IronWithBenzoateOptions>().FromPh));
        var iron = work.Given("iron(III) that no chelate holds", verdict.Iron, "mol/L", Saturation.Engine);
        var benzoate = work.Given("benzoate", verdict.Benzoate, "mol/L", "amounts in the file");
        var pairs = work.Result(
            "iron that finds enough benzoate", "the smaller of the iron and benzoate / 2", Term.Smaller(iron, benzoate / BenzoatesPerIron),
            "mol/L");
        var grams = work.Result("iron benzoate", "moles × molar mass of Fe(C7H5O2)2OH", pairs * GramsPerMoleIron, "g/L");
        return work.Check(
            verdict.Checks[1],
            grams,
            work.Option("deposit from which a finding is given", context.Options<IronWithBenzoateOptions>().Visible)).Done(grams);
    }

    /// <summary>mol/L of iron(III) that no chelating agent holds, dissolved or already a deposit without benzoate.</summary>
    private static double Unprotected(StockFacts stock, SolutionState state)
    {
        var all = stock.Concentration(Component.FerricIron).MolesPerLitre
            + (state.Moment == StateMoment.Aged ? stock.Concentration(Component.FerrousIron).MolesPerLitre : 0);
        var held = state.Metals.FirstOrDefault(m => m.Metal == Component.FerricIron) is { } iron
            ? iron.Dissolved.MolesPerLitre - iron.Unchelated.MolesPerLitre
            : 0;
        return Math.Max(0, all - held);
    }

    /// <summary>Sorbate for benzoate, chelated iron, less benzoate, or more acid.</summary>
    protected override IEnumerable<RepairProposal> Repair(Pair verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock || context.AdditionAt(stock, finding.Place) is not { } preservative)
        {
            yield break;
        }

        if (Additions.Swap(context, preservative, "potassium-sorbate", Benzoate, Component.Sorbate) is { } sorbate)
        {
            yield return sorbate;
        }

        foreach (var iron in finding.Related
            .Select(r => context.AdditionAt(stock, r.Place))
            .OfType<AdditionFacts>()
            .SelectMany(a => Additions.OtherIron(context, a)))
        {
            yield return iron;
        }

        foreach (var acid in Additions.Acid(context, stock))
        {
            yield return acid;
        }

        yield return Additions.Less(context, preservative);
    }

    /// <summary>Iron and benzoate of one stock.</summary>
    /// <param name="State">The moment that decides; null without benzoate or without a state.</param>
    /// <param name="Iron">mol/L of iron(III) that no chelate holds.</param>
    /// <param name="Benzoate">mol/L.</param>
    /// <param name="Grams">g/L of iron benzoate that can fall out.</param>
    internal sealed record Pair(StockFacts Stock, SolutionState? State, double Iron, double Benzoate, double Grams) : Verdict;
}
