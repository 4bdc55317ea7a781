namespace RecipeLint.Analysis.Equilibria;

/// <summary>What facts are as a solution. Computed when first asked for, the same every time.</summary>
public static class ChemistryOfFacts
{
    extension(StockFacts stock)
    {
        /// <summary>What the stock is as a solution: pH, what falls out, who holds the metals.</summary>
        public StockChemistry Chemistry => stock.Derived.Of(stock, StockChemistry.Of);
    }

    extension(RecipeFacts recipe)
    {
        /// <summary>What the final solution is: pH, EC, what falls out, who holds the metals.</summary>
        public RecipeChemistry Chemistry => recipe.Derived.Of(recipe, RecipeChemistry.Of);
    }
}
