using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// A bench sheet whose label leaves out what the next person needs. The hazard itself is looked after by the family that protects people.
/// </summary>
internal sealed class LabelIncomplete : StockRule<LabelGaps>, IProposesRepairs
{
    public const string RuleName = "label-incomplete";

    private static readonly string[] _partners =
    [
        BenchChemistry.Sulfate, BenchChemistry.Phosphate, Component.Carbonate, Component.Silicate,
    ];

    public override string Name => RuleName;

    protected override IEnumerable<LabelGaps> Judge(StockFacts stock, RuleContext context)
    {
        var label = stock.Stock.Label;
        var calcium = stock.Concentration(BenchChemistry.Calcium).MolesPerLitre * 1000;
        var partner = _partners.Max(p => stock.Concentration(p).MolesPerLitre) * 1000;
        // The other part that would cloud with this one, judged by what is in it.
        var reacts = context.Options<LabelIncompleteOptions>().Reacts;
        var enemy = calcium >= reacts ? "a sulfate or phosphate stock" : partner >= reacts ? "a calcium stock" : null;
        var missing = new List<LabelEntry>(4);
        Miss(label?.Contents, LabelEntry.Contents);
        Miss(label?.Dilution, LabelEntry.Dilution);
        Miss(label?.Date, LabelEntry.Date);
        if (enemy is not null)
        {
            Miss(label?.KeepApart, LabelEntry.KeepApart);
        }

        var count = new Check("one is missing", missing.Count, Relation.Over, 0);
        yield return new LabelGaps(stock, missing, enemy, calcium, partner, count)
        {
            Checks = [count, Check.That("it is marked for the bench", stock.Stock.ForBench)],
        };

        void Miss(bool? stated, LabelEntry entry)
        {
            if (stated != true)
            {
                missing.Add(entry);
            }
        }
    }

    protected override Finding Describe(LabelGaps verdict, RuleContext context)
    {
        var label = verdict.Stock.Stock.Label;
        var start = label is null
            ? $"'{verdict.Stock.Stock.Name}' is a bench sheet without a label"
            : $"The label of '{verdict.Stock.Stock.Name}' is incomplete";
        var missing = verdict.Missing.Select(m => m switch
        {
            LabelEntry.Contents => "what is in it",
            LabelEntry.Dilution => "the dilution",
            LabelEntry.Date => "the date it was made",
            _ => $"that it must not meet {verdict.Enemy} undiluted",
        });
        return context.Find(
            label?.Place ?? verdict.Stock.Stock.Place,
            $"{start}: it does not say {Say.List(missing)}. "
            + "Two clear liquids in like bottles cannot be told apart a month later, and a wrong dose of a concentrate costs the crop. "
            + "Write these on the label before the bottle is filled.",
            HarmOf(verdict),
            Odds.Certain) with
        {
            Values = [new NamedValue("entries missing", verdict.Missing.Count, "")],
        };
    }

    /// <summary>
    /// Nobody can use a bottle safely whose label is written and does not say what is in it (29 CFR 1910.1200(f)(6) asks it of every
    /// container at work), nor rightly without the dilution. A sheet without any label may have one elsewhere.
    /// </summary>
    private static Harm HarmOf(LabelGaps verdict) => verdict.Stock.Stock.Label is null ? Harm.Damage
        : verdict.Missing.Contains(LabelEntry.Contents) ? Harm.Person
        : verdict.Missing.Contains(LabelEntry.Dilution) ? Harm.Loss : Harm.Damage;

    protected override Working Work(LabelGaps verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the label of '{verdict.Stock.Stock.Name}'");
        foreach (var (entry, what) in new[] { (LabelEntry.Contents, "Contents"), (LabelEntry.Dilution, "Dilution"),
            (LabelEntry.Date, "Date") })
        {
            work.Remark($"{what}: {(verdict.Missing.Contains(entry) ? "missing" : "on the label")}.");
        }

        var calcium = work.Given("calcium", verdict.CalciumMillimolesPerLitre, "mmol/L", From.Amounts);
        var partner = work.Given("sulfate, phosphate, carbonate or silicate, the most of one", verdict.PartnerMillimolesPerLitre,
            "mmol/L", From.Amounts);
        var most = work.Result("the larger", "the larger of the two", Term.Larger(calcium, partner), "mmol/L");
        var limit = work.Option("from here on it clouds with the other part", context.Options<LabelIncompleteOptions>().Reacts);
        work.Remark(verdict.Enemy is null
            ? $"{most.Text} is under {limit.Text}: nothing to keep apart from."
            : $"{most.Text} is at least {limit.Text}: the label has to say what it must not meet "
                + $"({(verdict.Missing.Contains(LabelEntry.KeepApart) ? "missing" : "it does")}).");
        var count = work.Given("entries missing", verdict.Missing.Count, "", From.Count);
        return work.Check(verdict.Count, count, 0).Statements(verdict).Done(count);
    }

    /// <summary>What the label lacks, worked out from the file.</summary>
    protected override IEnumerable<RepairProposal> Repair(LabelGaps verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        (string Name, string Value)[] members = [.. verdict.Missing.Select(m => m switch
        {
            LabelEntry.Contents => ("contents", Say.List(stock.Additions.Select(a => a.Substance.Name).Distinct(StringComparer.Ordinal))),
            LabelEntry.Dilution => ("dilution", stock.Stock.Dose is { } dose
                ? $"{Say.Number(dose.Value.MillilitresPerLitre)} mL per litre" : "as the recipe says"),
            LabelEntry.Date => ("date", "made on"),
            _ => ("keepApart", $"Never let it meet {verdict.Enemy} undiluted"),
        })];
        yield return Mend.Chemistry(
            "complete-label", $"Put on the label: {Say.List(members.Select(m => $"\"{m.Value}\""))}.", Labels.Add(context, stock, members));
    }
}

/// <summary>What a label of the bench has to say.</summary>
internal enum LabelEntry
{
    /// <summary>What is in the bottle.</summary>
    Contents,

    /// <summary>How much of it to take.</summary>
    Dilution,

    /// <summary>When it was made.</summary>
    Date,

    /// <summary>What it must not meet.</summary>
    KeepApart,
}

/// <summary>What a label leaves out.</summary>
/// <param name="Enemy">The other part that would cloud with this one; null where there is none to speak of.</param>
/// <param name="PartnerMillimolesPerLitre">Of sulfate, phosphate, carbonate or silicate, the most of one.</param>
internal sealed record LabelGaps(
    StockFacts Stock, IReadOnlyList<LabelEntry> Missing, string? Enemy, double CalciumMillimolesPerLitre, double PartnerMillimolesPerLitre,
    Check Count) : Verdict;
