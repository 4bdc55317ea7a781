using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Tests.Uncertainty;

/// <summary>
/// The same measurement made many times over with errors drawn from their distributions (JCGM 101:2008), in plain arithmetic: no first-order
/// kernel, no linearising. Errors of one source take one draw in each trial.
/// </summary>
internal sealed class MonteCarlo
{
    private readonly Random _random;
    private readonly Func<string, StockFacts?> _findStock;
    private readonly UncertaintyNotes _notes = new();
    private readonly MeasurementErrors _measurements;
    private readonly VolumeErrors _volumes;
    private readonly WaterErrors _waters;
    private readonly Dictionary<string, int> _sources = new(StringComparer.Ordinal);
    private readonly List<ErrorShape> _shapes = [];
    private double[] _draws = [];

    private MonteCarlo(int seed, Func<string, StockFacts?> findStock)
    {
        _random = new Random(seed);
        _findStock = findStock;
        _measurements = new MeasurementErrors(_notes);
        _volumes = new VolumeErrors(_measurements, _notes);
        _waters = new WaterErrors(_notes);
    }

    /// <summary>Relative standard deviation of each key over the trials.</summary>
    public static SortedDictionary<string, double> Of(RecipeFacts recipe, Func<string, StockFacts?> findStock, int trials = 40_000, int seed = 20_261)
    {
        var run = new MonteCarlo(seed, findStock);
        return run.Spread(run.Recipe(recipe), trials);
    }

    public static SortedDictionary<string, double> Of(StockFacts stock, Func<string, StockFacts?> findStock, int trials = 40_000, int seed = 20_262)
    {
        var run = new MonteCarlo(seed, findStock);
        return run.Spread(run.Stock(stock), trials);
    }

    private SortedDictionary<string, double> Spread(Func<Dictionary<string, double>> trial, int trials)
    {
        var sums = new SortedDictionary<string, (double Mean, double Squares)>(StringComparer.Ordinal);
        for (var n = 1; n <= trials; n++)
        {
            _draws = [.. _shapes.Select(Draw)];
            foreach (var (key, value) in trial())
            {
                // Welford's running mean and sum of squares.
                var (mean, squares) = sums.GetValueOrDefault(key);
                var next = mean + ((value - mean) / n);
                sums[key] = (next, squares + ((value - mean) * (value - next)));
            }
        }

        return new(sums.ToDictionary(s => s.Key, s => Math.Sqrt(s.Value.Squares / (trials - 1)) / s.Value.Mean), StringComparer.Ordinal);
    }

    private Func<Dictionary<string, double>> Recipe(RecipeFacts recipe)
    {
        var addedTo = recipe.Recipe.VolumeMeaning?.Value == FinalVolumeMeaning.AddedTo;
        var tank = Factor(_volumes.OfTank(recipe));
        var stocks = recipe.Doses.Where(d => d.Stock is not null).Select(d =>
        {
            var ratio = d.Measure?.Kind == MeasureKind.Injector && d.Entry is StockDose { Strokes: null };
            return (Litres: d.Volume.Litres, Factor: Factor(_volumes.OfDose(d, d.Stock!, recipe)), Ratio: ratio, Contents: Stock(d.Stock!));
        }).ToList();
        var directs = recipe.Doses.Where(d => d.Direct is not null).Select(d =>
        {
            var entry = (DirectDose)d.Entry;
            var addition = d.Direct!;
            return (Litres: d.Volume.Litres, Amount: Factor(_measurements.OfAmount(addition, recipe.Recipe.File, entry.Amount?.Value, entry.Tolerance)), Assay: Factor([_measurements.OfAssay(addition)]), Grams: Grams(addition));
        }).ToList();
        var water = Water(recipe.Water?.Water);
        return () =>
        {
            var measured = (addedTo ? recipe.WaterVolume : recipe.FinalVolume).Litres * tank();
            var poured = 0.0;
            var grams = new Dictionary<string, double>(StringComparer.Ordinal);
            foreach (var (litres, factor, ratio, contents) in stocks)
            {
                var volume = litres * factor() * (ratio ? tank() : 1);
                poured += volume;
                Add(grams, contents(), volume);
            }

            foreach (var (litres, amount, assay, content) in directs)
            {
                poured += litres * amount();
                Add(grams, content, amount() * assay());
            }

            var final = addedTo ? measured + poured : measured;
            Add(grams, water(), final - poured);
            return grams.ToDictionary(g => g.Key, g => g.Value / final, StringComparer.Ordinal);
        };
    }

