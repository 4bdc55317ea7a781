using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>What a rule gets besides its subject: all facts, its descriptor and its options with the shop's values applied.</summary>
public sealed class RuleContext(Facts facts, RuleDescriptor descriptor, IReadOnlyDictionary<string, string> options)
{
    public Facts Facts { get; } = facts;

    public RuleDescriptor Descriptor { get; } = descriptor;

    /// <summary>An option as number; the unit is the one rule.json states.</summary>
    public double Number(string option) => double.Parse(options[option], NumberStyles.Float, CultureInfo.InvariantCulture);

    public string Word(string option) => options[option];

    /// <summary>A finding of this rule with its own level and certainty.</summary>
    public Finding Find(Place place, string idPath, string message, Level? level = null, Certainty? certainty = null) =>
        new()
        {
            Rule = Descriptor,
            Level = level ?? Descriptor.Level,
            Certainty = certainty ?? Descriptor.Certainty,
            Place = place,
            IdPath = idPath,
            Message = message,
        };
}
