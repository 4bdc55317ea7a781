using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A substance that the files of one shop call by several names.</summary>
internal sealed class SubstanceNamedTwoWays : WorkspaceRule, IJudgesInBrief, IProposesRepairs
{
    public override string Name => "substance-named-two-ways";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) => Find(RunInBrief.Of(facts.Workspace), context);

    IEnumerable<Finding> IJudgesInBrief.Judge(RunInBrief run, RuleContext context) => Find(run, context);

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        finding.Suggestions is [var usual]
            ? [new Repair(
                "as-elsewhere",
                $"Write '{usual}', as elsewhere.",
                IsFormula(finding, context) ? RepairKind.Chemistry : RepairKind.Safe,
                [new JsonEdit.ReplaceValue(finding.Place, JsonDraft.Of(usual))])]
            : [];

    /// <summary>A formula written as formulas are is no misspelling: only who asks for it by name has it rewritten.</summary>
    private static bool IsFormula(Finding finding, RepairContext context) =>
        context.Item(finding.Place with { Range = null })?.Text is { } written
        && FormulaParser.TryParse(written.Trim(), out _, out _);

    private static IEnumerable<Finding> Find(RunInBrief run, RuleContext context)
    {
        foreach (var names in run.Names.GroupBy(n => (n.Shop, n.Substance)).Select(g => g.ToList()).Where(g => g.Count > 1))
        {
            // The id breaks a tie: it is what lists and reports show.
            var usual = names.OrderByDescending(n => n.Count).ThenByDescending(n => n.Text == n.Substance)
                .ThenBy(n => n.Text, StringComparer.Ordinal).First();
            foreach (var other in names.Where(n => n != usual))
            {
                yield return context.Find(
                    other.Place,
                    other.At,
                    $"'{other.Text}' is the same substance as '{usual.Text}' ({other.SubstanceName}): {Places(other.Count)} of this "
                        + $"shop {(other.Count == 1 ? "has" : "have")} the one name, {Places(usual.Count)} the other. Whoever searches the "
                        + "files for one of them misses the other, and whoever weighs looks for two bags. "
                        + $"Write '{usual.Text}' everywhere, or whichever name stands on the bag.",
                    Harm.Habit,
                    Odds.Certain) with
                {
                    Related = [new RelatedPlace(usual.Place, $"'{usual.Text}' here")],
                    Suggestions = [usual.Text],
                };
            }
        }
    }

    private static string Places(int count) =>
        count == 1 ? "one place" : string.Create(CultureInfo.InvariantCulture, $"{count} places");
}
