using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Precipitation;

/// <summary>
/// What the rules on solids in a stock share: they look at the stock as it is mixed, at its coldest and at its warmest, take the moment at
/// which most of their solids falls out, and name it once.
/// </summary>
public abstract class SolidRule : StockRule, IProposesRepairs
{
    /// <summary>Stocks used up sooner give no remark on solids that form slowly.</summary>
    internal const double KeptDays = StockChemistry.AgedAfterDays;

    private const int MostCharacters = 590, MostNames = 2;

    /// <summary>True when each of its solids is a deposit of its own with suppliers of its own.</summary>
    protected virtual bool EachSolidApart => false;

    /// <summary>True when the supplier of the negative ion is the line that has to change.</summary>
    protected virtual bool BlamesTheAnion => false;

    /// <summary>Metals of which a share has to leave before the deposit counts; empty when its weight alone decides.</summary>
    protected virtual IReadOnlyList<string> Metals => [];

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var states = StatesOf(stock);
        var found = false;
        foreach (var fallout in Fallouts(stock, states, context.Number("visible")).Where(f => LosesEnough(f, context)))
        {
            found = true;
            yield return Describe(stock, states, fallout, context);
        }

        foreach (var finding in found ? [] : Otherwise(stock, states, context))
        {
            yield return finding;
        }
    }

    /// <summary>Why it matters, a full sentence.</summary>
    private protected abstract string Why(OwnedSolid owned);

    /// <summary>What to do, without the period.</summary>
    /// <param name="suppliers">At most two.</param>
    private protected virtual string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers)
    {
        if (suppliers.Any(s => s.IsWater))
        {
            return "Make this stock with rain or reverse-osmosis water";
        }

        return suppliers.Count == 2
            ? $"Keep {suppliers[0].Name} and {suppliers[1].Name} in different parts"
            : "Make the stock weaker";
    }

    /// <summary>False for a solid the constants announce in a stock of which the trade knows that it stays clear.</summary>
    private protected virtual bool IsPossible(StockFacts stock, Solid solid) => true;

    /// <summary>What is left to say when nothing of its own falls out.</summary>
    private protected virtual IEnumerable<Finding> Otherwise(StockFacts stock, IReadOnlyList<SolutionState> states, RuleContext context) =>
        SlowSolids.Remarks(Name, stock, states, context, KeptDays);

    /// <summary>The moments that count for its solids.</summary>
    internal virtual List<SolutionState> StatesOf(StockFacts stock) => JudgedStates(stock);

    /// <summary>The solution those moments are of.</summary>
    private protected virtual SolutionMix MixOf(StockFacts stock) => stock.Chemistry.Mix;

    internal bool IsOwn(Solid solid) => SolidOwners.Of(solid)?.Rule == Name;

    /// <summary>False for a solid the constants announce in a stock of which the trade knows that it stays clear.</summary>
    internal bool MayForm(StockFacts stock, Solid solid) => IsPossible(stock, solid);

    /// <summary>The metals of which a share has to leave; see <see cref="Metals"/>.</summary>
    internal IReadOnlyList<string> CountedMetals => Metals;

    /// <summary>The solids that are told apart, each group with the moment of its largest deposit of a visible size.</summary>
    internal IEnumerable<Fallout> Fallouts(StockFacts stock, IReadOnlyList<SolutionState> states, double visible)
    {
        var own = states.SelectMany(s => s.Deposits).Select(d => d.Solid).Where(IsOwn).Distinct().Where(s => IsPossible(stock, s)).ToList();
        var groups = EachSolidApart ? own.Select(s => new List<Solid> { s }) : own.Count > 0 ? [own] : [];
        return groups.Select(g => Fallout.Worst(states, d => g.Contains(d.Solid), visible)).OfType<Fallout>();
    }

    /// <summary>What falls out once the air has oxidised the iron is a matter of its protection and has a rule there.</summary>
    internal static List<SolutionState> JudgedStates(StockFacts stock) =>
        [.. stock.Chemistry.States.Where(s => s.IsSolved && s.Moment != StateMoment.Aged)];

    /// <summary>The two suppliers, the one whose line should change first.</summary>
    private protected IReadOnlyList<Supplier> Suppliers(StockFacts stock, Solid solid)
    {
        var suppliers = Supplier.In(stock, solid);
        return BlamesTheAnion && suppliers.Count == 2 ? [suppliers[1], suppliers[0]] : suppliers;
    }

    internal bool LosesEnough(Fallout fallout, RuleContext context) =>
        Metals.Count == 0
        || fallout.Deposits.Any(d => d.Solid.Composition.All(c => !Metals.Contains(c.Key)))
        || Metals.Any(m => fallout.ShareOf(m) >= context.Number("metalShare") / 100);

    private Finding Describe(StockFacts stock, List<SolutionState> states, Fallout fallout, RuleContext context)
    {
        var solid = fallout.Largest.Solid;
        var suppliers = Suppliers(stock, solid);
        var modelError = context.Number("nearLimit");
        var sureness = fallout.HowSure(modelError);
        var nearest = Nearest(stock, states, fallout);
        var message = Joined(
            What(stock, fallout, suppliers, sureness, modelError),
            Why(fallout.Owned),
            Remedy(fallout.Owned, suppliers),
            Wording.NearestClear(nearest, stock.Stock.Dose?.Value, solid, fallout.State),
            fallout.State.Validity);
        return Raise(stock, context, suppliers, solid, message, DepositWords.LevelOf(sureness), DepositWords.CertaintyOf(stock, fallout.State, sureness)) with
        {
            Measured = new Measured($"{fallout.Owned.Called} that falls out", fallout.GramsPerLitre, context.Number("visible"), "g/L"),
            Values = [.. Numbers(fallout, nearest)],
        };
    }

    private protected Finding Raise(
        StockFacts stock, RuleContext context, IReadOnlyList<Supplier> suppliers, Solid solid, string message, Level level, Certainty certainty)
    {
        var place = suppliers.Count > 0 ? suppliers[0].Place : stock.Stock.Place;
        var path = IdPath.Of(context.Facts.Workspace, place);
        return context.Find(place, EachSolidApart ? $"{path}#{DepositWords.Slug(solid.Name)}" : path, message, level, certainty) with
        {
            Related = [.. suppliers.Skip(1).Select(s => new RelatedPlace(s.Place, $"brings the {s.Brings}"))],
        };
    }

    /// <summary>The sentences in one line; why it matters and reasons for doubt only where they fit.</summary>
    private protected static string Joined(string what, string why, string remedy, string nearest, Validity validity)
    {
        var message = $"{what} {why} {remedy}{(nearest.Length > 0 ? $"; {nearest}." : ".")}";
        message = message.Length <= MostCharacters ? message : $"{what} {remedy}{(nearest.Length > 0 ? $"; {nearest}." : ".")}";
        return validity.Trust != Trust.InRange && validity.Reasons is [var doubt, ..] && message.Length + doubt.Length < MostCharacters
            ? $"{message} {doubt}"
            : message;
    }

    private static string What(StockFacts stock, Fallout fallout, IReadOnlyList<Supplier> suppliers, Sureness sureness, double modelError)
    {
        var names = fallout.Deposits.Select(d => SolidOwners.Of(d.Solid)!.Called).Distinct(StringComparer.Ordinal).Take(MostNames);
        var amount = $"{Say.Grams(fallout.GramsPerLitre)}/L of {Say.List(names)}";
        var subject = sureness switch
        {
            Sureness.Clear => $"{amount} falls out of '{stock.Stock.Name}' {Wording.When(fallout.State)}",
            Sureness.NearTheLimit => $"{amount} can fall out of '{stock.Stock.Name}' {Wording.When(fallout.State)}",
            _ => $"Up to {amount} can settle out of '{stock.Stock.Name}' {Wording.When(fallout.State)}",
        };
        var doubt = sureness switch
        {
            Sureness.Clear => "",
            Sureness.NearTheLimit =>
                $" (saturation index {Say.Number(fallout.Index)}, known to ±{Say.Number(fallout.Doubt(modelError))})",
            _ => $" (it usually takes {Say.Number(Math.Pow(10, fallout.Owned.StartsAt))} times to start without crystals already there)",
        };
        return $"{subject}: {Wording.BringsTimes(suppliers, fallout.Index)}{doubt}.";
    }

    /// <summary>The way out must hold at every moment at which the solid falls out, not at the worst alone.</summary>
    private NearestClear Nearest(StockFacts stock, List<SolutionState> states, Fallout fallout)
    {
        var solid = fallout.Largest.Solid;
        var mix = MixOf(stock);
        var dose = stock.Stock.Dose?.Value;
        var nearest = NearestClear.Of(mix, fallout.State.Temperature, solid, dose);
        foreach (var other in states.Where(s => s.Temperature != fallout.State.Temperature && s.Deposit(solid.Name) is not null))
        {
            var there = NearestClear.Of(mix, other.Temperature, solid, dose);
            if (there.Factor < nearest.Factor)
            {
                nearest = nearest with { Factor = there.Factor, Dilution = there.Dilution };
            }

            if (Math.Abs((there.Ph ?? other.PhBeforeDeposit) - other.PhBeforeDeposit) > Math.Abs((nearest.Ph ?? fallout.State.PhBeforeDeposit) - fallout.State.PhBeforeDeposit))
            {
                nearest = nearest with { Ph = there.Ph };
            }
        }

        return nearest;
    }

    private static IEnumerable<NamedValue> Numbers(Fallout fallout, NearestClear nearest)
    {
        yield return new NamedValue("falls out", fallout.GramsPerLitre, "g/L");
        yield return new NamedValue("saturation index", fallout.Index, "");
        yield return new NamedValue("temperature", fallout.State.Temperature.Celsius, "°C");
        yield return new NamedValue("pH", Rounding.SixDigits(fallout.State.PhBeforeDeposit), "");
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

        if (nearest.Ph is { } ph && Wording.FollowsPh(fallout.Largest.Solid))
        {
            yield return new NamedValue("clear at pH", Rounding.SixDigits(ph), "");
        }
    }

    /// <summary>Another part, another salt, a weaker stock, acid, warmth, distilled water, or less of it; what helps is found out by trying.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => SolidRepairs.Of(finding, context);
}
