using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>An iron chelate in a stock or feed whose pH it does not stand.</summary>
internal sealed class ChelateOutsideItsPh : WorkspaceRule<ChelateOutsideItsPh.Standing>, IProposesRepairs
{
    public const string RuleName = "chelate-outside-its-ph";

    /// <summary>
    /// pH units over the highest published limit from which the iron of a kept stock counts as lost, whatever share the constants of fresh
    /// rust still give to the chelate: by the law of mass action each unit favours rust at least tenfold, and rust ages to what dissolves
    /// less.
    /// </summary>
    private const double FarOver = 2;

    /// <summary>From here on a share held is no argument for a floc, and is not printed as one.</summary>
    private const double MostlyHeld = 0.99;

    private const string NothingToJudge = "it holds an iron chelate, and its equilibrium can be computed";

    public override string Name => RuleName;

    protected override IEnumerable<Standing> Judge(Facts facts, RuleContext context) =>
        context.OfEachStockAlone(s => InTheStock(s, Least(context, s.Stock.File)))
            .Concat(facts.Recipes.Select(r => InTheFeed(r, Least(context, r.Recipe.File))));

    protected override Finding Describe(Standing verdict, RuleContext context) =>
        verdict.Recipe is { } recipe ? OfTheFeed(verdict, recipe, context) : OfTheStock(verdict, verdict.Stock!, context);

    protected override Working Work(Standing verdict, RuleContext context)
    {
        var work = new WorkingBuilder(verdict.Recipe is { } recipe
            ? $"the iron chelate in the tank '{recipe.Recipe.Name}'"
            : $"the iron chelate of '{verdict.Stock!.Stock.Name}'");
        if (verdict is not { Window: { } window, State: { } state })
        {
            return work.Statements(verdict).Done();
        }

        var checks = verdict.Checks;
        if (verdict.Recipe is not null)
        {
            IronSteps.Held(work, state, work.Given("iron in all", verdict.IronPerLitre * 1e6, "µmol/L", "amounts in the file"));
            work.Option("least that should be held", verdict.Least);
            work.Remark(verdict.IsLost
                ? "Less is held than should be: the lowest published limit counts."
                : "Enough is held by the constants: only the highest published limit counts.");
            var inFeed = Term.Of(verdict.Ph);
            work.Check(checks[0], inFeed, work.Given("limit", checks[0].Limit, "", "published pH windows"));
            return work.Statements(verdict).Done(inFeed);
        }

        var ph = work.Given("pH of the stock", verdict.Ph, "", "engine");
        if (checks[0].Relation == Relation.Over)
        {
            return work.Check(checks[0], ph, work.Given("highest by every source", window.Highest, "", "published pH windows")).Done(ph);
        }

        work.Check(checks[0], ph, work.Given("lowest", checks[0].Limit, "", "published pH windows"));
        if (!window.AcidSettles)
        {
            var all = work.Given("iron in all", verdict.IronPerLitre * 1e6, "µmol/L", "amounts in the file");
            work.Check(checks[1], IronSteps.Held(work, state, all), work.Option("least held", verdict.Least));
        }

        return work.Done(ph);
    }

    /// <summary>Another pH, or a chelate that stands this one.</summary>
    protected override IEnumerable<RepairProposal> Repair(Standing verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is { } recipe)
        {
            foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59" }
                .OfType<string>()
                .Distinct(StringComparer.Ordinal))
            {
                yield return Waters.Adjust(context, recipe, 5.8, acid);
            }

