using RecipeLint.Analysis;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The logic of one rule: a pure function of facts. The name ties it to its folder; everything else about it stands there.
/// </summary>
public abstract class Rule
{
    /// <summary>The folder name under rules/FAMILY/.</summary>
    public abstract string Name { get; }

    /// <summary>What it looks at, one at a time.</summary>
    public abstract RuleScope Scope { get; }
}

/// <summary>Looks at one stock at a time, once however many recipes use it.</summary>
public abstract class StockRule : Rule
{
    public override RuleScope Scope => RuleScope.Stock;

    public abstract IEnumerable<Finding> Judge(StockFacts stock, RuleContext context);
}

/// <summary>Looks at one recipe at a time.</summary>
public abstract class RecipeRule : Rule
{
    public override RuleScope Scope => RuleScope.Recipe;

    public abstract IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context);
}

/// <summary>Looks at everything read in one run.</summary>
public abstract class WorkspaceRule : Rule
{
    public override RuleScope Scope => RuleScope.Workspace;

    public abstract IEnumerable<Finding> Judge(Facts facts, RuleContext context);
}

/// <summary>Looks at what became of the suppressions after all other rules have spoken. Its findings cannot be suppressed.</summary>
public abstract class SuppressionRule : Rule
{
    public override RuleScope Scope => RuleScope.Workspace;

    public abstract IEnumerable<Finding> Judge(IReadOnlyList<SuppressionUse> uses, RuleContext context);
}
