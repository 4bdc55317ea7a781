using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// More or less of what brings an element to the plants. What the same salt brings beside it moves along, and the trial shows it.
/// </summary>
internal static class Contributions
{
    private const int Most = 4;

    /// <summary>What brings a smaller part of an element is not there for it.</summary>
    private const double Notable = 0.1;

    /// <summary>An element aims a little inside its bound, so that rounding does not take it out again.</summary>
    private const double Inside = 0.01;

    /// <summary>Times the present dose; further off it is the stock that is wrong.</summary>
    private const double LeastDose = 0.1, MostDose = 10;

    /// <summary>
    /// Each of the largest contributions changed so that an element that is off comes to its target, else to the middle of what is usual;
    /// where the profile gives no such range, inside its bound, mg/L.
    /// </summary>
    /// <param name="may">
    /// What may be changed for it, such as nitrates alone, and then no whole dose; null for everything.
    /// </param>
    public static IEnumerable<RepairProposal> ToLimit(
        RepairContext context, RecipeFacts recipe, string key, double limit, Func<AdditionFacts, bool>? may = null) =>
        recipe.Elements.TryGetValue(key, out var fact)
            && Aims(recipe, key, limit, fact.Concentration.MilligramsPerLitre) is var aims
            ? To(context, recipe, fact, aims, null, may).Concat(may is null ? Doses(context, recipe, fact, aims) : [])
            : [];

    /// <summary>
    /// Each of the largest contributions changed so that an element comes to its target, mg/L, or the target stated that is there.
    /// </summary>
    public static IEnumerable<RepairProposal> ToTarget(RepairContext context, RecipeFacts recipe, Target target, double asked) =>
        recipe.Elements.TryGetValue(target.Key.Value, out var fact)
            ? To(context, recipe, fact, [asked], target).Concat(Doses(context, recipe, fact, [asked]))
            : [];

    private static IEnumerable<RepairProposal> To(
        RepairContext context, RecipeFacts recipe, ElementFact fact, List<double> aims, Target? target,
        Func<AdditionFacts, bool>? may = null)
    {
        var found = fact.Concentration.MilligramsPerLitre;
        foreach (var (addition, brought) in Of(context, recipe, fact)
            .Where(c => c.MilligramsPerLitre >= Notable * found && may?.Invoke(c.Addition) != false)
            .Take(Most))
        {
            yield return new RepairProposal.Ladder(
                aims.Select(aim => To(context, addition, 1 + ((aim - found) / brought), target is not null)).OfType<Repair>());
        }

        if (target is not null && Amounts.With(context, target.Place, Math.Round(found, 1)) is var (edit, text)
            && context.Item(target.Place)?.Text.Contains(" as ", StringComparison.Ordinal) == false)
        {
            yield return Repair.Chemistry("state-what-is-there", $"State {text} as the target, if that is what is meant.", edit);
        }
    }

    /// <summary>
    /// Where an element that is off its range may go, the best first: its target, the middle of the usual range, then nearer to the bound
    /// that is passed, which is said only where nothing harms there.
    /// </summary>
    private static List<double> Aims(RecipeFacts recipe, string key, double limit, double found)
    {
        var range = recipe.Profile.Find(key);
        var isHigh = found > limit;
        var aims = new List<double>();
        if (recipe.Recipe.Targets.FirstOrDefault(t => t.Key.Value == key)?.Concentration is { MilligramsPerLitre: var target })
        {
            aims.Add(target);
        }

        if (range is { SufficientLow: { } low, SufficientHigh: { } high })
        {
            aims.AddRange([(low + high) / 2, low + ((isHigh ? 0.75 : 0.25) * (high - low))]);
        }

        double? usual = isHigh ? range?.SufficientHigh : range?.SufficientLow;
        aims.Add((usual ?? limit) * (isHigh ? 1 - Inside : 1 + Inside));
        return [.. aims.Where(a => isHigh ? a < found : a > found)];
    }

    private static Repair? To(RepairContext context, AdditionFacts addition, double factor, bool isTarget) => factor switch
    {
        <= 0.001 => Additions.Drop(addition),
        > 1 when !Feeds(addition) => null,
        < 1 => Additions.Times(context, addition, factor, "less", isTarget ? Round.Nearest : Round.Down),
        _ => Additions.Times(context, addition, factor, "more", isTarget ? Round.Nearest : Round.Up),
    };

