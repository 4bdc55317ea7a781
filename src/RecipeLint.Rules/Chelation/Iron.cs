using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Rules.Chelation;

/// <summary>Iron, and who holds it.</summary>
internal static class Iron
{
    public const string Ferrous = Component.FerrousIron;

    public const string Ferric = Component.FerricIron;

    public const double GramsPerMole = 55.845;

    /// <summary>Everything that counts as holding iron: chelating agents and the weaker fruit acids.</summary>
    public static readonly IReadOnlySet<string> Agents =
        new HashSet<string>(StringComparer.Ordinal)
        {
            Component.Eddha, Component.Dtpa, Component.Edta, Component.Hedta, Component.Idha,
            Component.Citrate, Component.Gluconate, Component.Glycinate, Component.Oxalate, Component.Pyrophosphate,
            Component.Malate, Component.Lactate,
        };

    /// <summary>What it means to lose a share of the iron (0 to 1): more than half of it gone is the crop's iron gone.</summary>
    public static Harm HarmOf(double lost) => lost > 0.5 ? Harm.Loss : Harm.Damage;

    /// <summary>Chelating agent per iron from which it was meant to hold the iron, and is not just a trace of it.</summary>
    public const double IntendedShare = 0.05;

    public static double Moles(ComponentMoles moles) =>
        moles.GetValueOrDefault(Ferrous) + moles.GetValueOrDefault(Ferric);

    public static double ChelatorMoles(ComponentMoles moles) =>
        IronHolders.Chelators.Sum(c => moles.GetValueOrDefault(c.Component));

    /// <summary>Iron in solution, mol/L.</summary>
    public static double Dissolved(SolutionState state) =>
        state.Metals.Where(m => m.Metal is Ferrous or Ferric).Sum(m => m.Dissolved.MolesPerLitre);

    /// <summary>Share of all iron that an agent holds in solution, 0 to 1.</summary>
    /// <param name="molesPerLitre">All iron, deposit included.</param>
    public static double HeldShare(SolutionState state, double molesPerLitre)
    {
        var held = state.Metals
            .Where(m => m.Metal is Ferrous or Ferric)
            .Sum(m => m.Dissolved.MolesPerLitre - m.Unchelated.MolesPerLitre);
        return molesPerLitre > 0 ? Math.Clamp(held / molesPerLitre, 0, 1) : 0;
    }

    /// <summary>g/L of rust, and of iron phosphate where there is phosphate.</summary>
    public static double RustGramsPerLitre(SolutionState state) => IronDeposits(state).Sum(d => d.Mass.GramsPerLitre);

    /// <summary>Share of all iron that lies in rust or iron phosphate, 0 to 1.</summary>
    /// <param name="molesPerLitre">All iron, deposit included.</param>
    public static double RustShare(SolutionState state, double molesPerLitre)
    {
        var rust =
            IronDeposits(state).Sum(d => d.Amount.MolesPerLitre * (Settled.CountOf(d.Solid, Ferrous) + Settled.CountOf(d.Solid, Ferric)));
        return molesPerLitre > 0 ? Math.Clamp(rust / molesPerLitre, 0, 1) : 0;
    }

    /// <summary>What the iron settles as, by its largest part: "rust" or "iron phosphate".</summary>
    public static string RustCalled(SolutionState state) => SettlesAsPhosphate(state) ? "iron phosphate" : "rust";

    /// <summary>True when the largest part of the iron that settles is a phosphate.</summary>
    public static bool SettlesAsPhosphate(SolutionState state) =>
        IronDeposits(state).MaxBy(d => d.Mass.GramsPerLitre) is { } most && Settled.CountOf(most.Solid, Component.Phosphate) > 0;

    private static IEnumerable<SolidDeposit> IronDeposits(SolutionState state) =>
        state.Deposits.Where(d => Settled.CountOf(d.Solid, Ferrous) + Settled.CountOf(d.Solid, Ferric) > 0);

    /// <summary>The final solution with all iron turned to iron(III), as the air leaves it.</summary>
    public static SolutionState Feed(RecipeFacts recipe)
    {
        var chemistry = recipe.Chemistry;
        var final = chemistry.Final;
        if (!(recipe.ComponentMoles.GetValueOrDefault(Ferrous) > 0))
        {
            return final;
        }

        var mix = (chemistry.AdjustedMix ?? chemistry.Mix).WithIronOxidised();
        return StateSolver.Solve(mix, new StateRequest(final.Moment, final.Temperature, final.OpenToAir, []));
    }

    /// <summary>Recipes that dose a stock.</summary>
    public static IEnumerable<RecipeFacts> RecipesWith(Facts facts, StockFacts stock) =>
        facts.RecipesWith(stock.Stock.File).Where(r => r.IsComplete);

    /// <summary>What is weighed for the iron of a recipe, in its stocks or straight into the tank.</summary>
    public static IEnumerable<AdditionFacts> Additions(RecipeFacts recipe) =>
        recipe.Doses
            .SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? [])
            .Where(a => !a.ThroughAliquot && Moles(a.ComponentMoles) > 0);

    /// <summary>The addition that brings most of the iron of a stock.</summary>
    public static AdditionFacts? Supplier(StockFacts stock) =>
        stock.Additions
            .Where(a => Moles(a.ComponentMoles) > 0)
            .OrderByDescending(a => Moles(a.ComponentMoles))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>The dose of a recipe that brings most of the iron.</summary>
    public static DoseFacts? Supplier(RecipeFacts recipe) =>
        recipe.Doses
            .Where(d => Moles(d.ComponentMoles) > 0)
            .OrderByDescending(d => Moles(d.ComponentMoles))
            .ThenBy(d => d.Id, StringComparer.Ordinal)
            .FirstOrDefault();

    public static Mass Water(StockFacts stock) => new(stock.Chemistry.Mix.KilogramsWaterPerLitre * 1000 * stock.Volume.Litres);
}
