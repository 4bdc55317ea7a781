using System.CommandLine;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Commands;

/// <summary>Prints why a rule exists, with its chemistry, examples, options and sources.</summary>
internal static class ExplainCommand
{
    public static Command Build(Surroundings world)
    {
        var rule = new Argument<string>("rule") { Description = "Id or name of a rule, such as RL0101 or calcium-with-sulfate." };
        var color = SharedOptions.Color();
        var command = new Command("explain", "Explain a rule: what it finds, why it matters, what to do.") { rule, color };
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(rule)!;
            if (RuleBook.Find(name) is not { } descriptor)
            {
                var near = RuleBook.Suggest(name);
                throw new UsageException(
                    $"There is no rule '{name}'." + (near.Count > 0 ? $" Did you mean {string.Join(" or ", near.Select(n => $"'{n}'"))}?" : "")
                    + " 'recipelint rules' lists them all.");
            }

            world.Out.WriteLine($"{descriptor.Id} {descriptor.Name}  ({Words.Of(descriptor.Level)}, {Words.Of(descriptor.Certainty)}, since {descriptor.Since})");
            world.Out.WriteLine();
            world.Out.Write(MarkdownText.Render(descriptor.Explanation.Value, color: world.UseColor(parsed.GetValue(color)!)));
            return ExitCodes.Clean;
        });
        return command;
    }
}
