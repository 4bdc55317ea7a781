using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>A figure a verdict rests on, and where it comes from.</summary>
/// <param name="What">"constant of gypsum (calcium sulfate), CaSO4·2H2O".</param>
public sealed record Ground(string What, string Source);

/// <summary>The constants and limits a rule rests on, each with its source, as the data give them.</summary>
public static class RuleGround
{
    /// <summary>The defaults of its options and the constants of the solids it speaks of.</summary>
    public static IReadOnlyList<Ground> Of(RuleDescriptor rule) =>
    [
        .. Options(rule),
        .. ConstantSet.Product.Solids.Where(s => s.Owner == rule.Name).Select(Constant),
    ];

    /// <summary>The defaults of the options of a rule.</summary>
    internal static IEnumerable<Ground> Options(RuleDescriptor rule) =>
        rule.Options.Select(o => new Ground($"`{o.Name}` ({o.Default}{(o.Unit.Length == 0 ? "" : " " + o.Unit)})", o.Source));

    internal static Ground Constant(Solid solid) => new($"constant of {solid.Called}, {solid.Formula}", solid.Source);

    /// <summary>A source with how surely its value is known.</summary>
    internal static string Cited<T>(Sourced<T> value) => $"{value.Source} ({Word(value.Confidence)})";

    /// <summary>
    /// The same, and of one file the limits of its crop profile or the hazards of its substances, where the rule speaks of those.
    /// </summary>
    public static IReadOnlyList<Ground> Of(RuleDescriptor rule, Facts facts, string file) =>
    [
        .. Of(rule),
        .. rule.Family == "plant" ? facts.Recipes.Where(r => r.Recipe.File == file).SelectMany(Limits) : [],
        .. rule.Family == "people"
            ? facts.Stocks.Where(s => s.Stock.File == file).SelectMany(s => Hazards(s.Additions.Select(a => a.Substance)))
            : [],
    ];

    /// <summary>A section of Markdown; empty where there is nothing to say.</summary>
    public static string Render(IReadOnlyList<Ground> grounds, bool color)
    {
        if (grounds.Count == 0)
        {
            return "";
        }

        var text = new StringBuilder("## What the figures rest on\n\n");
        foreach (var ground in grounds)
        {
            text.Append("- ").Append(ground.What).Append(": ").Append(ground.Source.TrimEnd('.')).Append(".\n");
        }

        return "\n" + MarkdownText.Render(text.ToString(), color: color);
    }

    internal static IEnumerable<Ground> Limits(RecipeFacts recipe)
    {
        var profile = recipe.Profile;
        var windows = new[] { ("EC", profile.EcSource), ("pH", profile.PhSource) };
        return windows.Where(w => w.Item2 is not null).Select(w => new Ground($"{w.Item1} window of '{profile.Name}'", w.Item2!))
            .Concat(profile.Elements.Select(e => new Ground($"range of {e.Key} in '{profile.Name}'", e.Source)));
    }

    internal static IEnumerable<Ground> Hazards(IEnumerable<Substance> substances) =>
        substances.DistinctBy(s => s.Id).Where(s => s.Hazards is { Statements.Count: > 0 })
            .Select(s => new Ground(
                $"hazards of {s.Name} ({string.Join(", ", s.Hazards!.Statements)})", $"{s.Hazards.Source} ({Word(s.Hazards.Confidence)})"));

    private static string Word(Confidence confidence) => confidence switch
    {
        Confidence.Found => "read there",
        Confidence.Derived => "derived",
        _ => "recalled",
    };
}
