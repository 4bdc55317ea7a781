using CsCheck;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Tests;

/// <summary>What must hold for any stock whatever is in it.</summary>
public sealed class ConservationTests
{
    private static readonly Gen<(string Substance, double Grams)[]> Mixtures =
        Gen.Select(
            Gen.Int[0, SubstanceCatalogue.BuiltIn.Substances.Count - 1].Select(i => SubstanceCatalogue.BuiltIn.Substances[i].Id),
            Gen.Double[-3, 3].Select(e => Math.Pow(10, e)))
        .Array[1, 12];

    [Fact]
    public void ScalingMassesAndVolumeLeavesConcentrationsUnchanged() =>
        Gen.Select(Mixtures, Gen.Double[0.01, 100]).Sample((mixture, factor) =>
        {
            var small = Make(mixture, 1);
            var large = Make(mixture, factor);
            foreach (var component in small.ComponentMoles.Keys)
            {
                AssertClose(small.Concentration(component).MolesPerLitre, large.Concentration(component).MolesPerLitre);
            }

            foreach (var element in small.Totals.Elements)
            {
                AssertClose(small.Concentration(element).GramsPerLitre, large.Concentration(element).GramsPerLitre);
            }
        });

    [Fact]
    public void TheOrderOfAdditionsDoesNotMatter() =>
        Gen.Select(Mixtures, Gen.Int).Sample((mixture, seed) =>
        {
            var shuffled = mixture.ToArray();
            new Random(seed).Shuffle(shuffled);
            var straight = Make(mixture, 1);
            var mixed = Make(shuffled, 1);

            // Equal to the last bit: sums are taken from the smallest share to the largest.
            Assert.Equal(straight.ComponentMoles, mixed.ComponentMoles);
            foreach (var element in straight.Totals.Elements)
            {
                Assert.Equal(straight.Totals[element], mixed.Totals[element]);
            }
        });

    [Fact]
    public void NothingIsLostBetweenStockAndFinalSolution() =>
        Mixtures.Sample(mixture =>
        {
            var stock = Document(mixture, 1);
            var recipe = Bench.Recipe("1000 L", FinalVolumeMeaning.MadeUp, Bench.Dose("a.stock.json", amount: "1 L"));
            var facts = Bench.Analyse([stock], recipe);
            foreach (var (component, moles) in facts.Stocks[0].ComponentMoles)
            {
                AssertClose(moles, facts.Recipes[0].ComponentMoles[component]);
            }

            AssertClose(0, facts.Recipes[0].Elements.Values.Sum(e => e.Concentration.GramsPerLitre - e.Contributions.Sum(c => c.Concentration.GramsPerLitre)));
        });

    [Fact]
    public void EveryCatalogueSubstanceGivesFiniteFactsWhoseChargeIsExplained()
    {
        foreach (var substance in SubstanceCatalogue.BuiltIn.Substances)
        {
            var facts = Bench.RecipeOf("1 L", Bench.Direct(substance.Id, "1 g"));

            Assert.All(facts.Elements.Values, e => Assert.True(double.IsFinite(e.Molar.MolesPerLitre) && e.Concentration.GramsPerLitre > 0, substance.Id));
            var scale = 1e-12 + facts.Ions.Sum(i => Math.Abs(i.ChargeConcentration.EquivalentsPerLitre));
            Assert.True(Math.Abs(facts.Charge.Unexplained.EquivalentsPerLitre) <= 1e-9 * scale, substance.Id);
        }
    }

    private static StockFacts Make((string Substance, double Grams)[] mixture, double factor) =>
        Bench.Analyse([Document(mixture, factor)]).Stocks.Single();

    private static StockDocument Document((string Substance, double Grams)[] mixture, double factor) =>
        Bench.Stock(
            "a.stock.json",
            FormattableString.Invariant($"{factor:0.################} L"),
            [.. mixture.Select((m, i) => Bench.Add(m.Substance, FormattableString.Invariant($"{m.Grams * factor:0.################} g"), id: $"s{i}"))]);

    private static void AssertClose(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-12 + (1e-9 * Math.Abs(expected)), $"{expected:R} and {actual:R}");
}
