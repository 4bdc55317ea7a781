using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Feeds;

/// <summary>Turns the entries of one recipe into what reaches the final solution.</summary>
internal sealed class DoseReader(Volume final, ShopSettings shop, StockAnalysis stocks, AssumptionList assumptions)
{
    /// <summary>False as soon as an entry could not be read or rests on an incomplete stock.</summary>
    public bool IsComplete { get; private set; } = true;

    public DoseFacts? Read(DoseEntry entry)
    {
        var facts = entry switch
        {
            StockDose dose => ReadStock(dose),
            DirectDose dose => ReadDirect(dose),
            _ => null,
        };
        IsComplete &= facts is not null && facts.Stock is not { IsComplete: false };
        return facts;
    }

    private DoseFacts? ReadStock(StockDose entry)
    {
        if (stocks.Of(entry.StockFile) is not { } stock)
        {
            return null;
        }

        var measure = entry.With is { } with ? shop.FindMeasure(with.Value) : null;
        if (Poured(entry, stock, measure) is not var (volume, basis))
        {
            return null;
        }

        var share = volume / stock.Volume;
        return new DoseFacts
        {
            Entry = entry,
            Stock = stock,
            Volume = volume,
            Dose = new Dose(volume / final),
            Basis = basis,
            Measure = measure,
            Elements = stock.Totals.Times(share),
            Impurities = stock.Impurities.Times(share),
            ComponentMoles = stock.ComponentMoles.Times(share),
        };
    }

    /// <summary>
    /// What is stated decides: the dose, the volume, the strokes of a device of known size; else the dose the stock was made for.
    /// </summary>
    private (Volume Volume, DoseBasis Basis)? Poured(StockDose entry, StockFacts stock, Measure? measure)
    {
        if (entry.Dose is { } dose)
        {
            return (dose.Value * final, DoseBasis.Stated);
        }

        if (entry.Amount is { } amount)
        {
            return (amount.Value, DoseBasis.Volume);
        }

        if (entry.Strokes is { } strokes && measure?.Capacity is { } capacity)
        {
            return (capacity * strokes.Value, DoseBasis.Strokes);
        }

        if (stock.Stock.Dose is { } own)
        {
            if (entry.Strokes is not null)
            {
                assumptions.Add(
                    "strokes",
                    $"The volume of a stroke for '{entry.Id}' is not known: the dose the stock was made for is used.",
                    entry.Place);
            }

            return (own.Value * final, DoseBasis.StockOwn);
        }

        return null;
    }

    private DoseFacts? ReadDirect(DirectDose entry)
    {
        if (entry.Substance is not { } substance || entry.Amount is not { } amount)
        {
            return null;
        }

        var request = new AdditionRequest(entry.Id, entry.Place, substance, amount.Value, entry.Assay, entry.With?.Value);
        if (AdditionReader.Read(request, final, shop, assumptions) is not { } addition)
        {
            return null;
        }

        return new DoseFacts
        {
            Entry = entry,
            Direct = addition,
            Volume = addition.Volume ?? Volume.Zero,
            Basis = DoseBasis.Direct,
            Measure = addition.Measure,
            Elements = addition.Elements,
            Impurities = addition.Impurities,
            ComponentMoles = addition.ComponentMoles,
        };
    }
}
