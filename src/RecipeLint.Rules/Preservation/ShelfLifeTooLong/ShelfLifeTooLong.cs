using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>Bleach, peroxide or urea in a stock that is kept for longer than they last.</summary>
internal sealed class ShelfLifeTooLong : StockRule<DecayOnTheShelf>, IProposesRepairs
{
    public const string RuleName = "shelf-life-too-long";

    /// <summary>
    /// Second-order decay of sodium hypochlorite at 25 °C, per % w/v and day: 15 % loses half in 144 days, 10 % in 220
    /// (G. C. White, Handbook of Chlorination, recalled).
    /// </summary>
    private const double BleachHalvesAt = 15, BleachHalvesInDays = 144;

    /// <summary>Factor of that rate for 10 °C more (G. Gordon, L. C. Adam and B. P. Bubnis, J. AWWA 87 (1995) 97, recalled).</summary>
    private const double BleachTenDegrees = 3.5;

    /// <summary>g/mol of sodium hypochlorite.</summary>
    private const double SodiumHypochlorite = 74.44;

    /// <summary>Unchelated iron, copper or manganese from which peroxide decays by them, mol/L (common practice, no source).</summary>
    private const double Catalyses = 1e-6;

    private const string Hypochlorite = "inert:ClO-1", UreaComponent = "inert:urea", Peroxide = HydrogenPeroxide.Component;

    private static readonly string[] _catalysts = [Component.FerrousIron, Component.FerricIron, Component.Copper, Component.Manganese];

    public override string Name => RuleName;

    protected override IEnumerable<DecayOnTheShelf> Judge(StockFacts stock, RuleContext context)
    {
        var days = stock.Stock.Keep?.For?.Value.Days ?? 0;
        var least = context.Options<ShelfLifeTooLongOptions>().LeastLeft;
        var decay = days > 0
            ? (Decay?)Bleach(stock) ?? PeroxideBesideMetal(stock, context.Options<ShelfLifeTooLongOptions>().CatalysedHalfLife)
                ?? (Decay?)Urea(stock, context.Options<ShelfLifeTooLongOptions>().UreaHalfLife)
            : null;
        if (decay is null)
        {
            yield return new DecayOnTheShelf(stock, days, null, null, null)
            {
                Checks = [Check.That("it holds bleach, peroxide or urea and says how long it is kept", false)],
            };
            yield break;
        }

        var source = stock.SuppliersOf(decay.Component).FirstOrDefault();
        var left = new Check("less than it is dosed for", Rounding.SixDigits(decay.Left(days) * 100), Relation.Under, least, "%");
        yield return new DecayOnTheShelf(stock, days, decay, source, left)
        {
            Checks =
            [
                .. decay.Metal is { } metal ? [metal] : Array.Empty<Check>(),
                left,
                Check.That("a line of the steps brings it", source is not null),
            ],
        };
    }

    protected override Finding Describe(DecayOnTheShelf verdict, RuleContext context)
    {
        var (stock, decay, left) = (verdict.Stock, verdict.Decay!, verdict.Left!);
        var days = LastsFor(decay, left.Limit / 100);
        var message = $"'{stock.Stock.Name}' is kept for {Say.Days(verdict.Days)}, and by then "
            + $"{(left.Value < 0.1 ? "next to nothing" : $"about {Say.Number(left.Value)} %")} of its {decay.Name} is left: {decay.Why}. "
            + decay.Harms + " "
            + context.AdviceFor(stock).Sentence(
                new Way($"make what is used up within {Say.Days(Math.Max(1, Math.Floor(days)))}", Puts.Keeping),
                new Way($"keep it {decay.Instead}", Puts.Keeping));
        return context.Find(stock.Stock.Keep!.For!.Place, message, Harm.Damage, Odds.Possible) with
        {
            Related = [new RelatedPlace(verdict.Source!.Place, "brings it")],
            Measured = new Measured($"{decay.Name} left", left.Value, left.Limit, "%"),
            Values = [new NamedValue($"{decay.Name} left", left.Value, "%"), new NamedValue("time", verdict.Days, "days"),
                new NamedValue("lasts for", days, "days")],
        };
    }

