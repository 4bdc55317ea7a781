using RecipeLint.Analysis.Mixing;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What a vessel holds, or would hold, as the gate looks at it. Immutable.</summary>
public sealed record Holding
{
    /// <summary>Reagent of a trial or a rescue, g per litre of contents: more than any bench needs (common practice, no source).</summary>
    public const double TrialGramsPerLitre = 100;

    public required IReadOnlyList<Held> Items { get; init; }

    /// <summary>Volume of the contents, L, above 0.</summary>
    public required double Litres { get; init; }

    /// <summary>True when something is in it whose composition nobody can tell.</summary>
    public bool HasUnknown { get; init; }

    /// <summary>Hazards of which a sign was told.</summary>
    public IReadOnlyList<HazardKind> Suspected { get; init; } = [];

    /// <summary>How it is kept; null for what is not a finished stock.</summary>
    internal KeptStock? Kept { get; init; }

    /// <summary>A finished stock: additions, the reagents of its pH adjustments, and what could not be read.</summary>
    public static Holding Of(StockFacts stock) => new()
    {
        Items = [.. stock.Additions.Select(Held.Of), .. Reagents(stock, int.MaxValue)],
        Litres = Math.Max(stock.Volume.Litres, 1e-6),
        HasUnknown = Unread(stock, int.MaxValue) || stock.Additions.Any(a => HazardRoles.Of(a.Substance).Contains(HazardRole.Unknown)),
        Kept = new KeptStock(stock),
    };

    /// <summary>The vessel after one step of a stock.</summary>
    public static Holding After(StockFacts stock, MixingStep step) => new()
    {
        Items = [.. step.After.Additions.Select(Held.Of), .. Reagents(stock, step.Index)],
        Litres = Math.Max(step.After.Litres, 1e-6),
        HasUnknown = Unread(stock, step.Index) || step.After.Additions.Any(a => HazardRoles.Of(a.Substance).Contains(HazardRole.Unknown)),
    };

    /// <summary>Substances of a beaker or a part.</summary>
    public static Holding Of(IEnumerable<Held> items, double litres)
    {
        List<Held> all = [.. items];
        return new Holding { Items = all, Litres = Math.Max(litres, 1e-6), HasUnknown = all.Exists(i => i.Is(HazardRole.Unknown)) };
    }

    public Holding With(Held item) => this with { Items = [.. Items, item], HasUnknown = HasUnknown || item.Is(HazardRole.Unknown) };

    public Holding Suspecting(IEnumerable<HazardKind> kinds) => this with { Suspected = [.. kinds] };

    public IEnumerable<Held> Having(HazardRole role) => Items.Where(i => i.Is(role));

    public Held? First(params HazardRole[] roles) => roles.SelectMany(Having).FirstOrDefault();

    /// <summary>mol/L of a component, from what was put in; source water is left out.</summary>
    public double MolesPerLitre(string component) => Items.Sum(i => i.MolesOf(component)) / Litres;

    /// <summary>g/L of the compounds of a role.</summary>
    public double GramsPerLitre(HazardRole role) => Having(role).Sum(i => i.PureGrams) / Litres;

    /// <summary>
    /// Reagents of pH adjustments up to a step. One whose amount is not known counts with a gram: that it is there decides.
    /// </summary>
    private static IEnumerable<Held> Reagents(StockFacts stock, int upTo) =>
        stock.Adjustments
            .Where(a => a.Reagent is not null && IndexOf(stock, a.Place) <= upTo)
            .Select(a => Held.Of(a.Reagent!, a.Amount?.Grams ?? 1, a.Place));

    private static bool Unread(StockFacts stock, int upTo) =>
        stock.Stock.Steps.Take(upTo == int.MaxValue ? stock.Stock.Steps.Count : upTo + 1).Any(s => s switch
        {
            AddStep add => add.Substance is null || add.Amount is null,
            AliquotStep aliquot => stock.Aliquots.All(a => a.Place != aliquot.Place),
            AdjustStep adjust => adjust.Reagent is null,
            _ => false,
        });

    private static int IndexOf(StockFacts stock, Recipes.Text.Place place)
    {
        for (var i = 0; i < stock.Stock.Steps.Count; i++)
        {
            if (stock.Stock.Steps[i].Place == place)
            {
                return i;
            }
        }

        return 0;
    }
}
