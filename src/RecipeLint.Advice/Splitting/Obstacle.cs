using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Splitting;

/// <summary>Why substances cannot share a part.</summary>
public abstract record Obstacle
{
    private Obstacle()
    {
    }

    /// <summary>What is in it can hurt somebody.</summary>
    public sealed record Danger(Hazard Hazard) : Obstacle;

    /// <summary>A solid falls out.</summary>
    /// <param name="Mass">g of solid per litre of the part, at equilibrium.</param>
    /// <param name="At">Temperature at which most of it does.</param>
    /// <param name="Suppliers">The two substances that bring its ions.</param>
    /// <param name="Ions">The ions of the solid, as components.</param>
    public sealed record Deposit(
        Solid Solid, MassConcentration Mass, Temperature At, IReadOnlyList<string> Suppliers, IReadOnlyList<string> Ions) : Obstacle;

    /// <summary>A soluble salt comes too near saturation to promise that it stays dissolved.</summary>
    /// <param name="Index">log10 of its product over the saturated one, the mean of two measures.</param>
    public sealed record TooClose(
        Solid Solid, double Index, Temperature At, IReadOnlyList<string> Suppliers, IReadOnlyList<string> Ions) : Obstacle;

    /// <summary>Organic matter in it grows mould: too little of the preservative is undissociated acid.</summary>
    /// <param name="Strength">What there is over the least that works; 0 without a preservative.</param>
    /// <param name="Ph">pH of the part.</param>
    /// <param name="Food">What microbes live on.</param>
    /// <param name="FoodCalled">What that is.</param>
    public sealed record Unpreserved(double Strength, double Ph, MassConcentration Food, string FoodCalled) : Obstacle;

    /// <summary>A weight in it is too small for every scale of the shop.</summary>
    public sealed record TooLittleToWeigh(string Substance, Mass Mass, Scale Scale) : Obstacle;

    /// <summary>A check calls it an error as it would be made and kept.</summary>
    public sealed record Wrong(Finding Finding) : Obstacle;

    /// <summary>Nothing else is in it, and nobody states what it sets free in water: it is given as it is bought.</summary>
    public sealed record OnlyUntold(string Substance) : Obstacle;

    /// <summary>What becomes of it could not be computed.</summary>
    public sealed record NotComputed(string Reason) : Obstacle;
}
