using System.CommandLine;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Install;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Says what this program is, where settings come from and what a shop has not told yet.</summary>
internal static class DoctorCommand
{
    public static Command Build(Surroundings world)
    {
        var path = new Argument<string>("path") { Description = "A file or folder of the shop.", DefaultValueFactory = _ => "." };
        var config = SharedOptions.Config();
        var command = new Command("doctor", "Say which version this is, where settings come from and what is missing.") { path, config };
        command.SetAction(parsed =>
        {
            var asked = parsed.GetValue(path)!;
            var lines = new List<string>();
            lines.AddRange(Program());
            lines.Add($"data       {DataVersion.Text}: {RuleBook.Descriptors.Length} rules, "
                + $"{SubstanceCatalogue.BuiltIn.Substances.Count} substances");
            var missing = Shop(world, asked, parsed.GetValue(config), lines);
            lines.Add(missing.Count == 0
                ? "missing    nothing"
                : string.Create(CultureInfo.InvariantCulture, $"missing    {missing.Count}:"));
            lines.AddRange(missing.Select(m => "           - " + m));
            foreach (var line in lines)
            {
                world.Out.WriteLine(Printable.Show(line));
            }

            world.Out.Flush();
            return ExitCodes.Clean;
        });
        return command;
    }

    private static IEnumerable<string> Program()
    {
        var kind = RuntimeFeature.IsDynamicCodeSupported
            ? $"on {RuntimeInformation.FrameworkDescription}"
            : "native program, no runtime needed";
        yield return $"version    {ToolVersion.Text}, {kind}, {RuntimeInformation.RuntimeIdentifier}";
    }

    /// <summary>What the shop of a path has; returned is what it has not.</summary>
    private static List<string> Shop(Surroundings world, string asked, string? config, List<string> lines)
    {
        if (!MayBeShop(Path.GetFullPath(asked, world.CurrentDirectory)))
        {
            lines.Add($"shop       none at '{asked}': no recipelint.json or repository there or above, and no file of ours near");
            return ["files to check; 'recipelint init my-shop' writes a small shop to start from"];
        }

        Session run;
        try
        {
            run = Session.Open(world, [asked], null, config, noConfig: false);
        }
        catch (UsageException exception)
        {
            lines.Add($"shop       none here: {exception.Message}");
            return ["files to check; 'recipelint init my-shop' writes a small shop to start from"];
        }

        lines.Add(string.Create(
            CultureInfo.InvariantCulture,
            $"shop       {run.Workspace.Root}: {run.Workspace.Asked.Count} files, {run.Workspace.Stocks.Count} stocks, "
                + $"{run.Workspace.Recipes.Count} recipes, {run.Workspace.Waters.Count} waters"));
        var missing = new List<string>();
        foreach (var settings in LintEngine.ShopsOf(run.Workspace))
        {
            lines.Add($"settings   {settings.File ?? "none; the built-in ones hold"}");
            missing.AddRange(MissingIn(settings, world.Today));
        }

        var unread = run.Workspace.Problems.Count;
        if (unread > 0)
        {
            missing.Add(string.Create(
                CultureInfo.InvariantCulture, $"{unread} places that cannot be read as they stand; 'recipelint check {asked}' names each"));
        }

        return missing;
    }

    /// <summary>A look at the folder and two below, so that nobody waits while a whole disk is searched for a shop.</summary>
    private static bool MayBeShop(string full)
    {
        if (!Directory.Exists(full))
        {
            return true;
        }

        for (var at = new DirectoryInfo(full); at is not null; at = at.Parent)
        {
            if (Path.Exists(Path.Combine(at.FullName, LoadOptions.SettingsFileName)) || Path.Exists(Path.Combine(at.FullName, ".git")))
            {
                return true;
            }
        }

        var near = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 2, IgnoreInaccessible = true };
        return new DirectoryInfo(full).Parent is not null
            && Directory.EnumerateFiles(full, "*.json", near)
                .Any(f => f.EndsWith(".stock.json", StringComparison.Ordinal) || f.EndsWith(".recipe.json", StringComparison.Ordinal));
    }

    private static IEnumerable<string> MissingIn(ShopSettings settings, DateOnly today)
    {
        if (settings.File is not { } file)
        {
            yield return "a recipelint.json: without scales no weighing can be judged, without sites stocks are taken to stand at 5 to 30 "
                + "°C";
            yield break;
        }

        if (settings.Scales.Count == 0)
        {
            yield return $"{file}: scales; without them no weighing can be judged";
        }

        foreach (var scale in settings.Scales.Where(s => s.Capacity is null))
        {
            yield return $"{file}: the capacity of the scale '{scale.Name}'; without it no overload is seen";
        }

        if (settings.Sites.Count == 0)
        {
            yield return $"{file}: sites; without them a stock is taken to stand at 5 to 30 °C where it does not say";
        }

        if (!settings.Meters.Any(m => m.Kind == MeterKind.Ph))
        {
            yield return $"{file}: a pH meter; without its accuracy a measured pH counts as exact";
        }

        foreach (var (name, due) in settings.Calibrations.Where(c => c.Due < today).Select(c => (c.Name, c.Due)))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{file}: the calibration of '{name}', due since {due:yyyy-MM-dd}");
        }

        if (settings.PinnedData is { } pinned && pinned.Value != DataVersion.Text)
        {
            yield return $"{file}: it was written for the data {pinned.Value}, this program has {DataVersion.Text}; compare the findings, "
                + "then write the new name";
        }
    }
}
