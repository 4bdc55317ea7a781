using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Advice.Splitting;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Reports.Splitting;

/// <summary>A file of ours as text.</summary>
/// <param name="Name">File name without folder.</param>
public sealed record WrittenFile(string Name, string Text);

/// <summary>The stocks of a plan and the recipe that doses them, as files of the format people write. Pure.</summary>
public static class PartFileText
{
    /// <param name="proposal">With a plan.</param>
    /// <param name="recipeName">File name for the recipe ("lettuce.recipe.json").</param>
    /// <param name="original">Text of the recipe that was split, from which all but the doses is kept; null when a stock was split.</param>
    /// <param name="final">Final volume of the recipe.</param>
    /// <param name="path">From a water file relative to the workspace root to how the new files refer to it.</param>
    /// <exception cref="ArgumentException">There is no plan.</exception>
    public static IReadOnlyList<WrittenFile> Of(
        SplitProposal proposal, string recipeName, byte[]? original, Volume final, Func<string, string> path)
    {
        if (proposal.Plan is not { } plan)
        {
            throw new ArgumentException("There is no plan to write.", nameof(proposal));
        }

        return
        [
            .. plan.Parts.Select(p => new WrittenFile(FileOf(p), Stock(p, path))),
            new WrittenFile(recipeName, Recipe(proposal, plan, original, final, path)),
        ];
    }

    /// <summary>"part-a.stock.json".</summary>
    public static string FileOf(SplitPart part) => part.Name.ToLowerInvariant().Replace(' ', '-') + ".stock.json";

    private static string Stock(SplitPart part, Func<string, string> path)
    {
        var stock = part.Stock.Stock;
        var text = new StringBuilder();
        text.Append("{\n  \"format\": 1,\n");
        Member(text, "name", Quoted(stock.Name));
        Member(text, "makes", Quoted(VolumeText(part.Stock.Volume)));
        Member(text, "dose", Quoted(DoseText(part.Dilution)));
        Member(text, "keep", Keep(stock.Keep!));
        text.Append("  \"steps\": [\n");
        text.AppendJoin(",\n", stock.Steps.Select(s => "    " + Step(s, path)));
        text.Append("\n  ]\n}\n");
        return text.ToString();
    }

    private static string Keep(Keeping keep)
    {
        var members = new List<string>();
        if (keep.At is { } at)
        {
            members.Add($"\"at\": {Quoted($"{Number(at.Value.Low.Celsius)}..{Number(at.Value.High.Celsius)} °C")}");
        }

        if (keep.For is { } shelf)
        {
            members.Add($"\"for\": {Quoted($"{Number(Math.Round(shelf.Value.Days))} days")}");
        }

        if (keep.Light is { } light)
        {
            members.Add($"\"light\": {Quoted(light.Value.ToString().ToLowerInvariant())}");
        }

        return $"{{ {string.Join(", ", members)} }}";
    }

    private static string Step(Step step, Func<string, string> path) => step switch
    {
        PourStep pour => $"{{ \"pour\": {Quoted(VolumeText(pour.Volume!.Value))}, \"of\": {Quoted(Water(pour.Of!, path))} }}",
        TopUpStep top => $"{{ \"topUp\": {Quoted(VolumeText(top.To!.Value))}, \"of\": {Quoted(Water(top.Of!, path))} }}",
        AddStep add => $"{{ \"add\": {Quoted(add.What.Value)}, \"amount\": {Quoted(PortionText(add.Amount!.Value))}"
            + (add.With is { } scale ? $", \"with\": {Quoted(scale.Value)}" : "")
            + (add.Assay is { } assay ? $", \"assay\": {Quoted(Number(assay.Value.Percent) + " %")}" : "") + " }",
        HandlingStep handling => $"{{ {Quoted(handling.Handling.ToString().ToLowerInvariant())}: {Quoted(handling.How.Value)} }}",
        _ => throw new ArgumentException($"A part has no step like '{step.Id}'.", nameof(step)),
    };

    private static string Recipe(SplitProposal proposal, SplitPlan plan, byte[]? original, Volume final, Func<string, string> path)
    {
        var kept = new Dictionary<string, string>(StringComparer.Ordinal);
        string? name = null, water = null;
        if (original is not null)
        {
            var start = original.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
            using var document = JsonDocument.Parse(
                original.AsMemory(start),
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            foreach (var member in document.RootElement.EnumerateObject())
            {
                kept[member.Name] = member.Value.GetRawText();
            }

            name = kept.GetValueOrDefault("name");
            water = proposal.Final!.Recipe.Water is { } of ? Quoted(Water(of, path)) : null;
        }

        var text = new StringBuilder();
        text.Append("{\n  \"format\": 1,\n");
        Member(text, "name", name ?? Quoted(proposal.Of));
        foreach (var key in new[] { "crop", "stage", "givenTo" }.Where(kept.ContainsKey))
        {
            Member(text, key, kept[key]);
        }

        Member(text, "water", water ?? Quoted("distilled"));
        Member(text, "final", Quoted(VolumeText(final)));
        Member(text, "volume", Quoted("made up"));
        text.Append("  \"doses\": [\n");
        text.AppendJoin(
            ",\n", plan.Parts.Select(p => $"    {{ \"stock\": {Quoted(FileOf(p))}, \"dose\": {Quoted(DoseText(p.Dilution))} }}"));
        text.Append("\n  ]");
        foreach (var key in new[] { "adjust", "targets" }.Where(kept.ContainsKey))
        {
            text.Append(CultureInfo.InvariantCulture, $",\n  \"{key}\": {kept[key]}");
        }

        text.Append("\n}\n");
        return text.ToString();
    }

    private static string Water(Located<WaterReference> water, Func<string, string> path) =>
        water.Value.File is { Length: > 0 } file ? path(file) : water.Value.Name;

    private static void Member(StringBuilder text, string key, string value) =>
        text.Append(CultureInfo.InvariantCulture, $"  \"{key}\": {value},\n");

    private static string DoseText(double dilution) => $"{Number(1000 / dilution)} mL/L";

    private static string PortionText(Portion portion) => portion switch
    {
        Portion.ByMass mass => Number(mass.Mass.Grams) + " g",
        Portion.ByVolume volume => VolumeText(volume.Volume),
        _ => throw new ArgumentException("A part is weighed or poured.", nameof(portion)),
    };

    private static string VolumeText(Volume volume) =>
        volume.Litres >= 1 ? Number(Math.Round(volume.Litres, 9)) + " L" : Number(Math.Round(volume.Millilitres, 9)) + " mL";

    private static string Number(double value) => value.ToString("0.############", CultureInfo.InvariantCulture);

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