    protected override Working Work(DecayOnTheShelf verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"how long '{verdict.Stock.Stock.Name}' lasts");
        if (verdict.Decay is not { } decay)
        {
            return work.Statements(verdict).Done();
        }

        var days = work.Given("kept for", verdict.Days, "days", From.File);
        var left = decay.Metal is { } metal ? PeroxideLeft(work, metal, days, context)
            : decay.Component == UreaComponent ? UreaLeft(work, verdict.Stock, days, context)
            : BleachLeft(work, verdict.Stock, days);
        return work.Check(verdict.Left!, left, work.Option("least",
            context.Options<ShelfLifeTooLongOptions>().LeastLeft)).Statements(verdict).Done(left);
    }

    /// <summary>As long as it lasts, or cooler.</summary>
    protected override IEnumerable<RepairProposal> Repair(DecayOnTheShelf verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        yield return Keep.For(context, stock, LastsFor(verdict.Decay!, verdict.Left!.Limit / 100));
        yield return Keep.Cooler(context, stock);
    }

    private static Term BleachLeft(WorkingBuilder work, StockFacts stock, Term days)
    {
        var moles = work.Given("hypochlorite", stock.Concentration(Hypochlorite).MolesPerLitre, "mol/L", From.Amounts);
        var percent = work.Result("as sodium hypochlorite", "mol/L × 74.44 / 10", moles * SodiumHypochlorite / 10, "% w/v");
        var (low, high) = (stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius);
        var celsius = work.Result(
            "middle of the storage temperatures", "(coldest + warmest) / 2",
            (work.Given("coldest", low, "°C", From.File) + work.Given("warmest", high, "°C", From.File)) / 2, "°C");
        var rate = work.Result(
            "decay", "strength / (15 × 144) × 3.5^((temperature - 25) / 10)",
            percent / (BleachHalvesAt * (Term)BleachHalvesInDays) * Term.Power(BleachTenDegrees, (celsius - 25) / 10), "per day");
        return work.Result("left at the end", "100 / (1 + decay × days)", 100 / (1 + (rate * days)), "%");
    }

    private static Term PeroxideLeft(WorkingBuilder work, Check metal, Term days, RuleContext context)
    {
        var free = work.Given("iron, copper or manganese that no chelate holds", metal.Value, "mol/L", From.Engine);
        work.Check(metal, free, metal.Limit);
        return work.Result(
            "left at the end", "100 × 0.5^(days / half-life)",
            100 * Term.Power(0.5, days / work.Option("half-life beside metals",
                context.Options<ShelfLifeTooLongOptions>().CatalysedHalfLife)), "%");
    }

    private static Term UreaLeft(WorkingBuilder work, StockFacts stock, Term days, RuleContext context)
    {
        var celsius = work.Given("middle of the storage temperatures", MiddleOf(stock), "°C", From.File);
        return work.Result(
            "left at the end", "100 × 0.5^(days / half-life × 2^((temperature - 25) / 10))",
            100 * Term.Power(0.5, days / work.Option("half-life at 25 °C", context.Options<ShelfLifeTooLongOptions>().UreaHalfLife)
                * Term.Power(2, (celsius - 25) / 10)), "%");
    }

    private static double MiddleOf(StockFacts stock) =>
        (stock.StorageTemperature.Low.Celsius + stock.StorageTemperature.High.Celsius) / 2;

    private static UreaDecay? Urea(StockFacts stock, double halfLife) =>
        stock.Concentration(UreaComponent).MolesPerLitre > 0 ? new UreaDecay(MiddleOf(stock), halfLife) : null;

    private static BleachDecay? Bleach(StockFacts stock)
    {
        var percent = stock.Concentration(Hypochlorite).MolesPerLitre * SodiumHypochlorite / 10;
        if (percent <= 0)
        {
            return null;
        }

        var celsius = (stock.StorageTemperature.Low.Celsius + stock.StorageTemperature.High.Celsius) / 2;
        var rate = percent / (BleachHalvesAt * BleachHalvesInDays) * Math.Pow(BleachTenDegrees, (celsius - 25) / 10);
        return new BleachDecay(percent, celsius, rate);
    }

    private static PeroxideDecay? PeroxideBesideMetal(StockFacts stock, double halfLife)
    {
        var state = stock.Chemistry.Mixing;
        if (stock.Concentration(Peroxide).MolesPerLitre <= 0 || !state.IsSolved)
        {
            return null;
        }

        var metal = state.Metals
            .Where(m => _catalysts.Contains(m.Metal))
            .OrderByDescending(m => m.Unchelated.MolesPerLitre)
            .FirstOrDefault();
        var free = metal?.Unchelated.MolesPerLitre ?? 0;
        return new PeroxideDecay(NameOf(metal?.Metal),
            new Check("enough to break peroxide down", free, Relation.AtLeast, Catalyses, "mol/L"), halfLife);
    }

    private static string NameOf(string? metal) => metal switch
    {
        Component.Copper => "copper",
        Component.Manganese => "manganese",
        _ => "iron",
    };

    /// <summary>Days until the least is left; the decay is monotonous.</summary>
    private static double LastsFor(Decay decay, double least)
    {
        double low = 0, high = 1;
        while (decay.Left(high) > least && high < 1e5)
        {
            high *= 2;
        }

        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = decay.Left(middle) > least ? (middle, high) : (low, middle);
        }

        return low;
    }

    private sealed record BleachDecay(double Percent, double Celsius, double Rate)
        : Decay(Hypochlorite, "hypochlorite", "cooler and weaker", null)
    {
        public override string Why => $"at {Say.Number(Percent)} % w/v and {Say.Number(Celsius)} °C it turns to chloride and chlorate";

        public override double Left(double days) => 1 / (1 + (Rate * days));
    }

    private sealed record UreaDecay(double Celsius, double HalfLife) : Decay(UreaComponent, "urea", "cooler", null)
    {
        public override string Why => $"at {Say.Number(Celsius)} °C microbes and time make ammonium and carbonate of it";

        public override string Harms => "The pH climbs, ammonia smells, and calcium or magnesium that it meets falls out as carbonate.";

        public override double Left(double days) => Math.Pow(0.5, days / HalfLife * Math.Pow(2, (Celsius - 25) / 10));
    }

    private sealed record PeroxideDecay(string By, Check Free, double HalfLife)
        : Decay(Peroxide, "hydrogen peroxide", "apart from trace metals", Free)
    {
        public override string Why => $"{Say.Number(Free.Value * 1e6)} µmol/L unchelated {By} breaks it down to water and oxygen";

        public override double Left(double days) => Math.Pow(0.5, days / HalfLife);
    }
}

/// <summary>How something is lost with time.</summary>
/// <param name="Instead">How to keep it.</param>
/// <param name="Metal">The metal that has to be there for it; null where none has to.</param>
internal abstract record Decay(string Component, string Name, string Instead, Check? Metal)
{
    /// <summary>What is lost how, a clause.</summary>
    public abstract string Why { get; }

    /// <summary>What comes of it, a sentence.</summary>
    public virtual string Harms => "Whoever doses it by the label then disinfects with a fraction of what is meant.";

    /// <summary>Share left after so many days.</summary>
    public abstract double Left(double days);
}

/// <summary>What is left of a disinfectant when the stock is used up.</summary>
/// <param name="Decay">Null where nothing in it decays, or nobody says how long it is kept.</param>
internal sealed record DecayOnTheShelf(StockFacts Stock, double Days, Decay? Decay, AdditionFacts? Source, Check? Left) : Verdict;