    /// <summary>
    /// False for what is there for something else and only carries an element along: a hundred times the preservative is no potassium
    /// fertiliser. An alkali is none either: it is dosed by pH.
    /// </summary>
    private static bool Feeds(AdditionFacts addition) => addition.Substance.Kind
        is not (SubstanceKind.Preservative or SubstanceKind.Dye or SubstanceKind.ChelatingAgent or SubstanceKind.Oxidiser
            or SubstanceKind.Base);

    /// <summary>Everything that brings one of the elements of a ratio, more or less of it as far as needed.</summary>
    public static IEnumerable<RepairProposal> Either(RepairContext context, RecipeFacts recipe, IEnumerable<string> keys)
    {
        foreach (var addition in LargestOf(context, recipe, keys))
        {
            yield return Additions.Less(context, addition);
            if (Feeds(addition))
            {
                yield return Additions.More(context, addition, 5);
            }
        }
    }

    /// <summary>Less of what brings one form of an element, or more of what brings the other.</summary>
    public static IEnumerable<RepairProposal> Shift(
        RepairContext context, RecipeFacts recipe, IEnumerable<string> lower, IEnumerable<string> raise) =>
        LargestOf(context, recipe, lower)
            .Select(a => Additions.Less(context, a))
            .Concat(LargestOf(context, recipe, raise).Where(Feeds).Select(a => Additions.More(context, a, 5)));

    /// <summary>The two that bring most of each of some elements.</summary>
    private static IEnumerable<AdditionFacts> LargestOf(RepairContext context, RecipeFacts recipe, IEnumerable<string> keys) =>
        keys.Where(recipe.Elements.ContainsKey)
            .SelectMany(k => Of(context, recipe, recipe.Elements[k]).Take(2))
            .Select(c => c.Addition)
            .DistinctBy(a => a.Place);

    /// <summary>All doses of a recipe times a factor; null where one cannot be changed.</summary>
    public static Repair? AllDoses(RepairContext context, RecipeFacts recipe, double factor)
    {
        var edits = recipe.Recipe.Doses.Select(d => Dose(context, recipe, d, factor)).ToList();
        return edits.Count == 0 || edits.Contains(null)
            ? null
            : Repair.Chemistry(
                "all-doses",
                $"Dose everything in '{recipe.Recipe.Name}' at {Say.Number(factor)} times the present rate.",
                [.. edits.OfType<JsonEdit>()]);
    }

    /// <summary>What is weighed or poured for an element with the mg/L it brings, most first.</summary>
    private static IEnumerable<(AdditionFacts Addition, double MilligramsPerLitre)> Of(
        RepairContext context, RecipeFacts recipe, ElementFact fact) =>
        fact.Contributions
            .Select(c => (Addition: AdditionOf(context, recipe, c), c.Concentration.MilligramsPerLitre))
            .Where(c => c.Addition is not null && c.MilligramsPerLitre > 0)
            .Select(c => (c.Addition!, c.MilligramsPerLitre))
            .OrderByDescending(c => c.MilligramsPerLitre);

    private static AdditionFacts? AdditionOf(RepairContext context, RecipeFacts recipe, Contribution contribution) =>
        recipe.Doses.FirstOrDefault(d => d.Id == contribution.Source) is { } dose
            ? dose.Direct
                ?? (dose.Stock is { } stock ? context.AdditionAt(context.Facts.FindStock(stock.Stock.File)!, contribution.Place) : null)
            : null;

    /// <summary>The other hydrates of what brings an element, gram for gram: the bag was another one than the file says.</summary>
    public static IEnumerable<RepairProposal> OtherHydrates(RepairContext context, RecipeFacts recipe, string key)
    {
        if (!recipe.Elements.TryGetValue(key, out var fact))
        {
            yield break;
        }

        foreach (var (addition, _) in Of(context, recipe, fact).Take(Most))
        {
            if (addition.Substance.HydrateFamily is not { } family || context.Item(addition.Place.Child("add")) is null)
            {
                continue;
            }

            foreach (var other in context.Workspace.Catalogue.Substances.Where(s => s.HydrateFamily == family
                && s.Id != addition.Substance.Id))
            {
                yield return Repair.Chemistry(
                    $"name-{Slug.Of(other.Id, ".")}",
                    $"Name {other.Name} instead of {addition.Substance.Name}, if that is what is weighed.",
                    new JsonEdit.ReplaceValue(addition.Place.Child("add"), JsonDraft.Of(other.Id)));
            }
        }
    }

