using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Bleach and acid in one stock: chlorine gas.</summary>
internal sealed class HypochloriteWithAcid : StockRule<Chlorine>, IProposesRepairs
{
    public const string RuleName = "hypochlorite-with-acid";

    /// <summary>10 ppm of chlorine in air at 25 °C, the level immediately dangerous to life or health (NIOSH, recalled), g/m³.</summary>
    private const double DangerousGramsPerCubicMetre = 0.029;

    public override string Name => RuleName;

    protected override IEnumerable<Chlorine> Judge(StockFacts stock, RuleContext context) => [Judged(stock, context)];

    /// <summary>What this rule finds, for one that leaves it to this rule.</summary>
    internal static Chlorine Judged(StockFacts stock, RuleContext own) => Chlorine.Of(
        stock,
        Check.That("an acid goes in too", Reactants.Acids(stock).Any()),
        own.Options<HypochloriteWithAcidOptions>().ChlorineFrom);

    protected override Finding Describe(Chlorine verdict, RuleContext context)
    {
        var (stock, bleach, chlorine) = (verdict.Stock, verdict.Bleach!, verdict.GramsPerLitre);
        var acids = Reactants.Acids(stock).ToList();
        var grams = chlorine * stock.Volume.Litres;
        return context.Find(
            bleach.Place,
            $"{Say.Capital(bleach.Substance.Name)} and {acids[0].Name} in one stock set chlorine gas free: this batch holds up to "
                + $"{Say.Grams(grams)} of it, "
            + $"enough to make {Say.Number(grams / DangerousGramsPerCubicMetre)} m³ of air dangerous to life at 10 ppm. "
            + "Leave one of them out. Never bring them together, not even in a drain or a waste bottle, keep bleach and acids on "
                + "different shelves, and follow the safety data sheets.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured("available chlorine", chlorine * 1000, verdict.Limit, "mg/L"),
            Values =
            [
                new NamedValue("available chlorine", chlorine * 1000, "mg/L"),
                new NamedValue("chlorine in the batch", grams, "g"),
                new NamedValue("air made dangerous", grams / DangerousGramsPerCubicMetre, "m³"),
            ],
            Related = [.. acids.Select(a => new RelatedPlace(a.Place, "acid"))],
        };
    }

    protected override Working Work(Chlorine verdict, RuleContext context) => verdict.Work();

    /// <summary>One of the two out.</summary>
    protected override IEnumerable<RepairProposal> Repair(Chlorine verdict, Finding finding, RepairContext context) =>
        Additions.DropOneOf(finding, context);
}
