using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Plant;

namespace RecipeLint.Rules.Workings.Plant;

/// <summary>Charge, conductivity, pH, alkalinity, reagent, water and contaminants.</summary>
internal static class SolutionWorkings
{
    private const string File = "file", Engine = "engine", Amounts = "amounts in the file";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnRecipes("charge-imbalance", (r, c) => [.. TargetCharges(r, c), SolutionCharge(r, c)]),
        RuleWorkings.OnRecipes("ec-outside-window", Ec),
        RuleWorkings.OnRecipes("ph-outside-window", Ph),
        RuleWorkings.OnRecipes("alkalinity-not-neutralised", Alkalinity),
        RuleWorkings.OnRecipes("acid-brings-too-much", Reagent),
        RuleWorkings.OnWaters("water-unfit", Water),
        new("contaminant-load", Contaminants),
    ];

    private static IEnumerable<Working> TargetCharges(RecipeFacts recipe, RuleContext context)
    {
        var wanted = recipe.Recipe.Targets.Where(t => t.Concentration is { GramsPerLitre: > 0 })
            .GroupBy(t => t.Key.Value).ToDictionary(g => g.Key, g => g.First().Concentration!.Value.MilligramsPerLitre);
        var byForm = wanted.ContainsKey("NO3-N");
        if (ChargeImbalance.Needed.Any(n => !wanted.ContainsKey(n)) || !(byForm || wanted.ContainsKey("N")))
        {
            yield break;
        }

        var work = new WorkingBuilder($"charges of the targets of '{recipe.Recipe.Name}'");
        var (cations, anions) = (new List<Term>(), new List<Term>());
        foreach (var (key, charge) in ChargeImbalance.Charges.Where(c => wanted.ContainsKey(c.Key)))
        {
            var equivalents = Equivalents(work, key, wanted[key], Math.Abs(charge));
            (charge > 0 ? cations : anions).Add(equivalents);
        }

        var plus = work.Result("cations", "sum", Term.Sum(cations), "meq/L");
        var minus = work.Result("anions", "sum", Term.Sum(anions), "meq/L");
        if (!byForm)
        {
            var all = Equivalents(work, "N", wanted["N"], 1);
            var free = wanted.ContainsKey("NH4-N") ? work.Result("nitrogen without a stated form", "N - NH4-N", all - cations[^1], "meq/L") : all;
            if (wanted.ContainsKey("NH4-N"))
            {
                minus = work.Result("anions with it as nitrate", "anions + nitrogen", minus + free, "meq/L");
            }
            else
            {
                var ammonium = work.Result(
                    "part of the nitrogen that is best taken as ammonium", "(anions + nitrogen - cations) / 2, between 0 and all", Term.Larger(0, Term.Smaller((minus + free - plus) / 2, free)), "meq/L");
                (plus, minus) = (work.Result("cations with it", "cations + ammonium", plus + ammonium, "meq/L"), work.Result("anions with the rest as nitrate", "anions + nitrogen - ammonium", minus + free - ammonium, "meq/L"));
            }
        }

        var apart = work.Result("apart", "100 × |cations - anions| / (cations + anions)", 100 * Term.Size(plus - minus) / (plus + minus), "%");
        yield return work.Test("too far apart for any mixture of salts", apart, Relation.Over, work.Option("limit", "targetTolerance", context), "%").Done(apart);
    }

    private static Term Equivalents(WorkingBuilder work, string key, double milligrams, int charge)
    {
        var amount = work.Given($"{key} wanted", milligrams, "mg/L", File);
        var weight = AtomicWeights.Of(NutrientKeys.ElementOf(key));
        return work.Result($"{key} by charge", $"mg/L / {((Term)weight).Text} × {charge}", amount / weight * charge, "meq/L");
    }

    private static Working SolutionCharge(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"charges of the solution '{recipe.Recipe.Name}'");
        var cations = work.Given("cations of all salts and the water", recipe.Charge.Cations.MilliequivalentsPerLitre, "meq/L", Amounts);
        var open = work.Given("charge that a label or a water analysis leaves open", recipe.Charge.Unexplained.MilliequivalentsPerLitre, "meq/L", Amounts);
        var percent = work.Result("of the cations", "100 × |open| / cations", 100 * Term.Size(open) / cations, "%");
        work.Test("too much to compute a pH with", percent, Relation.Over, work.Option("limit", "tolerance", context), "%");
        if (context.Facts.Workspace.Problems.Any(p => p.Kind == ProblemKind.UnbalancedWater && p.Place.File == recipe.Water?.Water?.File))
        {
            work.Condition("the water is not reported as unbalanced already", false);
        }

        return (recipe.IsComplete ? work : work.Condition("the recipe could be read whole", false)).Done(percent);
    }

    private static IEnumerable<Working> Ec(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"conductivity of '{recipe.Recipe.Name}' at 25 °C");
        if (!recipe.IsComplete || recipe.Chemistry is not { IsComplete: true, Final: { IsSolved: true, Conductivity.At25: { } at25 } })
        {
            yield return work.Condition("a conductivity can be computed", false).Done();
            yield break;
        }

        work.Given("cations", recipe.Charge.Cations.MilliequivalentsPerLitre, "meq/L", Amounts);
        var found = work.Given("conductivity", at25.MillisiemensPerCentimetre, "mS/cm", Engine);
        work.Remark("A rough check (common practice, no source): a feed has about 1 mS/cm for each 10 meq/L of cations.");
        if (RecipePlaces.Target(recipe, "EC") is { Number: > 0 and { } asked } target)
        {
            var wanted = work.Given("target", asked, "mS/cm", File);
            var allowed = target.Tolerance?.HalfWidth(asked) is { } stated
                ? work.Given("allowed, ±", stated, "mS/cm", File)
                : work.Result("allowed, ±", "target × tolerance / 100", wanted * work.Option("tolerance", "tolerance", context) / 100, "mS/cm");
            var off = work.Result("distance from the target", "|found - target|", Term.Size(found - wanted), "mS/cm");
            if (off.Value > allowed.Value || recipe.Profile.Ec is null)
            {
                yield return work.Test("further off than allowed", off, Relation.Over, allowed, "mS/cm").Done(found);
                yield break;
            }

            work.Remark("The target is met; what is left is the window of the crop.");
        }

        if (recipe.Profile.Ec is not var (low, high))
        {
            yield return work.Condition("the profile has a window", false).Done(found);
            yield break;
        }

        var over = found.Value > high || (found.Value >= low && high / found.Value < found.Value / low);
        var bound = work.Given(over ? "upper end of the window" : "lower end of the window", over ? high : low, "mS/cm", $"'{recipe.Profile.Name}' profile");
        var margin = over ? 1 + Bound.HalfOfTheThirdDigit : 1 - Bound.HalfOfTheThirdDigit;
        var edge = work.Result("with half of its third digit", $"end × {((Term)margin).Text}", bound * margin, "mS/cm");
        work.Test(over ? "over the window" : "under the window", found, over ? Relation.Over : Relation.Under, edge, "mS/cm");
        if (!over && Nutrients.LacksAMainNutrient(recipe))
        {
            work.Condition("no main nutrient is missing altogether", false);
        }

        yield return work.Done(found);
    }

    private static IEnumerable<Working> Ph(RecipeFacts recipe, RuleContext context)
    {
        var target = RecipePlaces.Target(recipe, "pH");
        var wrong = false;
        if (recipe.Profile.Ph is var (low, high))
        {
            foreach (var aim in PhOutsideWindow.Aims(recipe, target).DistinctBy(a => a.Value))
            {
                var work = new WorkingBuilder($"the pH that '{recipe.Recipe.Name}' aims at");
                var aimed = work.Given("pH aimed at", aim.Value, "", File);
                var over = aim.Value > high || (aim.Value >= low && high - aim.Value < aim.Value - low);
                var bound = work.Given(over ? "upper end of the window" : "lower end of the window", over ? high : low, "", $"'{recipe.Profile.Name}' profile");
                var done = work.Test(over ? "over the window" : "under the window", aimed, over ? Relation.Over : Relation.Under, bound).Done(aimed);
                wrong |= done.Fires;
                yield return done;
            }
        }

        if (!wrong)
        {
            yield return ReachedPh(recipe, target, context);
        }
    }

    private static Working ReachedPh(RecipeFacts recipe, Target? target, RuleContext context)
    {
        var work = new WorkingBuilder($"the pH that '{recipe.Recipe.Name}' comes to");
        if (recipe.IsComplete && recipe.Adjustment is { Amount: null, Reagent: not null, TargetPh: { } aimed, PhBefore: { } before } stuck)
        {
            var start = work.Given("pH before the reagent", before, "", Engine);
            work.Given("pH wanted", aimed, "", File);
            return work.Condition($"{stuck.Reagent.Name} cannot bring it there", true).Done(start);
        }

        if (!recipe.IsComplete || recipe.Chemistry is not { IsComplete: true, Final: { IsSolved: true, Ph: var ph } })
        {
            return work.Condition("its equilibrium can be computed", false).Done();
        }

        var found = work.Given("pH at rest with the air", ph, "", Engine);
        if (target is { Number: { } asked })
        {
            var wanted = work.Given("target", asked, "", File);
            var allowed = target.Tolerance?.HalfWidth(asked) is { } stated ? work.Given("allowed, ±", stated, "", File) : work.Option("allowed, ±", "tolerance", context);
            var off = work.Result("distance", "|found - target|", Term.Size(found - wanted));
            return work.Test("further off than allowed", off, Relation.Over, allowed).Done(found);
        }

        var above = Math.Abs(ph - context.Number("highest")) < Math.Abs(ph - context.Number("lowest"));
        work.Test(
            above ? "so high that roots are harmed" : "so low that roots are harmed",
            found,
            above ? Relation.Over : Relation.Under,
            above ? work.Option("highest pH", "highest", context) : work.Option("lowest pH", "lowest", context));
        if (above && AlkalinityNotNeutralised.Left(recipe) > 1)
        {
            work.Condition("no alkalinity is left that another rule reports", false);
        }

        return work.Done(found);
    }

    private static IEnumerable<Working> Alkalinity(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"alkalinity left in '{recipe.Recipe.Name}'");
        if (AlkalinityNotNeutralised.Left(recipe) is not { } exact)
        {
            yield return work.Condition("its equilibrium can be computed", false).Done();
            yield break;
        }

        var state = recipe.Chemistry.TankAdjusted ?? recipe.Chemistry.Tank;
        var solution = state.Solution!;
        if (recipe.Water?.Water is { Alkalinity: { } stated } water)
        {
            work.Given($"alkalinity of '{water.Name}'", (stated.Value.Low.MilliequivalentsPerLitre + stated.Value.High.MilliequivalentsPerLitre) / 2, "meq/L", "water analysis");
        }

        work.Given("pH", state.Ph, "", Engine);
        var bicarbonate = work.Given("hydrogen carbonate that is free", solution.Molality("HCO3-") * 1000, "mmol/kg", Engine);
        var carbonate = work.Given("carbonate that is free", solution.Molality("CO3-2") * 1000, "mmol/kg", Engine);
        var hydroxide = work.Given("hydroxide", solution.Molality("OH-") * 1000, "mmol/kg", Engine);
        var hydrogen = work.Given("hydrogen ions", solution.Molality("H+") * 1000, "mmol/kg", Engine);
        var free = work.Result("alkalinity of these", "HCO3- + 2 × CO3-2 + OH- - H+", bicarbonate + (2 * carbonate) + hydroxide - hydrogen, "meq/kg");
        var freeExact = 1000 * (solution.Molality("HCO3-") + (2 * solution.Molality("CO3-2")) + solution.Molality("OH-") - solution.Molality("H+"));
        var paired = work.Given("what is paired with calcium, magnesium and other metals", (exact / state.KilogramsWaterPerLitre) - freeExact, "meq/kg", Engine);
        var perLitre = work.Given("water in a litre", state.KilogramsWaterPerLitre, "kg/L", Engine);
        var left = work.Result("alkalinity left", "(free + paired) × water in a litre", (free + paired) * perLitre, "meq/L");
        work.Result("the same as CaCO3", "meq/L × 50.04", left * AlkalinityNotNeutralised.CaCO3MilligramsPerMilliequivalent, "mg/L");
        yield return work.Test("more than a feed should keep", left, Relation.Over, work.Option("limit", "residual", context), "meq/L").Done(left);
    }

    private static IEnumerable<Working> Reagent(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete || recipe.Adjustment is not { Amount: { } amount, Reagent: { } reagent } adjustment)
        {
            yield return new WorkingBuilder($"the reagent of '{recipe.Recipe.Name}'").Condition("it adjusts its pH with a reagent whose amount is known", false).Done();
            yield break;
        }

        foreach (var key in ReagentShare.Keys)
        {
            var exact = ReagentShare.MilligramsPerLitre(recipe, key);
            if (!(exact > 0))
            {
                continue;
            }

            var work = new WorkingBuilder($"{key} that {reagent.Name} brings to '{recipe.Recipe.Name}'");
            var mass = work.Given($"{reagent.Name} needed for pH {Say.Number(adjustment.TargetPh ?? 0)}", amount.Grams, "g", Engine);
            var share = work.Given($"{key} in a gram of it", exact * recipe.FinalVolume.Litres / 1000 / amount.Grams, "g/g", "formula and strength");
            var brought = work.Result($"{key} from it", "1000 × mass × share / final volume", 1000 * mass * share / work.Given("final volume", recipe.FinalVolume.Litres, "L", File), "mg/L");
            var all = work.Given($"{key} in the solution", recipe.MilligramsPerLitre(key), "mg/L", Amounts);
            if (RecipePlaces.Target(recipe, key) is not null)
            {
                work.Condition($"no target of the recipe judges {key} already", false);
            }

            if (ReagentShare.PushesOverTheRange(recipe, key))
            {
                var high = work.Given("upper end of the usual range", recipe.Profile.Find(key)!.SufficientHigh!.Value, "mg/L", "profile");
                var edge = work.Result("with half of its third digit", "end × 1.005", high * (1 + Bound.HalfOfTheThirdDigit), "mg/L");
                work.Test("over the range with the reagent", all, Relation.Over, edge, "mg/L");
                work.Test("not over it without", work.Result("without the reagent", "all - from it", all - brought, "mg/L"), Relation.AtMost, edge, "mg/L");
                yield return work.Done(all);
                continue;
            }

            var percent = work.Result("share of the reagent", "100 × from it / all", 100 * brought / all, "%");
            yield return work.Test("more than a side effect", percent, Relation.Over, work.Option("limit", "share", context), "%").Done(percent);
        }
    }

    private static IEnumerable<Working> Water(WaterDocument water, RuleContext context)
    {
        foreach (var limit in WaterLimits.All.GroupBy(l => l.Key).SelectMany(g => g.Where(l => WaterLimits.Value(water, l) is { } v && v.Found > l.Value).Take(1).DefaultIfEmpty(g.Last())))
        {
            if (limit is null || WaterLimits.Value(water, limit) is not var (found, _))
            {
                continue;
            }

            var work = new WorkingBuilder($"{limit.Name} of '{water.Name}'");
            Term value;
            if (limit.Unit == "meq/L")
            {
                var weight = AtomicWeights.Of(new Element(limit.Key));
                value = work.Result($"{limit.Name} by charge", $"mg/L / {((Term)weight).Text}", work.Given($"{limit.Name}, highest of the year", found * weight, "mg/L", File) / weight, "meq/L");
            }
            else if (limit.Key == "hardness")
            {
                value = work.Result("as CaCO3", "meq/L × 50.04", work.Given("hardness, highest of the year", found / WaterLimits.CaCO3PerMilliequivalent, "meq/L", File) * WaterLimits.CaCO3PerMilliequivalent, "mg/L");
            }
            else
            {
                value = work.Given($"{limit.Name}, highest of the year", found, limit.Unit, File);
            }

            yield return work.Test("over the limit", value, Relation.Over, work.Given("limit", limit.Value, limit.Unit, limit.Source.TrimEnd(',')), limit.Unit).Done(value);
        }
    }

    private static IEnumerable<Working> Contaminants(WorkingSubject subject, RuleContext context)
    {
        var files = subject.Facts.Workspace.SubstanceFiles.Where(f => f.Substances.Any(s => ContaminantLoad.Declared(s.Substance, f.File).Any())).ToList();
        foreach (var (file, entry) in files.Where(f => f.File == subject.File).SelectMany(f => f.Substances.Select(s => (f.File, s))))
        {
            foreach (var (limit, per) in ContaminantLimits.For(entry.Substance))
            {
                if (ContaminantLoad.Declared(entry.Substance, file).FirstOrDefault(i => i.Element.Symbol == limit.Element) is not { } impurity)
                {
                    continue;
                }

                var work = new WorkingBuilder($"{limit.Element} in '{entry.Substance.Name}'");
                var content = work.Given($"{limit.Element} declared", impurity.Content.Value.Value * 1e6, "mg/kg", File);
                var counted = work.Given($"a kg of it counts as, {limit.Per}", per, "kg/kg", "formula or label");
                var found = work.Result($"per {limit.Per}", "declared / counted", content / counted, "mg");
                yield return work.Test("over the limit for fertilisers", found, Relation.Over, work.Given("limit", limit.Milligrams, "mg", "ordinance"), "mg").Done(found);
            }
        }

        var declaring = files.Select(f => f.File).ToHashSet(StringComparer.Ordinal);
        foreach (var recipe in subject.Recipes.Where(_ => declaring.Count > 0))
        {
            foreach (var limit in ContaminantLimits.InWater)
            {
                if (Load(recipe, limit, declaring) is { } working)
                {
                    yield return working;
                }
            }
        }
    }

    private static Working? Load(RecipeFacts recipe, ContaminantLimit limit, HashSet<string> files)
    {
        var work = new WorkingBuilder($"{limit.Element} from declared impurities in '{recipe.Recipe.Name}'");
        var parts = new List<Term>();
        foreach (var (addition, part) in recipe.Doses.SelectMany(ContaminantLoad.Additions))
        {
            var content = addition.Substance.Impurities.Where(i => i.Element.Symbol == limit.Element && files.Any(f => ContaminantLoad.IsDeclared(i, f))).Select(i => i.Content.Value.Value).DefaultIfEmpty().Max();
            if (content > 0)
            {
                var mass = work.Given($"{addition.Substance.Name} that reaches the tank", addition.Mass.Grams * part, "g", Amounts);
                parts.Add(work.Result($"{limit.Element} with it", "mass × mg/kg / 1000", mass * work.Given($"{limit.Element} declared for it", content * 1e6, "mg/kg", "substances file") / 1000, "mg"));
            }
        }

        if (parts.Count == 0)
        {
            return null;
        }

        var sum = parts.Count == 1 ? parts[0] : work.Result($"{limit.Element} in all", "sum", Term.Sum(parts), "mg");
        var found = work.Result($"{limit.Element} in the solution", "sum / final volume", sum / work.Given("final volume", recipe.FinalVolume.Litres, "L", File), "mg/L");
        work.Test("over the limit for irrigation water", found, Relation.Over, work.Given("limit", limit.Milligrams, "mg/L", "FAO paper 29"), "mg/L");
        return (recipe.IsComplete ? work : work.Condition("the recipe could be read whole", false)).Done(found);
    }
}
