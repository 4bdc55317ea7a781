using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A stock that only stays clear or preserved as long as its vinegar stays in it.</summary>
internal sealed class WeakAcidVolatile : StockRule<VolatileAcid>, IProposesRepairs
{
    public const string RuleName = "weak-acid-volatile";

    private const string Acetate = Component.Acetate;

    /// <summary>Part of a metal that must fall out before it counts.</summary>
    private const double NotableLoss = 0.02;

    private const double Width = 0.01;

    private static readonly (string Component, string Name)[] _metals =
        [(Component.Zinc, "zinc"), (Component.Copper, "copper"), (Component.Manganese, "manganese"),
        (Component.FerricIron, "iron")];

    public override string Name => RuleName;

    protected override IEnumerable<VolatileAcid> Judge(StockFacts stock, RuleContext context)
    {
        var acids = stock.Additions
            .Where(a => a.Substance.Kind == SubstanceKind.Acid && a.ComponentMoles.GetValueOrDefault(Acetate) > 0)
            .OrderByDescending(a => a.ComponentMoles[Acetate])
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .ToList();
        var isComputed = acids.Count > 0 && stock.IsComplete && stock.Chemistry.Mixing.TellsPh;
        var kept = KeptLong.Check(stock, context.Options<WeakAcidVolatileOptions>().FreshDays);
        if (!isComputed || kept is { Holds: false })
        {
            yield return new VolatileAcid(stock, acids, kept, 0, null, null)
            {
                Checks = [.. kept is null ? [] : new[] { kept },
                    Check.That("acetic acid is in it, and its pH can be computed", isComputed)],
            };
            yield break;
        }

        var vinegar = acids.Sum(a => a.ComponentMoles[Acetate]);
        var leans = HarmDone(stock, vinegar, 0) is { What: null } && HarmDone(stock, vinegar, 1) is { What: not null };
        var (lost, harm) = leans ? First(stock, vinegar) : (0, null);
        var percent = harm is null
            ? null
            : new Check("so little that it can evaporate", Rounding.SixDigits(lost * 100), Relation.AtMost,
            context.Options<WeakAcidVolatileOptions>().MostLost, "%");
        yield return new VolatileAcid(stock, acids, kept, vinegar, harm, percent)
        {
            Checks =
            [
                .. kept is null ? [] : new[] { kept },
                .. percent is null ? [] : new[] { percent },
                Check.That("it stays clear with the vinegar and not without it", harm is not null),
            ],
        };
    }

    protected override Finding Describe(VolatileAcid verdict, RuleContext context)
    {
        var (stock, harm, percent) = (verdict.Stock, verdict.Harm!, verdict.Lost!.Value);
        var ph = stock.Chemistry.Mixing.Ph;
        var message = $"Acetic acid is the only acid that '{stock.Stock.Name}' leans on, and it evaporates: once {Say.Number(percent)} "
            + $"% of it is gone the pH goes from {Say.Ph(Math.Round(ph, 2))} to {Say.Ph(Math.Round(harm.Ph, 2))} and "
            + $"{harm.What} begins to fall out. "
            + "A vinegar stock left open, warm or half empty loses acid and smells of it. "
            + context.AdviceFor(stock).Sentence(
                new Way("keep it closed and cool", Puts.Keeping), new Way("use citric acid, which stays", Puts.Organic));
        return context.Find(verdict.Acids[0].Place, message, Harm.Damage, Odds.Possible) with
        {
            Related = [.. verdict.Acids.Skip(1).Select(a => new RelatedPlace(a.Place, "also volatile"))],
            Measured = new Measured("acetic acid that may be lost", percent, verdict.Lost.Limit, "%"),
            Values =
            [
                new NamedValue("acetic acid that may be lost", percent, "%"),
                new NamedValue("pH now", ph, ""),
                new NamedValue("pH then", harm.Ph, ""),
            ],
        };
    }

    protected override Working Work(VolatileAcid verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the vinegar of '{verdict.Stock.Stock.Name}'");
        KeptLong.Write(work, verdict.Kept, context.Options<WeakAcidVolatileOptions>().FreshDays);
        if (verdict is not { Harm: { } harm, Lost: { } check })
        {
            return work.Statements(verdict).Done();
        }

        var there = work.Given("acetic acid in the batch", verdict.Vinegar, "mol", From.Amounts);
        work.Given("pH now", verdict.Stock.Chemistry.Mixing.Ph, "", From.Engine);
        var gone = work.Given("acetic acid whose loss does harm", check.Value / 100 * verdict.Vinegar, "mol", From.Engine);
        var percent = work.Result("of it", "100 × lost / there", 100 * gone / there, "%");
        work.Given("pH then", harm.Ph, "", From.Engine);
        return work.Check(check, percent, work.Option("limit",
            context.Options<WeakAcidVolatileOptions>().MostLost)).Statements(verdict).Done(percent);
    }

    /// <summary>An acid that stays beside it, or a short life.</summary>
    protected override IEnumerable<RepairProposal> Repair(VolatileAcid verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        foreach (var acid in Additions.Acid(context, stock, 2))
        {
            yield return acid;
        }

        yield return Keep.For(context, stock, context.Rule.Options<WeakAcidVolatileOptions>().FreshDays);
    }

    /// <summary>The smallest loss that does harm.</summary>
    private static (double Lost, Consequence? Harm) First(StockFacts stock, double vinegar)
    {
        double fine = 0, bad = 1;
        Consequence? harm = null;
        while (bad - fine > Width)
        {
            var middle = (fine + bad) / 2;
            if (HarmDone(stock, vinegar, middle) is { What: not null } found)
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
    private static Consequence? HarmDone(StockFacts stock, double vinegar, double lost)
    {
        var gone = Analysis.Solutions.ComponentMoles.Of(
            [KeyValuePair.Create(Acetate, -vinegar * lost), KeyValuePair.Create(Component.Hydrogen, -vinegar * lost)]);
        var moles = Analysis.Solutions.ComponentMoles.Of(
            Analysis.Solutions.ComponentMoles.Sum([stock.ComponentMoles, gone]).Select(m =>
                m.Key == Acetate ? KeyValuePair.Create(m.Key, Math.Max(0, m.Value)) : m));
        var settled = Settled.Of(SolutionMix.Of(moles, stock.Volume), SolutionMix.FilledAtCelsius);
        if (settled is null)
        {
            return null;
        }

        var (metal, share) = _metals.Select(m => (m.Name, Share: settled.LostShare(m.Component))).MaxBy(m => m.Share);
        return new Consequence(settled.Ph, share > NotableLoss ? metal : null);
    }
}

/// <summary>What the loss of some acid does.</summary>
/// <param name="What">The metal that begins to fall out; null where none does.</param>
internal sealed record Consequence(double Ph, string? What);

/// <summary>A stock that leans on its vinegar.</summary>
/// <param name="Acids">The largest first.</param>
/// <param name="Kept">Null where the file does not say for how long.</param>
/// <param name="Vinegar">Acetic acid in the batch, mol.</param>
/// <param name="Harm">Null where it does not lean on it.</param>
/// <param name="Lost">Per cent of the acid whose loss does harm.</param>
internal sealed record VolatileAcid(
    StockFacts Stock, IReadOnlyList<AdditionFacts> Acids, Check? Kept, double Vinegar, Consequence? Harm, Check? Lost) : Verdict;
