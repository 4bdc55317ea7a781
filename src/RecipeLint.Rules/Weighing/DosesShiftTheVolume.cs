using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>Doses that are a part of the final volume worth counting, where the file leaves open or forgets that they are.</summary>
public sealed class DosesShiftTheVolume : RecipeRule, IProposesRepairs
{
    public override string Name => "doses-shift-the-volume";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (recipe.Recipe.Final is not { Value.Litres: > 0 } final)
        {
            yield break;
        }

        var poured = recipe.Doses.Sum(d => d.Volume.Litres);
        var shift = Rounding.SixDigits(poured / final.Value.Litres);
        var limit = context.Number("shift") / 100;
        if (shift < limit)
        {
            yield break;
        }

        if (recipe.Recipe.VolumeMeaning is not { } meaning)
        {
            yield return NotStated(recipe, final, poured, shift, context);
        }
        else if (meaning.Value == FinalVolumeMeaning.AddedTo && shift < 1 && Thinned(recipe, shift, context) is { Count: > 0 } missed)
        {
            yield return AddedTo(recipe, meaning, poured, shift, missed, context);
        }
    }

    private static Finding NotStated(RecipeFacts recipe, Located<Chemistry.Quantities.Volume> final, double poured, double shift, RuleContext context)
    {
        var litres = Say.Litres(final.Value.Litres);
        var message = $"The doses of '{recipe.Recipe.Name}' are {Say.Litres(poured)} on {litres}, and the file does not say whether they are part of it. "
            + $"Poured into {litres} of water, everything comes out {Say.Percent(shift / (1 + shift))} weaker than made up to {litres}, which is what is computed here. "
            + "Write \"volume\": \"made up\" or \"volume\": \"added to\".";
        return context.Find(final.Place, message, shift >= 0.05 ? Level.Warning : null) with
        {
            Measured = new Measured("doses in the final volume", shift * 100, context.Number("shift"), "%"),
            Values = [new NamedValue("doses", poured, "L"), new NamedValue("shift", shift * 100, "%")],
        };
    }

    private static Finding AddedTo(RecipeFacts recipe, Located<FinalVolumeMeaning> meaning, double poured, double shift, List<string> missed, RuleContext context)
    {
        var final = recipe.Recipe.Final!.Value.Litres;
        var message = $"The doses, {Say.Litres(poured)}, are added to {Say.Litres(final)} of water and thin everything by {Say.Percent(shift / (1 + shift))}. "
            + $"That is why {Say.List(missed)} {(missed.Count == 1 ? "misses its target" : "miss their targets")}: made up to {Say.Litres(final)}, the doses would fit. "
            + $"Start with {Say.Litres(recipe.WaterVolume.Litres - poured)} of water and write \"made up\", or raise the doses by {Say.Percent(shift / (1 - shift))}.";
        return context.Find(meaning.Place, message) with
        {
            Measured = new Measured("doses in the final volume", shift * 100, context.Number("shift"), "%"),
            Values = [new NamedValue("doses", poured, "L"), new NamedValue("shift", shift * 100, "%")],
            Related = [.. recipe.Recipe.Targets.Where(t => missed.Contains(t.Key.Value)).Select(t => new RelatedPlace(t.Place, $"{t.Key.Value} would be met"))],
        };
    }

    /// <summary>Targets that are missed as the file stands and would be met if the doses were part of the volume.</summary>
    internal static List<string> Thinned(RecipeFacts recipe, double shift, RuleContext context)
    {
        var missed = new List<string>();
        var usual = ShopOption.Of(context.Facts, recipe.Recipe.File, "target-missed", "tolerance");
        foreach (var target in recipe.IsComplete ? recipe.Recipe.Targets : [])
        {
            if (target.Concentration is not { GramsPerLitre: > 0 } wanted || !recipe.Elements.TryGetValue(target.Key.Value, out var fact))
            {
                continue;
            }

            var asked = wanted.MilligramsPerLitre;
            var allowed = target.Tolerance?.HalfWidth(asked) ?? (usual is { } percent ? asked * percent / 100 : 0);
            var fromWater = fact.Contributions.Where(c => c.Source == "water").Sum(c => c.Concentration.MilligramsPerLitre);
            var madeUp = (fromWater * (1 + shift) * (1 - shift)) + ((fact.Concentration.MilligramsPerLitre - fromWater) * (1 + shift));
            if (!Met(fact.Concentration.MilligramsPerLitre, asked, allowed) && Met(madeUp, asked, allowed))
            {
                missed.Add(target.Key.Value);
            }
        }

        return missed;
    }

    private static bool Met(double found, double asked, double allowed) => Rounding.SixDigits(Math.Abs(found - asked)) <= Rounding.SixDigits(allowed);

    /// <summary>What the volume means, said.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        var place = Place.Whole(finding.Place.File);
        foreach (var (word, key) in new[] { ("made up", "made-up"), ("added to", "added-to") })
        {
            if (context.Item(place)?["volume"]?.Text != word)
            {
                yield return Repair.Chemistry(key, $"Write \"volume\": \"{word}\".", Steps.Set(context, place, "volume", word, "final"));
            }
        }
    }
}
