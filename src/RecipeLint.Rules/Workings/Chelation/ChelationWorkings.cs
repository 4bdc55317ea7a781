using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings.Chelation;

/// <summary>The workings of the chelation family; nitrogen in agents stands with the elements.</summary>
internal static class ChelationWorkings
{
    private const string File = "file", Engine = "engine", Amounts = "amounts in the file";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnStocks("chelate-short", Short),
        RuleWorkings.OnRecipes("chelate-robbed", Robbed),
        new("chelate-outside-its-ph", (subject, context) =>
            subject.Stocks.Select(s => StockWindow(s, context.For(s.Stock.File))).Concat(subject.Recipes.Select(r => FeedWindow(r, context.For(r.Recipe.File))))),
        RuleWorkings.OnStocks("unprotected-ferrous-iron", Ferrous),
        RuleWorkings.OnRecipes("ferrous-iron-in-feed", FerrousFeed),
        RuleWorkings.OnStocks("chelate-in-light", Light),
    ];

    private static IEnumerable<Working> Short(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"chelating agent for the iron of '{stock.Stock.Name}'");
        var (iron, agent) = (Iron.Moles(stock.ComponentMoles), Iron.ChelatorMoles(stock.ComponentMoles));
        var bottle = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        if (iron <= 0 || agent <= 0 || !stock.IsComplete || !bottle.IsSolved)
        {
            yield return work.Condition("it holds iron and a chelating agent, and its equilibrium can be computed", false).Done();
            yield break;
        }

        var held = Iron.Chelators.Where(c => stock.ComponentMoles.GetValueOrDefault(c.Component) > 0)
            .Select(c => work.Given(c.Name, 1000 * stock.Concentration(c.Component).MolesPerLitre, "mmol/L", Amounts)).ToList();
        var agents = held.Count == 1 ? held[0] : work.Result("agents together", "sum", Term.Sum(held), "mmol/L");
        var metal = work.Given("iron", 1000 * iron / stock.Volume.Litres, "mmol/L", Amounts);
        var ratio = work.Result("agent for each iron", "agent / iron", agents / metal);
        work.Test("meant to hold it", ratio, Relation.AtLeast, Iron.IntendedShare);
        work.Test("too little", ratio, Relation.Under, work.Option("least", "leastRatio", context));
        var (pH, loose) = ChelateShort.Feed(stock, context);
        var settled = work.Given("iron that lies as rust in the bottle once the air has oxidised it", 100 * Iron.RustShare(bottle, iron / stock.Volume.Litres), "%", Engine);
        var free = work.Given($"iron that nothing holds in the feed at pH {Say.Number(Math.Round(pH, 2))}", 100 * loose, "%", Engine);
        var worst = work.Result("the worse of the two", "the larger", Term.Larger(settled, free), "%");
        yield return work.Test("enough to miss", worst, Relation.AtLeast, work.Option("limit", "leastLost", context), "%").Done(ratio);
    }

    private static IEnumerable<Working> Robbed(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"who holds the iron of '{recipe.Recipe.Name}'");
        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var state = iron > 0 ? Iron.Feed(recipe) : null;
        if (!recipe.IsComplete || state is not { IsSolved: true })
        {
            yield return work.Condition("it holds iron, and its equilibrium can be computed", false).Done();
            yield break;
        }

        var least = context.Number("leastHeld") / 100;
        var all = work.Given("iron in all", iron * 1e6, "µmol/L", Amounts);
        var agent = work.Given("chelating agents", Iron.ChelatorMoles(recipe.ComponentMoles) / recipe.FinalVolume.Litres * 1e6, "µmol/L", Amounts);
        work.Test("enough agent for it", agent, Relation.AtLeast, work.Result("needed", "iron × least share / 100", all * work.Option("least share held", "leastHeld", context) / 100, "µmol/L"), "µmol/L");
        var held = Held(work, state, all);
        work.Test("less is held than should be", held, Relation.Under, Term.Of(100 * least), "%");
        if (Iron.Holders(recipe.ComponentMoles).Count > 0 && Robbery.Of(recipe, state, Rounding.SixDigits(Iron.HeldShare(state, iron)), least) is { } robber)
        {
            var without = work.Given($"held at the same pH without the {robber.Name}", 100 * robber.HeldWithout, "%", Engine);
            work.Test($"the {robber.Name} is to blame", without, Relation.AtLeast, Term.Of(100 * least), "%");
        }
        else
        {
            work.Condition("a metal that is too much is to blame, and not the pH", false);
        }

        yield return work.Done(held);
    }

    /// <summary>Per cent of the iron that an agent holds in solution.</summary>
    private static Term Held(WorkingBuilder work, SolutionState state, Term all)
    {
        var metals = state.Metals.Where(m => m.Metal is Iron.Ferrous or Iron.Ferric).ToList();
        work.Given("pH", state.Ph, "", Engine);
        var dissolved = work.Given("iron that is dissolved", metals.Sum(m => m.Dissolved.MolesPerLitre) * 1e6, "µmol/L", Engine);
        var bare = work.Given("of it without a holder", metals.Sum(m => m.Unchelated.MolesPerLitre) * 1e6, "µmol/L", Engine);
        return work.Result("iron still held", "100 × (dissolved - without a holder) / iron in all", 100 * (dissolved - bare) / all, "%");
    }

    private static Working StockWindow(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"the iron chelate of '{stock.Stock.Name}'");
        var state = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        var windows = ChelateOutsideItsPh.Windows(stock.ComponentMoles).Where(w => w.Agent != "citrate").ToList();
        if (!stock.IsComplete || !state.IsSolved || Iron.Supplier(stock) is null || windows.Count == 0)
        {
            return work.Condition("it holds an iron chelate, and its equilibrium can be computed", false).Done();
        }

        var exact = Rounding.SixDigits(stock.Chemistry.Mixing.Ph);
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var held = Iron.HeldShare(state, iron);
        var window = windows.FirstOrDefault(w => exact > w.Highest || (exact < Low(w) && (w.AcidSettles || held < context.Number("leastHeld") / 100))) ?? windows[0];
        var pH = work.Given("pH of the stock", exact, "", Engine);
        if (exact > (window.Highest + Low(window)) / 2)
        {
            return work.Test($"over what Fe-{window.Agent} stands", pH, Relation.Over, work.Given("highest by every source", window.Highest, "", "published pH windows")).Done(pH);
        }

        work.Test($"under what Fe-{window.Agent} stands", pH, Relation.Under, work.Given("lowest", Low(window), "", "published pH windows"));
        if (!window.AcidSettles)
        {
            var all = work.Given("iron in all", iron * 1e6, "µmol/L", Amounts);
            work.Test("and it is let go", Held(work, state, all), Relation.Under, work.Option("least held", "leastHeld", context), "%");
        }

        return work.Done(pH);

        static double Low(ChelateWindow w) => w.AcidSettles ? w.LowFrom : w.Lowest;
    }

    private static Working FeedWindow(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"the iron chelate in the tank '{recipe.Recipe.Name}'");
        var state = Iron.Moles(recipe.ComponentMoles) > 0 ? Iron.Feed(recipe) : null;
        var windows = ChelateOutsideItsPh.Windows(recipe.ComponentMoles).ToList();
        if (!recipe.IsComplete || state is not { IsSolved: true } || windows.Count == 0)
        {
            return work.Condition("it holds an iron chelate, and its equilibrium can be computed", false).Done();
        }

        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var share = Rounding.SixDigits(Iron.HeldShare(state, iron));
        var held = Held(work, state, work.Given("iron in all", iron * 1e6, "µmol/L", Amounts));
        var least = work.Option("least that should be held", "leastHeld", context);
        var lost = held.Value < least.Value;
        work.Remark(lost ? "Less is held than should be: the lowest published limit counts." : "Enough is held by the constants: only the highest published limit counts.");
        var window = windows.Where(w => state.Ph > (lost ? w.HighFrom : w.Highest)).MinBy(w => w.Highest) ?? windows[0];
        var pH = Term.Of(state.Ph);
        work.Test($"over what Fe-{window.Agent} stands", pH, Relation.Over, work.Given("limit", lost ? window.HighFrom : window.Highest, "", "published pH windows"));
        if (lost && Robbery.Of(recipe, state, share, context.Number("leastHeld") / 100) is not null)
        {
            work.Condition("the pH is to blame, and not another metal (chelate-robbed speaks of that)", false);
        }

        return work.Done(pH);
    }

    private static IEnumerable<Working> Ferrous(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"iron(II) of '{stock.Stock.Name}' against the air");
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var mixing = stock.Chemistry.Mixing;
        if (!stock.IsComplete || !mixing.IsSolved || stock.Chemistry.Aged is not { IsSolved: true } aged || stock.Concentration(Iron.Ferrous).MolesPerLitre <= 0)
        {
            yield return work.Condition($"it holds iron(II), is kept for more than {Say.Number(StockChemistry.AgedAfterDays)} days, and its equilibrium can be computed", false).Done();
            yield break;
        }

        var all = work.Given("iron", iron * 1000, "mmol/L", Amounts);
        var agent = work.Given("chelating agents", Iron.ChelatorMoles(stock.ComponentMoles) / stock.Volume.Litres * 1000, "mmol/L", Amounts);
        work.Test("nothing was put in to hold it", work.Result("agent for each iron", "agent / iron", agent / all), Relation.Under, Iron.IntendedShare);
        work.Test("not so acid that the air takes years", work.Given("pH", mixing.Ph, "", Engine), Relation.Over, work.Option("acid protects below pH", "acidProtectsBelow", context));
        var rust = work.Given("iron in the rust once the air has oxidised it", Iron.RustShare(aged, iron) * iron * 1000, "mmol/L", Engine);
        var lost = work.Result("iron that turns to rust", "100 × in the rust / iron", 100 * rust / all, "%");
        work.Test("enough to miss", lost, Relation.Over, work.Option("limit", "mostLost", context), "%");
        var fresh = work.Result(
            "iron that falls out as it is mixed", "100 × (1 - dissolved / iron)",
            100 * Term.Larger(0, 1 - (work.Given("dissolved as it is mixed", Iron.Dissolved(mixing) * 1000, "mmol/L", Engine) / all)), "%");
        yield return work.Test("and the air is to blame", fresh, Relation.AtMost, work.Option("limit", "mostLost", context), "%").Done(lost);
    }

    private static IEnumerable<Working> FerrousFeed(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"iron(II) of '{recipe.Recipe.Name}' against the air");
        var state = FerrousIronInFeed.IsFerrous(recipe) ? Iron.Feed(recipe) : null;
        if (state is not { IsSolved: true })
        {
            yield return work.Condition("its iron comes as iron(II), no agent was put in to hold it, and its equilibrium can be computed", false).Done();
            yield break;
        }

        if (FerrousIronInFeed.SpokenOfInTheBottle(Iron.Supplier(recipe)?.Stock))
        {
            work.Condition("the bottle it comes from keeps its iron (else unprotected-ferrous-iron speaks)", false);
        }

        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var all = work.Given("iron in all", iron * 1e6, "µmol/L", Amounts);
        work.Given("pH once the iron is oxidised", state.Ph, "", Engine);
        var fallen = work.Given($"iron in the {Iron.RustCalled(state)}", Iron.RustShare(state, iron) * iron * 1e6, "µmol/L", Engine);
        var lost = work.Result("iron that falls out", "100 × fallen out / iron", 100 * fallen / all, "%");
        yield return work.Test("enough to miss", lost, Relation.Over, work.Option("limit", "mostLost", context), "%").Done(lost);
    }

    private static IEnumerable<Working> Light(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"iron that '{stock.Stock.Name}' loses to light");
        var state = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        if (stock.Stock.Keep is not { Light: { Value: not LightExposure.Dark } light } keep || !state.IsSolved || Iron.Supplier(stock) is null)
        {
            yield return work.Condition("it holds iron and is not kept dark", false).Done();
            yield break;
        }

        var days = work.Given("kept for", keep.For?.Value.Days ?? ChelateInLight.UnstatedDays, "days", keep.For is null ? "assumed" : File);
        Term hours = days * ChelateInLight.HoursPerDay;
        hours = light.Value == LightExposure.Shade
            ? work.Result("hours of full light, a tenth of it in the shade", "days × 12 × 0.1", hours * ChelateInLight.ShadePart, "h")
            : work.Result("hours of light", "days × 12", hours, "h");
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var losses = new List<Term>();
        foreach (var (agent, name, perHour) in ChelateInLight.Rates)
        {
            var share = state.Chelates.Where(c => c.Agent == agent && (c.Metal is Iron.Ferrous or Iron.Ferric))
                .Sum(c => c.OfMetal * state.Metals.First(m => m.Metal == c.Metal).Dissolved.MolesPerLitre) / iron;
            if (share > 1e-6)
            {
                var held = work.Given($"iron that {name} holds", 100 * share, "%", Engine);
                var rate = work.Given($"loss of Fe-{name} an hour under lamps", perHour, "per h", "Albano and Miller 1995");
                losses.Add(work.Result("of it lost", "held × (1 - 1 / e^(rate × hours))", held * (1 - (1 / Term.Exp(rate * hours))), "%"));
            }
        }

        if (losses.Count == 0)
        {
            yield return work.Condition("an agent that light breaks holds iron", false).Done();
            yield break;
        }

        var lost = losses.Count == 1 ? losses[0] : work.Result("iron lost", "sum", Term.Sum(losses), "%");
        yield return work.Test("more than a stock should lose", lost, Relation.Over, work.Option("limit", "mostLost", context), "%").Done(lost);
    }
}
