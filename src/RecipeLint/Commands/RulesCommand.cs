using System.CommandLine;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports;
using RecipeLint.Reports.HouseRules;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Lists every rule by family, or runs the examples of the shop's own rules.</summary>
internal static class RulesCommand
{
    public static Command Build(Surroundings world)
    {
        var test =
            new Option<bool>("--test") { Description = "Run the failing and passing examples of the shop's own rules (*.rule.json)." };
        var paths = new Argument<string[]>("path")
        {
            Description = "With --test: the rule files or folders; the current folder when none is named.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var command = new Command("rules", "List every rule with its level and one sentence on it, or test the shop's own.") { test,
            paths };
        command.SetAction(parsed =>
        {
            var asked = parsed.GetValue(paths)!;
            if (parsed.GetValue(test))
            {
                return Test(world, asked.Length == 0 ? ["."] : asked);
            }

            if (asked.Length > 0)
            {
                throw new UsageException(
                    $"a path goes with '--test'; 'recipelint explain {asked[0]}' tells of one rule, 'recipelint list rules {asked[0]}' "
                        + "searches them.");
            }

            List(world);
            return ExitCodes.Clean;
        });
        return command;
    }

    private static void List(Surroundings world)
    {
        string? family = null;
        foreach (var rule in RuleBook.Descriptors)
        {
            if (rule.Family != family)
            {
                world.Out.WriteLine(family is null ? rule.Family : "\n" + rule.Family);
                family = rule.Family;
            }

            world.Out.WriteLine($"  {rule.Id}  {Words.Of(rule.Level),-7}  {rule.Name}{(rule.IsPreview ? " (on trial)" : "")}");
            world.Out.WriteLine($"                   {rule.Title}");
        }

        var own = OwnShop.Around(world, null).HouseRules.Select(HouseRules.Descriptor).OrderBy(r => r.Id, StringComparer.Ordinal).ToList();
        if (own.Count > 0)
        {
            world.Out.WriteLine($"\n{HouseRules.Family} (of this shop)");
        }

        foreach (var rule in own)
        {
            world.Out.WriteLine(Printable.Show($"  {rule.Id}  {Words.Of(rule.Level),-7}  {rule.Name}"));
            world.Out.WriteLine(Printable.Show($"                   {rule.Title}"));
        }

        world.Out.WriteLine();
        world.Out.WriteLine($"{RuleBook.Descriptors.Length} rules. 'recipelint explain NAME' tells more about one.");
    }

    /// <summary>Rules that cannot be read are told of by 'check'; here they fail the run.</summary>
    private static int Test(Surroundings world, string[] asked)
    {
        var run = Session.Open(world, asked, null, null, false);
        var rules = OwnRules(run.Workspace).ToList();
        var unread = run.Workspace.Asked.Where(f => f.EndsWith(".rule.json", StringComparison.OrdinalIgnoreCase)
            && rules.TrueForAll(r => r.File != f)).ToList();
        foreach (var file in unread)
        {
            world.Out.WriteLine($"{Printable.Show(file)}: cannot be used; 'recipelint check' says why.");
        }

        var failed = unread.Count;
        foreach (var rule in rules)
        {
            failed += Test(world, rule, run.Workspace);
        }

        if (rules.Count + unread.Count == 0)
        {
            throw new UsageException("no house rule (*.rule.json below a recipelint.json) was found there.");
        }

        world.Out.WriteLine(failed == 0 ? $"{Many(rules.Count, "house rule")}: every example is as it should be."
            : $"{Many(failed, "fault")}.");
        return failed == 0 ? ExitCodes.Clean : ExitCodes.Findings;
    }

    private static int Test(Surroundings world, HouseRuleDocument rule, Workspace workspace)
    {
        var tried = HouseRuleTrial.Of(rule, workspace.Sources[rule.File]);
        var called = $"{rule.Id.Value} {rule.Name.Value}";
        foreach (var example in tried.Where(t => t.Fault is not null))
        {
            var kind = example.ShouldFail ? "failing" : "passing";
            world.Out.WriteLine(Printable.Show($"{called}: {kind} example '{example.Example.What}': {example.Fault}"));
        }

        var faults = tried.Count(t => t.Fault is not null);
        if (rule.Failing.Count == 0 || rule.Passing.Count == 0)
        {
            faults++;
            world.Out.WriteLine(
                Printable.Show($"{called}: needs at least one failing and one passing example, so that it can be trusted."));
        }

        if (faults == 0)
        {
            world.Out.WriteLine(Printable.Show($"{called}: {rule.Failing.Count} failing, {rule.Passing.Count} passing, as it should be."));
        }

        return faults;
    }

    private static IEnumerable<HouseRuleDocument> OwnRules(Workspace workspace) =>
        LintEngine.ShopsOf(workspace).SelectMany(s => s.HouseRules).DistinctBy(r => r.File)
            .Where(r => workspace.Asked.Contains(r.File)).OrderBy(r => r.Id.Value, StringComparer.Ordinal);

    private static string Many(int count, string what) => $"{count} {what}{(count == 1 ? "" : "s")}";
}
