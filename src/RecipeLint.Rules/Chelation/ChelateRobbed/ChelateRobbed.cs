using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>Another metal takes the chelating agent from the iron in the final solution, at a pH the chelate would stand.</summary>
internal sealed class ChelateRobbed : RecipeRule<ChelateRobbed.Holding>, IProposesRepairs
{
    public const string RuleName = "chelate-robbed";

    public override string Name => RuleName;

    protected override IEnumerable<Holding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var least = context.Options<ChelateRobbedOptions>().LeastHeld;
        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var agent = Iron.ChelatorMoles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var holding =
            new Holding(recipe, iron, agent, least) { Checks = [Check.That("it holds iron, and its equilibrium can be computed", false)] };
        if (!recipe.IsComplete || !(iron > 0) || Iron.Supplier(recipe) is null)
        {
            return [holding];
        }

        // Too little agent is another finding, and so is a pH that the chelate does not stand.
        var enough = new Check("enough agent for it", agent * 1e6, Relation.AtLeast, iron * least / 100 * 1e6, "µmol/L");
        if (!enough.Holds)
        {
            return [holding with { IsLookedAt = true, Checks = [enough] }];
        }

        var state = Iron.Feed(recipe);
        if (!state.IsSolved)
        {
            return [holding];
        }

        var held = Rounding.SixDigits(Iron.HeldShare(state, iron));
        holding = holding with { IsLookedAt = true, State = state, Held = held };
        var less = new Check("less is held than should be", Rounding.SixDigits(held * 100), Relation.Under, least, "%");
        if (!less.Holds)
        {
            return [holding with { Checks = [enough, less] }];
        }

        if (IronHolders.Of(recipe.ComponentMoles).Count == 0 || Robbery.Of(recipe, state, held, least / 100) is not { } robber)
        {
            return [holding with { Checks = [enough, less, Check.That("a metal that is too much is to blame, and not the pH", false)] }];
        }

        var blame = new Check($"the {robber.Name} is to blame", Rounding.SixDigits(100 * robber.HeldWithout), Relation.AtLeast, least, "%");
        return [holding with { Robber = robber, Checks = [enough, less, blame] }];
    }

    protected override Finding Describe(Holding verdict, RuleContext context)
    {
        var (recipe, iron, state, held, least) = (verdict.Recipe, verdict.IronPerLitre, verdict.State!, verdict.Held, verdict.Least / 100);
        var (robber, ironDose) = (verdict.Robber!, Iron.Supplier(verdict.Recipe)!);
        var main = IronHolders.Of(recipe.ComponentMoles).MaxBy(h => h.Share).Name;
        var without = robber.HeldWithout;
        var stronger = (main, robber.Key) switch
        {
            ("EDDHA", _) => new Way("bring the pH to 5.5", Puts.Acid, 5.5),
            (_, "Cu") => new Way("use Fe-EDDHA, from which copper takes far less", Puts.Chelate),
            ("EDTA" or "HEDTA", _) => new Way("use Fe-DTPA, which gives iron up less easily", Puts.Chelate),
            _ => new Way("bring the pH to 5.5", Puts.Acid, 5.5),
        };
        var message =
            $"{Say.Capital(PhGuess.At(state))} {main} holds only {Say.Percent(held)} of "
                + $"{Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron: {robber.Name}, at "
                    + $"{Say.Number(recipe.MilligramsPerLitre(robber.Key))} mg/L, has taken the chelating agent. "
            + "The iron without a holder falls out as rust and the crop goes short of it; without the "
                + $"{robber.Name} {Say.Percent(without)} would stay held. "
            + context.AdviceFor(recipe).Sentence(new Way($"lower the {robber.Name}"), stronger);
        return context.Find(Source(recipe, robber.Key), message, Iron.HarmOf(1 - held), Odds.Certain) with
        {
            Related = [new RelatedPlace(ironDose.Entry.Place, "brings the iron chelate")],
            Measured = new Measured("iron still held", held * 100, least * 100, "%"),
            Values =
            [
                new NamedValue("iron still held", held * 100, "%"),
                new NamedValue($"iron held without the {robber.Name}", without * 100, "%"),
                new NamedValue(robber.Name, recipe.MilligramsPerLitre(robber.Key), "mg/L"),
                .. PhGuess.Values(state),
            ],
        };
    }

    protected override Working Work(Holding verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"who holds the iron of '{verdict.Recipe.Recipe.Name}'");
        if (!verdict.IsLookedAt)
        {
            return work.Statements(verdict).Done();
        }

        var all = work.Given("iron in all", verdict.IronPerLitre * 1e6, "µmol/L", "amounts in the file");
        var agent = work.Given("chelating agents", verdict.AgentPerLitre * 1e6, "µmol/L", "amounts in the file");
        var least = work.Option("least share held", verdict.Least);
        work.Check(verdict.Checks[0], agent, work.Result("needed", "iron × least share / 100", all * least / 100, "µmol/L"));
        if (verdict.State is not { } state)
        {
            return work.Done(agent);
        }

        var held = IronSteps.Held(work, state, all);
        work.Check(verdict.Checks[1], held, least);
        if (verdict.Robber is { } robber)
        {
            work.Check(
                verdict.Checks[2],
                work.Given($"held at the same pH without the {robber.Name}", 100 * robber.HeldWithout, "%", "engine"),
                least);
        }

        return work.Statements(verdict).Done(held);
    }

    /// <summary>Less of the metal that robs, a stronger agent, or a lower pH.</summary>
    protected override IEnumerable<RepairProposal> Repair(Holding verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        var robber = verdict.Robber?.Key;
        foreach (var addition in recipe.Doses
            .SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? [])
            .Where(a => !a.ThroughAliquot))
        {
            if (robber is not null and not ("Ca" or "Mg") && addition.Elements[new Element(robber)].Grams > 0)
            {
                yield return Additions.Less(context, addition);
            }

            foreach (var other in Iron.Moles(addition.ComponentMoles) > 0 ? Additions.OtherIron(context, addition) : [])
            {
                yield return other;
            }
        }

        foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59" }
            .OfType<string>()
            .Distinct(StringComparer.Ordinal))
        {
            yield return Waters.Adjust(context, recipe, 5.5, acid);
        }
    }

    /// <summary>Where most of an element comes in: a dose, the water or the reagent.</summary>
    private static Place Source(RecipeFacts recipe, string key)
    {
        var most = recipe.Elements[key].Contributions
            .GroupBy(c => c.Source)
            .OrderByDescending(g => g.Sum(c => c.Concentration.GramsPerLitre))
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .FirstOrDefault()?.Key;
        return recipe.Doses.FirstOrDefault(d => d.Id == most)?.Entry.Place
            ?? (most == recipe.Water?.Id ? recipe.Water?.Place : null)
            ?? recipe.Recipe.Place.Child("doses").Key;
    }

    /// <summary>How much of the iron of one final solution is held.</summary>
    /// <param name="IronPerLitre">mol/L.</param>
    /// <param name="AgentPerLitre">mol/L.</param>
    /// <param name="Least">%.</param>
    internal sealed record Holding(RecipeFacts Recipe, double IronPerLitre, double AgentPerLitre, NumberOption Least) : Verdict
    {
        /// <summary>False where a statement keeps the rule from looking.</summary>
        internal bool IsLookedAt { get; init; }

        /// <summary>With all iron oxidised; null where there is too little agent anyway.</summary>
        internal SolutionState? State { get; init; }

        /// <summary>Share of the iron, 0 to 1, to six digits.</summary>
        internal double Held { get; init; }

        internal Robbery? Robber { get; init; }
    }
}