            foreach (var other in Iron.Additions(recipe).SelectMany(a => Additions.OtherIron(context, a)))
            {
                yield return other;
            }
        }

        if (context.StockOf(finding) is { } bottle && context.AdditionAt(bottle, finding.Place) is { } supplier)
        {
            foreach (var move in OtherPart.Moves(context, bottle, supplier))
            {
                yield return move;
            }

            var acidic = bottle.Chemistry.Mixing is { IsSolved: true, Ph: < 7 };
            foreach (var addition in bottle.Additions.Where(a => !a.ThroughAliquot
                && a.Substance.Kind == (acidic ? SubstanceKind.Acid : SubstanceKind.Base)))
            {
                yield return Additions.Less(context, addition);
            }

            foreach (var acid in acidic ? [] : Additions.Acid(context, bottle, 4.5))
            {
                yield return acid;
            }

            foreach (var other in Additions.OtherIron(context, supplier))
            {
                yield return other;
            }
        }
    }

    /// <summary>True for a stock with an iron chelate above the pH that every source gives for it.</summary>
    internal static bool IsTooAlkaline(StockFacts stock) =>
        stock.Chemistry.Mixing is { TellsPh: true, Ph: var ph } && ChelateWindow.In(stock.ComponentMoles).Any(w => ph > w.Highest);

    private static NumberOption Least(RuleContext context, string file) =>
        context.For(file).Options<ChelateOutsideItsPhOptions>().LeastHeld;

    private static Standing InTheStock(StockFacts stock, NumberOption least)
    {
        var standing = new Standing(stock, null, least) { Files = [stock.Stock.File], Checks = [Check.That(NothingToJudge, false)] };
        var windows = ChelateWindow.In(stock.ComponentMoles).Where(w => w.Agent != "citrate").ToList();

        // Nothing is solved for a stock without an iron chelate.
        if (!stock.IsComplete || windows.Count == 0 || Iron.Supplier(stock) is not { } supplier
            || (stock.Chemistry.Aged ?? stock.Chemistry.Mixing) is not { TellsPh: true } state)
        {
            return standing;
        }

        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var held = Iron.HeldShare(state, iron);
        var ph = Rounding.SixDigits(stock.Chemistry.Mixing.Ph);
        var judged = windows.ConvertAll(w => (Window: w, Checks: ChecksOf(w, ph, held, least)));
        var (window, checks) = judged.Exists(j => j.Checks.All(c => c.Holds)) ? judged.Find(j => j.Checks.All(c => c.Holds)) : judged[0];
        return standing with
        {
            Window =
            window,
            State = state,
            Place = supplier.Place,
            IronPerLitre = iron,
            Ph = ph,
            Held = held,
            Checks = checks
        };
    }

    /// <summary>What has to hold for a stock to be outside a window: at the end of it that the pH is nearer to.</summary>
    private static IReadOnlyList<Check> ChecksOf(ChelateWindow window, double ph, double held, NumberOption least)
    {
        var low = window.LowestInStock;
        if (ph > (window.Highest + low) / 2)
        {
            return [new Check($"over what Fe-{window.Agent} stands", ph, Relation.Over, window.Highest) { Meter = Meter.StockPh }];
        }

        var under = new Check($"under what Fe-{window.Agent} stands", ph, Relation.Under, low) { Meter = Meter.StockPh };
        return window.AcidSettles
            ? [under]
            : [under, new Check("and it is let go", Rounding.SixDigits(held * 100), Relation.Under, least, "%")];
    }

    private static Standing InTheFeed(RecipeFacts recipe, NumberOption least)
    {
        var standing = new Standing(null, recipe, least) { Files = [recipe.Recipe.File], Checks = [Check.That(NothingToJudge, false)] };
        var windows = ChelateWindow.In(recipe.ComponentMoles).ToList();
        if (!recipe.IsComplete
            || windows.Count == 0
            || Iron.Supplier(recipe) is not { } dose
            || Iron.Feed(recipe) is not { TellsPh: true } state)
        {
            return standing;
        }

        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var held = Rounding.SixDigits(Iron.HeldShare(state, iron));
        var ph = Rounding.SixDigits(state.Ph);
        var lost = held < least / 100;
        var window = windows.Where(w => ph > (lost ? w.HighFrom : w.Highest)).MinBy(w => w.Highest) ?? windows[0];
        var over = new Check($"over what Fe-{window.Agent} stands", ph, Relation.Over, lost ? window.HighFrom : window.Highest)
        {
            Meter = Meter.TankPh,
        };
        var isRobbed = over.Holds && lost && Robbery.Of(recipe, state, held, least / 100) is not null;
        return standing with
        {
            Window = window,
            State = state,
            Place = recipe.Adjustment?.Place ?? dose.Entry.Place,
            IronPerLitre = iron,
            Ph = ph,
            Held = held,
            IsLost = lost,
            HeldAsPoured = lost && recipe.Adjustment is null && !(recipe.ComponentMoles.GetValueOrDefault(Iron.Ferrous) > 0)
                && recipe.Chemistry.Tank is { IsSolved: true } poured && Iron.HeldShare(poured, iron) is var fresh && fresh >= least / 100
                    ? (Rounding.SixDigits(poured.Ph), Rounding.SixDigits(fresh))
                    : null,
            Checks = isRobbed
                ? [over, Check.That("the pH is to blame, and not another metal (chelate-robbed speaks of that)", false)]
                : [over],
        };
    }

    private static Finding OfTheStock(Standing verdict, StockFacts stock, RuleContext context)
    {
        var (window, ph, held) = (verdict.Window!, verdict.Ph, verdict.Held);
        var guess = GuessedPh.Of(stock);
        if (verdict.Checks[0].Relation == Relation.Over)
        {
            return Finding(
                context,
                verdict.Place!,
                $"'{stock.Stock.Name}' comes to pH {Say.Ph(Math.Round(ph, 2))}, and Fe-{window.Agent} holds to about pH "
                    + $"{Say.Number(window.Highest)}. "
                + "Hydroxide then takes the iron from the chelating agent, and the bottle rusts from within while it is kept. "
                + PhGuess.Sentence(guess)
                + context.AdviceFor(stock).Sentence(
                    new Way($"keep the chelate in a part between pH 4 and {Say.Number(window.HighFrom)}, away from the alkali"),
                    new Way("bring this stock there with an acid", Puts.Acid, window.HighFrom)),
                ("pH", ph, window.Highest),
                held,
                PhGuess.Weaken(Odds.Certain, guess),
                harm: ph > window.Highest + FarOver ? Harm.Loss : null);
        }

        var low = window.LowestInStock;
        return Finding(
            context,
            verdict.Place!,
            $"'{stock.Stock.Name}' comes to pH {Say.Ph(Math.Round(ph, 2))}, and Fe-{window.Agent} needs at least pH "
                + $"{Say.Number(low)} in a stock"
            + (held < MostlyHeld ? $": {Say.Percent(held)} of the iron is still held. " : ", although the constants still hold its iron. ")
            + $"The acid sets {window.Agent} free, and as a free acid it is hardly soluble: a brown sticky floc settles and the liquid "
                + "loses its colour. "
            + PhGuess.Sentence(guess)
            + context.AdviceFor(stock).Sentence(
                new Way("put the chelate into the calcium part"), new Way("leave the acid out of this one")),
            ("pH", ph, low),
            held,
            PhGuess.Weaken(ph < window.Lowest ? Odds.Certain : Odds.Possible, guess));
    }

    private static Finding OfTheFeed(Standing verdict, RecipeFacts recipe, RuleContext context)
    {
        var (window, ph, held, lost, iron) = (verdict.Window!, verdict.Ph, verdict.Held, verdict.IsLost, verdict.IronPerLitre);
        var guess = GuessedPh.Of(recipe);
        var better = ChelateWindow.HoldingAt(ph).FirstOrDefault(w => w.Highest > window.Highest);
        Way[] other = better is null ? [] : [new($"use Fe-{better.Agent}, which holds to pH {Say.Number(better.HighFrom)}", Puts.Chelate)];
        var message = (lost
                ? $"The solution comes to rest at pH {Say.Ph(Math.Round(ph, 2))} and its iron is Fe-{window.Agent}, good to pH "
                    + $"{Limits(window)}: in the end only {Say.Percent(held)} of {Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron "
                        + "is held. "
                : $"The solution comes to pH {Say.Ph(Math.Round(ph, 2))} and its iron is Fe-{window.Agent}, by its makers good to pH "
                    + $"{Limits(window)}; by the constants {Say.Percent(held)} of it is still held. ")
            + "Hydroxide takes the iron and calcium the chelating agent, the more the longer it stands; new leaves turn yellow although "
            + "enough iron went in. "
            + (verdict.HeldAsPoured is var (fresh, still)
                ? $"As it is poured, at pH {Say.Ph(Math.Round(fresh, 2))}, {Say.Percent(still)} is held: what is fed at once brings it. "
                : "")
            + PhGuess.Sentence(guess)
            + context.AdviceFor(recipe).Sentence([new("bring the solution to pH 5.5 to 6", Puts.Acid, 5.5), .. other]);
        return Finding(
            context, verdict.Place!, message, ("pH", ph, verdict.Checks[0].Limit), held,
            PhGuess.Weaken(!lost ? Odds.Possible : verdict.HeldAsPoured is null ? Odds.Certain : Odds.NearTheLimit, guess));
    }

    private static string Limits(ChelateWindow window) =>
        window.HighFrom == window.Highest ? Say.Number(window.Highest) : $"{Say.Number(window.HighFrom)} to {Say.Number(window.Highest)}";

    private static Finding Finding(
        RuleContext context, Place place, string message, (string Name, double Value, double Limit) measured, double held,
        Odds odds = Odds.Certain, Harm? harm = null) =>
        context.Find(place, message, harm ?? (odds != Odds.Possible ? Iron.HarmOf(1 - held) : Harm.Damage), odds) with
        {
            Measured = new Measured(measured.Name, measured.Value, measured.Limit, ""),
            Values = [new NamedValue(measured.Name, measured.Value, ""), new NamedValue("iron still held", held * 100, "%")],
        };

    /// <summary>One iron chelate at the pH of its stock or feed.</summary>
    /// <param name="Stock">Null for a feed.</param>
    /// <param name="Recipe">Null for a stock.</param>
    /// <param name="Least">%.</param>
    internal sealed record Standing(StockFacts? Stock, RecipeFacts? Recipe, NumberOption Least) : Verdict
    {
        /// <summary>Null where a statement keeps the rule from looking.</summary>
        internal ChelateWindow? Window { get; init; }

        internal SolutionState? State { get; init; }

        internal Place? Place { get; init; }

        /// <summary>mol/L.</summary>
        internal double IronPerLitre { get; init; }

        internal double Ph { get; init; }

        /// <summary>Share of the iron, 0 to 1.</summary>
        internal double Held { get; init; }

        /// <summary>
        /// pH and share of the iron held as it is poured, where that is enough: only a tank that stands, as the carbon dioxide of its water
        /// leaves, loses the iron then.
        /// </summary>
        internal (double Ph, double Held)? HeldAsPoured { get; init; }

        /// <summary>True for a feed in which less is held than should be: then the lowest published limit counts.</summary>
        internal bool IsLost { get; init; }
    }
}
