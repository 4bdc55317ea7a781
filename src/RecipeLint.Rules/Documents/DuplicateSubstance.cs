using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>One substance weighed twice for the same stock, or one stock or substance dosed twice into the same recipe.</summary>
internal sealed class DuplicateSubstance : WorkspaceRule, IProposesRepairs
{
    public override string Name => "duplicate-substance";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var stock in facts.Stocks)
        {
            var weighed = stock.Additions.Where(a => !a.ThroughAliquot).Select(Entry.Of);
            var drawn = stock.Stock.Steps.OfType<AliquotStep>()
                .Where(a => a.StockFile is not null)
                .Select(a => new Entry(a.StockFile!, StockName(facts, a.StockFile!), a.Id, a.Place, null, null));
            foreach (var finding in Find(weighed.Concat(drawn), "stock", stock.Stock.Name, context))
            {
                yield return finding;
            }
        }

        foreach (var recipe in facts.Recipes)
        {
            foreach (var finding in Find(recipe.Doses.Select(Entry.Of), "recipe", recipe.Recipe.Name, context))
            {
                yield return Forgotten(facts, recipe, finding) is { } other
                    ? finding with { Told = new($"{finding.Message} {other}") }
                    : finding;
            }
        }
    }

    /// <summary>
    /// The other half of a set, written twice under one name: a stock in the same folder with the same dose that this recipe leaves out.
    /// </summary>
    private static string? Forgotten(Facts facts, RecipeFacts recipe, Finding finding)
    {
        var twice = recipe.Doses.FirstOrDefault(d => d.Entry.Place == finding.Place)?.Stock;
        var dosed = recipe.Doses.Select(d => d.Stock?.Stock.File).ToHashSet(StringComparer.Ordinal);
        var other = twice?.Stock.Dose is null ? null : facts.Stocks.FirstOrDefault(s => !dosed.Contains(s.Stock.File)
            && s.Stock.Dose?.Value == twice.Stock.Dose.Value
            && Folder(s.Stock.File) == Folder(twice.Stock.File));
        return other is null ? null
            : $"'{other.Stock.Name}', which is made for the same dose, is left out: one of the lines may have been meant for it.";
    }

    private static string Folder(string file) => file[..Math.Max(0, file.LastIndexOf('/'))];

    private static IEnumerable<Finding> Find(IEnumerable<Entry> entries, string kind, string name, RuleContext context)
    {
        foreach (var group in entries.GroupBy(e => e.Key).Select(g => g.ToList()).Where(g => g.Count > 1))
        {
            var (first, last) = (group[0], group[^1]);
            var times = group.Count == 2 ? "twice" : $"{group.Count} times";
            yield return context.Find(
                last.Place,
                $"'{first.Name}' goes into the {kind} '{name}' {times}{Amounts(group)}. "
                + "A line copied to be changed and then forgotten is the usual cause, and it doubles what the plants get. "
                + "Delete the line that is too many, or write one line with the sum.",
                Harm.Damage,
                Odds.Certain) with
            {
                Related = [.. group.SkipLast(1).Select(e => new RelatedPlace(e.Place, $"'{first.Name}' is already added here"))],
            };
        }
    }

    private static string Amounts(List<Entry> group)
    {
        if (group.All(e => e.Volume is { Litres: > 0 }))
        {
            var litres = group.Select(e => e.Volume!.Value.Litres).ToList();
            return litres.Sum() < 1 ? Sum(litres.Select(l => l * 1000), "mL") : Sum(litres, "L");
        }

        if (!group.All(e => e.Mass is { Grams: > 0 }))
        {
            return "";
        }

        var grams = group.Select(e => e.Mass!.Value.Grams).ToList();
        return grams.Sum() >= 10_000 ? Sum(grams.Select(g => g / 1000), "kg") : Sum(grams, "g");
    }

    /// <summary>Six digits: these are the writer's own figures and should read as written.</summary>
    private static string Sum(IEnumerable<double> values, string unit)
    {
        var list = values.ToList();
        string Say(double value) => Rounding.SixDigits(value).ToString("0.######", CultureInfo.InvariantCulture);
        return $": {string.Join(" + ", list.Select(Say))} {unit}, together {Say(list.Sum())} {unit}";
    }

    private static string StockName(Facts facts, string file) => facts.Workspace.FindStock(file)?.Name ?? file;

    /// <summary>One line that brings something; lines with the same key bring the same thing.</summary>
    private sealed record Entry(string Key, string Name, string Id, Place Place, Mass? Mass, Volume? Volume)
    {
        internal static Entry Of(AdditionFacts addition) =>
            new(addition.Substance.Id, addition.Substance.Name, addition.Id, addition.Place, addition.Mass, addition.Volume);

        internal static Entry Of(DoseFacts dose)
        {
            if (dose.Direct is { } direct)
            {
                return Of(direct) with { Id = dose.Id, Place = dose.Entry.Place };
            }

            return dose.Stock is { } stock
                ? new Entry(stock.Stock.File, stock.Stock.Name, dose.Id, dose.Entry.Place, null, dose.Volume)
                : new Entry("dose " + dose.Id, dose.Id, dose.Id, dose.Entry.Place, null, null);
        }
    }

    /// <summary>One line with the sum, or the last line out.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        var copies = finding.Related.Select(r => r.Place).Append(finding.Place).ToList();
        var first = copies[0];
        if (AmountText.Sum([.. copies.Select(c => context.Item(c.Child("amount"))?.Text)]) is { } sum)
        {
            yield return Repair.Chemistry(
                "one-line",
                $"Write one line with the sum, {sum}.",
                [
                    new JsonEdit.ReplaceValue(first.Child("amount"), JsonDraft.Of(sum)),
                    .. copies.Skip(1).Select(c => new JsonEdit.Remove(c)),
                ]);
        }

        yield return Repair.Chemistry("drop-copy", "Take out the last of the lines.", new JsonEdit.Remove(finding.Place));
    }
}
