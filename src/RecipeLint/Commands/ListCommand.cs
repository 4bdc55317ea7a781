using System.CommandLine;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Lists what files may name: substances, profiles, units, rules, equipment.</summary>
internal static class ListCommand
{
    private const int MostNear = 3;

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
                "A file or folder of a shop, whose own substances, profiles and equipment are listed. Equipment: the current folder "
                + "when left out.",
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
            var (kind, wanted) = (parsed.GetValue(what)!, parsed.GetValue(words) ?? []);
            var table = TableOf(world, kind, wanted, parsed.GetValue(shop));
            if (table.IsEmpty)
            {
                var near = Near(world, kind, wanted, parsed.GetValue(shop));
                throw new UsageException(
                    $"no {kind} fit '{string.Join(' ', wanted)}'."
                    + (near.Count > 0 ? $" Did you mean {string.Join(" or ", near.Select(n => $"'{n}'"))}?" : ""));
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

    /// <summary>What was most likely looked for: substances by any of their names, else words of the whole list.</summary>
    private static IReadOnlyList<string> Near(Surroundings world, string what, string[] words, string? shop)
    {
        if (what == "substances"
            && CatalogueOf(world, shop).Find(string.Join(' ', words)) is SubstanceLookup.Unknown { Suggestions.Count: > 0 } near)
        {
            return [.. near.Suggestions.Take(MostNear)];
        }

        var listed = TableOf(world, what, [], shop).Rows
            .SelectMany(r => r)
            .SelectMany(c => c.Split([' ', ',', '-', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
            .Concat(what == "profiles" ? ProfileLibrary.AllNames : [])
            .Where(w => w.Length > 2)
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .ToList();
        return [.. words.SelectMany(w => Spelling.Nearest(w, listed)).Distinct(StringComparer.OrdinalIgnoreCase).Take(MostNear)];
    }

    private static SubstanceCatalogue CatalogueOf(Surroundings world, string? shop) =>
        shop is null ? SubstanceCatalogue.BuiltIn : Session.Open(world, [shop], null, null, false).Workspace.Catalogue;

    private static Table TableOf(Surroundings world, string what, string[] words, string? shop)
    {
        switch (what)
        {
            case "substances":
                return Lists.Substances(CatalogueOf(world, shop), words);
            case "profiles":
                return Lists.Profiles(
                    shop is null ? [] : Session.Open(world, [shop], null, null, false).Workspace.Profiles, words);
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
