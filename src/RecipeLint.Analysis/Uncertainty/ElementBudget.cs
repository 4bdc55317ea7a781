using RecipeLint.Analysis.Solutions;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// The measurement model: weight or volume times assay, over the finished volume of the stock, times aliquots and doses, over the final
/// volume. Concentrations are in grams per litre by nutrient key.
/// </summary>
internal sealed class ElementBudget
{
    private readonly Func<string, StockFacts?> _findStock;
    private readonly MeasurementErrors _measurements;
    private readonly VolumeErrors _volumes;
    private readonly WaterErrors _waters;
    private readonly Dictionary<string, SortedDictionary<string, Uncertain>> _done = new(StringComparer.Ordinal);
    private readonly HashSet<string> _open = new(StringComparer.Ordinal);

    public ElementBudget(Func<string, StockFacts?> findStock)
    {
        _findStock = findStock;
        _measurements = new MeasurementErrors(Notes);
        _volumes = new VolumeErrors(_measurements, Notes);
        _waters = new WaterErrors(Notes);
    }

    public UncertaintyNotes Notes { get; } = new();

    public SortedDictionary<string, Uncertain> OfStock(StockFacts stock)
    {
        var file = stock.Stock.File;
        if (_done.TryGetValue(file, out var known))
        {
            return known;
        }

        _open.Add(file);
        var result = stock.Volume.Litres > 0 ? Concentrations(stock) : [];
        _open.Remove(file);
        _done[file] = result;
        return result;
    }

    public SortedDictionary<string, Uncertain> OfRecipe(RecipeFacts recipe)
    {
        if (!(recipe.FinalVolume.Litres > 0))
        {
            return [];
        }

        var addedTo = recipe.Recipe.VolumeMeaning?.Value == FinalVolumeMeaning.AddedTo;
        var measured = Uncertain.MeasuredRelative((addedTo ? recipe.WaterVolume : recipe.FinalVolume).Litres, _volumes.OfTank(recipe));
        var poured = new List<Uncertain>();
        var grams = new Ledger();
        foreach (var dose in recipe.Doses)
        {
            if (dose.Stock is { } stock)
            {
                var volume = DoseVolume(dose, stock, recipe, measured);
                poured.Add(volume);
                grams.Add(OfStock(stock).Select(c => (c.Key, volume * c.Value)));
            }
            else if (dose is { Direct: { } direct, Entry: DirectDose entry })
            {
                var taken = Amount(direct, recipe.Recipe.File, entry.Amount?.Value, entry.Tolerance);
                poured.Add(dose.Volume.Litres * taken);
                grams.Add(Elements(direct, taken));
            }
        }

        // Where the doses alone are more than the stated volume, there is no water and their sum is the final volume.
        var doses = Uncertain.Sum(poured);
        var onlyDoses =
            !addedTo && recipe.WaterVolume.Litres <= 0 && recipe.Recipe.Final is { } stated && doses.Value > stated.Value.Litres;
        var final = addedTo ? measured + doses : onlyDoses ? doses : measured;
        if (recipe.Water?.Water is { } water && !onlyDoses)
        {
            var volume = addedTo ? measured : final - doses;
            grams.Add(_waters.Of(water).Select(w => (w.Key, volume * w.GramsPerLitre)));
        }

        return grams.Over(final);
    }

