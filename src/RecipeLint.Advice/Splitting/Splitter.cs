using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Splitting;

/// <summary>
/// Proposes stock parts for a recipe: as few as stay clear from the coldest to the warmest storage, as strong as they do. Pure and
/// deterministic. What the cost is stands at <see cref="SplitSearch"/>.
/// </summary>
public static class Splitter
{
    /// <summary>More parts than this nobody doses (common practice, no source).</summary>
    public const int MostParts = 5;

    /// <summary>The dose the main parts should at least be made for, 1:N (common practice, no source).</summary>
    private const double UsualDilution = 100;

    /// <summary>Main parts are not proposed stronger unless asked for: common injectors end there (common practice, no source).</summary>
    private static readonly double[] Stronger = [150, 200, 250];

    private static readonly double[] Weaker = [500, 400, 300, 250, 200, 150, 100, 80, 64, 50, 40, 30, 25, 20, 10];

    /// <summary>Usual doses of a trace stock, 1:N, the strongest first (common practice, no source).</summary>
    private static readonly double[] TraceDilutions = [1000, 500, 250, 200, 100];

    /// <summary>Units the search takes; a recipe with more is not looked at.</summary>
    private const int MostUnits = 14;

    /// <summary>For a recipe: what its stocks and direct doses bring.</summary>
    public static SplitProposal Of(RecipeFacts recipe, Workspace workspace, SplitRequest request)
    {
        var stocks = recipe.Doses.Select(d => d.Stock).OfType<StockFacts>().ToList();
        var source = new SplitSource(
            recipe.Recipe.Name,
            recipe.Recipe.File,
            SplitIngredient.In(recipe),
            recipe.Recipe with
            {
                Final = new Located<Volume>(recipe.FinalVolume, recipe.Recipe.Place.Child("final")),
                VolumeMeaning = new Located<FinalVolumeMeaning>(FinalVolumeMeaning.MadeUp, recipe.Recipe.Place.Child("volume")),
            },
            stocks,
            recipe.Settings,
            recipe.IsComplete,
            recipe.Elements.ToDictionary(e => e.Key, e => e.Value.Concentration.MilligramsPerLitre, StringComparer.Ordinal));
        return Of(source, workspace, request);
    }

    /// <summary>For one stock with everything in it: what it brings at its dose, 1:100 where it states none.</summary>
    public static SplitProposal Of(StockFacts stock, Workspace workspace, SplitRequest request)
    {
        var dose = stock.Stock.Dose?.Value is { LitresPerLitre: > 0 } stated ? stated : Dose.OneIn(UsualDilution);
        var file = stock.Stock.File;
        var place = Place.Whole(file);
        var final = stock.Volume / dose.LitresPerLitre;
        var recipe = new RecipeDocument
        {
            File = file,
            Name = stock.Stock.Name,
            Final = new Located<Volume>(final, place),
            VolumeMeaning = new Located<FinalVolumeMeaning>(FinalVolumeMeaning.MadeUp, place),
            Doses = [new StockDose("all", place)
            {
                Stock = new Located<string>(file, place),
                StockFile = file,
                Dose = new Located<Dose>(dose, place),
            }],
        };
        var before = Analyzer.AnalyseRecipe(workspace with { Recipes = [recipe] }, file)!;
        var source = new SplitSource(
            stock.Stock.Name,
            file,
            SplitIngredient.In(stock, dose),
            recipe,
            [stock],
            stock.Settings,
            stock.IsComplete,
            before.Elements.ToDictionary(e => e.Key, e => e.Value.Concentration.MilligramsPerLitre, StringComparer.Ordinal));
        return Of(source, workspace, request);
    }

    private static SplitProposal Of(SplitSource source, Workspace workspace, SplitRequest request)
    {
        var units = SplitUnit.Of(source.Ingredients);
        var water = source.StockWater();
        var keep = source.Keep(request.At);
        var frame = new SplitFrame(
            workspace, source.Shop, FolderOf(source.File), source.Recipe.Final!.Value, water, keep, keep.At!.Value, request.Batch,
                request.Limits)
        {
            Apart = [.. source.Stocks.SelectMany(s => HazardGate.Of(s).Present).Where(h => h is { NeedsParting: true, From: not null,
                With: not null })],
        };
        var proposal = new SplitProposal
        {
            Of = source.Name,
            Units = units,
            Storage = keep.At.Value,
            Water = NameOf(water, workspace),
            Before = source.Before,
            WantedDilution = Upwards(request)[0],
        };
        if (Danger(source) is { } danger)
        {
            return proposal with { Refused = new Refusal(danger, VesselAction.KeepTogether, null, false) };
        }

        if (NotLookedAt(source, units, request) is { } refusal)
        {
            return proposal with { Failure = refusal };
        }

        var made = new SplitRun(new PartFactory(frame, units), request).Run(proposal);
        if (made is { Plan: null, StaysWrong: false } && new PartFactory(frame, units).WaterHasIons)
        {
            var pure = new WaterReference("distilled", null);
            var again = new SplitRun(new PartFactory(
                frame with { Water = pure }, units), request).Run(proposal with { Water = pure.Name, WaterReplaced = true });
            made = again.Plan is null ? made : again with { WithRecipeWater = made.Fewer };
        }

        return made.Plan is { } plan
            ? made with { Final = FinalOf(plan, source.Recipe, workspace), Plan = Objected(plan, workspace, request.Today) }
            : made;
    }

