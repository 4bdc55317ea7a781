using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Splitting;

/// <summary>What all parts of one split have in common.</summary>
/// <param name="Final">Final solution that one batch of every part is for.</param>
/// <param name="Water">What the parts are made with.</param>
/// <param name="Keep">How they are kept.</param>
/// <param name="Batch">What a main part makes; null for what the final volume takes.</param>
internal sealed record SplitFrame(
    Workspace Workspace, ShopSettings Shop, string Folder, Volume Final, WaterReference Water, Keeping Keep,
        Interval<Temperature> Storage, Volume? Batch, SplitLimits Limits)
{
    /// <summary>Pairs of substances, by id, that the present stocks show must be parted.</summary>
    public IReadOnlyList<Hazard> Apart { get; init; } = [];
}

/// <summary>Makes parts: as a mix for the search, and as a whole stock document for the full analysis.</summary>
internal sealed class PartFactory
{
    /// <summary>Strong reagents whose danger shows only where they are poured.</summary>
    private static readonly HashSet<HazardRole> Pourable =
        [HazardRole.NitricAcid, HazardRole.SulfuricAcid, HazardRole.Peroxide, HazardRole.Hypochlorite, HazardRole.StrongOxidiser];

    private readonly SplitFrame _frame;
    private readonly ComponentMoles _water;
    private readonly bool _hasPreservative;

    public PartFactory(SplitFrame frame, IReadOnlyList<SplitUnit> units)
    {
        _frame = frame;
        Units = units;
        var place = Place.Whole(frame.Folder);
        var choice = SourceWater.Find(frame.Workspace, new Located<WaterReference>(frame.Water, place));
        _water = SourceWater.Pour("water", place, choice, new Volume(1), false, new AssumptionList(place)).ComponentMoles;
        _hasPreservative = units.Any(u => u.Ingredients.Any(i => i.Substance.IsPreservative));
    }

    public IReadOnlyList<SplitUnit> Units { get; }

    public Interval<Temperature> Storage => _frame.Storage;

    public SplitLimits Limits => _frame.Limits;

    public bool WaterHasIons => !_water.IsEmpty;

    public bool IsTraceOnly(PartContent content) => In(content).All(u => u.Unit.Kind == UnitKind.Trace);

    /// <summary>
    /// True when it holds what mould lives on and the recipe has something against it; else splitting cannot spoil anything.
    /// </summary>
    public bool CanSpoil(PartContent content) =>
        _hasPreservative && In(content).Any(u => u.Unit.Ingredients.Any(i => i.Substance.FeedsMicrobes));

    public IEnumerable<(SplitUnit Unit, double Share)> In(PartContent content) =>
        Units.Select((u, i) => (Unit: u, Share: content.ShareOf(i))).Where(u => u.Share > 0);

    /// <summary>What a litre of the part holds.</summary>
    public SolutionMix Mix(PartContent content, double dilution)
    {
        var units = In(content).ToList();
        var liquids = units.Sum(u => u.Share
            * dilution
            * u.Unit.Ingredients.Sum(i => Pouring(i, i.Mass * new Volume(1)) is { } volume ? volume.Litres : 0));
        var moles = ComponentMoles.Sum(
            [.. units.Select(u => u.Unit.MolesPerLitre.Times(u.Share * dilution)), _water.Times(Math.Max(0, 1 - liquids))]);
        var ingredients = units.SelectMany(u => u.Unit.Ingredients.Select(i => i.MolesPerLitre.Times(u.Share * dilution)));
        return SolutionMix.Of(moles, new Volume(1)).WithSilicates(ingredients, new Volume(1));
    }