    private SortedDictionary<string, Uncertain> Concentrations(StockFacts stock)
    {
        var volume = Uncertain.MeasuredRelative(stock.Volume.Litres, _volumes.OfStock(stock));
        var grams = new Ledger();
        var inside = new List<string>();
        foreach (var aliquot in stock.Aliquots)
        {
            if (_findStock(aliquot.StockFile) is not { } source || _open.Contains(source.Stock.File))
            {
                Notes.Add(
                    "uncertainty-pre-stock",
                    "The pre-stock of {0} is not known: what it brings is taken with ± 1 % for each weight and ± 2 % for its volume.",
                    $"'{aliquot.Id}'",
                    aliquot.Place);
                continue;
            }

            inside.Add(aliquot.Id + "/");
            var taken = Uncertain.MeasuredRelative(aliquot.Volume.Litres, _volumes.OfAliquot(aliquot, source.Stock.Name, stock));
            grams.Add(OfStock(source).Select(c => (c.Key, taken * c.Value)));
        }

        foreach (var addition in stock.Additions.Where(a => !Within(a.Id)))
        {
            var step = stock.Stock.Steps.OfType<AddStep>().FirstOrDefault(s => s.Id == addition.Id);
            grams.Add(Elements(addition, Amount(addition, stock.Stock.File, step?.Amount?.Value, step?.Tolerance)));
        }

        var result = grams.Over(volume);

        // Source water fills the stock whatever its volume turns out to be, so the error of the volume hardly touches what it brings per
        // litre.
        var water = new Ledger();
        foreach (var part in stock.Waters.Where(w => !Within(w.Id)))
        {
            if (part.Water is { } document)
            {
                water.Add(_waters.Of(document).Select(w => (w.Key, part.Volume / stock.Volume * w.GramsPerLitre)));
            }
        }

        foreach (var (key, value) in water.Over(Uncertain.Exactly(1)))
        {
            result[key] = result.TryGetValue(key, out var salts) ? salts + value : value;
        }

        return result;

        bool Within(string id) => inside.Exists(prefix => id.StartsWith(prefix, StringComparison.Ordinal));
    }

    /// <summary>How much was taken, as a factor of what is written.</summary>
    private Uncertain Amount(AdditionFacts addition, string file, Portion? portion, Tolerance? stated) =>
        addition.ThroughAliquot
            ? Uncertain.MeasuredRelative(1, _measurements.OfUnknownScale($"{file}#{addition.Id}", addition.Substance.Name, addition.Place))
                * Uncertain.MeasuredRelative(
                    1, _measurements.OfUnknownMeasure($"{file}#{addition.Id}", addition.Substance.Name, addition.Place))
            : Uncertain.MeasuredRelative(1, _measurements.OfAmount(addition, file, portion, stated));

    private IEnumerable<(string Key, Uncertain Grams)> Elements(AdditionFacts addition, Uncertain taken)
    {
        var keys = NutrientKeys.Grams(addition.Elements).ToList();
        if (keys.Count == 0)
        {
            return [];
        }

        var factor = taken * Uncertain.MeasuredRelative(1, [_measurements.OfAssay(addition)]);
        return keys.Select(k => (k.Key, k.Grams * factor));
    }

    /// <summary>An injector sets a ratio to the water that flows, so its dose follows the measured volume and shares its error.</summary>
    private Uncertain DoseVolume(DoseFacts dose, StockFacts stock, RecipeFacts recipe, Uncertain measured)
    {
        var errors = _volumes.OfDose(dose, stock, recipe);
        var proportional = dose.Measure?.Kind == MeasureKind.Injector && dose.Entry is StockDose { Strokes: null } && measured.Value > 0;
        return proportional
            ? Uncertain.MeasuredRelative(dose.Volume.Litres / measured.Value, errors) * measured
            : Uncertain.MeasuredRelative(dose.Volume.Litres, errors);
    }

    /// <summary>Grams by key, added up once all are known.</summary>
    private sealed class Ledger
    {
        private readonly SortedDictionary<string, List<Uncertain>> _terms = new(StringComparer.Ordinal);

        public void Add(IEnumerable<(string Key, Uncertain Grams)> terms)
        {
            foreach (var (key, grams) in terms)
            {
                if (!_terms.TryGetValue(key, out var list))
                {
                    _terms[key] = list = [];
                }

                list.Add(grams);
            }
        }

        public SortedDictionary<string, Uncertain> Over(Uncertain volume)
        {
            var result = new SortedDictionary<string, Uncertain>(StringComparer.Ordinal);
            foreach (var (key, terms) in _terms)
            {
                result[key] = Uncertain.Sum(terms) / volume;
            }

            return result;
        }
    }
}
