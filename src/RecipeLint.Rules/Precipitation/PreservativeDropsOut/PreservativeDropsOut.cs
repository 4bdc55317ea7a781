using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A preservative crystallises: as its acid in a cold, acid stock, or with calcium.</summary>
internal sealed class PreservativeDropsOut : SolidRule
{
    public const string RuleName = "preservative-drops-out";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "Crystals protect nothing: what stays dissolved may be too little to stop moulds, and flakes clog filters.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        new(IsOfCalcium(solid)
            ? $"{Less(suppliers.FirstOrDefault(s => s.Brings == IonWords.Of(Component.Benzoate)))}, or keep it out of the calcium"
            : $"{Less(suppliers is [var first, ..] ? first : null)} or less acid"),
    ];

    private static string Less(Supplier? supplier) => $"use less {supplier?.Name ?? "preservative"}";

    private static bool IsOfCalcium(Solid solid) => solid.Composition.Any(c => c.Key == Component.Calcium);
}
