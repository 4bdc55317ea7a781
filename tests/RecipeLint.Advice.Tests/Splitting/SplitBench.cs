using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>Splits, and what they come to, looked at again with the engine.</summary>
internal static class SplitBench
{
    public static Workspace Workspace(ShopSettings? shop = null, params WaterDocument[] waters) =>
        new() { Catalogue = SubstanceCatalogue.BuiltIn, SettingsFor = _ => shop ?? new ShopSettings(), Waters = waters };

    public static SplitProposal Split(RecipeFacts recipe, SplitRequest? request = null, ShopSettings? shop = null) =>
        Splitter.Of(recipe, Workspace(shop), request ?? new SplitRequest());

    public static SplitProposal Split(string final, params DoseEntry[] doses) => Split(Bench.RecipeOf(final, doses));

    /// <summary>Every state a stock is stored or mixed in; what the air does to iron later is another matter.</summary>
    public static IReadOnlyList<SolutionState> Stored(StockFacts stock) => [stock.Chemistry.Mixing, stock.Chemistry.Coldest, stock.Chemistry.Warmest];

    public static void AssertClear(StockFacts stock)
    {
        Assert.True(stock.IsComplete);
        foreach (var state in Stored(stock))
        {
            Assert.True(state.IsSolved, state.Failure);
            Assert.DoesNotContain(state.Deposits, d => !d.IsTrace && !TakesLittleOfAMetal(stock, d));
            Assert.DoesNotContain(state.Salts, s => s.Solid.Role == SolidRole.SolubleSalt && s.State != SaltState.Clear);
        }

        Assert.True(DepositJudgement.Of(stock, DepositLimits.Default).IsClear);
    }

    /// <summary>Less than a tenth of the metal it holds: no rule objects, so split does not either.</summary>
    private static bool TakesLittleOfAMetal(StockFacts stock, SolidDeposit deposit) => deposit.Solid.Composition
        .Where(c => Chemistry.Equilibrium.Components.Row(c.Key)?.Is(ComponentRoles.TraceMetal) == true)
        .Any(c => c.Value * deposit.Amount.MolesPerLitre < 0.1 * Put(stock, c.Key));

    private static double Put(StockFacts stock, string metal) => metal is Component.FerricIron or Component.FerrousIron
        ? stock.Concentration(Component.FerricIron).MolesPerLitre + stock.Concentration(Component.FerrousIron).MolesPerLitre
        : stock.Concentration(metal).MolesPerLitre;

    /// <summary>Each stated deposit falls out of that very mix, solved from nothing at that temperature, in the amount stated.</summary>
    public static void AssertReallyFallsOut(RejectedPart rejected)
    {
        Assert.NotEmpty(rejected.Obstacles);
        foreach (var obstacle in rejected.Obstacles)
        {
            switch (obstacle)
            {
                case Obstacle.Deposit deposit:
                    var state = StateSolver.Solve(rejected.Stock.Chemistry.Mix, new StateRequest(StateMoment.Mixing, deposit.At, false, []));
                    var grams = Judged(state).First(d => d.Solid == deposit.Solid).GramsPerLitre;
                    Assert.True(grams >= SolidDeposit.VisibleGramsPerLitre);
                    Assert.Equal(grams, deposit.Mass.GramsPerLitre, grams * 1e-5);
                    break;
                case Obstacle.TooClose close:
                    Assert.Contains(Judged(StateSolver.Solve(rejected.Stock.Chemistry.Mix, close.At.Celsius)), c => c.Solid == close.Solid);
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>Largest change of an element or form of nitrogen, as a fraction.</summary>
    public static double Change(SplitProposal proposal) =>
        proposal.Before.Where(b => b.Value > 0).Max(b => Math.Abs((proposal.Final!.MilligramsPerLitre(b.Key) / b.Value) - 1));

    public static StockFacts PartWith(SplitProposal proposal, string component) =>
        proposal.Plan!.Parts.Select(p => p.Stock).MaxBy(s => s.Concentration(component).MolesPerLitre)!;

    /// <summary>All ways to put n things into k groups, as group numbers in restricted growth.</summary>
    public static IEnumerable<int[]> Partitions(int n, int k)
    {
        var groups = new int[n];
        return Fill(0, 0);

        IEnumerable<int[]> Fill(int at, int used)
        {
            if (at == n)
            {
                if (used == k)
                {
                    yield return [.. groups];
                }

                yield break;
            }

            for (var group = 0; group <= Math.Min(used, k - 1); group++)
            {
                groups[at] = group;
                foreach (var rest in Fill(at + 1, Math.Max(used, group + 1)))
                {
                    yield return rest;
                }
            }
        }
    }

    /// <summary>Whether a litre with these units at a dose 1:N stays clear at 5, 20 and 30 °C, by the engine alone.</summary>
    public static bool IsClear(IEnumerable<SplitUnit> units, double dilution)
    {
        var moles = ComponentMoles.Sum(units.Select(u => u.MolesPerLitre.Times(dilution)));
        var mix = SolutionMix.Of(moles, new Chemistry.Quantities.Volume(1));
        return new[] { 5.0, 20, 30 }.All(t => DepositJudgement.Of(StateSolver.Solve(mix, t), DepositLimits.Default).IsClear);
    }

    private static IReadOnlyList<JudgedDeposit> Judged(SolutionState state) => DepositJudgement.Of(state, DepositLimits.Default).Deposits;
}
