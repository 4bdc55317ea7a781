using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Trials;

/// <summary>An error of what was put in, or of what it was put into.</summary>
/// <param name="Divides">True for a volume that the amount is divided by.</param>
internal readonly record struct FactorError(RelativeError Error, bool Divides);

/// <summary>
/// What can be off each time a stock is mixed: weights, volumes, assays and the finished volume, of it and of the stocks it draws on. The
/// errors are those of the uncertainty of its elements; what has one source is off together.
/// </summary>
internal sealed class MixingErrors
{
    private readonly Func<string, StockFacts?> _findStock;
    private readonly MeasurementErrors _measurements;
    private readonly VolumeErrors _volumes;
    private readonly HashSet<string> _open = new(StringComparer.Ordinal);

    private MixingErrors(Func<string, StockFacts?> findStock)
    {
        var notes = new UncertaintyNotes();
        _findStock = findStock;
        _measurements = new MeasurementErrors(notes);
        _volumes = new VolumeErrors(_measurements, notes);
    }

    /// <summary>Of each addition by its id, and of the finished volume.</summary>
    public static (Dictionary<string, List<FactorError>> Additions, List<FactorError> Volume) Of(
        StockFacts stock, Func<string, StockFacts?> findStock)
    {
        var errors = new MixingErrors(findStock);
        return (errors.Additions(stock), [.. errors._volumes.OfStock(stock).Select(e => new FactorError(e, false))]);
    }

    private Dictionary<string, List<FactorError>> Additions(StockFacts stock)
    {
        var file = stock.Stock.File;
        var result = new Dictionary<string, List<FactorError>>(StringComparer.Ordinal);
        _open.Add(file);
        foreach (var aliquot in stock.Aliquots)
        {
            if (_findStock(aliquot.StockFile) is not { } source || _open.Contains(source.Stock.File))
            {
                continue;
            }

            var taken = _volumes.OfAliquot(aliquot, source.Stock.Name, stock).Select(e => new FactorError(e, false))
                .Concat(_volumes.OfStock(source).Select(e => new FactorError(e, true)))
                .ToList();
            foreach (var (id, inner) in Additions(source))
            {
                result[$"{aliquot.Id}/{id}"] = [.. inner, .. taken];
            }
        }

        foreach (var addition in stock.Additions.Where(a => !result.ContainsKey(a.Id)))
        {
            var step = stock.Stock.Steps.OfType<AddStep>().FirstOrDefault(s => s.Id == addition.Id);
            result[addition.Id] =
            [
                .. _measurements.OfAmount(addition, file, step?.Amount?.Value, step?.Tolerance)
                    .Append(_measurements.OfAssay(addition))
                    .Select(e => new FactorError(e, false)),
            ];
        }

        _open.Remove(file);
        return result;
    }
}
