using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;
using RecipeLint.Rules.Procedure;

namespace RecipeLint.Rules.Workings.Procedure;

/// <summary>The workings of the procedure family: what stands in the vessel at a step.</summary>
internal static class ProcedureWorkings
{
    private const string File = "file", Engine = "engine", Amounts = "amounts in the file", Table = "solubility table";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        RuleWorkings.OnStocks("metal-before-chelate-or-acid", MetalFirst),
        RuleWorkings.OnStocks("concentrate-onto-concentrate", Concentrate),
        RuleWorkings.OnStocks("slow-dissolver-last", SlowLast),
        RuleWorkings.OnStocks("too-little-water-to-dissolve", LittleWater),
        RuleWorkings.OnStocks("topped-up-past-volume", PastVolume),
        RuleWorkings.OnStocks("no-final-volume-step", FinalVolume),
        RuleWorkings.OnStocks("no-filter-after-technical-sulfate", Filter),
        RuleWorkings.OnStocks("cools-on-dissolving", Cools),
        RuleWorkings.OnStocks("label-incomplete", Label),
        RuleWorkings.OnStocks("label-contradicts-contents", Contents),
        RuleWorkings.OnRecipes("stocks-look-alike", Alike),
        RuleWorkings.OnStocks("missing-rinse-for-small-weight", Rinse),
        RuleWorkings.OnStocks("vessel-too-small", Vessel),
        RuleWorkings.OnStocks("falls-out-while-mixing", FallsOut),
    ];

    private static IEnumerable<Working> MetalFirst(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        var found = false;
        if (moments.Count > 0 && stock.Mixing.IsProcedure && BenchChemistry.Clear(stock.Mixing.FinishedState) is { } finished)
        {
            foreach (var moment in moments)
            {
                var protector = moments.Skip(moment.Index + 1).SelectMany(m => m.Added).FirstOrDefault(MetalBeforeChelateOrAcid.Protects);
                var metals = MetalBeforeChelateOrAcid.Metals.Where(m => moment.Added.Any(a => !MetalBeforeChelateOrAcid.Protects(a) && a.ComponentMoles.GetValueOrDefault(m.Component) > 0)).ToList();
                if (metals.Count == 0 || protector is null)
                {
                    continue;
                }

                found = true;
                var until = moments.Skip(moment.Index).TakeWhile(m => !m.Added.Contains(protector)).ToList();
                var work = new WorkingBuilder($"{moment.Added[0].Substance.Name} before {protector.Substance.Name}");
                if (MetalBeforeChelateOrAcid.Drops(metals, until, stock.Mixing, finished, context) is { } drop)
                {
                    var component = MetalBeforeChelateOrAcid.Metals.First(m => m.Name == drop.Metal && BenchChemistry.Holds(drop.Solid, m.Component)).Component;
                    var at = until.First(m => BenchChemistry.Clear(stock.Mixing.States[m.Index]) is { } s && Math.Abs(s.Ph - drop.Ph) < 1e-9);
                    var contents = at.After;
                    var (_, index) = Precipitation.Saturation.Write(work, BenchChemistry.Clear(stock.Mixing.States[at.Index])!, drop.Solid);
                    work.Test("past the limit", index, Relation.Over, work.Option("index", "index", context));
                    var grams = work.Given($"{drop.Solid.Formula} that drops out", drop.Grams, "g", Engine);
                    var mass = work.Given("its molar mass", drop.Solid.MolarMassGramsPerMole, "g/mol", "atomic weights");
                    var count = drop.Solid.Composition.First(c => c.Key == component).Value;
                    var all = work.Given($"{drop.Metal} in the vessel", contents.Moles[component], "mol", Amounts);
                    var share = work.Result($"{drop.Metal} that is lost", $"100 × {((Term)count).Text} × grams / molar mass / all", 100 * (Term)count * grams / mass / all, "%");
                    yield return work.Test("enough to miss", share, Relation.AtLeast, work.Option("limit", "lost", context), "%").Done(share);
                    continue;
                }

                if (!metals.Any(m => m.Component == "Fe+2") || until.Select(m => stock.Mixing.States[m.Index].PhInAir).Max() is not { } highest)
                {
                    yield return work.Condition("a metal drops its hydroxide or oxidises before it is held", false).Done();
                    continue;
                }

                var pH = work.Given("highest pH it stands at", highest, "", Engine);
                var hydroxide = work.Result("hydroxide ions", "10^(pH - 14.17)", Term.TenTo(pH - FerrousOxidation.WaterProduct), "mol/L");
                var speed = work.Result(
                    "iron oxidised a minute", "8 × 10^13 × 0.21 × hydroxide^2",
                    FerrousOxidation.Rate * (Term)FerrousOxidation.OxygenAtm * Term.Power(hydroxide, 2), "per min");
                var oxidised = work.Result("iron oxidised while it stands", "100 × (1 - 1 / e^(speed × minutes))", 100 * (1 - (1 / Term.Exp(speed * work.Option("it stands", "standing", context)))), "%");
                yield return work.Test("enough to see", oxidised, Relation.AtLeast, work.Option("limit", "oxidised", context), "%").Done(oxidised);
            }
        }

        if (!found)
        {
            yield return new WorkingBuilder($"the order of '{stock.Stock.Name}'").Condition("a metal goes in before a chelating agent or acid that follows later", false).Done();
        }
    }

    private static IEnumerable<Working> Concentrate(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"calcium meeting sulfate or phosphate while '{stock.Stock.Name}' is mixed");
        var moments = stock.Mixing.Steps;
        if (!ConcentrateOntoConcentrate.Brings(stock.Additions, "Ca+2") || !ConcentrateOntoConcentrate.Partners.Any(p => ConcentrateOntoConcentrate.Brings(stock.Additions, p))
            || !stock.Mixing.IsProcedure || !stock.IsComplete || moments.Count == 0 || ConcentrateOntoConcentrate.Worst(stock.Mixing.FinishedState) is not { } end)
        {
            yield return work.Condition("calcium and sulfate or phosphate both go in, in steps that say how", false).Done();
            yield break;
        }

        var worst = moments.Where(m => m.Added.Count > 0 && m.Before.FreeWaterGrams > 0)
            .Select(m => (Moment: m, Worst: ConcentrateOntoConcentrate.Worst(stock.Mixing.States[m.Index]))).Where(m => m.Worst is not null).ToList();
        var limit = context.Number("index");
        var first = worst.FirstOrDefault(m => m.Worst!.Value.Index > limit);
        var (moment, met) = first.Moment is null ? worst.MaxBy(m => m.Worst!.Value.Index) : first;
        if (moment is null)
        {
            yield return work.Condition("they meet in water", false).Done();
            yield break;
        }

        work.Given($"water in the vessel at step '{moment.Step.Id}'", moment.After.FreeWaterLitres, "L", File);
        var (_, index) = Precipitation.Saturation.Write(work, BenchChemistry.Clear(stock.Mixing.States[moment.Index])!, met!.Value.Solid);
        work.Test("far enough past the limit to form at once", index, Relation.Over, work.Option("limit", "index", context));
        work.Test("and clear at the finished volume", work.Given("index at the finished volume", end.Index, "", Engine), Relation.AtMost, 0);
        yield return work.Done(index);
    }

    private static IEnumerable<Working> FallsOut(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"what falls out while '{stock.Stock.Name}' is mixed");
        if (FallsOutWhileMixing.Worst(stock, context.Number("solid")) is not { } worst)
        {
            yield return work.Condition("a solid that no other rule names forms at a step although the finished stock holds it", false).Done();
            yield break;
        }

        var called = SolidWords.Called(worst.There.Solid!);
        var grams = work.Given($"{called} in the vessel at step '{worst.At.Step.Id}'", worst.There.Mass.Grams, "g", Engine);
        var litres = work.Given("in the vessel then", worst.At.After.Litres, "L", "volume model");
        var share = work.Result("solid in a litre", "grams / volume", grams / litres, "g/L");
        yield return work.Test("enough to see", share, Relation.AtLeast, work.Option("limit", "solid", context), "g/L").Done(share);
    }

    private static IEnumerable<Working> SlowLast(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"the last solid of '{stock.Stock.Name}'");
        var moments = stock.Mixing.Steps;
        var solids = moments.Where(m => m.Step is AddStep && m.Before.FreeWaterGrams > 0 && m.Added is [{ Substance.Form: PhysicalForm.Solid }]).ToList();
        if (solids.Count < 2 || moments.Any(m => m.Step is HandlingStep { Handling: Handling.Warm }))
        {
            yield return work.Condition("two or more solids go into water that is not warmed", false).Done();
            yield break;
        }

        var last = solids[^1];
        var addition = last.Added[0];
        if (HandbookSolubility.GramsPer100GramsWater(addition.Substance, VesselContents.BenchCelsius) is not { } exact)
        {
            yield return work.Condition($"the solubility of {addition.Substance.Name} is known", false).Done();
            yield break;
        }

        var solubility = work.Given($"{addition.Substance.Name} that 100 g of water hold at 20 °C", exact, "g", Table);
        work.Test("one of the slow ones", work.Result("in a kg of water", "10 × that", 10 * solubility, "g"), Relation.Under, work.Option("slow below", "slowBelow", context), "g");
        if (solids.Take(solids.Count - 1).Any(m => m.Added[0].Substance.Id == addition.Substance.Id))
        {
            work.Condition("none of it went in before", false);
        }

        var grams = work.Given("of it, pure", VesselContents.PureGrams(addition), "g", File);
        var water = work.Given("water in the vessel", last.After.FreeWaterGrams, "g", File);
        var share = work.Result("of what the water holds", "100 × grams / (solubility × water / 100)", 100 * grams / (solubility * water / 100), "%");
        work.Test("much of it", share, Relation.AtLeast, work.Option("least", "shareOfSolubility", context), "%").Test("and not more than it holds", share, Relation.AtMost, 100, "%");
        var others = work.Given("other solids in it by then", last.Before.Additions.Where(a => a.Substance.Form == PhysicalForm.Solid).Sum(a => a.Mass.Grams), "g", File);
        var crowd = work.Result("in a litre of water", "1000 × others / water", 1000 * others / work.Given("water before it", last.Before.FreeWaterGrams, "g", File), "g/L");
        yield return work.Test("water that is full already", crowd, Relation.AtLeast, work.Option("least", "saltsBefore", context), "g/L").Done(share);
    }

    private static IEnumerable<Working> LittleWater(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        var bench = context.Number("benchTemperature");
        if (TooLittleWaterToDissolve.Dry(stock, moments) is { } dry)
        {
            var work = new WorkingBuilder($"the water of '{stock.Stock.Name}' before it is topped up");
            work.Condition("it is marked for the bench (else the first water may be left out for short)", stock.Stock.ForBench);
            var poured = work.Given("water in the vessel by then", dry.TopUp.Before.FreeWaterLitres, "L", File);
            var least = work.Result("a tenth of the volume", "0.1 × volume", 0.1 * work.Given("volume", stock.Volume.Litres, "L", File), "L");
            yield return work.Test("next to none", poured, Relation.AtMost, least, "L").Done(poured);
        }

        foreach (var substance in stock.Additions.Where(a => !a.ThroughAliquot && a.Substance.Form == PhysicalForm.Solid).Select(a => a.Substance).DistinctBy(s => s.Id))
        {
            foreach (var moment in moments.Where(m => m.Added.Any(a => !a.ThroughAliquot && a.Substance.Id == substance.Id)))
            {
                var (free, warmed) = TooLittleWaterToDissolve.WaterToDissolveIn(moments, moment.Index);
                var celsius = Math.Max(bench, warmed ?? bench);
                if (free <= 0 || HandbookSolubility.GramsPer100GramsWater(substance, celsius) is not { } exact)
                {
                    continue;
                }

                var work = new WorkingBuilder($"{substance.Name} at step '{moment.Step.Id}'");
                var grams = work.Given("of it, pure", moment.After.Additions.Where(a => a.Substance.Id == substance.Id).Sum(VesselContents.PureGrams), "g", File);
                var water = work.Given("water in the vessel by then", free, "g", File);
                var solubility = work.Given($"100 g of water hold at {Say.Number(celsius)} °C", exact, "g", Table);
                var holds = work.Result("the water holds", "solubility × water / 100", solubility * water / 100, "g");
                work.Test("more than it holds, by more than a table is good for", grams, Relation.Over, work.Result("with 2 % for the table", "holds × 1.02", holds * TooLittleWaterToDissolve.Slack, "g"), "g");
                if (HandbookSolubility.GramsPer100GramsWater(substance, bench) is not { } cold || moment.After.Additions.Where(a => a.Substance.Id == substance.Id).Sum(VesselContents.PureGrams) > cold * moments[^1].After.FreeWaterGrams / 100)
                {
                    work.Condition("the finished volume would hold it (else salt-past-its-solubility speaks)", false);
                }

                yield return work.Done(grams);
            }
        }
    }

    private static IEnumerable<Working> PastVolume(StockFacts stock, RuleContext context)
    {
        var implausible = context.Facts.Workspace.Problems.Any(p => p.Kind == ProblemKind.ImplausibleAmount && p.Place.File == stock.Stock.File);
        var moments = stock.Mixing.Steps;
        var makes = stock.Volume.Litres;
        var workings = new List<Working>();
        foreach (var moment in moments.Where(m => m.Step is TopUpStep { To.Value.Litres: > 0 }))
        {
            var exact = ((TopUpStep)moment.Step).To!.Value.Litres;
            var past = new WorkingBuilder($"the mark of step '{moment.Step.Id}' against what '{stock.Stock.Name}' makes");
            var mark = past.Given("topped up to", exact, "L", File);
            workings.Add(past.Test("more than it makes", mark, Relation.Over, Room(past, past.Given("the stock makes", makes, "L", File)), "L").Done(mark));

            var before = new WorkingBuilder($"the vessel before step '{moment.Step.Id}'");
            var holds = before.Given("water, liquids and what the dissolved solids take up", moment.Before.Litres, "L", "volume model");
            workings.Add(before.Test("past the mark before it is topped up", holds, Relation.Over, Room(before, before.Given("topped up to", exact, "L", File)), "L").Done(holds));
        }

        if (moments.LastOrDefault(m => m.Step is TopUpStep) is not null)
        {
            var end = new WorkingBuilder($"the vessel after the last step of '{stock.Stock.Name}'");
            var holds = end.Given("in the vessel", moments[^1].After.Litres, "L", "volume model");
            workings.Add(end.Test("past what it makes", holds, Relation.Over, Room(end, end.Given("the stock makes", makes, "L", File)), "L").Done(holds));
        }

        if (workings.Count == 0 || implausible)
        {
            return [new WorkingBuilder($"'{stock.Stock.Name}'").Condition("it is topped up, and its amounts are meant", false).Done()];
        }

        // One thing is said once: the first that is wrong.
        return workings.FirstOrDefault(w => w.Fires) is { } first ? [first] : workings;

        Term Room(WorkingBuilder work, Term limit) => work.Result("with the tolerance", "mark × (1 + tolerance / 100)", limit * (1 + (work.Option("tolerance", "tolerance", context) / 100)), "L");
    }

    private static IEnumerable<Working> FinalVolume(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"the volume the steps of '{stock.Stock.Name}' give");
        if (!stock.IsComplete || stock.Stock.Makes is null)
        {
            yield return work.Condition("it could be read whole", false).Done();
            yield break;
        }

        if (!stock.Mixing.IsProcedure)
        {
            yield return work.Condition("it is a bench sheet whose steps name no water at all", stock.Stock.ForBench).Done();
            yield break;
        }

        var litres = work.Given("in the vessel after the last step", stock.Mixing.Steps[^1].After.Litres, "L", "volume model");
        var makes = work.Given("the stock makes", stock.Volume.Litres, "L", File);
        var off = work.Result("apart", "100 × |1 - vessel / makes|", 100 * Term.Size(1 - (litres / makes)), "%");
        work.Test("further apart than a jug is good for", off, Relation.Over, work.Option("tolerance", "tolerance", context), "%");
        if (stock.Stock.Steps.OfType<TopUpStep>().Any() && litres.Value > makes.Value)
        {
            work.Condition("it is not too full although topped up (topped-up-past-volume speaks of that)", false);
        }

        var ratio = work.Result("of what it makes", "vessel / makes", litres / makes);
        yield return (litres.Value > 0 ? work : work.Condition("something is in the vessel", false)).Done(ratio);
    }

    private static IEnumerable<Working> Filter(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"what technical sulfates leave in '{stock.Stock.Name}'");
        work.Condition("it is marked for the bench", stock.Stock.ForBench);
        work.Condition("no step filters it", !stock.Stock.Steps.Any(s => s is HandlingStep { Handling: Handling.Filter }));
        var parts = new List<Term>();
        foreach (var addition in stock.Additions.Where(a => !a.ThroughAliquot && a.AssayDeclared && a.Substance.Form == PhysicalForm.Solid
            && a.Assay.Percent < context.Number("technicalBelow") && a.ComponentMoles.GetValueOrDefault("SO4-2") > 0))
        {
            var mass = work.Given(addition.Substance.Name, addition.Mass.Grams, "g", File);
            parts.Add(work.Result("of it not the salt", "weight × (1 - assay / 100)", mass * (1 - (work.Given("its assay", addition.Assay.Percent, "%", File) / 100)), "g"));
        }

        if (parts.Count == 0)
        {
            yield return work.Condition("it holds a sulfate of technical grade", false).Done();
            yield break;
        }

        var rest = work.Result("in a litre", "sum / batch", Term.Sum(parts) / work.Given("the batch", stock.Volume.Litres, "L", File), "g/L");
        yield return work.Test("enough to clog", rest, Relation.AtLeast, work.Option("limit", "rest", context), "g/L").Done(rest);
    }

    private static IEnumerable<Working> Cools(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"heat that dissolving takes from '{stock.Stock.Name}'");
        if (CoolsOnDissolving.BeforeItRests(stock) is not { FreeWaterGrams: > 0 } contents || CoolsOnDissolving.Salts(contents) is not { Count: > 0 } salts)
        {
            yield return work.Condition("salts whose heat is known dissolve in water that is not warmed", false).Done();
            yield break;
        }

        var heats = new List<Term>();
        var crystal = new List<Term>();
        foreach (var (addition, known, grams) in salts)
        {
            var mass = work.Given($"{addition.Substance.Name}, pure", grams, "g", File);
            var molar = work.Given("its molar mass", known.GramsPerMol, "g/mol", "atomic weights");
            heats.Add(work.Result("heat it takes", "g / (g/mol) × kJ/mol", mass / molar * work.Given("heat of solution", known.KilojoulesPerMol, "kJ/mol", "table of heats"), "kJ"));
            if (known.CrystalWater > 0)
            {
                crystal.Add(work.Result("crystal water it sets free", "g / (g/mol) × waters × 18.015", mass / molar * known.CrystalWater * Water.GramsPerMol, "g"));
            }
        }

        var heat = heats.Count == 1 ? heats[0] : work.Result("heat in all", "sum", Term.Sum(heats), "kJ");
        var water = work.Given("water in the vessel", contents.FreeWaterGrams, "g", File);
        var all = crystal.Count == 0 ? water : work.Result("water with that of the crystals", "sum", Term.Sum(crystal.Prepend(water)), "g");
        var cooling = work.Result("cooling", "1000 × heat / (4.18 J per g and K × water)", 1000 * heat / (BatchTemperature.WaterHeatCapacity * all), "K");
        var start = work.Option("water at the start", "benchTemperature", context);
        var end = Math.Max(0, start.Value - cooling.Value);
        var over = salts.Any(s => CoolsOnDissolving.Grams(s.Addition, contents) > (CoolsOnDissolving.Holds(s.Addition, contents, start.Value) ?? double.MaxValue));
        if (salts.FirstOrDefault(s => CoolsOnDissolving.Stalls(s.Addition, contents, start.Value, end)).Addition is { } stalled && !over)
        {
            work.Test("it cools at all", cooling, Relation.Over, 0, "K");
            work.Condition($"at {Say.Number(end)} °C the water no longer holds all of the {stalled.Substance.Name}", true);
            yield return work.Done(cooling);
            yield break;
        }

        work.Test("colder than the bench should get", cooling, Relation.AtLeast, work.Option("limit", "coolsBy", context), "K");
        if (over)
        {
            work.Condition("the water holds all of it at room temperature (else too-little-water-to-dissolve speaks)", false);
        }

        yield return work.Done(cooling);
    }

    private static IEnumerable<Working> Label(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"the label of '{stock.Stock.Name}'");
        work.Condition("it is marked for the bench", stock.Stock.ForBench);
        var label = stock.Stock.Label;
        var missing = 0;
        foreach (var (stated, what) in new[] { (label?.Contents, "contents"), (label?.Dilution, "dilution"), (label?.Date, "date") })
        {
            missing += stated == true ? 0 : 1;
            work.Remark($"{char.ToUpperInvariant(what[0])}{what[1..]}: {(stated == true ? "on the label" : "missing")}.");
        }

        var calcium = work.Given("calcium", 1000 * stock.Concentration("Ca+2").MolesPerLitre, "mmol/L", Amounts);
        var sulfate = work.Given("sulfate, phosphate, carbonate or silicate, the most of one", 1000 * new[] { "SO4-2", "H2PO4-", "CO3-2", "H4SiO4" }.Max(p => stock.Concentration(p).MolesPerLitre), "mmol/L", Amounts);
        var most = work.Result("the larger", "the larger of the two", Term.Larger(calcium, sulfate), "mmol/L");
        var limit = work.Option("from here on it clouds with the other part", "reacts", context);
        work.Remark(most.Value >= limit.Value
            ? $"{most.Text} is at least {limit.Text}: the label has to say what it must not meet ({(label?.KeepApart == true ? "it does" : "missing")})."
            : $"{most.Text} is under {limit.Text}: nothing to keep apart from.");
        missing += LabelIncomplete.Enemy(stock, context.Number("reacts")) is not null && label?.KeepApart != true ? 1 : 0;
        var count = work.Given("entries missing", missing, "", "count");
        yield return work.Test("one is missing", count, Relation.Over, 0).Done(count);
    }

    private static IEnumerable<Working> Contents(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"the label of '{stock.Stock.Name}' against its steps");
        if (!LabelContradictsContents.CanBeJudged(stock))
        {
            yield return work.Condition("it is marked for the bench, says what is inside, and all of that is known", false).Done();
            yield break;
        }

        var absent = LabelContradictsContents.Absent(stock);
        work.Remark(absent.Count == 0 ? "Everything it names is brought by a step." : $"Named and not brought: {Say.List(absent)}.");
        foreach (var held in LabelContradictsContents.Unnamed(stock, context))
        {
            work.Given($"{held.Name}, brought and not named", held.MilligramsPerLitre, "mg/L", Amounts);
        }

        var count = work.Given("contradictions", absent.Count + LabelContradictsContents.Unnamed(stock, context).Count, "", "count");
        yield return work.Test("there is one", count, Relation.Over, 0).Done(count);
    }

    private static IEnumerable<Working> Alike(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"the bottles of '{recipe.Recipe.Name}'");
        foreach (var stock in recipe.Doses.Where(d => d.Stock is { Stock.ForBench: true }).DistinctBy(d => d.Stock!.Stock.File).Select(d => d.Stock!))
        {
            if (stock.Stock.Label?.Colour is { } declared)
            {
                work.Remark($"'{stock.Stock.Name}' is {declared} by its label.");
                continue;
            }

            var strongest = stock.Additions.Where(a => a.Substance.Colour is not null).OrderByDescending(a => StockColour.Strength(a, stock.Volume.Litres)).FirstOrDefault();
            if (strongest is not null)
            {
                work.Given($"'{stock.Stock.Name}': {strongest.Substance.Name} against what one can see (1 is just seen)", StockColour.Strength(strongest, stock.Volume.Litres), "", "table of colours");
            }

            work.Remark($"'{stock.Stock.Name}' is {StockColour.Of(stock) ?? "of an unknown dye"}, worked out from its contents.");
        }

        var alike = work.Given("bottles that share a colour", StocksLookAlike.Alike(recipe).Select(g => g.Count()).DefaultIfEmpty().Max(), "", "count");
        yield return work.Test("two or more are alike", alike, Relation.AtLeast, 2).Done(alike);
    }

    private static IEnumerable<Working> Rinse(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        var small = moments.Where(m => m.Step is AddStep).SelectMany(m => m.Added.Select(a => (Moment: m, Addition: a)))
            .Where(a => a.Addition.Substance is { Form: PhysicalForm.Solid, Kind: not SubstanceKind.Dye } && a.Addition.Mass.Grams > 0)
            .OrderBy(a => a.Addition.Mass.Grams).ThenBy(a => a.Addition.Id, StringComparer.Ordinal).ToList();
        if (small.Count == 0)
        {
            return [new WorkingBuilder($"'{stock.Stock.Name}'").Condition("a solid is weighed for it", false).Done()];
        }

        // The smallest that no later step rinses in decides; where all are, the smallest is shown.
        var (moment, addition) = small.FirstOrDefault(a => !Rinsed(a.Moment), small[0]);
        var work = new WorkingBuilder($"{addition.Substance.Name}, the smallest weight {(Rinsed(moment) ? "" : "without a rinse ")}of '{stock.Stock.Name}'");
        work.Condition("it is marked for the bench", stock.Stock.ForBench);
        work.Condition("no step after it rinses the boat", !Rinsed(moment));
        var loss = work.Result(
            "lost on the boat", "100 × what clings / weight",
            100 * (work.Option("what clings to it", "clings", context) / 1000) / work.Given("weight", addition.Mass.Grams, "g", File), "%");
        return [work.Test("enough to miss", loss, Relation.Over, work.Option("limit", "loss", context), "%").Done(loss)];

        bool Rinsed(MixingStep at) => moments.Skip(at.Index + 1).Any(l => l.Step is HandlingStep { Handling: Handling.Rinse });
    }

    private static IEnumerable<Working> Vessel(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"the vessel of '{stock.Stock.Name}'");
        if (stock.Stock.Vessel is not { } named || stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value) is not { Capacity: { } capacity })
        {
            yield return work.Condition("it names a vessel of the shop whose capacity is known", false).Done();
            yield break;
        }

        var batch = work.Given("the batch", stock.Volume.Litres, "L", File);
        var holds = work.Given($"'{named.Value}' holds", capacity.Litres, "L", "shop's settings");
        work.Result("left over", "batch - capacity", batch - holds, "L");
        yield return work.Test("more than it holds", batch, Relation.Over, holds, "L").Done(batch);
    }
}
