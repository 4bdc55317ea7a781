namespace RecipeLint.Analysis.Mixing;

/// <summary>How facts come about at the bench. Computed when first asked for, the same every time.</summary>
public static class MixingOfFacts
{
    extension(StockFacts stock)
    {
        /// <summary>The steps played through at the bench.</summary>
        public MixingSimulation Mixing => stock.Derived.Of(stock, MixingSimulation.Of);
    }
}
