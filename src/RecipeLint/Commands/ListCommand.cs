using System.CommandLine;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Lists what files may name: substances, profiles, units, rules, equipment.</summary>
internal static class ListCommand
{
    public static Command Build(Surroundings world)
    {
        var what = new Argument<string>("what") { Description = "substances, profiles, units, rules or equipment." };
        what.AcceptOnlyFromAmong("substances", "profiles", "units", "rules", "equipment");
        var words = new Argument<string[]>("words")
        {
            Description = "Only lines with all these words in a name, another name, a formula ...",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var shop = new Option<string?>("--shop")
        {
            Description =
                "A file or folder of a shop, whose own substances and equipment are listed. Equipment: the current folder when left out.",
            HelpName = "path",
        };
        var width = SharedOptions.Width();
        var command = new Command("list", "List substances, profiles, units, rules or equipment, with words to search for.")
        {
            what,
            words,
            shop,
            width,
        };
        command.SetAction(parsed =>
        {
            var table = TableOf(world, parsed.GetValue(what)!, parsed.GetValue(words) ?? [], parsed.GetValue(shop));
            if (table.IsEmpty)
            {
                throw new UsageException($"no {parsed.GetValue(what)} fit '{string.Join(' ', parsed.GetValue(words) ?? [])}'.");
            }

            foreach (var line in TableText.Lines(table, world.Width(parsed.GetValue(width))))
            {
                world.Out.WriteLine(Printable.GuardLine(line));
            }

            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }

    private static Table TableOf(Surroundings world, string what, string[] words, string? shop)
    {
        switch (what)
        {
            case "substances":
                var catalogue = shop is null
                    ? SubstanceCatalogue.BuiltIn
                    : Session.Open(world, [shop], null, null, false).Workspace.Catalogue;
                return Lists.Substances(catalogue, words);
            case "profiles":
                return Lists.Profiles(words);
            case "units":
                return Lists.Units(words);
            case "rules":
                return Lists.Rules(ShopOf(world, shop), words);
            default:
                var workspace = Session.Open(world, [shop ?? "."], null, null, false).Workspace;
                var table = Lists.Equipment(workspace.Asked.Select(workspace.SettingsFor).DistinctBy(s => s.File), words);
                return table.IsEmpty && words.Length == 0
                    ? throw new UsageException(
                        $"'{shop ?? "."}' declares no equipment; scales, measures, meters, vessels and sites stand in recipelint.json.")
                    : table;
        }
    }

    private static ShopSettings ShopOf(Surroundings world, string? path)
    {
        if (path is null)
        {
            return OwnShop.Around(world, null);
        }

        var workspace = Session.Open(world, [path], null, null, false).Workspace;
        return workspace.SettingsFor(workspace.Asked.First());
    }
}
