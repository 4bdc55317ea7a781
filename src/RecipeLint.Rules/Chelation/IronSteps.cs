using RecipeLint.Analysis.Equilibria;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Chelation;

/// <summary>Who holds the iron, as steps of a working.</summary>
internal static class IronSteps
{
    /// <summary>Per cent of the iron that an agent holds in solution.</summary>
    /// <param name="all">µmol/L.</param>
    internal static Term Held(WorkingBuilder work, SolutionState state, Term all)
    {
        var metals = state.Metals.Where(m => m.Metal is Iron.Ferrous or Iron.Ferric).ToList();
        work.Given("pH", state.Ph, "", "engine");
        var dissolved = work.Given("iron that is dissolved", metals.Sum(m => m.Dissolved.MolesPerLitre) * 1e6, "µmol/L", "engine");
        var bare = work.Given("of it without a holder", metals.Sum(m => m.Unchelated.MolesPerLitre) * 1e6, "µmol/L", "engine");
        return work.Result("iron still held", "100 × (dissolved - without a holder) / iron in all", 100 * (dissolved - bare) / all, "%");
    }
}
