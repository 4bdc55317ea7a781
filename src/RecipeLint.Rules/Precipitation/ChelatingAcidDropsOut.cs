namespace RecipeLint.Rules.Precipitation;

/// <summary>A chelating agent falls out as its acid because the stock is too acid.</summary>
public sealed class ChelatingAcidDropsOut : SolidRule
{
    public override string Name => "chelating-acid-drops-out";

    private protected override string Why(OwnedSolid owned) =>
        "The white powder redissolves only slowly, and meanwhile the metals stand unprotected.";

    private protected override string Remedy(OwnedSolid owned, IReadOnlyList<Supplier> suppliers) =>
        suppliers is [var agent, var acid, ..]
            ? $"Use less {acid.Name}, or dissolve {agent.Name} with alkali and the metals before the acid goes in"
            : "Use less acid, or dissolve the agent with alkali and the metals before the acid goes in";
}
