using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.People;

namespace RecipeLint.Rules.Workings;

/// <summary>The workings of the family that protects people.</summary>
internal static class PeopleWorkings
{
    private const string File = "file", Amounts = "amounts in the file", Strength = "file and strength";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnStocks("water-onto-acid", WaterOnto),
        RuleWorkings.OnStocks("nitric-with-organic", Nitric),
        RuleWorkings.OnStocks("hypochlorite-with-acid", (s, c) => Chlorine(s, Reactants.Acids(s).Any(), "an acid goes in too", c)),
        RuleWorkings.OnStocks("hypochlorite-with-ammonium", (s, c) =>
            Chlorine(s, s.Additions.Any(a => HypochloriteWithAmmonium.Nitrogen.Any(n => Reactants.Brings(a, n))), "ammonium, urea or glycine goes in too", c)),
        RuleWorkings.OnStocks("oxidiser-with-organic", Oxidiser),
        RuleWorkings.OnStocks("hazardous-substance-without-caution", Hazards),
        RuleWorkings.OnStocks("reprotoxic-notice", (s, c) => [Statement(new MixtureHazards(s), s, "H360", [("H360", 1)], work => work.Option("limit", "from", c), c, benchOnly: false)]),
        RuleWorkings.OnStocks("aquatic-hazard-notice", Aquatic),
        RuleWorkings.OnStocks("concentrate-to-drain", Drain),
    ];

    private static IEnumerable<Working> WaterOnto(StockFacts stock, RuleContext context)
    {
        var any = false;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.BringsWater))
        {
            foreach (var (acid, option) in WaterOntoAcid.Acids)
            {
                var acids = moment.Before.Additions.Where(a => !a.ThroughAliquot && Reactants.IsLiquidAcid(a.Substance, acid)).ToList();
                var poured = moment.After.FreeWaterGrams - moment.Before.FreeWaterGrams;
                if (acids.Count == 0 || poured <= 0)
                {
                    continue;
                }

                any = true;
                var work = new WorkingBuilder($"the acid in the vessel when step '{moment.Step.Id}' pours water onto it");
                var pure = work.Given($"{acids[^1].Substance.Name}, counted as pure acid", acids.Sum(VesselContents.PureGrams), "g", Strength);
                var water = work.Given("water already in the vessel, that of the acid included", moment.Before.FreeWaterGrams, "g", File);
                var strength = work.Result("strength it still has", "100 × acid / (acid + water)", 100 * pure / (pure + water), "%");
                var done = work.Test("strong enough to boil or burn", strength, Relation.AtLeast, work.Option("limit", option, context), "%").Done(strength);
                yield return done;
                if (done.Fires)
                {
                    yield break;
                }
            }
        }

        if (!any)
        {
            yield return new WorkingBuilder($"the order of '{stock.Stock.Name}'").Condition("water is poured after a liquid acid", false).Done();
        }
    }

    private static IEnumerable<Working> Nitric(StockFacts stock, RuleContext context)
    {
        var any = false;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0))
        {
            if (!moment.After.Additions.Any(a => Reactants.IsNitricAcid(a.Substance)) || !moment.After.Additions.Any(a => Reactants.IsOrganic(a.Substance)))
            {
                continue;
            }

            any = true;
            var work = new WorkingBuilder($"nitric acid and organic matter at step '{moment.Step.Id}'");
            var alone = moment.Added.Count == 1 ? moment.Added[0] : null;
            var strength = Meeting(work, moment, alone, Reactants.IsNitricAcid, Reactants.IsOrganic, context.Number("organicFrom"), "nitric acid");
            var done = work.Test("so strong that it oxidises", strength, Relation.AtLeast, work.Option("limit", "nitricFrom", context), "%").Done(strength);
            yield return done;
            if (done.Fires)
            {
                yield break;
            }
        }

        if (!any)
        {
            yield return new WorkingBuilder($"'{stock.Stock.Name}'").Condition("nitric acid and organic matter come into one vessel", false).Done();
        }
    }

    /// <summary>The strength an oxidiser has where it meets its partner: as poured, as it stands, or mixed through.</summary>
    private static Term Meeting(
        WorkingBuilder work, MixingStep moment, AdditionFacts? poured, Func<Substance, bool> oxidises, Func<Substance, bool> burns, double partnerFrom, string name)
    {
        var partnerBefore = 100 * Reactants.Share(moment.Before, burns);
        if (poured is not null && oxidises(poured.Substance) && Rounding.SixDigits(partnerBefore) >= partnerFrom)
        {
            work.Given("organic matter in the vessel before", partnerBefore, "%", Amounts);
            var pure = work.Given($"{name} in what is poured", VesselContents.PureGrams(poured), "g", Strength);
            return work.Result("strength where the stream enters", "100 × pure / poured", 100 * pure / work.Given("poured", poured.Mass.Grams, "g", File), "%");
        }

        if (poured is not null && burns(poured.Substance) && !oxidises(poured.Substance) && 100 * VesselContents.PureGrams(poured) / poured.Mass.Grams >= partnerFrom && Reactants.Share(moment.Before, oxidises) > 0)
        {
            var there = Whole(work, moment.Before, oxidises, $"{name} in the vessel before");
            var after = 100 * Reactants.Share(moment.After, oxidises);
            return there.Value >= after ? there : Whole(work, moment.After, oxidises, $"{name} in the vessel");
        }

        return Whole(work, moment.After, oxidises, $"{name} in the vessel");
    }

    private static Term Whole(WorkingBuilder work, VesselContents contents, Func<Substance, bool> fits, string what)
    {
        var pure = work.Given($"{what}, pure", contents.Additions.Where(a => fits(a.Substance)).Sum(VesselContents.PureGrams), "g", Strength);
        return work.Result("its strength there", "100 × pure / everything in the vessel", 100 * pure / work.Given("everything in the vessel", contents.Grams, "g", File), "%");
    }

    private static IEnumerable<Working> Chlorine(StockFacts stock, bool partner, string condition, RuleContext context)
    {
        var work = new WorkingBuilder($"chlorine that the bleach of '{stock.Stock.Name}' can set free");
        var moles = work.Given("hypochlorite in the batch", stock.Additions.Sum(a => a.ComponentMoles.GetValueOrDefault(Reactants.Hypochlorite)), "mol", Amounts);
        var volume = work.Given("the batch", stock.Volume.Litres, "L", File);
        var chlorine = work.Result("available chlorine", "1000 × mol × 70.9 / batch", 1000 * moles * Reactants.ChlorineGramsPerMole / volume, "mg/L");
        work.Condition(condition, partner);
        work.Condition("bleach goes in", moles.Value > 0);
        yield return work.Test("enough to harm", chlorine, Relation.AtLeast, work.Option("limit", "chlorineFrom", context), "mg/L").Done(chlorine);
    }

    private static IEnumerable<Working> Oxidiser(StockFacts stock, RuleContext context)
    {
        var any = false;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0 && m.Added.All(a => !a.ThroughAliquot)))
        {
            foreach (var (component, name, option) in new[] { (Reactants.Peroxide, "hydrogen peroxide", "peroxideFrom"), (Reactants.Hypochlorite, "hypochlorite", "hypochloriteFrom") })
            {
                bool Oxidises(Substance s) => s.Form == PhysicalForm.Liquid && s.Dissolves.Any(d => d.Component == component && d.MolesPerGram > 0);
                bool Burns(Substance s) => Reactants.IsOrganic(s) && (component != Reactants.Hypochlorite || s.Kind != SubstanceKind.Acid);
                if (!moment.After.Additions.Any(a => Oxidises(a.Substance)) || !moment.After.Additions.Any(a => Burns(a.Substance)))
                {
                    continue;
                }

                any = true;
                var work = new WorkingBuilder($"{name} and organic matter at step '{moment.Step.Id}'");
                var strength = Meeting(work, moment, moment.Added[^1], Oxidises, Burns, context.Number("organicFrom"), name);
                var done = work.Test("so strong that it reacts", strength, Relation.AtLeast, work.Option("limit", option, context), "%").Done(strength);
                yield return done;
                if (done.Fires)
                {
                    yield break;
                }
            }

            var salts = moment.After.Additions.Where(a => a.Substance.Hazards?.Statements.Contains("H272") == true).ToList();
            var fuels = moment.After.Additions.Where(a => a.Substance.FeedsMicrobes || a.Substance.Kind == SubstanceKind.Organic).ToList();
            if (moment.After.FreeWaterGrams <= 0 && salts.Count > 0 && fuels.Count > 0)
            {
                any = true;
                var work = new WorkingBuilder($"a dry oxidiser and organic matter at step '{moment.Step.Id}'");
                var fuel = work.Given("organic matter", fuels.Sum(f => f.Mass.Grams), "g", File);
                var salt = work.Given("oxidising salts", salts.Sum(f => f.Mass.Grams), "g", File);
                var share = work.Result("organic matter in the mixture", "100 × organic / (organic + salts)", 100 * fuel / (fuel + salt), "%");
                var done = work.Test("so much that it can burn", share, Relation.Over, work.Option("limit", "combustibleFrom", context), "%").Done(share);
                yield return done;
                if (done.Fires)
                {
                    yield break;
                }
            }
        }

        if (!any)
        {
            yield return new WorkingBuilder($"'{stock.Stock.Name}'").Condition("an oxidiser and organic matter come into one vessel", false).Done();
        }
    }

    private static IEnumerable<Working> Hazards(StockFacts stock, RuleContext context)
    {
        var mixture = new MixtureHazards(stock);
        var worst = mixture.Health();
        foreach (var (code, _, limit, sum) in MixtureHazards.HealthTable.Where(row => worst.Count == 0 ? row.Sum.Any(s => mixture.Bringing(s.From).Count > 0) : row.Code == worst[0].Code))
        {
            yield return Statement(mixture, stock, code, sum, work => work.Given("limit for a mixture", limit, "%", "CLP Annex I"), context, benchOnly: true);
        }

        if (worst.Count == 0 && !MixtureHazards.HealthTable.Any(row => row.Sum.Any(s => mixture.Bringing(s.From).Count > 0)))
        {
            yield return new WorkingBuilder($"'{stock.Stock.Name}'").Condition("it holds a substance with a hazard to health", false).Done();
        }
    }

    /// <summary>The weighted share by mass that decides whether a mixture carries a statement.</summary>
    private static Working Statement(
        MixtureHazards mixture, StockFacts stock, string code, (string From, double Weight)[] sum, Func<WorkingBuilder, Term> limit, RuleContext context, bool benchOnly)
    {
        var work = new WorkingBuilder($"{code} for '{stock.Stock.Name}'");
        var parts = Shares(work, mixture, sum.Select(s => (mixture.Bringing(s.From), s.Weight)));
        if (parts.Count == 0)
        {
            return work.Condition($"it holds a substance that carries {code}", false).Done();
        }

        var percent = parts.Count == 1 ? parts[0] : work.Result("together", "sum", Term.Sum(parts), "%");
        work.Test("enough to carry the statement", percent, Relation.AtLeast, limit(work), "%");
        return Labelled(work, stock, context, benchOnly).Done(percent);
    }

    private static List<Term> Shares(WorkingBuilder work, MixtureHazards mixture, IEnumerable<(List<AdditionFacts> Additions, double Weight)> groups)
    {
        var parts = new List<Term>();
        var grams = work.Given("mass of the finished stock", mixture.Grams, "g", "volume model");
        foreach (var (addition, weight) in groups.SelectMany(g => g.Additions.Select(a => (a, g.Weight))))
        {
            var mass = work.Given(addition.Substance.Name, mixture.Percent(addition) * mixture.Grams / 100, "g", Strength);
            parts.Add(weight == 1
                ? work.Result("of the stock", "100 × mass / stock", 100 * mass / grams, "%")
                : work.Result($"of the stock, weighted {((Term)weight).Text}", "weight × 100 × mass / stock", weight * (Term)100 * mass / grams, "%"));
        }

        return parts;
    }

    private static WorkingBuilder Labelled(WorkingBuilder work, StockFacts stock, RuleContext context, bool benchOnly)
    {
        if (benchOnly)
        {
            work.Condition("it is marked for the bench", stock.Stock.ForBench);
        }

        if (stock.Stock.Label is { Hazard: true })
        {
            work.Condition("its label does not name the hazard yet", false);
        }

        return Reactants.AmountsAreMeant(stock, context) ? work : work.Condition("its amounts are meant (implausible-amount speaks first)", false);
    }

    private static IEnumerable<Working> Drain(StockFacts stock, RuleContext context)
    {
        foreach (var (name, grams, _, _) in ConcentrateToDrain.Loads(stock, context).OrderByDescending(l => l.Times).Take(1))
        {
            var work = new WorkingBuilder($"{name} of '{stock.Stock.Name}' against treated waste water");
            var held = work.Given($"{name} in the stock", grams, "g/L", Amounts);
            var limit = work.Option("treated waste water may carry", name, context);
            var times = work.Result("times as much", "1000 × g/L / mg/L", 1000 * held / limit);
            work.Test("a strong concentrate", times, Relation.AtLeast, work.Option("from", "from", context));
            work.Condition("it is marked for the bench", stock.Stock.ForBench);
            work.Condition("its label does not say what becomes of left-overs", stock.Stock.Label is not { Disposal: true });
            if (ConcentrateToDrain.NoticedAlready(stock, context))
            {
                work.Condition("aquatic-hazard-notice does not say the same already", false);
            }

            yield return (Reactants.AmountsAreMeant(stock, context) ? work : work.Condition("its amounts are meant (implausible-amount speaks first)", false)).Done(times);
        }
    }

    private static IEnumerable<Working> Aquatic(StockFacts stock, RuleContext context)
    {
        var mixture = new MixtureHazards(stock);
        var veryToxic = mixture.Bringing("H410");
        var toxic = mixture.Bringing("H411").Except(veryToxic).ToList();
        var work = new WorkingBuilder($"hazard of '{stock.Stock.Name}' to water life");
        if (veryToxic.Count + toxic.Count == 0)
        {
            yield return work.Condition("it holds a substance that is toxic to water life", false).Done();
            yield break;
        }

        var limit = context.Number("from");
        var first = Shares(work, mixture, veryToxic.Select(a => (new List<AdditionFacts> { a }, MixtureHazards.Factor(a))));
        Term? weighted = first.Count switch { 0 => null, 1 => first[0], _ => work.Result("very toxic, with their factors", "sum", Term.Sum(first), "%") };
        if (weighted is not null && (weighted.Value >= limit || toxic.Count == 0 && 10 * weighted.Value < limit))
        {
            var value = weighted.Value >= limit ? weighted : work.Result("counted ten times as toxic", "10 × very toxic", 10 * weighted, "%");
            work.Test("enough to carry the statement", value, Relation.AtLeast, work.Option("limit", "from", context), "%");
            yield return Labelled(work, stock, context, benchOnly: false).Done(value);
            yield break;
        }

        var second = toxic.Count == 0 ? [] : Shares(work, mixture, toxic.Select(a => (new List<AdditionFacts> { a }, 1.0)));
        var terms = second.ToList();
        if (weighted is not null)
        {
            terms.Insert(0, 10 * weighted);
        }

        var chronic = terms.Count == 1 && weighted is null ? terms[0] : work.Result("toxic with lasting effects", "10 × very toxic + toxic", Term.Sum(terms), "%");
        work.Test("enough to carry the statement", chronic, Relation.AtLeast, work.Option("limit", "from", context), "%");
        yield return Labelled(work, stock, context, benchOnly: false).Done(chronic);
    }
}
