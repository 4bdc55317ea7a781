using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Plant;
using RecipeLint.Rules.Repairs;
using Way = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Weighing;

/// <summary>Doses that are a part of the final volume worth counting, where the file leaves open or forgets that they are.</summary>
internal sealed class DosesShiftTheVolume : RecipeRule<DosesShiftTheVolume.Shift>, IProposesRepairs
{
    public const string RuleName = "doses-shift-the-volume";

    /// <summary>Part of the final volume from which an open question is worth a warning (common practice, no source).</summary>
    private const double WarnsFrom = 0.05;

    public override string Name => RuleName;

    protected override IEnumerable<Shift> Judge(RecipeFacts recipe, RuleContext context)
    {
        var limit = context.Options<DosesShiftTheVolumeOptions>().Shift;
        if (recipe.Recipe.Final is not { Value.Litres: > 0 } final)
        {
            yield return new Shift(recipe, null, 0, 0, [], limit) { Checks = [Check.That("a final volume is stated", false)] };
            yield break;
        }

        var poured = recipe.Doses.Sum(d => d.Volume.Litres);
        var shift = Rounding.SixDigits(poured / final.Value.Litres);
        var worth = new Check("worth counting", Rounding.SixDigits(shift * 100), Relation.AtLeast, limit, "%");
        var meaning = recipe.Recipe.VolumeMeaning?.Value;
        var missed = meaning == FinalVolumeMeaning.AddedTo && shift < 1 ? Thinned(recipe, shift, context) : [];
        yield return new Shift(recipe, final, poured, shift, missed, limit)
        {
            Checks = meaning switch
            {
                FinalVolumeMeaning.MadeUp => [worth, Check.That("the file leaves open whether the doses are part of the volume", false)],
                FinalVolumeMeaning.AddedTo => [worth, Check.That("a target is missed because the doses thin it", missed.Count > 0)],
                _ => [worth],
            },
        };
    }

    protected override Finding Describe(Shift verdict, RuleContext context) =>
        verdict.Recipe.Recipe.VolumeMeaning is { } meaning ? AddedTo(verdict, meaning, context) : NotStated(verdict, context);

    protected override Working Work(Shift verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the doses of '{verdict.Recipe.Recipe.Name}' against its volume");
        if (verdict.Final is not { } final)
        {
            return work.Statements(verdict).Done();
        }

        var doses = verdict.Recipe.Doses
            .Where(d => d.Volume.Litres > 0)
            .Select(d => work.Given($"'{d.Id}'", d.Volume.Litres, "L", "file"))
            .ToList();
        var poured = doses.Count == 0 ? work.Given("doses", 0, "L", "file") : work.Result("doses together", "sum", Term.Sum(doses), "L");
        var whole = work.Given("final volume", final.Value.Litres, "L", "file");
        var shift = work.Result("doses in the final volume", "100 × doses / final volume", 100 * poured / whole, "%");
        work.Check(verdict.Checks[0], shift, work.Option("limit", verdict.Limit));
        return work.Statements(verdict).Done(shift);
    }

    /// <summary>What the volume means, said.</summary>
    protected override IEnumerable<RepairProposal> Repair(Shift verdict, Finding finding, RepairContext context)
    {
        var place = Place.Whole(finding.Place.File);
        foreach (var (word, key) in new[] { ("made up", "made-up"), ("added to", "added-to") })
        {
            if (context.Item(place)?["volume"]?.Text != word)
            {
                yield return Way.Chemistry(key, $"Write \"volume\": \"{word}\".", Steps.Set(context, place, "volume", word, "final"));
            }
        }
    }

    private static Finding NotStated(Shift verdict, RuleContext context)
    {
        var (recipe, final, poured, shift) = (verdict.Recipe, verdict.Final!, verdict.Poured, verdict.Part);
        var litres = Say.Litres(final.Value.Litres);
        var message =
            $"The doses of '{recipe.Recipe.Name}' are {Say.Litres(poured)} on {litres}, and the file does not say whether they are part "
                + "of it. "
            + $"Poured into {litres} of water, everything comes out {Say.Percent(shift / (1 + shift))} weaker than made up to {litres}, "
                + "which is what is computed here. "
            + "Write \"volume\": \"made up\" or \"volume\": \"added to\".";
        return context.Find(final.Place, message, Harm.Damage, shift >= WarnsFrom ? Odds.Certain : Odds.Possible) with
        {
            Measured = new Measured("doses in the final volume", shift * 100, verdict.Limit, "%"),
            Values = [new NamedValue("doses", poured, "L"), new NamedValue("shift", shift * 100, "%")],
        };
    }

    private static Finding AddedTo(Shift verdict, Located<FinalVolumeMeaning> meaning, RuleContext context)
    {
        var (recipe, poured, shift, missed) = (verdict.Recipe, verdict.Poured, verdict.Part, verdict.Missed);
        var final = recipe.Recipe.Final!.Value.Litres;
        var message =
            $"The doses, {Say.Litres(poured)}, are added to {Say.Litres(final)} of water and thin everything by "
                + $"{Say.Percent(shift / (1 + shift))}. "
            + $"That is why {Say.List(missed)} {(missed.Count == 1 ? "misses its target" : "miss their targets")}: made up to "
                + $"{Say.Litres(final)}, the doses would fit. "
            + $"Start with {Say.Litres(recipe.WaterVolume.Litres - poured)} of water and write \"made up\", or raise the doses by "
                + $"{Say.Percent(shift / (1 - shift))}.";
        return context.Find(meaning.Place, message, Harm.Damage, Odds.Possible) with
        {
            Measured = new Measured("doses in the final volume", shift * 100, verdict.Limit, "%"),
            Values = [new NamedValue("doses", poured, "L"), new NamedValue("shift", shift * 100, "%")],
            Related = [.. recipe.Recipe.Targets
                .Where(t => missed.Contains(t.Key.Value))
                .Select(t => new RelatedPlace(t.Place, $"{t.Key.Value} would be met"))],
        };
    }

    /// <summary>Targets that are missed as the file stands and would be met if the doses were part of the volume.</summary>
    private static List<string> Thinned(RecipeFacts recipe, double shift, RuleContext context)
    {
        var missed = new List<string>();
        var usual = context.Neighbour(TargetMissed.RuleName, recipe.Recipe.File)?.Options<TargetMissedOptions>().Tolerance;
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

    private static bool Met(double found, double asked, double allowed) =>
        Rounding.SixDigits(Math.Abs(found - asked)) <= Rounding.SixDigits(allowed);

    /// <summary>The doses of one recipe against its volume.</summary>
    /// <param name="Final">Null where no final volume is stated.</param>
    /// <param name="Poured">L.</param>
    /// <param name="Part">Of the final volume, to six digits.</param>
    /// <param name="Missed">Targets that are missed because the doses thin them.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Shift(
        RecipeFacts Recipe, Located<Volume>? Final, double Poured, double Part, IReadOnlyList<string> Missed, NumberOption Limit) : Verdict;
}
