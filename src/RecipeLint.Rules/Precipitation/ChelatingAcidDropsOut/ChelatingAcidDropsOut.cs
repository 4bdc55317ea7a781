using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A chelating agent falls out as its acid because the stock is too acid.</summary>
internal sealed class ChelatingAcidDropsOut : SolidRule
{
    public const string RuleName = "chelating-acid-drops-out";

    public override string Name => RuleName;

    private protected override string Why(Solid solid) =>
        "The white powder redissolves only slowly, and what lies on the bottom holds no metal.";

    private protected override IEnumerable<Way> Ways(StockFacts stock, Solid solid, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [var agent, var acid, ..]
            ?
            [
                new($"use less {acid.Name}"),
                new($"dissolve {agent.Name} with alkali and with iron or copper before the acid goes in", Puts.Alkali),
            ]
            :
            [
                new("use less acid"),
                new("dissolve the agent with alkali and with iron or copper before the acid goes in", Puts.Alkali),
            ];
}
