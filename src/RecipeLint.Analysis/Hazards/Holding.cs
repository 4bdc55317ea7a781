using RecipeLint.Analysis.Mixing;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What a vessel holds, or would hold, as the gate looks at it. Immutable.</summary>
public sealed record Holding
{
    /// <summary>Reagent of a trial or a rescue, g per litre of contents: more than any bench needs (common practice, no source).</summary>
    public const double TrialGramsPerLitre = 100;

    private readonly RoleSet _roles;

    public required IReadOnlyList<Held> Items
    {
        get;
        init
        {
            field = value;
            _roles = RoleSet.OfAll(value);
        }
    }

    /// <summary>Volume of the contents, L, above 0.</summary>
    public required double Litres { get; init; }

    /// <summary>True when something is in it whose composition nobody can tell.</summary>
    public bool HasUnknown { get; init; }

    /// <summary>
    /// True when not even its kind is known of something in it: a product that states nothing, or a line that could not be read. Of an
    /// extract the kind is known.
    /// </summary>
    public bool HasNameless { get; init; }

    /// <summary>Hazards of which a sign was told.</summary>
    public IReadOnlyList<HazardKind> Suspected { get; init; } = [];

    /// <summary>How it is kept; null for what is not a finished stock.</summary>
    internal KeptStock? Kept { get; init; }

    /// <summary>A finished stock: additions, the reagents of its pH adjustments, and what could not be read.</summary>
    public static Holding Of(StockFacts stock) => new()
    {
        Items = [.. stock.Additions.Select(Held.Of), .. Reagents(stock), .. UnreadStep.Of(stock).SelectMany(u => u.Items)],
        Litres = Math.Max(stock.Volume.Litres, 1e-6),
        HasUnknown = UnreadStep.Of(stock).Any(u => u.IsNameless) || stock.Additions.Any(a => Held.Of(a).Is(HazardRole.Unknown)),
        HasNameless = UnreadStep.Of(stock).Any(u => u.IsNameless) || stock.Additions.Any(a => Held.Of(a).IsNameless),
        Kept = new KeptStock(stock),
    };

    /// <summary>
    /// The tank of a recipe once every dose and the reagent of its pH are in, the reagents of its stocks with them, and what could not be
    /// read; its water is left out.
    /// </summary>
    public static Holding Of(RecipeFacts recipe)
    {
        var (read, unread) = (OfWhatIsRead(recipe), UnreadStep.Of(recipe));
        if (unread.Count == 0)
        {
            return read;
        }

        var whole = Of(read.Items.Concat(unread.SelectMany(u => u.Items)), read.Litres);
        return unread.Any(u => u.IsNameless) ? whole.WithNameless() : whole;
    }

    /// <summary>The same without what could not be read, for who asks how much of something the plants get.</summary>
    public static Holding OfWhatIsRead(RecipeFacts recipe)
    {
        var items = recipe.Doses.SelectMany(d => d.Stock is { } stock
            ? stock.Additions.Select(a => Held.Of(a.Substance, a.Mass.Grams * (d.Volume / stock.Volume), a.Place))
                .Concat(stock.Adjustments.Where(a => a is { Reagent: not null, Amount: not null })
                    .Select(a => Held.Of(a.Reagent!, a.Amount!.Value.Grams * (d.Volume / stock.Volume), a.Place)))
            : d.Direct is { } direct ? [Held.Of(direct)] : []);
        return Of(
            recipe.Adjustment is { Reagent: { } reagent } adjustment
                ? items.Append(Held.Of(reagent, adjustment.Amount?.Grams ?? 1, adjustment.Place))
                : items,
            recipe.FinalVolume.Litres);
    }

    /// <summary>The vessel after each step of a stock, as many as its steps.</summary>
    internal static IEnumerable<Holding> AfterEach(StockFacts stock)
    {
        var steps = new Dictionary<Place, int>();
        foreach (var (index, step) in stock.Stock.Steps.Index())
        {
            steps.TryAdd(step.Place, index);
        }

        // What stands in no step of the file counts from the first on.
        var unread = UnreadStep.Of(stock);
        var reagents = Reagents(stock).Select(r => (Held: r, From: r.Place is { } place ? steps.GetValueOrDefault(place) : 0))
            .Concat(unread.SelectMany(u => u.Items.Select(i => (Held: i, From: u.Index)))).ToList();
        var (hasUnknown, hasNameless, put) = (false, false, 0);
        foreach (var step in stock.Mixing.Steps)
        {
            List<Held> items = [.. step.After.Additions.Select(Held.Of)];
            for (; put < items.Count; put++)
            {
                hasUnknown |= items[put].Is(HazardRole.Unknown);
                hasNameless |= items[put].IsNameless;
            }

            var lost = unread.Any(u => u.IsNameless && u.Index <= step.Index);

            yield return new()
            {
                Items = [.. items, .. reagents.Where(r => r.From <= step.Index).Select(r => r.Held)],
                Litres = Math.Max(step.After.Litres, 1e-6),
                HasUnknown = hasUnknown || lost,
                HasNameless = hasNameless || lost,
            };
        }
    }

    /// <summary>Substances of a beaker or a part.</summary>
    public static Holding Of(IEnumerable<Held> items, double litres)
    {
        List<Held> all = [.. items];
        return new Holding
        {
            Items = all,
            Litres = Math.Max(litres, 1e-6),
            HasUnknown = all.Exists(i => i.Is(HazardRole.Unknown)),
            HasNameless = all.Exists(i => i.IsNameless),
        };
    }

    public Holding With(Held item) => this with
    {
        Items = [.. Items, item],
        HasUnknown = HasUnknown || item.Is(HazardRole.Unknown),
        HasNameless = HasNameless || item.IsNameless,
    };

    /// <summary>The same with something in it that nobody can name.</summary>
    internal Holding WithNameless() => this with { HasUnknown = true, HasNameless = true };

    /// <summary>What is known of it, as if nothing else were in it.</summary>
    public Holding OnlyWhatIsKnown() => this with { HasUnknown = false, HasNameless = false };

    public Holding Suspecting(IEnumerable<HazardKind> kinds) => this with { Suspected = [.. kinds] };

    public IEnumerable<Held> Having(HazardRole role) => _roles.Has(role) ? Items.Where(i => i.Is(role)) : [];

    /// <summary>Whether anything in it has the role.</summary>
    public bool Has(HazardRole role) => _roles.Has(role);

    /// <summary>The first thing of the first role that any has.</summary>
    public Held? First(params ReadOnlySpan<HazardRole> roles)
    {
        foreach (var role in roles)
        {
            for (var i = 0; Has(role) && i < Items.Count; i++)
            {
                if (Items[i].Is(role))
                {
                    return Items[i];
                }
            }
        }

        return null;
    }

    /// <summary>mol/L of a component, from what was put in; source water is left out.</summary>
    public double MolesPerLitre(string component) => Items.Sum(i => i.MolesOf(component)) / Litres;

    /// <summary>g/L of the compounds of a role.</summary>
    public double GramsPerLitre(HazardRole role) => Having(role).Sum(i => i.PureGrams) / Litres;

    /// <summary>
    /// Reagents of pH adjustments. One whose amount is not known counts with a gram: that it is there decides.
    /// </summary>
    private static IEnumerable<Held> Reagents(StockFacts stock) => stock.Adjustments
        .Where(a => a.Reagent is not null)
        .Select(a => Held.Of(a.Reagent!, a.Amount?.Grams ?? 1, a.Place));
}
