using System.Collections.Immutable;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A stock that only stays clear or preserved as long as its vinegar stays in it.</summary>
public sealed class WeakAcidVolatile : StockRule, IProposesRepairs
{
    private const string Acetate = "Acetate-";

    /// <summary>Part of a metal that must fall out before it counts.</summary>
    private const double NotableLoss = 0.02;

    private const double Width = 0.01;

    private static readonly (string Component, string Name)[] _metals = [("Zn+2", "zinc"), ("Cu+2", "copper"), ("Mn+2", "manganese"), ("Fe+3", "iron")];

    public override string Name => "weak-acid-volatile";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var acids = stock.Additions
            .Where(a => a.Substance.Kind == SubstanceKind.Acid && a.ComponentMoles.GetValueOrDefault(Acetate) > 0)
            .OrderByDescending(a => a.ComponentMoles[Acetate])
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .ToList();
        var state = stock.Chemistry.Mixing;
        if (acids.Count == 0
            || !stock.IsComplete
            || !state.IsSolved
            || (stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= context.Number("freshDays")))
        {
            yield break;
        }

        var vinegar = acids.Sum(a => a.ComponentMoles[Acetate]);
        if (Harm(stock, vinegar, 0) is not { What: null } || Harm(stock, vinegar, 1) is not { What: not null })
        {
            yield break;
        }

        var (lost, harm) = First(stock, vinegar);
        var percent = Rounding.SixDigits(lost * 100);
        var limit = context.Number("mostLost");
        if (harm is null || percent > limit)
        {
            yield break;
        }

        var message = $"Acetic acid is the only acid that '{stock.Stock.Name}' leans on, and it evaporates: once {Say.Number(percent)} % of it is gone the pH goes from {Say.Number(Math.Round(state.Ph, 2))} to {Say.Number(Math.Round(harm.Ph, 2))} and {harm.What}. "
            + "A vinegar stock left open, warm or half empty loses acid and smells of it. "
            + "Keep it closed and cool, or use citric acid, which stays.";
        yield return context.Find(acids[0].Place, message) with
        {
            Related = [.. acids.Skip(1).Select(a => new RelatedPlace(a.Place, "also volatile"))],
            Measured = new Measured("acetic acid that may be lost", percent, limit, "%"),
            Values =
            [
                new NamedValue("acetic acid that may be lost", percent, "%"),
                new NamedValue("pH now", state.Ph, ""),
                new NamedValue("pH then", harm.Ph, ""),
            ],
        };
    }

    /// <summary>The smallest loss that does harm.</summary>
    internal static (double Lost, Consequence? Harm) First(StockFacts stock, double vinegar)
    {
        double fine = 0, bad = 1;
        Consequence? harm = null;
        while (bad - fine > Width)
        {
            var middle = (fine + bad) / 2;
            if (Harm(stock, vinegar, middle) is { What: not null } found)
            {
                (bad, harm) = (middle, found);
            }
            else
            {
                fine = middle;
            }
        }

        return (bad, harm);
    }

    /// <summary>What happens with that part of the acetic acid gone; null when it cannot be computed.</summary>
    internal static Consequence? Harm(StockFacts stock, double vinegar, double lost)
    {
        var gone = ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, [KeyValuePair.Create(Acetate, -vinegar * lost), KeyValuePair.Create("H+", -vinegar * lost)]);
        var moles = Analysis.Solutions.ComponentMoles.Of(
            Analysis.Solutions.ComponentMoles.Sum([stock.ComponentMoles, gone]).Select(m =>
                m.Key == Acetate ? KeyValuePair.Create(m.Key, Math.Max(0, m.Value)) : m));
        var settled = Settled.Of(SolutionMix.Of(moles, stock.Volume), SolutionMix.FilledAtCelsius);
        if (settled is null)
        {
            return null;
        }

        var (metal, share) = _metals.Select(m => (m.Name, Share: settled.LostShare(m.Component))).MaxBy(m => m.Share);
        return new Consequence(settled.Ph, share > NotableLoss ? $"{metal} begins to fall out" : null);
    }

    internal sealed record Consequence(double Ph, string? What);

    /// <summary>An acid that stays beside it, or a short life.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        foreach (var acid in Additions.Acid(context, stock, 2))
        {
            yield return acid;
        }

        yield return Keep.For(context, stock, context.Rule.Number("freshDays"));
    }
}
