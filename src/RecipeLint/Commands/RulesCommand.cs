using System.CommandLine;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Lists every rule by family.</summary>
internal static class RulesCommand
{
    public static Command Build(Surroundings world)
    {
        var command = new Command("rules", "List every rule with its level and one sentence on it.");
        command.SetAction(_ =>
        {
            string? family = null;
            foreach (var rule in RuleBook.Descriptors)
            {
                if (rule.Family != family)
                {
                    world.Out.WriteLine(family is null ? rule.Family : "\n" + rule.Family);
                    family = rule.Family;
                }

                world.Out.WriteLine($"  {rule.Id}  {Words.Of(rule.Level),-7}  {rule.Name}");
                world.Out.WriteLine($"                   {rule.Title}");
            }

            world.Out.WriteLine();
            world.Out.WriteLine($"{RuleBook.Descriptors.Length} rules. 'recipelint explain NAME' tells more about one.");
            return ExitCodes.Clean;
        });
        return command;
    }
}
