using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Rules.Engine;

/// <summary>A rule that judges once: its findings, workings and repairs are read from its verdicts.</summary>
public abstract class JudgingRule : Rule
{
    /// <summary>False for a rule that turns on the text of a file: nothing in it can be worked out.</summary>
    public virtual bool HasWorking => true;

    /// <summary>Everything the rule looks at in the files of the subject, those of the file that was asked for first.</summary>
    /// <param name="context">Gives the options that hold for each file.</param>
    internal abstract IEnumerable<(Verdict Verdict, RuleContext Context)> Look(WorkingSubject subject, RuleContext context);

    /// <summary>The finding of a verdict that fires.</summary>
    internal abstract Finding ToFinding(Verdict verdict, RuleContext context);

    /// <summary>How a verdict follows, step by step; null where the rule turns on no number.</summary>
    internal abstract Working? ToWorking(Verdict verdict, RuleContext context);
}

/// <summary>A rule that judges once.</summary>
/// <typeparam name="TVerdict">What it finds out about one thing.</typeparam>
public abstract class JudgingRule<TVerdict> : JudgingRule
    where TVerdict : Verdict
{
    /// <summary>Ways to mend a finding of this rule; a rule that has any declares <see cref="IProposesRepairs"/>.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        finding.Verdict is TVerdict verdict ? Repair(verdict, finding, context) : [];

    /// <summary>The finding of a verdict that fires: everything that is text is made here and not in Judge.</summary>
    protected abstract Finding Describe(TVerdict verdict, RuleContext context);

    /// <summary>
    /// How the values of the checks follow from the numbers of the file, in steps of a pocket calculator, whether the verdict fires or not.
    /// It shows exactly the checks of the verdict, in their order, and compares nothing itself.
    /// </summary>
    protected virtual Working? Work(TVerdict verdict, RuleContext context) => null;

    /// <summary>
    /// Ways to mend the finding, the best first. Numbers and places come from the verdict; stocks and recipes from the context, which knows
    /// the whole shop and not only the files that were asked about.
    /// </summary>
    protected virtual IEnumerable<RepairProposal> Repair(TVerdict verdict, Finding finding, RepairContext context) => [];

    internal sealed override Finding ToFinding(Verdict verdict, RuleContext context) =>
        Describe((TVerdict)verdict, context) with { Verdict = verdict };

    internal sealed override Working? ToWorking(Verdict verdict, RuleContext context) => Work((TVerdict)verdict, context);
}

/// <summary>Looks at one stock at a time, once however many recipes use it.</summary>
public abstract class StockRule<TVerdict> : JudgingRule<TVerdict>, IJudgesStocks
    where TVerdict : Verdict
{
    public override RuleScope Scope => RuleScope.Stock;

    IEnumerable<Verdict> IJudgesStocks.Judge(StockFacts stock, RuleContext context) => Judge(stock, context);

    /// <summary>All it looked at, whether it fires or not. A pure function of the facts that never throws and makes no text.</summary>
    protected abstract IEnumerable<TVerdict> Judge(StockFacts stock, RuleContext context);

    internal sealed override IEnumerable<(Verdict Verdict, RuleContext Context)> Look(WorkingSubject subject, RuleContext context) =>
        subject.Stocks.SelectMany(s => context.For(s.Stock.File) is var own ? Judge(s, own).Select(v => ((Verdict)v, own)) : []);
}

/// <summary>Looks at one recipe at a time.</summary>
public abstract class RecipeRule<TVerdict> : JudgingRule<TVerdict>, IJudgesRecipes
    where TVerdict : Verdict
{
    public override RuleScope Scope => RuleScope.Recipe;

    /// <summary>True for a rule that judges by what roots bear or take up: of a spray onto leaves it says nothing.</summary>
    protected virtual bool OnlyForRoots => false;

    IEnumerable<Verdict> IJudgesRecipes.Judge(RecipeFacts recipe, RuleContext context) => JudgeWhatItIsFor(recipe, context);

    /// <inheritdoc cref="StockRule{TVerdict}.Judge"/>
    protected abstract IEnumerable<TVerdict> Judge(RecipeFacts recipe, RuleContext context);

    internal sealed override IEnumerable<(Verdict Verdict, RuleContext Context)> Look(WorkingSubject subject, RuleContext context) =>
        subject.Recipes.SelectMany(r => context.For(r.Recipe.File) is var own
            ? JudgeWhatItIsFor(r, own).Select(v => ((Verdict)v, own)) : []);

    private IEnumerable<TVerdict> JudgeWhatItIsFor(RecipeFacts recipe, RuleContext context) =>
        OnlyForRoots && recipe.Recipe.IsForLeaves ? [] : Judge(recipe, context);
}

/// <summary>Looks at one water at a time that has a file of its own.</summary>
public abstract class WaterRule<TVerdict> : JudgingRule<TVerdict>, IJudgesWorkspaces
    where TVerdict : Verdict
{
    public override RuleScope Scope => RuleScope.Workspace;

    IEnumerable<Verdict> IJudgesWorkspaces.Judge(Facts facts, RuleContext context) =>
        facts.Workspace.Waters.Where(IsFile).SelectMany(w => Judge(w, context.For(w.File)).Select(v => v with { Files = [w.File] }));

    /// <inheritdoc cref="StockRule{TVerdict}.Judge"/>
    protected abstract IEnumerable<TVerdict> Judge(WaterDocument water, RuleContext context);

    internal sealed override IEnumerable<(Verdict Verdict, RuleContext Context)> Look(WorkingSubject subject, RuleContext context) =>
        subject.Waters.Where(IsFile).SelectMany(w => context.For(w.File) is var own ? Judge(w, own).Select(v => ((Verdict)v, own)) : []);

    private static bool IsFile(WaterDocument water) => water.File.Length > 0;
}

/// <summary>Looks at everything read in one run; each of its verdicts says which files it is about.</summary>
public abstract class WorkspaceRule<TVerdict> : JudgingRule<TVerdict>, IJudgesWorkspaces
    where TVerdict : Verdict
{
    public override RuleScope Scope => RuleScope.Workspace;

    IEnumerable<Verdict> IJudgesWorkspaces.Judge(Facts facts, RuleContext context) => Judge(facts, context);

    /// <inheritdoc cref="StockRule{TVerdict}.Judge"/>
    /// <param name="facts">Of all files read.</param>
    /// <param name="context">Holds the defaults: the options that hold for a file are those of context.For(file).</param>
    protected abstract IEnumerable<TVerdict> Judge(Facts facts, RuleContext context);

    internal sealed override IEnumerable<(Verdict Verdict, RuleContext Context)> Look(WorkingSubject subject, RuleContext context)
    {
        int Rank(Verdict verdict) => verdict.Files.Select(subject.RankOf).DefaultIfEmpty(int.MaxValue).Min();
        return Judge(subject.Facts, context).Where(v => Rank(v) < int.MaxValue).OrderBy(Rank).Select(v => ((Verdict)v, context));
    }
}

/// <summary>What the engine asks of a rule on stocks.</summary>
internal interface IJudgesStocks
{
    IEnumerable<Verdict> Judge(StockFacts stock, RuleContext context);
}

/// <summary>What the engine asks of a rule on recipes.</summary>
internal interface IJudgesRecipes
{
    IEnumerable<Verdict> Judge(RecipeFacts recipe, RuleContext context);
}

/// <summary>What the engine asks of a rule on all that was read.</summary>
internal interface IJudgesWorkspaces
{
    IEnumerable<Verdict> Judge(Facts facts, RuleContext context);
}
