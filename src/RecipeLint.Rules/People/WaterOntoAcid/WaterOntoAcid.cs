using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Way = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.People;

/// <summary>Water poured onto an acid that is still strong enough to boil or burn.</summary>
internal sealed class WaterOntoAcid : StockRule<WaterOntoAcid.Pour>, IProposesRepairs
{
    public const string RuleName = "water-onto-acid";

    public override string Name => RuleName;

    protected override IEnumerable<Pour> Judge(StockFacts stock, RuleContext context) => Judged(stock, context);

    /// <summary>What this rule finds, for one that leaves it to this rule.</summary>
    internal static IEnumerable<Pour> Judged(StockFacts stock, RuleContext own)
    {
        var options = own.Options<WaterOntoAcidOptions>();
        var limits = HazardLimits.Default with
        {
            WaterOnto = new WaterOntoLimits
            {
                SulfuricFrom = options.SulfuricFrom,
                NitricFrom = options.NitricFrom,
                HydrochloricFrom = options.HydrochloricFrom,
                PhosphoricFrom = options.PhosphoricFrom,
                AceticFrom = options.AceticFrom,
                WarmsFrom = options.WarmsBy,
                NoticedFrom = options.NoticedBy,
            },
        };
        var poured = stock.Mixing.Steps.Where(m => m.BringsWater)
            .SelectMany(m => MeetingHazards.WaterOntoAcid(m.Before, m.After, limits).Select(w => Of(stock, m, w))).ToList();
        if (poured.Count == 0)
        {
            return [new Pour(stock, null, null) { Checks = [Check.That("water is poured after a liquid acid", false)] }];
        }

        // One word on a vessel: on the first water that makes it boil, else on the first that warms it.
        var worst = poured.Find(p => p.Met!.IsDangerous) ?? poured.Find(p => p.Fires);
        return worst is null ? poured : [.. poured.Where(p => !p.Fires), worst];
    }

    /// <summary>Strong enough to burn and warm enough to be worth a word; whether it boils decides how grave it is.</summary>
    private static Pour Of(StockFacts stock, MixingStep moment, StrongMeeting met) => new(stock, moment, met)
    {
        Checks =
        [
            new Check("strong enough to burn", Rounding.SixDigits(met.Percent), Relation.AtLeast, met.Limit, "%"),
            .. met.Warms is { } warms
                ?
                [
                    new Check("warms where the water meets it", Rounding.SixDigits(warms.Kelvin), Relation.AtLeast, warms.Noticed, "K"),
                ]
                : Array.Empty<Check>(),
        ],
    };

    protected override Finding Describe(Pour verdict, RuleContext context)
    {
        var (moment, met) = (verdict.Moment!, verdict.Met!);
        var (last, pure, strength, limit) = (met.Reagent, met.PureGrams, met.Percent, met.Limit);
        var heat = last.Substance.Formula is { } acid && HeatOfSolution.Find(acid.Text) is { KilojoulesPerMol: < 0 } known && strength >= 90
            ? $"Diluting it sets free up to {Say.Number(-known.KilojoulesPerMol * pure / known.GramsPerMol)} kJ: the"
            : "";
        return context.Find(
            last.Place ?? moment.Step.Place,
            $"Water is poured onto acid: when '{moment.Step.Id}' begins, the acid in the vessel ({last.Name}) is still "
                + $"{Say.Number(strength)} % strong, past the {Say.Number(limit)} % from which it burns"
                + $"{(met.Warms is var (kelvin, _, _) ? $", and warms by up to {Say.Number(Math.Round(kelvin))} K more with water" : "")}. "
            + (met.IsDangerous
                ? $"{(heat.Length > 0 ? heat : "The")} first water {(heat.Length > 0 ? "boils" : "heats up")} on the surface and can throw "
                    + "acid at face and hands. "
                : "It does not boil, but what splashes from the strong acid burns face and hands. ")
            + "Pour most of the water first, then the acid into it, slowly and stirring, with goggles, gloves and apron, as the safety "
                + "data sheet says.",
            Harm.Person,
            met.IsDangerous ? Odds.Certain : Odds.Possible) with
        {
            Measured = new Measured("acid when water comes onto it", strength, limit, "%"),
            Values = [new NamedValue("acid when water comes onto it", strength, "%"), new NamedValue("limit", limit, "%")],
            Related = [new RelatedPlace(moment.Step.Place, "this water comes after the acid")],
        };
    }

    protected override Working Work(Pour verdict, RuleContext context)
    {
        if (verdict is not { Moment: { } moment, Met: { } met })
        {
            return new WorkingBuilder($"the order of '{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"the acid in the vessel when step '{moment.Step.Id}' pours water onto it");
        var pure = work.Given($"{met.Reagent.Name}, counted as pure acid", met.PureGrams, "g", "file and strength");
        var water = work.Given("water already in the vessel, that of the acid included", moment.Before.FreeWaterGrams, "g", "file");
        var strength = work.Result("strength it still has", "100 × acid / (acid + water)", 100 * pure / (pure + water), "%");
        work.Check(verdict.Checks[0], strength, work.Given("limit", met.Limit, "%", "option"));
        if (met.Warms is var (kelvin, from, noticed))
        {
            work.Remark("The heat that the acid still has to give, at the mixture with water that gets warmest.");
            work.Check(
                verdict.Checks[1], work.Given("warming where water meets it", Rounding.SixDigits(kelvin), "K", From.Engine),
                work.Given("warming that is worth a word", noticed, "K", "option"));
            work.Remark($"From {Say.Number(from)} K on it is an error.");
        }

        return work.Done(strength);
    }

    /// <summary>The acid behind the water.</summary>
    protected override IEnumerable<RepairProposal> Repair(Pour verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (verdict.Moment is { Step.Place: var poured }
            && RepairContext.StepAt(stock, poured) is { } water
            && RepairContext.StepAt(stock, finding.Place) is { } acid)
        {
            if (water is PourStep && Steps.Move(stock, context, water, acid) is { } first)
            {
                yield return Way.Chemistry("water-first", $"Pour the water of '{water.Id}' before the acid.", first);
            }

            if (water is PourStep && Steps.Move(stock, context, acid, water, behind: true) is { } later)
            {
                yield return Way.Chemistry("acid-later", $"Put '{acid.Id}' in after '{water.Id}', slowly and stirring.", later);
            }

            // Only a top-up: most of the water has to be in the vessel before the acid.
            foreach (var most in Pours.MostWaterFirst(context, stock))
            {
                yield return most;
            }
        }
    }

    /// <summary>Water that comes after an acid, as the gate sees it.</summary>
    /// <param name="Moment">The water; null where none comes after an acid.</param>
    /// <param name="Met">Null with the step.</param>
    internal sealed record Pour(StockFacts Stock, MixingStep? Moment, StrongMeeting? Met) : Verdict;
}