    /// <summary>What a part would do to whoever mixes or opens it; null for a harmless one.</summary>
    public Hazard? DangerIn(PartContent content, double dilution)
    {
        var items = In(content).SelectMany(u => u.Unit.Ingredients.Select(i => i.HeldAt(u.Share * dilution))).ToList();
        if (HazardGate.Of(Holding.Of(items, 1)).Forbids(VesselAction.KeepTogether) is { } refusal)
        {
            return refusal.Hazard;
        }

        var ids = items.Select(i => i.Substance.Id).ToHashSet(StringComparer.Ordinal);
        return _frame.Apart.FirstOrDefault(h => ids.Contains(h.From!.Substance.Id) && ids.Contains(h.With!.Substance.Id))
            ?? (items.Exists(i => i.Roles.Overlaps(Pourable)) ? HazardGate.Of(Stock(content, dilution))
                .Forbids(VesselAction.Order)?.Hazard : null);
    }

    /// <summary>
    /// The first weight in a batch that no scale of the shop can take; null when all can be weighed, or the shop names no scale.
    /// </summary>
    public Obstacle.TooLittleToWeigh? TooLittleToWeigh(PartContent content, double dilution) =>
        TooLittle(content, dilution, Batch(content, dilution));

    /// <summary>What is made at once: for a part of traces alone the smallest usual volume in which all can be weighed.</summary>
    public Volume Batch(PartContent content, double dilution)
    {
        const double MostTimes = 10;
        var usual = BatchVolume.From(_frame.Final, dilution).ToList();
        if (!IsTraceOnly(content))
        {
            return _frame.Batch ?? usual[0];
        }

        return usual.Where(v => v <= usual[0] * MostTimes)
            .Cast<Volume?>()
            .FirstOrDefault(v => TooLittle(content, dilution, v!.Value) is null) ?? usual[0];
    }

    /// <summary>The part as a stock that is mixed, kept and dosed, through the whole analysis.</summary>
    public StockFacts Stock(PartContent content, double dilution, string name = "part", string fileName = "part")
    {
        var document = Document(content, dilution, name, $"{_frame.Folder}{SplitFiles.Prefix}{fileName}.stock.json");
        return Analyzer.AnalyseStock(_frame.Workspace.With(document), document.File)!;
    }

    /// <summary>What a check of the part, as it would be made and kept, has against it.</summary>
    /// <param name="today">The day suppressions are held against.</param>
    public IReadOnlyList<Finding> Errors(PartContent content, double dilution, DateOnly? today) =>
        CheckedStock.ReasonsToDivide(_frame.Workspace, Stock(content, dilution).Stock, today);

    public StockDocument Document(PartContent content, double dilution, string name, string file)
    {
        var batch = Batch(content, dilution);
        var place = Place.Whole(file);
        var amounts = In(content)
            .SelectMany(u => u.Unit.Ingredients.Select(i => new PartAmount(i, i.Mass * (u.Share * dilution) * batch, u.Unit.Kind)))
            .ToList();
        return new StockDocument
        {
            File = file,
            Name = name,
            Makes = new Located<Volume>(batch, place.Child("makes")),
            Dose = new Located<Dose>(Dose.OneIn(dilution), place.Child("dose")),
            Keep = _frame.Keep,
            Steps = PartSteps.Of(amounts, batch, _frame.Water, _frame.Shop, file),
        };
    }

    private Obstacle.TooLittleToWeigh? TooLittle(PartContent content, double dilution, Volume batch)
    {
        foreach (var (unit, share) in In(content))
        {
            foreach (var ingredient in unit.Ingredients)
            {
                var mass = ingredient.Mass * (share * dilution) * batch;
                if (Pouring(ingredient, mass) is null
                    && ShopWeights.ScaleFor(mass, _frame.Shop) is { } scale
                    && ShopWeights.IsTooLittle(mass, scale, _frame.Limits))
                {
                    return new Obstacle.TooLittleToWeigh(ingredient.Substance.Name, mass, scale);
                }
            }
        }

        return null;
    }

    private static Volume? Pouring(SplitIngredient ingredient, Mass mass) => PartAmount.Pouring(ingredient.Substance, mass);
}
