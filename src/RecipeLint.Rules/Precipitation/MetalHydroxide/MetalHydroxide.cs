using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>The pH is too high for a metal that no chelate holds.</summary>
internal sealed class MetalHydroxide : SolidRule
{
    public const string RuleName = "metal-hydroxide";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The metal turns to a floc that no dose carries to the plants and that hardly dissolves again.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
    [
        new(suppliers is [_, { Brings: "alkali" } alkali] ? $"use less {alkali.Name}" : "leave out what makes it alkaline"),
        new("acidify the stock before the metals go in", Puts.Acid),
        .. IsChelated(stock, suppliers) ? Array.Empty<Way>() : [new("chelate the metal", Puts.Chelate)],
    ];

    /// <summary>True where what brings the metal brings its chelating agent along: another one holds it no better at this pH.</summary>
    private static bool IsChelated(StockFacts stock, IReadOnlyList<Supplier> suppliers) =>
        stock.Additions.Any(a => suppliers.Count > 0 && a.Place == suppliers[0].Place && Iron.ChelatorMoles(a.ComponentMoles) > 0);
}
