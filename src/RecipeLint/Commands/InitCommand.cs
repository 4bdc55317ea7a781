using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Editor.Setup;
using RecipeLint.Recipes.OneLine;
using RecipeLint.Reports.Dissolve;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes a small working shop, or one stock file from one line. Never overwrites.</summary>
internal static class InitCommand
{
    private const string ResourcePrefix = "Shop/";

    public static Command Build(Surroundings world)
    {
        var folder = new Argument<string>("folder")
        {
            Description = "Where to write; made if it is not there.",
            DefaultValueFactory = _ => ".",
        };
        var from = new Option<string?>("--from")
        {
            Description = "One line to make a stock file of, such as \"Ca(NO3)2.4H2O 200 g, KNO3 100 g in 2 L\".",
            HelpName = "line",
        };
        var name = new Option<string>("--name")
        {
            Description = "Name of that stock; the file gets it too.",
            DefaultValueFactory = _ => "first",
            HelpName = "name",
        };
        var product = new Option<bool>("--product")
        {
            Description = "Describe a product by its label: answer questions, a file comes out.",
        };
        var profile = new Option<bool>("--profile") { Description = "Describe what a crop of yours wants, by questions." };
        var water = new Option<bool>("--water") { Description = "Write down an analysis of source water, by questions." };
        var command = new Command(
            "init", "Write a small working shop to start from, a stock file from one line, or another file by questions.")
        {
            folder, from, name, product, profile, water,
        };
        command.SetAction(parsed =>
        {
            var target = Path.GetFullPath(parsed.GetValue(folder)!, world.CurrentDirectory);
            var forms = new Option<bool>[] { product, profile, water }.Where(parsed.GetValue).ToList();
            if (forms.Count + (parsed.GetValue(from) is null ? 0 : 1) > 1)
            {
                throw new UsageException("'--from', '--product', '--profile' and '--water' exclude each other.");
            }

            if (parsed.GetValue(from) is { } asked && Danger(asked) is { } danger)
            {
                world.Out.Write(danger);
                return ExitCodes.Findings;
            }

            var files = forms is [var form] ? [Asked(world, form.Name)]
                : parsed.GetValue(from) is { } line ? OneStock(line, parsed.GetValue(name)!)
                : Shop();
            Write(world, target, files);
            return ExitCodes.Clean;
        });
        return command;
    }

    /// <summary>What nobody should mix is written into no file: no and why; null for any other line.</summary>
    private static string? Danger(string line) => OneLineMix.Read(line, SubstanceCatalogue.BuiltIn).Mix is not { } mix ? null
        : Beaker.Of(mix).Beaker is { } beaker ? DissolveReport.Refused(beaker)
        : NamedMix.Dangers(line) is [{ IsForLeaving: true }, ..] dangers ? DissolveReport.Unweighed(dangers)
        : null;

    private static (string Path, string Text) Asked(Surroundings world, string form)
    {
        using var answers = new StreamReader(world.StandardInput());
        var forms = new InitForms(answers, world.Out);
        return form switch
        {
            "--product" => forms.Product(),
            "--water" => forms.Water(),
            _ => forms.Profile(ProfileLibrary.AllNames),
        };
    }

    private static IReadOnlyList<(string Path, string Text)> Shop()
    {
        var assembly = typeof(InitCommand).Assembly;
        return
        [
            .. assembly.GetManifestResourceNames()
                .Where(n => n.StartsWith(ResourcePrefix, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(n =>
                {
                    using var reader = new StreamReader(assembly.GetManifestResourceStream(n)!, Encoding.UTF8);
                    var path = n[ResourcePrefix.Length..];
                    return (path, WithSchema(path, reader.ReadToEnd().ReplaceLineEndings("\n")));
                }),
            .. PublishedSchemas.Files(),
        ];
    }

    /// <summary>The file with the way to its schema in front, so that any editor completes and explains it.</summary>
    private static string WithSchema(string path, string text) =>
        PublishedSchemas.WayFrom(path) is { } way && text.StartsWith("{\n", StringComparison.Ordinal)
            ? $"{{\n  \"$schema\": {Quoted(way)},\n{text[2..]}"
            : text;

    private static IReadOnlyList<(string Path, string Text)> OneStock(string line, string name)
    {
        var (mix, error) = OneLineMix.Read(line, SubstanceCatalogue.BuiltIn);
        if (mix is null)
        {
            throw new UsageException(error!);
        }

        if (mix.Volume is null)
        {
            throw new UsageException("Say how much the mix makes, such as \"KNO3 100 g in 2 L\".");
        }

        if (name.Length == 0 || name.Any(c => !char.IsAsciiLetterOrDigit(c) && c is not '-' and not '_'))
        {
            throw new UsageException($"'{name}' cannot be a file name; use letters, digits, '-' and '_'.");
        }

        // Seven tenths of the water first leaves room for the salts; the rest comes with the top-up (common practice, no source).
        var first = mix.Volume.Volume.Millilitres * 0.7;
        var pour = first >= 1000
            ? (first / 1000).ToString("0.###", CultureInfo.InvariantCulture) + " L"
            : first.ToString("0.###", CultureInfo.InvariantCulture) + " mL";
        var text = new StringBuilder();
        text.Append("{\n  \"format\": 1,\n");
        text.Append(CultureInfo.InvariantCulture, $"  \"name\": {Quoted(name)},\n");
        text.Append(CultureInfo.InvariantCulture, $"  \"makes\": {Quoted(mix.VolumeText!)},\n");
        text.Append("  \"steps\": [\n");
        text.Append(CultureInfo.InvariantCulture, $"    {{ \"pour\": {Quoted(pour)}, \"of\": \"distilled\" }},\n");
        foreach (var item in mix.Items)
        {
            text.Append(
                CultureInfo.InvariantCulture, $"    {{ \"add\": {Quoted(item.Substance.Id)}, \"amount\": {Quoted(item.AmountText)} }},\n");
        }

        text.Append("    { \"stir\": \"until clear\" },\n");
        text.Append(CultureInfo.InvariantCulture, $"    {{ \"topUp\": {Quoted(mix.VolumeText!)}, \"of\": \"distilled\" }}\n");
        text.Append("  ]\n}\n");
        return [(name + ".stock.json", text.ToString())];
    }

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    private static void Write(Surroundings world, string target, IReadOnlyList<(string Path, string Text)> files)
    {
        NewFiles.Write(world, target, "", files);
        var shown = Path.GetRelativePath(world.CurrentDirectory, target);
        world.Tell($"Next: recipelint check {(files.Count == 1 ? Path.Combine(shown, files[0].Path) : shown)}");
    }
}