    private Func<Dictionary<string, double>> Stock(StockFacts stock)
    {
        var volume = Factor(_volumes.OfStock(stock));
        var aliquots = stock.Aliquots
            .Select(a => (a.Volume.Litres, Factor: Factor(_volumes.OfAliquot(a, "", stock)), Contents: Stock(_findStock(a.StockFile)!)))
            .ToList();
        var additions = stock.Additions.Where(a => !a.ThroughAliquot).Select(a =>
        {
            var step = stock.Stock.Steps.OfType<AddStep>().First(s => s.Id == a.Id);
            return (Amount: Factor(_measurements.OfAmount(a, stock.Stock.File, step.Amount?.Value, step.Tolerance)), Assay: Factor([_measurements.OfAssay(a)]), Grams: Grams(a));
        }).ToList();
        var waters = stock.Waters
            .Where(w => !stock.Aliquots.Any(a => w.Id.StartsWith(a.Id + "/", StringComparison.Ordinal)))
            .Select(w => (Part: w.Volume / stock.Volume, Contents: Water(w.Water)))
            .ToList();
        return () =>
        {
            var grams = new Dictionary<string, double>(StringComparer.Ordinal);
            foreach (var (litres, factor, contents) in aliquots)
            {
                Add(grams, contents(), litres * factor());
            }

            foreach (var (amount, assay, content) in additions)
            {
                Add(grams, content, amount() * assay());
            }

            var litresMade = stock.Volume.Litres * volume();
            var result = grams.ToDictionary(g => g.Key, g => g.Value / litresMade, StringComparer.Ordinal);
            foreach (var (part, contents) in waters)
            {
                Add(result, contents(), part);
            }

            return result;
        };
    }

    private Func<Dictionary<string, double>> Water(WaterDocument? water)
    {
        var values = water is null ? [] : _waters.Of(water).Select(w => (w.Key, w.GramsPerLitre.Value, Factor: Factor(ErrorsOf(w.GramsPerLitre)))).ToList();
        return () =>
        {
            var result = new Dictionary<string, double>(StringComparer.Ordinal);
            foreach (var (key, value, factor) in values)
            {
                result[key] = result.GetValueOrDefault(key) + (value * factor());
            }

            return result;
        };
    }

    private static IReadOnlyList<RelativeError> ErrorsOf(Uncertain value) =>
        [.. value.Shares.Select(s => new RelativeError(s.Source, value.RelativeStandard!.Value * Math.Sqrt(s.Fraction), ErrorShape.Normal))];

    private static Dictionary<string, double> Grams(AdditionFacts addition) => NutrientKeys.Grams(addition.Elements).ToDictionary(n => n.Key, n => n.Grams, StringComparer.Ordinal);

    private static void Add(Dictionary<string, double> sums, Dictionary<string, double> parts, double factor)
    {
        foreach (var (key, value) in parts)
        {
            sums[key] = sums.GetValueOrDefault(key) + (value * factor);
        }
    }

    private Func<double> Factor(IReadOnlyList<RelativeError> errors)
    {
        var indexed = errors.Select(e => (Index: IndexOf(e), e.Standard)).ToArray();
        return () =>
        {
            var sum = 1.0;
            foreach (var (index, standard) in indexed)
            {
                sum += _draws[index] * standard;
            }

            return sum;
        };
    }

    private int IndexOf(RelativeError error)
    {
        if (!_sources.TryGetValue(error.Source.Id, out var index))
        {
            _sources[error.Source.Id] = index = _shapes.Count;
            _shapes.Add(error.Shape);
        }

        return index;
    }

    /// <summary>A draw with mean 0 and standard deviation 1.</summary>
    private double Draw(ErrorShape shape) => shape switch
    {
        ErrorShape.Rectangular => Math.Sqrt(3) * ((2 * _random.NextDouble()) - 1),
        ErrorShape.Triangular => Math.Sqrt(6) * (_random.NextDouble() + _random.NextDouble() - 1),
        _ => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble()),
    };
}
