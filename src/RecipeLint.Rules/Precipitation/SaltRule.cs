using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// What the rules on soluble salts share: the calibrated index and the product of total molalities decide together whether a salt
/// crystallises, comes close or stays clear.
/// </summary>
internal abstract partial class SaltRule : SolidRule
{
    /// <summary>From how many times the amount of the salt alone mixed crystals are worth a word (common practice, no source).</summary>
    private const double WorthSaying = 1.1;

    /// <summary>Part of all moles that other substances may make up beside a salt that is alone (common practice, no source).</summary>
    private const double Traces = 0.01;

    /// <summary>Salts crystallise at once or not at all: there is no remark on slow ones.</summary>
    private protected override SolidVerdict? Otherwise(StockFacts stock, OwnerLimits limits, RuleContext context) => null;

    private protected override SolidVerdict Nearest(StockFacts stock, IReadOnlyList<SolutionState> states)
    {
        var nearest = states
            .SelectMany(s => s.Salts.Where(v => IsOwn(v.Solid)).Select(v => (State: s, v.Solid, Salt: (SaltVerdict?)v, Index: v.Index))
                .Concat(s.Clear!.Solids.Where(x => IsOwn(x.Solid)).Select(x => (State: s, x.Solid, Salt: (SaltVerdict?)null, x.Index))))
            .OrderByDescending(x => Rounding.SixDigits(x.Index))
            .FirstOrDefault();
        if (nearest.Solid is null)
        {
            return new SilentVerdict(stock) { Checks = [Check.That("it holds all the ions of a salt of this rule", false)] };
        }

        var salt = nearest.Salt ?? nearest.State.Salts.Where(v => v.Solid == nearest.Solid).Select(v => (SaltVerdict?)v).FirstOrDefault();
        var test = SaltJudgement.CloseTest(nearest.Solid, salt?.Index ?? nearest.Index, salt);
        var close = DepositChecks.Of(test);
        return new NearestVerdict(stock, nearest.State, nearest.Solid, salt)
        {
            Checks = close.Holds
                ? [close, Check.That("its ions are there as such, and no double salt that falls out takes them", false)]
                : [close],
        };
    }

    /// <summary>What the handbook says of the salt in pure water, g without crystal water; null for salts that hold hydrogen.</summary>
    private static double? GramsPerKilogramWater(SaltVerdict? verdict)
    {
        const double GramsPerMoleWater = 18.015;
        if (verdict is not { } salt || salt.Solid.Composition.Any(p => p.Key == Component.Hydrogen))
        {
            return null;
        }

        var water = salt.Solid.Composition.Where(p => p.Key == Component.Water).Sum(p => p.Value);
        return salt.HandbookMolPerKg * (salt.Solid.MolarMassGramsPerMole - (water * GramsPerMoleWater));
    }

    private protected override Finding FallsOut(DepositVerdict verdict, RuleContext context)
    {
        var (stock, salt) = (verdict.Stock, verdict.Deposit);
        var called = salt.Solid.Called;
        var suppliers = Suppliers(stock, salt.Solid);
        var pure = GramsPerKilogramWater(salt.Salt);
        var handbook = pure is { } grams ? $"; pure water holds {Say.Number(grams)} g/kg of it there" : "";
        var amount = salt.GramsPerLitre > 0 ? $"{Say.Grams(salt.GramsPerLitre)}/L of {called}" : called;
        var what = salt.FallsOut
            ? $"{Say.Capital(amount)} crystallises out of '{stock.Stock.Name}' {Wording.When(stock, salt.State, salt.Solid)}: "
                + $"{Wording.BringsTimes(suppliers, salt.Index, salt.Solid, fallsOut: true)}{handbook}{WithItsKin(salt)}."
            : salt.Salt?.Mixed is { } mixed
            ? $"'{stock.Stock.Name}' can drop mixed crystals of {called} and {mixed.With.Called} "
                + $"{Wording.When(stock, salt.State, salt.Solid)}: "
                + "neither would fall out alone, but in "
                + "one crystal they take each other's place (saturation index of the mixed crystal up to "
                    + $"{Say.Number(mixed.Index)}, at most {Say.Grams(MostMixed(salt))}/L of them){handbook}."
            : $"'{stock.Stock.Name}' comes close to dropping {called} {Wording.When(stock, salt.State, salt.Solid)}: "
                + $"{Wording.BringsTimes(suppliers, salt.Index, salt.Solid, fallsOut: false)}, "
                + $"too near the limit to promise that it stays clear (saturation index {Say.Number(salt.Index)}, known to "
                    + $"±{Say.Number(salt.Doubt)}){handbook}.";
        var message = new Lazy<string>(() => Joined(
            what, Why(salt.Solid), Remedy(verdict, suppliers, context), salt.State.Validity));
        var measured = salt.GramsPerLitre > 0
            ? new Measured($"{called} that crystallises", salt.GramsPerLitre, verdict.Limits.Visible, "g/L")
            : new Measured("saturation index", salt.Index, Math.Min(-salt.Doubt, salt.Index), "");
        var certainty = pure is not null && IsAlone(stock, salt)
            ? Certainty.Computed
            : DepositWords.CertaintyOf(stock, salt.State, salt.Sureness);
        var odds = DepositWords.OddsOf(salt, certainty, DepositWords.ReagentsKnown(stock));
        return Raise(stock, context, suppliers, salt.Solid, message, odds, certainty) with
        {
            Measured = measured,
            Values = [.. Numbers(verdict)],
        };
    }

    /// <summary>The most of ideal mixed crystals with its kin, g/L.</summary>
    private static double MostMixed(JudgedDeposit salt) =>
        Rounding.SixDigits((salt.Salt?.Mixed?.MostGramsPerKg ?? 0) * salt.State.KilogramsWaterPerLitre);

    /// <summary>What potassium and ammonium in one crystal can add to a salt that falls out anyway.</summary>
    private static string WithItsKin(JudgedDeposit salt) =>
        salt.Salt?.Mixed is { } mixed && MostMixed(salt) > WorthSaying * salt.GramsPerLitre
            ? $"; in mixed crystals with {mixed.With.Called} it can be up to {Say.Grams(MostMixed(salt))}/L"
            : "";

    /// <summary>
    /// True where hardly anything else is in the stock: the handbook solubility of the salt itself decides then, and no activity model is
    /// needed, however salty it is.
    /// </summary>
    private static bool IsAlone(StockFacts stock, JudgedDeposit salt) =>
        salt.Sureness == Sureness.Clear
        && stock.Adjustments.All(a => a.Amount is not null)
        && stock.ComponentMoles
            .Where(m => salt.Solid.Composition.All(c => c.Key != m.Key))
            .Sum(m => Math.Abs(m.Value)) <= Traces * stock.ComponentMoles.Sum(m => Math.Abs(m.Value));
}
