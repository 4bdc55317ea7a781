using RecipeLint.Analysis;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The logic of one rule: a pure function of facts. The name ties it to its folder; everything else about it stands there.
/// </summary>
public abstract class Rule
{
    /// <summary>The folder name under rules/FAMILY/.</summary>
    public abstract string Name { get; }
}

public abstract class StockRule : Rule
{
    public abstract IEnumerable<Finding> Judge(StockFacts stock, RuleContext context);
}

public abstract class RecipeRule : Rule
{
    public abstract IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context);
}

public abstract class WorkspaceRule : Rule
{
    public abstract IEnumerable<Finding> Judge(Facts facts, RuleContext context);
}
