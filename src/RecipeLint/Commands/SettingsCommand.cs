using System.CommandLine;
using System.Globalization;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Lists what holds for one file and where each value comes from.</summary>
internal static class SettingsCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A file of the shop." };
        var all = new Option<bool>("--all") { Description = "Every rule with its options, not only what the shop has set." };
        var config = SharedOptions.Config();
        var command = new Command("settings", "List what the settings say for one file, each value with the line it comes from.")
        {
            file,
            all,
            config,
        };
        command.SetAction(parsed =>
        {
            var run = Session.Open(world, [parsed.GetValue(file)!], null, parsed.GetValue(config), noConfig: false);
            if (run.Workspace.Asked.Count != 1)
            {
                throw StockInput.OneFile(run, "settings", "file", []);
            }

            var asked = run.Workspace.Asked.Single();
            var settings = run.Workspace.SettingsFor(asked);
            Line(world, $"{asked}: settings of {settings.File ?? "none; the built-in ones hold"}");
            foreach (var (value, place) in Equipment(settings).Concat(Dates(settings)))
            {
                Line(world, $"  {value,-58}  {Where(run.Workspace, place)}");
            }

            Rules(world, run.Workspace, settings, parsed.GetValue(all));
            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }

    private static IEnumerable<(string Value, Place? Place)> Equipment(ShopSettings settings)
    {
        yield return ($"profile {settings.Profile?.Value ?? "none"}", settings.Profile?.Place);
        foreach (var scale in settings.Scales)
        {
            var most = scale.Capacity is { } capacity ? $" to {Say.Grams(capacity.Grams)}" : "";
            yield return ($"scale {scale.Name}: {Say.Grams(scale.Readability.Grams)}{most}", scale.Place);
        }

        foreach (var measure in settings.Measures)
        {
            var holds = measure.Capacity is { } size ? $": {Say.Litres(size.Litres)}" : "";
            yield return ($"{measure.Kind.ToString().ToLowerInvariant()} {measure.Name}{holds}", measure.Place);
        }

        foreach (var meter in settings.Meters)
        {
            yield return ($"{(meter.Kind == MeterKind.Ph ? "pH" : "EC")} meter {meter.Name}", meter.Place);
        }

        foreach (var vessel in settings.Vessels)
        {
            yield return ($"vessel {vessel.Name}{(vessel.Capacity is { } size ? ": " + Say.Litres(size.Litres) : "")}", vessel.Place);
        }

        foreach (var price in settings.Prices)
        {
            var bought = price.Mass is { } mass ? Say.Grams(mass.Grams) : Say.Litres(price.Volume!.Value.Litres);
            yield return ($"price of {price.Of}: {Say.Number(price.Cost)} {settings.Currency} for {bought}", price.Place);
        }

        foreach (var site in settings.Sites)
        {
            yield return (string.Create(
                CultureInfo.InvariantCulture, $"site {site.Name}: {site.At.Low.Celsius:0.#}..{site.At.High.Celsius:0.#} °C"), site.Place);
        }
    }

    private static IEnumerable<(string Value, Place? Place)> Dates(ShopSettings settings)
    {
        foreach (var calibration in settings.Calibrations)
        {
            yield return (string.Create(
                CultureInfo.InvariantCulture,
                $"calibration of {calibration.Name} holds until {calibration.Due:yyyy-MM-dd}"), calibration.Place);
        }

        if (settings.PinnedData is { } data)
        {
            yield return ($"data {data.Value}", data.Place);
        }

        foreach (var suppression in settings.Suppressions)
        {
            yield return ($"accepted {suppression.Rule} in {suppression.File}", suppression.Place);
        }
    }

    private static void Rules(Surroundings world, Workspace workspace, ShopSettings settings, bool all)
    {
        var tuning = RuleTuning.Read(settings);
        var files = settings.HouseRules.ToDictionary(r => r.Id.Value, r => r.Place, StringComparer.Ordinal);
        foreach (var rule in RuleBook.Descriptors.Concat(settings.HouseRules.Select(HouseRules.Descriptor)))
        {
            var set = settings.Rules.Where(r => HouseRules.Find(settings, r.Rule)?.Id == rule.Id).ToList();
            var written = files.GetValueOrDefault(rule.Id);
            if (set.Count == 0 && written is null && !all)
            {
                continue;
            }

            var level = tuning.IsOff(rule) ? "off" : tuning.LevelOf(rule) is { } own ? Words.Of(own) : $"{Words.Of(rule.Level)} or by harm";
            Line(world, $"  {$"{rule.Id} {rule.Name}: {level}",-58}  "
                + $"{Where(workspace, set.LastOrDefault(s => s.Level is not null)?.Place ?? written)}");
            foreach (var (name, value) in tuning.OptionsOf(rule))
            {
                var from = set.SelectMany(s => s.Options.Where(o => o.Key == name).Select(o => o.Value.Place)).LastOrDefault();
                if (all || from is not null)
                {
                    Line(world, $"  {$"    {name} {value} {rule.Options.First(o => o.Name == name).Unit}".TrimEnd(),-58}  "
                        + $"{Where(workspace, from)}");
                }
            }
        }
    }

    private static string Where(Workspace workspace, Place? place) => place is null
        ? "built in"
        : string.Create(CultureInfo.InvariantCulture, $"{place.File}:{Spot.Of(place, workspace.Sources).Lines.Start.Line}");

    private static void Line(Surroundings world, string line) => world.Out.WriteLine(Printable.Show(line.TrimEnd()));
}