    private static string NameOf(WaterReference water, Workspace workspace) =>
        water.File is { } file && workspace.FindWater(file) is { } known ? known.Name : water.Name;

    /// <summary>
    /// What must not meet in the tank either: no bottles make that safe. Its figure is that of the bottle it is in already, as every other
    /// command prints it, else that of the tank.
    /// </summary>
    private static Hazard? Danger(SplitSource source)
    {
        List<Held> tank = [.. source.Ingredients.Select(i => i.HeldAt(1))];
        if (HazardGate.Of(Holding.Of(tank, 1)).Hazards.FirstOrDefault(IsForNoTank) is { } danger)
        {
            return source.Stocks.Select(s => HazardGate.Of(s).Find(danger.Kind)).FirstOrDefault(h => h is { } && IsForNoTank(h)) ?? danger;
        }

        // However thin the tank is, peroxide is gone there before it has done anything, and what takes it apart with it.
        return source.Stocks.SelectMany(s => HazardGate.Of(s).Present).FirstOrDefault(h => IsForNoTank(h)
            && tank.Exists(i => i.Substance.Id == h.From?.Substance.Id) && tank.Exists(i => i.Substance.Id == h.With?.Substance.Id));
    }

    /// <summary>What hurts somebody wherever the two meet, and peroxide with what takes it apart.</summary>
    private static bool IsForNoTank(Hazard hazard) =>
        hazard.IsNeverTogether || hazard is { Kind: HazardKind.OxygenPressure, Grade: >= HazardGrade.Present, With: not null };

    private static string? NotLookedAt(SplitSource source, IReadOnlyList<SplitUnit> units, SplitRequest request)
    {
        if (!source.IsComplete)
        {
            return "something in it could not be read; 'check' says what";
        }

        if (source.Ingredients.FirstOrDefault(i => i.HeldAt(1).IsNameless) is { } unknown)
        {
            return $"what '{unknown.Substance.Name}' holds is not known, and nothing is advised of it until it is: see the label, the "
                + "safety data sheet or the supplier";
        }

        if (units.Count == 0)
        {
            return "there is no salt in it";
        }

        if (request.Parts > units.Count)
        {
            return $"it holds {units.Count} kinds of salt, fewer than the {request.Parts} parts asked for";
        }

        return units.Count > MostUnits ? $"it holds {units.Count} kinds of salt; at most {MostUnits} can be searched" : null;
    }

    /// <summary>The recipe that doses the parts of a plan.</summary>
    private static RecipeDocument RecipeFor(SplitPlan plan, RecipeDocument recipe)
    {
        var place = recipe.Place.Child("doses");
        return recipe with
        {
            Doses =
            [
                .. plan.Parts.Select((p, i) => new StockDose(p.Stock.Stock.File, place.Child(i))
                {
                    Stock = new Located<string>(p.Stock.Stock.File, place.Child(i)),
                    StockFile = p.Stock.Stock.File,
                    Dose = new Located<Dose>(Dose.OneIn(p.Dilution), place.Child(i)),
                }),
            ],
        };
    }

    private static RecipeFacts FinalOf(SplitPlan plan, RecipeDocument recipe, Workspace workspace)
    {
        var with = plan.Parts.Aggregate(workspace, (w, p) => w.With(p.Stock.Stock));
        var changed = RecipeFor(plan, recipe);
        return Analyzer.AnalyseRecipe(with with { Recipes = [changed] }, changed.File)!;
    }

    /// <summary>What a check of each part as it would be kept finds wrong with it: the search asks only what falls out.</summary>
    private static SplitPlan Objected(SplitPlan plan, Workspace workspace, DateOnly? today) => new(
    [
        .. plan.Parts.Select(p => p with { Objections = CheckedStock.Errors(workspace, p.Stock.Stock, today) }),
    ]);

    private static string FolderOf(string file)
    {
        var slash = file.LastIndexOf('/');
        return slash < 0 ? "" : file[..(slash + 1)];
    }

    /// <summary>The doses to look at, first the one wanted, then stronger ones.</summary>
    internal static IReadOnlyList<double> Upwards(SplitRequest request) =>
        request.Strength is { } asked ? [asked.Dilution] : [UsualDilution, .. Stronger];

    /// <summary>The doses to fall back to where the one wanted is out of reach.</summary>
    internal static IReadOnlyList<double> Downwards(SplitRequest request) =>
        [.. Weaker.Where(w => w < (request.Strength?.Dilution ?? UsualDilution))];

    internal static IReadOnlyList<double> ForTraces => TraceDilutions;
}
