using System.CommandLine;
using System.Globalization;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Explain;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Workings;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Prints why a rule exists, with its chemistry, examples, options and sources.</summary>
internal static class ExplainCommand
{
    private const int Columns = 100;

    public static Command Build(Surroundings world)
    {
        var rule = new Argument<string>("rule") { Description = "Id or name of a rule, such as RL0101 or calcium-with-sulfate." };
        var file = new Option<string?>("--for")
        {
            Description = "Fill the explanation with the numbers of this stock, recipe or water and show the working step by step.",
            HelpName = "file",
        };
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command("explain", "Explain a rule: what it finds, why it matters, what to do.")
        {
            rule,
            file,
            color,
            config,
            noConfig,
        };
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(rule)!;
            var (asked, settings, bare) = (parsed.GetValue(file), parsed.GetValue(config), parsed.GetValue(noConfig));
            var useColor = world.UseColor(parsed.GetValue(color)!);
            (Session Run, string File)? session = asked is null ? null : OfFile(world, asked, settings, bare);
            var shop = session is { } one ? one.Run.Workspace.SettingsFor(one.File)
                : bare ? new ShopSettings()
                : OwnShop.Around(world, settings);
            var descriptor = HouseRules.Find(shop, name) ?? throw Unknown(name);
            var told = session is not { } numbers ? Told(descriptor, useColor)
                : descriptor.Family == HouseRules.Family ? OwnRuleOn(world, descriptor, numbers.Run, numbers.File, useColor)
                : WithNumbersOf(world, descriptor, numbers.Run, numbers.File, useColor);
            world.Out.WriteLine($"{descriptor.Id} {descriptor.Name}  ({Words.Of(descriptor.Level)}, {Words.Of(descriptor.Certainty)}, "
                + $"{(descriptor.IsPreview ? "on trial, " : "")}since {descriptor.Since})");
            world.Out.WriteLine();
            world.Out.Write(told);

            return ExitCodes.Clean;
        });
        return command;
    }

    private static string Told(RuleDescriptor descriptor, bool color) =>
        MarkdownText.Render(descriptor.Explanation.Value, color: color) + RuleGround.Render(RuleGround.Of(descriptor), color);

    private static UsageException Unknown(string name)
    {
        if (name.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return new UsageException(
                $"'{name}' is a file; name the rule, and the file behind '--for', such as 'recipelint explain RL0101 --for {name}'.");
        }

        var digits = name.TrimStart('R', 'L', 'r', 'l');
        IReadOnlyList<string> near =
            int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && RuleBook.Find(string.Create(CultureInfo.InvariantCulture, $"RL{number:0000}")) is { } byNumber
                ? [byNumber.Id]
                : RuleBook.Suggest(name);
        return new UsageException(
            $"There is no rule '{name}'." + (near.Count > 0 ? $" Did you mean {string.Join(" or ", near.Select(n => $"'{n}'"))}?" : "")
            + $" 'recipelint rules' lists them all, 'recipelint list rules {name}' searches them.");
    }

    /// <summary>One file with the shop around it.</summary>
    private static (Session Run, string File) OfFile(Surroundings world, string asked, string? config, bool noConfig)
    {
        var alone = Session.Open(world, [asked], null, config, noConfig);
        return alone.Workspace.Asked.Count == 1
            ? (Session.WithShopOf(world, alone, asked, config, noConfig), alone.Workspace.Asked.Single())
            : throw new UsageException("'--for' takes one file.");
    }

    /// <summary>What a rule of the shop's own says of one file: it has no working, its schema fits or does not.</summary>
    private static string OwnRuleOn(Surroundings world, RuleDescriptor descriptor, Session session, string file, bool color)
    {
        var text = new StringWriter { NewLine = "\n" };
        text.Write(Told(descriptor, color));
        var found = LintEngine.Judge(session.Facts, StandardEngine.On(world.Today)).Findings
            .Where(f => f.Rule.Id == descriptor.Id && f.Place.File == file).ToList();
        text.WriteLine();
        text.Write(MarkdownText.Render(
            $"## On `{file}`\n\n" + (found.Count == 0 ? "Nothing: the facts of this file are as the rule wants them." : ""), color: color));
        foreach (var finding in found)
        {
            var line = Spot.Of(finding.Place, session.Workspace.Sources).Lines.Start.Line;
            text.WriteLine(Printable.Show(string.Create(CultureInfo.InvariantCulture, $"  line {line}: {finding.Message}")));
        }

        return text.ToString();
    }

    /// <summary>Why the rule exists, its working with the numbers of one file, and what to do.</summary>
    private static string WithNumbersOf(Surroundings world, RuleDescriptor descriptor, Session session, string file, bool color)
    {
        var rule = RuleList.All.First(r => r.Name == descriptor.Name);
        var text = new StringWriter { NewLine = "\n" };
        Section("What it finds");
        Section("Why it matters");
        WorkingReport.Write(text, RuleOnFile.Of(session.Facts, rule, file, world.Today), session.Workspace.Sources, color);
        text.WriteLine();
        Section("What to do");
        WriteRepairs(text, world, session, descriptor, file, color);
        text.Write(MarkdownText.Render($"## Cautions\n\n{descriptor.Section("Cautions")}", color: color));
        text.Write(RuleGround.Render(RuleGround.Of(descriptor, session.Facts, file), color));
        return text.ToString();

        void Section(string heading)
        {
            text.Write(MarkdownText.Render($"## {heading}\n\n{descriptor.Section(heading)}", color: color));
            text.WriteLine();
        }
    }

    /// <summary>
    /// The repairs that hold for the findings of the rule in this file, each with what it changes; why there are none where there are none.
    /// </summary>
    private static void WriteRepairs(
        TextWriter text, Surroundings world, Session session, RuleDescriptor descriptor, string file, bool color)
    {
        var engine = StandardEngine.On(world.Today);
        var judged = new Judged(session.Workspace, session.Facts, LintEngine.Judge(session.Facts, engine));
        var findings = judged.Result.Findings.Where(f => f.Rule.Id == descriptor.Id && f.Place.File == file).ToList();
        if (findings.Count == 0)
        {
            return;
        }

        var desk = new RepairDesk(session.Files, session.Load, engine, judged);
        var repairs = findings.SelectMany(f => desk.For(f)).ToList();
        var about = repairs.Count == 0
            ? descriptor.Section("Repairs")
            : "Each was tried out on this file and all that use it; `recipelint check` writes one when it is named.";
        text.Write(MarkdownText.Render($"## Repairs\n\n{about}", color: color));
        text.WriteLine();
        foreach (var line in RepairBlock.Lines(repairs, Columns))
        {
            text.WriteLine(Printable.GuardLine(line));
        }

        if (repairs.Count > 0)
        {
            text.WriteLine();
        }
    }
}