    /// <summary>The target read on the basis labels use.</summary>
    public static IEnumerable<RepairProposal> OtherBasis(RepairContext context, Target target)
    {
        if (Array.Find(_bases, b => b.Key == target.Key.Value).Basis is not { } basis
            || context.Item(target.Place)?.Text is not { } text || text.Contains(" as ", StringComparison.Ordinal))
        {
            yield break;
        }

        var end = text.IndexOf('±', StringComparison.Ordinal) is var sign and > 0 ? sign : text.Length;
        var read = $"{text[..end].TrimEnd()} as {basis}{(end < text.Length ? " " + text[end..] : "")}";
        yield return Repair.Chemistry(
            $"as-{basis.ToLowerInvariant()}",
            $"Ask for '{read}' instead of '{text}', if that is what is meant.",
            new JsonEdit.ReplaceValue(target.Place, JsonDraft.Of(read)));
    }

    private static readonly (string Key, string Basis)[] _bases =
        [
            ("P", "P2O5"), ("K", "K2O"), ("Ca", "CaO"), ("Mg", "MgO"), ("S", "SO4"), ("NO3-N", "NO3"), ("NH4-N", "NH4"), ("B", "B2O3"),
            ("Si", "SiO2"),
        ];

    /// <summary>The whole dose of the stock that brings most of it.</summary>
    private static IEnumerable<RepairProposal> Doses(RepairContext context, RecipeFacts recipe, ElementFact fact, List<double> aims)
    {
        var most = fact.Contributions
            .GroupBy(c => c.Source)
            .OrderByDescending(g => g.Sum(c => c.Concentration.GramsPerLitre))
            .FirstOrDefault();
        if (most is not null && recipe.Recipe.Doses.FirstOrDefault(d => d.Id == most.Key) is StockDose entry)
        {
            var facts = recipe.Doses.First(d => d.Id == entry.Id);
            if (facts is { Dose: { LitresPerLitre: > 0 } used, Stock.Stock.Dose: { } own } && Math.Abs((own.Value.LitresPerLitre
                / used.LitresPerLitre) - 1) > Inside
                && Dose(context, recipe, entry, own.Value.LitresPerLitre / used.LitresPerLitre) is { } asStated)
            {
                yield return Repair.Chemistry(
                    "own-dose",
                    $"Dose '{Name(recipe, entry)}' at {Say.Number(own.Value.MillilitresPerLitre)} mL/L, as the stock says.",
                    asStated);
            }

            var brought = most.Sum(c => c.Concentration.MilligramsPerLitre);
            yield return new RepairProposal.Ladder(aims
                .Select(aim => 1 + ((aim - fact.Concentration.MilligramsPerLitre) / brought))
                .Where(f => f is >= LeastDose and <= MostDose && Math.Abs(f - 1) > Inside / 10)
                .Select(f => Dose(context, recipe, entry, f) is { } edit
                    ? Repair.Chemistry(
                        f < 1 ? "lower-dose" : "higher-dose",
                        $"Dose '{Name(recipe, entry)}' at {Say.Number(f)} times the present rate.",
                        edit)
                    : null)
                .OfType<Repair>());
        }
    }

    private static string Name(RecipeFacts recipe, StockDose entry) =>
        recipe.Doses.FirstOrDefault(d => d.Id == entry.Id)?.Stock?.Stock.Name ?? entry.Id;

    private static JsonEdit? Dose(RepairContext context, RecipeFacts recipe, DoseEntry entry, double factor) => entry switch
    {
        StockDose { Dose: { } dose } => Amounts.Times(context, dose.Place, factor)?.Edit,
        StockDose { Amount: { } amount } => Amounts.Times(context, amount.Place, factor)?.Edit,
        StockDose { Strokes: null } stock when recipe.Doses.FirstOrDefault(d => d.Id == stock.Id)?.Dose is { } own =>
            new JsonEdit.InsertMember(
                stock.Place,
                "dose",
                JsonDraft.Of($"{AmountText.Write(AmountText.ToDigits(own.MillilitresPerLitre * factor, 4))} mL/L"),
                "stock"),
        DirectDose { Amount: { } amount } => Amounts.Times(context, amount.Place, factor)?.Edit,
        _ => null,
    };
}
