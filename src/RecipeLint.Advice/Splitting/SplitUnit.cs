using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Advice.Splitting;

/// <summary>Why substances travel together.</summary>
public enum UnitKind
{
    /// <summary>One salt or acid of the bulk of the recipe, or several hydrates of it.</summary>
    Bulk,

    /// <summary>Iron with the agent that chelates it.</summary>
    Iron,

    /// <summary>Trace elements, below weighing in a main part, and what keeps their stock.</summary>
    Trace,
}

/// <summary>What the search moves as one.</summary>
/// <param name="Kind">Why it is one.</param>
/// <param name="Ingredients">At least one, in the order of the recipe.</param>
public sealed record SplitUnit(UnitKind Kind, IReadOnlyList<SplitIngredient> Ingredients)
{
    /// <summary>
    /// A litre of final solution holds less of a trace salt than this, g (common practice, no source: bags of premixed feed are dosed at
    /// ten times as much).
    /// </summary>
    private const double MostTraceGrams = 0.05;

    /// <summary>
    /// Any other salt below this is as small as a trace, g per litre (the potassium chloride of micronutrient stocks: 4 mg/L).
    /// </summary>
    private const double TinyGrams = 0.01;

    private static readonly Element[] TraceElements =
        [Element.B, Element.Mn, Element.Zn, Element.Cu, Element.Mo, new("Ni"), new("Co"), new("I"), new("Se")];

    public ComponentMoles MolesPerLitre { get; } = ComponentMoles.Sum(Ingredients.Select(i => i.MolesPerLitre));

    /// <summary>"potassium nitrate", "the trace elements".</summary>
    public string Name => Kind switch
    {
        UnitKind.Trace when Ingredients.Count > 1 => "the trace elements",
        _ => string.Join(" with ", Ingredients.Select(i => i.Substance.Name)),
    };

    /// <summary>True for a single bulk salt without calcium: half of it does in each of two parts what the whole does in one.</summary>
    public bool CanBeDivided =>
        Kind == UnitKind.Bulk && Ingredients is [{ Substance.Kind: SubstanceKind.Salt }] && !MolesPerLitre.ContainsKey(Component.Calcium);

    /// <summary>
    /// The units of a recipe, bulk first with calcium at its head, then iron, then traces. Trace salts are one unit because a main part
    /// cannot be weighed with each apart; iron that is not yet chelated goes with its chelating agent; organic acids, preservatives and
    /// dyes go with the traces where their stock was that of the traces, for they were put there to keep it; the same salt at another
    /// hydrate is one unit because nothing can part what one ion does.
    /// </summary>
    public static IReadOnlyList<SplitUnit> Of(IReadOnlyList<SplitIngredient> ingredients)
    {
        var trace = ingredients.Where(IsTrace).ToList();
        var iron = ingredients.Where(i => !trace.Contains(i) && IsIron(i)).ToList();
        var bare = iron.Any(i => !IsChelated(i));
        var agents = ingredients.Where(i => i.Substance.Kind == SubstanceKind.ChelatingAgent && !trace.Contains(i) && !iron.Contains(i))
            .ToList();
        if (bare)
        {
            iron.AddRange(agents);
        }
        else if (trace.Count > 0)
        {
            trace.AddRange(agents);
        }

        var traceStocks = trace.SelectMany(i => i.From).ToHashSet(StringComparer.Ordinal);
        var bulk = ingredients.Except(trace).Except(iron).ToList();
        var keepers = bulk.Where(i => IsKeeper(i, trace, traceStocks)).ToList();
        trace.AddRange(keepers);
        var units = bulk.Except(keepers)
            .GroupBy(i => string.Join(' ', i.MolesPerLitre.Keys), StringComparer.Ordinal)
            .Select(g => new SplitUnit(UnitKind.Bulk, [.. g]))
            .OrderByDescending(u => u.MolesPerLitre.GetValueOrDefault(Component.Calcium))
            .ToList();
        if (iron.Count > 0)
        {
            units.Add(new SplitUnit(UnitKind.Iron, InOrder(ingredients, iron)));
        }

        if (trace.Count > 0)
        {
            units.Add(new SplitUnit(UnitKind.Trace, InOrder(ingredients, trace)));
        }

        return units;
    }

    private static List<SplitIngredient> InOrder(IReadOnlyList<SplitIngredient> all, List<SplitIngredient> some) =>
        [.. all.Where(some.Contains)];

    private static bool IsTrace(SplitIngredient i) =>
        !IsIron(i)
        && i.Substance.Kind is SubstanceKind.Salt or SubstanceKind.Chelate or SubstanceKind.Product
        && ((i.Mass.GramsPerLitre <= MostTraceGrams && TraceElements.Any(e => i.MilligramsPerLitre(e) > 0))
            || (i.Mass.GramsPerLitre <= TinyGrams && i.Substance.Kind == SubstanceKind.Salt));

    private static bool IsIron(SplitIngredient i) =>
        i.Substance.Iron is not null || (i.Substance.Kind != SubstanceKind.Product && i.MilligramsPerLitre(Element.Fe) > 0);

    private static bool IsChelated(SplitIngredient i) => i.Substance.Kind == SubstanceKind.Chelate || i.Substance.Iron is not null;

    private static bool IsKeeper(SplitIngredient i, List<SplitIngredient> trace, HashSet<string> traceStocks) =>
        trace.Count > 0
        && (i.Substance.Kind is SubstanceKind.Preservative or SubstanceKind.Dye || i.Substance.FeedsMicrobes
            ? i.From.Count == 0 || i.From.Overlaps(traceStocks)
            : i.Substance.Kind is SubstanceKind.Acid or SubstanceKind.Base && i.From.Count > 0 && i.From.IsSubsetOf(traceStocks));
}
