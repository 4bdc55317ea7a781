using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// What the rules on soluble salts share: the calibrated index and the product of total molalities decide together whether a salt
/// crystallises, comes close or stays clear.
/// </summary>
public abstract class SaltRule : SolidRule
{
    /// <summary>Index of a salt whose constant is not fitted to a handbook from which it is said to be close.</summary>
    internal const double UnfittedFrom = 0.3;

    protected override bool EachSolidApart => true;

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        foreach (var worst in Worst(stock, context))
        {
            if (worst.Crystallises && worst.GramsPerLitre > 0 && Rounding.SixDigits(worst.GramsPerLitre) < context.Number("visible"))
            {
                continue;
            }

            yield return Describe(stock, worst, context);
        }
    }

    /// <summary>Each salt that crystallises or comes close, at its worst moment.</summary>
    internal IEnumerable<SaltStanding> Worst(StockFacts stock, RuleContext context) =>
        JudgedStates(stock)
            .SelectMany(s => Standings(s, context.Number("nearLimit")))
            .Where(s => IsOwn(s.Solid))
            .GroupBy(s => s.Solid.Name, StringComparer.Ordinal)
            .Select(group => group
                .OrderByDescending(s => s.Crystallises)
                .ThenByDescending(s => Rounding.SixDigits(s.GramsPerLitre))
                .ThenByDescending(s => Rounding.SixDigits(s.Index))
                .First());

    /// <summary>Salts that crystallise or come close in one state.</summary>
    /// <param name="modelError">Of a saturation index below ionic strength 3 mol/kg.</param>
    private static IEnumerable<SaltStanding> Standings(SolutionState state, double modelError)
    {
        var judged = new HashSet<Solid>();
        foreach (var salt in state.Salts)
        {
            judged.Add(salt.Solid);
            var deposit = state.Deposit(salt.Solid.Name);
            if ((salt.State == SaltState.Clear && deposit is null) || IsTakenByADoubleSalt(state, salt, deposit) || IsMostlyBorate(salt, deposit))
            {
                continue;
            }

            var isSure = salt is { State: SaltState.Crystallises, CalibratedIndex: not null } && deposit is not { ByHandbook: true };
            yield return new SaltStanding(
                state,
                salt.Solid,
                salt.MeanIndex(),
                deposit?.Mass.GramsPerLitre ?? 0,
                salt.State == SaltState.Crystallises || deposit is not null,
                isSure ? Sureness.Clear : Sureness.NearTheLimit,
                GramsPerKilogramWater(salt));
        }

        foreach (var deposit in state.Deposits.Where(d => !judged.Contains(d.Solid) && state.Validity.Trust != Trust.OutOfRange))
        {
            var sureness = SolidOwners.Of(deposit.Solid) is null ? Sureness.NearTheLimit : new Fallout(state, [deposit]).HowSure(modelError);
            yield return new SaltStanding(state, deposit.Solid, deposit.Index, deposit.Mass.GramsPerLitre, true, sureness, null);
        }

        // Salts without a handbook fit have a printed constant only: never more than close.
        var unfitted = state.Validity.Trust == Trust.OutOfRange ? [] : state.Clear?.Solids ?? [];
        foreach (var (solid, index) in unfitted.Where(s => s.Solid.Role == SolidRole.SolubleSalt && s.Index > UnfittedFrom && !judged.Contains(s.Solid)))
        {
            yield return new SaltStanding(state, solid, index, 0, false, Sureness.NearTheLimit, null);
        }
    }

    /// <summary>Where a double salt of the same ions falls out, the product of totals alone announces nothing more: its ions are in there.</summary>
    private static bool IsTakenByADoubleSalt(SolutionState state, SaltVerdict salt, SolidDeposit? deposit) =>
        deposit is null or { ByHandbook: true }
        && state.Deposits.Any(d => d.Solid != salt.Solid && SolidOwners.Of(d.Solid)?.Rule == DoubleSalt.RuleName
            && salt.Solid.Composition.All(c => c.Key == "H2O" || d.Solid.Composition.Any(o => o.Key == c.Key)));

    /// <summary>The product of totals counts borate as boric acid: beside alkali only the activity product tells how near the acid is.</summary>
    private static bool IsMostlyBorate(SaltVerdict salt, SolidDeposit? deposit) =>
        deposit is null && salt.CalibratedIndex < salt.ProductIndex - BorateShare && salt.Solid.Composition.All(c => c.Key is "B(OH)3" or "H2O");

    /// <summary>Index by which the activity product falls behind the product of totals where a third of the boron is borate.</summary>
    private const double BorateShare = 0.18;

    /// <summary>What the handbook says of the salt in pure water, g without crystal water; null for salts that hold hydrogen.</summary>
    private static double? GramsPerKilogramWater(SaltVerdict salt)
    {
        const double GramsPerMoleWater = 18.015;
        var parts = salt.Solid.Composition;
        if (parts.Any(p => p.Key == "H+"))
        {
            return null;
        }

        var water = parts.Where(p => p.Key == "H2O").Sum(p => p.Value);
        return salt.HandbookMolPerKg * (salt.Solid.MolarMassGramsPerMole - (water * GramsPerMoleWater));
    }

    private Finding Describe(StockFacts stock, SaltStanding standing, RuleContext context)
    {
        var owned = SolidOwners.Of(standing.Solid)!;
        var suppliers = Suppliers(stock, standing.Solid);
        var dose = stock.Stock.Dose?.Value;
        var nearest = NearestClear.Of(stock.Chemistry.Mix, standing.State.Temperature, standing.Solid, dose);
        var handbook = standing.HandbookGrams is { } grams ? $"; pure water holds {Say.Number(grams)} g/kg of it there" : "";
        var amount = standing.GramsPerLitre > 0 ? $"{Say.Grams(standing.GramsPerLitre)}/L of {owned.Called}" : owned.Called;
        var what = standing.Crystallises
            ? $"{Capital(amount)} crystallises out of '{stock.Stock.Name}' {Wording.When(standing.State)}: {Wording.BringsTimes(suppliers, standing.Index)}{handbook}."
            : $"'{stock.Stock.Name}' comes close to dropping {owned.Called} {Wording.When(standing.State)}: {Wording.BringsTimes(suppliers, standing.Index)}, "
                + $"too near the limit to promise that it stays clear (saturation index {Say.Number(standing.Index)}, known to ±{Say.Number(CloseWithin(standing.Solid))}){handbook}.";
        var message = Joined(
            what, Why(owned), Remedy(owned, suppliers), Wording.NearestClear(nearest, dose, standing.Solid, standing.State), standing.State.Validity);
        var measured = standing.GramsPerLitre > 0
            ? new Measured($"{owned.Called} that crystallises", Rounding.SixDigits(standing.GramsPerLitre), context.Number("visible"), "g/L")
            : new Measured("saturation index", Rounding.SixDigits(standing.Index), Math.Min(-CloseWithin(standing.Solid), Rounding.SixDigits(standing.Index)), "");
        return Raise(stock, context, suppliers, standing.Solid, message, DepositWords.LevelOf(standing.Sureness), IsAlone(stock, standing) ? Certainty.Computed : DepositWords.CertaintyOf(stock, standing.State, standing.Sureness)) with
        {
            Measured = measured,
            Values = [.. Numbers(standing, nearest)],
        };
    }

    /// <summary>
    /// True where hardly anything else is in the stock: the handbook solubility of the salt itself decides then, and no activity model is
    /// needed, however salty it is.
    /// </summary>
    private static bool IsAlone(StockFacts stock, SaltStanding standing) =>
        standing is { Sureness: Sureness.Clear, HandbookGrams: not null }
        && stock.Adjustments.All(a => a.Amount is not null)
        && stock.ComponentMoles.Where(m => standing.Solid.Composition.All(c => c.Key != m.Key)).Sum(m => Math.Abs(m.Value)) <= Traces * stock.ComponentMoles.Sum(m => Math.Abs(m.Value));

    /// <summary>Part of all moles that other substances may make up beside a salt that is alone (common practice, no source).</summary>
    private const double Traces = 0.01;

    private static IEnumerable<NamedValue> Numbers(SaltStanding standing, NearestClear nearest)
    {
        yield return new NamedValue("crystallises", Rounding.SixDigits(standing.GramsPerLitre), "g/L");
        yield return new NamedValue("saturation index", Rounding.SixDigits(standing.Index), "");
        yield return new NamedValue("temperature", standing.State.Temperature.Celsius, "°C");
        if (nearest.Factor is { } factor)
        {
            yield return new NamedValue("clear at this part of the strength", Rounding.SixDigits(factor), "");
        }

        if (nearest.Dilution is { } dilution)
        {
            yield return new NamedValue("clear at a dose of 1 to", dilution, "");
        }

        if (nearest.Temperature is { } temperature)
        {
            yield return new NamedValue("clear at", Rounding.SixDigits(temperature.Celsius), "°C");
        }
    }

    /// <summary>How far below saturation a salt of a mixture already counts as close; the two phosphates err the most.</summary>
    private static double CloseWithin(Solid solid) => -SaltVerdicts.CloseFromIndex(solid);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}

/// <summary>One salt in one state.</summary>
/// <param name="Index">Mean of the two measures.</param>
/// <param name="HandbookGrams">Solubility in pure water, g per kg of water.</param>
internal sealed record SaltStanding(
    SolutionState State, Solid Solid, double Index, double GramsPerLitre, bool Crystallises, Sureness Sureness, double? HandbookGrams);
