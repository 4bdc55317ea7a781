namespace RecipeLint.Rules.Tests.Chelation;

/// <summary>
/// What the chelation and preservation families say of the clean example, the shop that a new folder starts from, published solutions
/// and ordinary good stocks. Each finding stands here with the reason why it is right.
/// </summary>
public sealed class GoodStocksTests
{
    [Theory]
    [InlineData("examples/quillmere")]
    [InlineData("src/RecipeLint/Shop")]
    public void TheCleanExampleAndTheStarterShopAreSilent(string folder) => Assert.Empty(Bottles.Said(Bottles.Folder(folder)));

    /// <summary>
    /// Eighteen published solutions (their citations stand in the files), salts dosed into pure water. Nothing is said: their pH lies
    /// between 3 and 5.6, and those with iron hold it with one agent for each iron.
    /// </summary>
    [Fact]
    public void PublishedSolutionsAreSilent()
    {
        var run = Bottles.Folder("tests/RecipeLint.Analysis.Tests/Published");
        Assert.Empty(Bottles.Said(run));
        Assert.True(run.Facts.Recipes.Count >= 18);
    }

    /// <summary>Stocks as they stand in publications and on benches; whatever is said is listed and argued.</summary>
    public static TheoryData<string, string, string[]> Stocks() => new()
    {
        // Hoagland and Arnon 1950, micronutrients at 1 mL/L: in distilled water they keep clear without acid.
        { "hoagland-micro", Bottles.Add("boric-acid 2.86 g", "manganese-chloride-4h2o 1.81 g", "zinc-sulfate-7h2o 0.22 g", "copper-sulfate-5h2o 0.08 g", "molybdic-acid-h2o 0.02 g"), [] },

        // Murashige and Skoog 1962, iron at 5 mL/L: one EDTA for each iron.
        { "ms-iron", Bottles.Add("disodium-edta-2h2o 7.46 g", "ferrous-sulfate-7h2o 5.56 g"), [] },

        // Murashige and Skoog 1962, minor salts at 10 mL/L.
        { "ms-minor", Bottles.Add("boric-acid 0.62 g", "manganese-sulfate-4h2o 2.23 g", "zinc-sulfate-7h2o 0.86 g", "potassium-iodide 0.083 g", "sodium-molybdate-2h2o 0.025 g", "copper-sulfate-5h2o 0.0025 g", "cobalt-chloride-6h2o 0.0025 g"), [] },

        // Only iron is chelated; the other metals are as good as sulfates.
        { "iron-chelate-with-sulfates", Bottles.Add("fe-dtpa-hna 9 g", "manganese-sulfate-h2o 1.55 g", "zinc-sulfate-7h2o 0.66 g", "copper-sulfate-5h2o 0.2 g", "boric-acid 1.72 g"), [] },

        // Everything chelated with EDTA.
        { "all-chelates", Bottles.Add("fe-edta-na-3h2o 15 g", "mn-edta 4 g", "zn-edta 1 g", "cu-edta 0.3 g", "boric-acid 1.7 g"), [] },

        // Calcium part with Fe-EDDHA, where it belongs.
        { "part-a-eddha", Bottles.Add("calcium-nitrate-4h2o 100 g", "potassium-nitrate 20 g", "fe-eddha-na 1.5 g"), [] },

        // Phosphate part soured with phosphoric acid.
        { "part-b-acid", Bottles.Add("phosphoric-75 5 mL", "monopotassium-phosphate 10 g", "magnesium-sulfate-7h2o 40 g", "potassium-nitrate 30 g"), [] },

        // Fe-EDTA beside phosphate, as many growers keep it.
        { "part-b-iron", Bottles.Add("monopotassium-phosphate 17.6 g", "magnesium-sulfate-7h2o 40 g", "fe-edta-na-3h2o 1.5 g"), [] },

        // Benzoate in citric acid, pH 2.9.
        { "trace-benzoate", Bottles.Add("sodium-benzoate 1 g", "citric-acid-h2o 4 g", "manganese-sulfate-h2o 1.55 g", "zinc-sulfate-7h2o 0.66 g", "copper-sulfate-5h2o 0.2 g", "boric-acid 1.72 g", "sodium-molybdate-2h2o 0.13 g"), [] },

        // Sorbate and vinegar.
        { "trace-vinegar", Bottles.Add("potassium-sorbate 0.8 g", "vinegar-5 45 mL", "manganese-sulfate-h2o 1.55 g", "zinc-sulfate-7h2o 0.66 g", "copper-sulfate-5h2o 0.2 g", "boric-acid 1.72 g"), [] },

        // Ferrous sulfate kept by sulfuric acid at pH 2.
        { "iron-acid", Bottles.Add("sulfuric-37 5 mL", "ferrous-sulfate-7h2o 10 g"), [] },

        // Acids and alkalis for adjusting a tank are as strong as they are meant to be.
        { "ph-down", Bottles.Add("nitric-60 200 mL"), [] },
        { "ph-up", Bottles.Add("potassium-hydroxide 50 g"), [] },

        // Boron, molybdate and macronutrient stocks of one salt.
        { "boron", Bottles.Add("boric-acid 20 g"), [] },
        { "molybdate", Bottles.Add("sodium-molybdate-2h2o 2 g"), [] },
        { "calcium-nitrate", Bottles.Add("calcium-nitrate-4h2o 500 g"), [] },
        { "epsom", Bottles.Add("magnesium-sulfate-7h2o 300 g"), [] },
        { "dkp", Bottles.Add("dipotassium-phosphate 100 g"), [] },

        // Rice medium, iron at 1.25 mL/L (protocols.io wg6fbze): ferric chloride held by citrate, and below pH 2 nothing grows on it.
        { "rice-iron", Bottles.Add("ferric-chloride-6h2o 7.7 g", "citric-acid-h2o 11.9 g"), [] },

        // Hoagland's own iron, 0.5 % ferric tartrate, is no substance here; ferric citrate of the same strength feeds mould, which is so.
        { "ferric-citrate", Bottles.Add("ferric-citrate 5 g"), ["warning carbon-without-preservative ferric-citrate.stock.json steps/ferric-citrate"] },

        // Trace metals with citric acid alone: clear, but mould grows on 2 g/L of citric acid within weeks.
        { "trace-citric", Bottles.Add("citric-acid-h2o 2 g", "manganese-sulfate-h2o 1.55 g", "zinc-sulfate-7h2o 0.66 g", "copper-sulfate-5h2o 0.2 g"), ["warning carbon-without-preservative trace-citric.stock.json steps/citric-acid-h2o"] },
    };

    [Theory]
    [MemberData(nameof(Stocks))]
    public void OrdinaryGoodStocksGetWhatIsListed(string name, string steps, string[] said) =>
        Assert.Equal(said, Bottles.Said(Bottles.Written(Bottles.Stock(name, steps))));
}
