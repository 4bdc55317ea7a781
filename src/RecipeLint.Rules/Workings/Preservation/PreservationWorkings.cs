using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Preservation;

namespace RecipeLint.Rules.Workings.Preservation;

/// <summary>The workings of the preservation family.</summary>
internal static class PreservationWorkings
{
    private const string File = "file", Engine = "engine", Amounts = "amounts in the file";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnStocks("carbon-without-preservative", Carbon),
        RuleWorkings.OnStocks("preservative-too-weak", TooWeak),
        RuleWorkings.OnStocks("preservative-too-strong", TooStrong),
        RuleWorkings.OnStocks("preservative-with-oxidiser", Oxidiser),
        RuleWorkings.OnStocks("no-acid-in-trace-stock", NoAcid),
        RuleWorkings.OnStocks("stock-ph-outside-range", StockPh),
        RuleWorkings.OnStocks("weak-acid-volatile", Volatile),
        RuleWorkings.OnStocks("shelf-life-too-long", ShelfLife),
    ];

    private static IEnumerable<Working> Carbon(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"food for microbes in '{stock.Stock.Name}'");
        var food = MicrobialFood.In(stock);
        var parts = new List<Term>();
        var volume = work.Given("the batch", stock.Volume.Litres, "L", File);
        foreach (var (addition, _) in food)
        {
            var mass = work.Given(addition.Substance.Name, addition.Mass.Grams, "g", File);
            var strength = work.Given("its strength", addition.Substance.Strength.Value, "g/g", "catalogue");
            parts.Add(work.Result("of it in a litre", "weight × strength / batch", mass * strength / volume, "g/L"));
        }

        if (parts.Count == 0)
        {
            yield return work.Condition("something in it feeds microbes", false).Done();
            yield break;
        }

        var total = parts.Count == 1 ? parts[0] : work.Result("organic matter", "sum", Term.Sum(parts), "g/L");
        work.Test("enough to live on", total, Relation.AtLeast, work.Option("least", "minimumFood", context), "g/L");
        KeptLongerThan(work, stock, context);
        work.Condition("no preservative is in it", !stock.Additions.Any(a => a.Substance.IsPreservative && a.Mass.Grams > 0));
        if (CarbonWithoutPreservative.KeepsItself(stock, context))
        {
            var pH = work.Given("its pH", stock.Chemistry.Mixing.Ph, "", Engine);
            work.Remark($"Below pH {Say.Number(context.Number("safeBelowPh"))}, in very strong salt or vinegar, or beside much free copper nothing grows (pH here {pH.Text}).");
            work.Condition("it does not keep itself by acid, salt, vinegar or copper", false);
        }

        yield return work.Done(total);
    }

    private static void KeptLongerThan(WorkingBuilder work, StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Keep?.For is { } shelf)
        {
            work.Test("kept longer than fresh", work.Given("kept for", shelf.Value.Days, "days", File), Relation.Over, work.Option("fresh", "freshDays", context), "days");
        }
        else
        {
            work.Remark("The file does not say how long it is kept: it is taken as kept.");
        }
    }

    private static IEnumerable<Working> TooWeak(StockFacts stock, RuleContext context)
    {
        var state = stock.Chemistry.Mixing;
        var work = new WorkingBuilder($"undissociated preservative in '{stock.Stock.Name}'");
        if (!stock.Additions.Any(a => a.Substance.IsPreservative && a.Mass.Grams > 0) || !stock.IsComplete || !state.IsSolved)
        {
            yield return work.Condition("a preservative is in it, and its equilibrium can be computed", false).Done();
            yield break;
        }

        var pH = work.Given("pH of the stock", state.Ph, "", Engine);
        work.Test("not so acid that it keeps itself", pH, Relation.Over, work.Option("safe below pH", "safeBelowPh", context));
        KeptLongerThan(work, stock, context);
        var strengths = new List<Term>();
        foreach (var acid in PreservativeAcids.In(stock, state, name => context.Number(PreservativeTooWeak.OptionOf(name))))
        {
            var total = work.Given($"{acid.Name}, with its salt counted as acid", acid.TotalMilligramsPerLitre, "mg/L", Amounts);
            var pKa = work.Given("pH at which half of it is whole in this stock (its pKa, shifted by the salts)", acid.ApparentPk, "", Engine);
            var whole = work.Result($"undissociated {acid.Name}", "total / (1 + 10^(pH - pKa))", total / (1 + Term.TenTo(pH - pKa)), "mg/L");
            var least = work.Option("least that works", PreservativeTooWeak.OptionOf(acid.Name), context);
            strengths.Add(work.Result("of the least that works", "undissociated / least", whole / least));
        }

        if (strengths.Count == 0)
        {
            yield return work.Condition("its acid is one whose share can be told", false).Done();
            yield break;
        }

        var strength = strengths.Count == 1 ? strengths[0] : work.Result("all together", "sum", Term.Sum(strengths));
        yield return work.Test("less than works", strength, Relation.Under, 1).Done(strength);
    }

    private static IEnumerable<Working> TooStrong(StockFacts stock, RuleContext context)
    {
        if (!stock.Additions.Any(a => a.Substance.IsPreservative && a.Mass.Grams > 0))
        {
            yield return new WorkingBuilder($"preservative in '{stock.Stock.Name}'").Condition("a preservative is in it", false).Done();
            yield break;
        }

        var work = new WorkingBuilder($"preservative that '{stock.Stock.Name}' carries to the plants");
        var parts = PreservativeWithOxidiser.Preservatives.Where(p => stock.Concentration(p).MolesPerLitre > 0)
            .Select(p => work.Given(p.Replace("inert:", "", StringComparison.Ordinal), 1000 * stock.Concentration(p).MolesPerLitre, "mmol/L", Amounts)).ToList();
        var total = parts.Count switch { 0 => work.Given("preservative", 0, "mmol/L", Amounts), 1 => parts[0], _ => work.Result("together", "sum", Term.Sum(parts), "mmol/L") };
        var doses = context.Facts.Recipes.SelectMany(r => r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Select(d => d.Volume / r.FinalVolume)).ToList();
        var dose = work.Given("highest dose", 1000 * (doses.Count > 0 ? doses.Max() : stock.Stock.Dose?.Value.LitresPerLitre ?? 0), "mL/L", doses.Count > 0 ? "recipe" : File);
        var carried = work.Result("in the feed", "mmol/L × mL/L", total * dose, "µmol/L");
        yield return work.Test("more than plants should get", carried, Relation.Over, work.Option("limit", "mostCarriedOver", context), "µmol/L").Done(carried);

        var coldest = stock.Chemistry.Coldest;
        if (!stock.IsComplete || !coldest.IsSolved || coldest.Preservatives.Count == 0)
        {
            yield break;
        }

        foreach (var acid in coldest.Preservatives.OrderByDescending(p => PreservativeTooStrong.IndexOf(p, coldest)).Take(1))
        {
            var near = new WorkingBuilder($"{acid.Acid} of '{stock.Stock.Name}' at {Say.Number(coldest.Temperature.Celsius)} °C, the coldest it is kept at");
            var index = near.Given("saturation index of the solid acid", acid.Index, "", Engine);
            if (acid.Component == "Benzoate-")
            {
                var strength = near.Given("ionic strength", coldest.IonicStrengthMolPerKg, "mol/kg", Engine);
                index = near.Result("with what the salts push out (0.16 kg/mol)", "index + 0.16 × ionic strength", index + (PreservativeTooStrong.SaltingOut * strength));
            }

            var used = near.Result("of what stays dissolved", "100 × 10^index", 100 * Term.TenTo(index), "%");
            near.Test("near the limit", used, Relation.Over, near.Option("limit", "closeTo", context), "%");
            if (acid.Index > 0)
            {
                near.Condition("it does not crystallise by the constants (the rules on deposits speak of that)", false);
            }

            yield return near.Done(used);
        }
    }

    private static IEnumerable<Working> Oxidiser(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"preservative beside an oxidiser in '{stock.Stock.Name}'");
        var (component, name) = PreservativeWithOxidiser.Oxidisers.MaxBy(o => stock.Concentration(o.Component).MolesPerLitre);
        var oxidiser = work.Given(name, 1000 * stock.Concentration(component).MolesPerLitre, "mmol/L", Amounts);
        var preservative = work.Given("preservative", 1000 * PreservativeWithOxidiser.Preservatives.Sum(p => stock.Concentration(p).MolesPerLitre), "mmol/L", Amounts);
        if (oxidiser.Value <= 0 || preservative.Value <= 0)
        {
            yield return work.Condition("both are in it", false).Done();
            yield break;
        }

        var ratio = work.Result("oxidiser for each preservative", "oxidiser / preservative", oxidiser / preservative);
        yield return work.Test("enough to use it up", ratio, Relation.Over, work.Option("limit", "mostOxidiser", context)).Done(ratio);
    }

    private static IEnumerable<Working> NoAcid(StockFacts stock, RuleContext context)
    {
        SolutionState[] states = [stock.Chemistry.Mixing, stock.Chemistry.Coldest, stock.Chemistry.Warmest];
        var work = new WorkingBuilder($"metal hydroxides in '{stock.Stock.Name}'");
        if (!stock.IsComplete || states.Any(s => !s.IsSolved))
        {
            yield return work.Condition("its equilibrium can be computed", false).Done();
            yield break;
        }

        var free = work.Given(
            "most of a trace metal that no chelate holds",
            stock.Chemistry.Mixing.Metals.Where(m => m.Metal is "Zn+2" or "Cu+2" or "Mn+2" or "Co+2" or "Ni+2").Select(m => m.Unchelated.MolesPerLitre).DefaultIfEmpty().Max(),
            "mol/L",
            Engine);
        work.Test("as much as a concentrate holds", free, Relation.AtLeast, NoAcidInTraceStock.Concentrate, "mol/L");
        if (states.Any(s => s.Deposits.Any(d => NoAcidInTraceStock.MetalOf(d.Solid) is not null)))
        {
            yield return work.Condition("no hydroxide falls out as it is made (the rules on deposits speak of that)", false).Done();
            yield break;
        }

        var (solid, used, state) = states.SelectMany(s => NoAcidInTraceStock.Hydroxides.Value.Select(h => (Solid: h, Used: NoAcidInTraceStock.UsedShare(s, h), State: s))).MaxBy(h => h.Used);
        if (NoAcidInTraceStock.MetalOf(solid) is not { } metal || state.Index(solid.Name) is null)
        {
            yield return work.Condition("it holds a metal of which the hydroxide is known", false).Done();
            yield break;
        }

        var (_, index) = Precipitation.Saturation.Write(work, state.Clear!, solid);
        var count = Settled.CountOf(solid, metal.Component);
        var share = work.Result($"{metal.Name} there against {metal.Name} that would be saturated", $"100 × 10^(index / {((Term)count).Text})", 100 * Term.TenTo(index / count), "%");
        var open = NoAcidInTraceStock.OpenWater(stock);
        if (Rounding.SixDigits(used * 100) > context.Number("closeTo") || open <= 0)
        {
            yield return work.Test("at the edge", share, Relation.Over, work.Option("limit", "closeTo", context), "%").Done(share);
            yield break;
        }

        work.Remark("Clear as it stands. The file does not say which water it is made with; with ordinary tap water:");
        var litres = work.Given("water whose kind is open", open, "L", File);
        var alkalinity = work.Option("alkalinity of ordinary water", "ordinaryAlkalinity", context);
        work.Result("alkalinity it brings", "litres × meq/L", litres * alkalinity, "meq");
        var settled = Settled.Of(SolutionMix.Of(NoAcidInTraceStock.WithAlkalinity(stock, context.Number("ordinaryAlkalinity") / 1000 * open), stock.Volume), SolutionMix.FilledAtCelsius);
        var (loser, lost) = settled is null ? (metal, 0) : NoAcidInTraceStock.Lost(settled);
        var percent = work.Given($"{loser.Name} that falls out then", 100 * lost, "%", Engine);
        yield return work.Test("more than a stock should lose", percent, Relation.Over, work.Option("limit", "mostLost", context), "%").Done(percent);
    }

    private static IEnumerable<Working> StockPh(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"pH of '{stock.Stock.Name}'");
        if (!stock.IsComplete || !stock.Chemistry.Mixing.IsSolved)
        {
            yield return work.Condition("its equilibrium can be computed", false).Done();
            yield break;
        }

        var step = stock.Stock.Steps.OfType<AdjustStep>().LastOrDefault(s => s.TargetPh is not null);
        if (step?.TargetPh is { } target && stock.Adjustments.LastOrDefault(a => !a.ThroughAliquot && a.Id == step.Id) is { Amount: not null })
        {
            var set = work.Given("pH its steps set", target.Value, "", File);
            var comes = work.Given("pH of the finished stock", stock.Chemistry.Mixing.PhBeforeDeposit, "", Engine);
            var drift = work.Result("distance", "|finished - set|", Term.Size(comes - set));
            var allowed = Math.Max(step.PhTolerance ?? 0, context.Number("mostDrift"));
            var limit = work.Given("allowed", allowed, "", allowed == context.Number("mostDrift") ? "option 'mostDrift'" : File);
            if (drift.Value > allowed)
            {
                yield return work.Test("it has moved", drift, Relation.Over, limit).Done(drift);
                yield break;
            }
        }

        var pH = work.Given("pH", stock.Chemistry.Mixing.Ph, "", Engine);
        var (lowest, highest) = (context.Number("lowest"), context.Number("highest"));
        var high = pH.Value - lowest > highest - pH.Value;
        work.Test(
            high ? "over what mixed stocks keep at" : "under what mixed stocks keep at",
            pH,
            high ? Relation.Over : Relation.Under,
            high ? work.Option("highest", "highest", context) : work.Option("lowest", "lowest", context));
        var nutrients = stock.Additions.Where(a => a.Mass.Grams > 0 && a.Substance.Kind is not (SubstanceKind.Acid or SubstanceKind.Base)).ToList();
        if (nutrients.Count == 0 || nutrients.Any(a => a.Substance.Kind is SubstanceKind.Silicate or SubstanceKind.Oxidiser))
        {
            work.Condition("it is a mixed stock, and none that is meant to be strongly acid or alkaline", false);
        }
        else if (high && Iron.ChelatorMoles(stock.ComponentMoles) > 0 && Iron.Moles(stock.ComponentMoles) > 0)
        {
            work.Condition("it holds no iron chelate (chelate-outside-its-ph speaks of those)", false);
        }

        yield return work.Done(pH);
    }

    private static IEnumerable<Working> Volatile(StockFacts stock, RuleContext context)
    {
        const string acetate = "Acetate-";
        var work = new WorkingBuilder($"the vinegar of '{stock.Stock.Name}'");
        var state = stock.Chemistry.Mixing;
        var acids = stock.Additions.Where(a => a.Substance.Kind == SubstanceKind.Acid && a.ComponentMoles.GetValueOrDefault(acetate) > 0).ToList();
        if (acids.Count == 0 || !stock.IsComplete || !state.IsSolved)
        {
            yield return work.Condition("acetic acid is in it, and its equilibrium can be computed", false).Done();
            yield break;
        }

        KeptLongerThan(work, stock, context);
        var vinegar = acids.Sum(a => a.ComponentMoles[acetate]);
        var there = work.Given("acetic acid in the batch", vinegar, "mol", Amounts);
        work.Given("pH now", state.Ph, "", Engine);
        if (WeakAcidVolatile.Harm(stock, vinegar, 0) is not { What: null } || WeakAcidVolatile.Harm(stock, vinegar, 1) is not { What: not null })
        {
            yield return work.Condition("it stays clear with the vinegar and not without it", false).Done();
            yield break;
        }

        var (lost, harm) = WeakAcidVolatile.First(stock, vinegar);
        var gone = work.Given("acetic acid whose loss does harm", lost * vinegar, "mol", Engine);
        var percent = work.Result("of it", "100 × lost / there", 100 * gone / there, "%");
        if (harm is not null)
        {
            work.Given("pH then", harm.Ph, "", Engine);
        }

        yield return work.Test("so little that it can evaporate", percent, Relation.AtMost, work.Option("limit", "mostLost", context), "%").Done(percent);
    }

    private static IEnumerable<Working> ShelfLife(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"how long '{stock.Stock.Name}' lasts");
        var bleach = stock.Concentration("inert:ClO-1").MolesPerLitre;
        var peroxide = stock.Concentration("inert:H2O2").MolesPerLitre;
        if (stock.Stock.Keep?.For is not { Value.Days: > 0 } shelf || (bleach <= 0 && peroxide <= 0))
        {
            yield return work.Condition("it holds bleach or peroxide and says how long it is kept", false).Done();
            yield break;
        }

        var days = work.Given("kept for", shelf.Value.Days, "days", File);
        Term left;
        if (bleach > 0)
        {
            var moles = work.Given("hypochlorite", bleach, "mol/L", Amounts);
            var percent = work.Result("as sodium hypochlorite", "mol/L × 74.44 / 10", moles * ShelfLifeTooLong.SodiumHypochlorite / 10, "% w/v");
            var celsius = work.Result(
                "middle of the storage temperatures", "(coldest + warmest) / 2",
                (work.Given("coldest", stock.StorageTemperature.Low.Celsius, "°C", File) + work.Given("warmest", stock.StorageTemperature.High.Celsius, "°C", File)) / 2, "°C");
            var rate = work.Result(
                "decay", "strength / (15 × 144) × 3.5^((temperature - 25) / 10)", percent / (15 * (Term)144) * Term.Power(ShelfLifeTooLong.BleachTenDegrees, (celsius - 25) / 10), "per day");
            left = work.Result("left at the end", "100 / (1 + decay × days)", 100 / (1 + (rate * days)), "%");
        }
        else
        {
            var metal = stock.Chemistry.Mixing.Metals.Where(m => ShelfLifeTooLong.Catalysts.Contains(m.Metal)).Select(m => m.Unchelated.MolesPerLitre).DefaultIfEmpty().Max();
            var free = work.Given("iron, copper or manganese that no chelate holds", metal, "mol/L", Engine);
            work.Test("enough to break peroxide down", free, Relation.AtLeast, ShelfLifeTooLong.Catalyses, "mol/L");
            left = work.Result("left at the end", "100 × 0.5^(days / half-life)", 100 * Term.Power(0.5, days / work.Option("half-life beside metals", "catalysedHalfLife", context)), "%");
        }

        yield return work.Test("less than it is dosed for", left, Relation.Under, work.Option("least", "leastLeft", context), "%").Done(left);
    }
}
