using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>An iron chelate that is kept where light reaches it, long enough to lose its iron.</summary>
internal sealed class ChelateInLight : StockRule<ChelateInLight.Fading>, IProposesRepairs
{
    public const string RuleName = "chelate-in-light";

    /// <summary>Share of the iron from which an agent is looked at.</summary>
    private const double NotableShare = 1e-6;

    /// <summary>Hours of light a day on a shelf by the window or under lamps (common practice, no source).</summary>
    private const double HoursPerDay = 12;

    /// <summary>Light in the shade as part of full light (common practice, no source).</summary>
    private const double ShadePart = 0.1;

    /// <summary>Days taken where the file states no storage time.</summary>
    private const double UnstatedDays = 30;

    /// <summary>
    /// First-order loss per hour at 500 µmol m-2 s-1, from what was left of soluble iron: 15 % of a 100 times Fe-EDTA stock after 240 h and
    /// 3 % of a 10 times Hoagland solution with Fe-DTPA after 72 h (J. P. Albano and W. B. Miller, HortScience 30 (1995) 845, abstract).
    /// HEDTA is taken as EDTA and citrate as DTPA, without a source. EDDHA fades far more slowly and is left out.
    /// </summary>
    private static readonly (string Agent, string Name, double PerHour)[] _rates =
    [
        (Component.Edta, "EDTA", -Math.Log(0.15) / 240),
        (Component.Dtpa, "DTPA", -Math.Log(0.03) / 72),
        (Component.Hedta, "HEDTA", -Math.Log(0.15) / 240),
        (Component.Citrate, "citrate", -Math.Log(0.03) / 72),
    ];

    public override string Name => RuleName;

    protected override IEnumerable<Fading> Judge(StockFacts stock, RuleContext context)
    {
        var limit = context.Options<ChelateInLightOptions>().MostLost;
        var state = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        if (stock.Stock.Keep is not { Light: { Value: not LightExposure.Dark } light } keep
            || !state.IsSolved
            || Iron.Supplier(stock) is null)
        {
            return [new Fading(stock, 0, 0, [], 0, limit) { Checks = [Check.That("it holds iron and is not kept dark", false)] }];
        }

        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var days = keep.For?.Value.Days ?? UnstatedDays;
        var hours = days * HoursPerDay * (light.Value == LightExposure.Shade ? ShadePart : 1);
        var parts = _rates
            .Select(r => new Part(r.Name, r.PerHour, state.Chelates
                .Where(c => c.Agent == r.Agent && (c.Metal is Iron.Ferrous or Iron.Ferric))
                .Sum(c => c.OfMetal * state.Metals.First(m => m.Metal == c.Metal).Dissolved.MolesPerLitre) / iron))
            .Where(p => p.Held > NotableShare)
            .ToList();
        var lost = Rounding.SixDigits(parts.Sum(p => p.Held * (1 - Math.Exp(-p.PerHour * hours))));
        return
        [
            new Fading(stock, days, iron, parts, lost, limit)
            {
                Checks = parts.Count == 0
                    ? [Check.That("an agent that light breaks holds iron", false)]
                    : [new Check("more than a stock should lose", Rounding.SixDigits(lost * 100), Relation.Over, limit, "%")],
            },
        ];
    }

    protected override Finding Describe(Fading verdict, RuleContext context)
    {
        var (stock, days, iron, lost, limit) = (verdict.Stock, verdict.Days, verdict.IronPerLitre, verdict.Lost, verdict.Limit / 100);
        var keep = stock.Stock.Keep!;
        var (light, supplier) = (keep.Light!, Iron.Supplier(stock)!);
        var agent = verdict.Parts.MaxBy(p => p.Held)!.Agent;
        var where = light.Value == LightExposure.Shade ? "in the shade" : "in the light";
        var message =
            $"'{stock.Stock.Name}' keeps Fe-{agent} {where} for "
                + $"{Say.Days(days)}{(keep.For is null ? " (assumed, the file states no time)" : "")}: about {Say.Percent(lost)} of "
                    + $"{Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron can be lost, by the rate measured under lamps. "
            + "Blue and ultraviolet light break the chelating agent, the iron settles as a tan sludge and the pH climbs. "
            + "Keep it in an opaque bottle or a dark cupboard and write \"light\": \"dark\".";
        return context.Find(
            light.Place, message, light.Value == LightExposure.Shade ? Harm.Damage : Iron.HarmOf(lost), OddsOf(light.Value, lost)) with
        {
            Related = [new RelatedPlace(supplier.Place, "brings the iron")],
            Measured = new Measured("iron lost to light", lost * 100, limit * 100, "%"),
            Values = [new NamedValue("iron lost to light", lost * 100, "%"), new NamedValue("time", days, "days")],
        };
    }

    /// <summary>
    /// Half the rate measured under lamps still breaks more than half; what shade lets through is known too badly for more than a note.
    /// </summary>
    private static Odds OddsOf(LightExposure light, double lost) => light == LightExposure.Shade ? Odds.Possible
        : lost <= 0.5 || 1 - Math.Sqrt(1 - lost) > 0.5 ? Odds.Certain : Odds.NearTheLimit;

    protected override Working Work(Fading verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"iron that '{verdict.Stock.Stock.Name}' loses to light");
        if (verdict is not { IronPerLitre: > 0, Stock.Stock.Keep: { Light: { } light } keep })
        {
            return work.Statements(verdict).Done();
        }

        var days = work.Given("kept for", verdict.Days, "days", keep.For is null ? "assumed" : "file");
        Term hours = days * HoursPerDay;
        hours = light.Value == LightExposure.Shade
            ? work.Result("hours of full light, a tenth of it in the shade", "days × 12 × 0.1", hours * ShadePart, "h")
            : work.Result("hours of light", "days × 12", hours, "h");
        var losses = new List<Term>();
        foreach (var (agent, perHour, share) in verdict.Parts)
        {
            var held = work.Given($"iron that {agent} holds", 100 * share, "%", "engine");
            var rate = work.Given($"loss of Fe-{agent} an hour under lamps", perHour, "per h", "Albano and Miller 1995");
            losses.Add(work.Result("of it lost", "held × (1 - 1 / e^(rate × hours))", held * (1 - (1 / Term.Exp(rate * hours))), "%"));
        }

        if (losses.Count == 0)
        {
            return work.Statements(verdict).Done();
        }

        var lost = losses.Count == 1 ? losses[0] : work.Result("iron lost", "sum", Term.Sum(losses), "%");
        return work.Check(verdict.Checks[0], lost, work.Option("limit", verdict.Limit)).Done(lost);
    }

    protected override IEnumerable<RepairProposal> Repair(Fading verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is { } stock)
        {
            yield return Keep.Dark(context, stock);
        }
    }

    /// <summary>What light does to the iron of one stock.</summary>
    /// <param name="IronPerLitre">mol/L; 0 where nothing is judged.</param>
    /// <param name="Lost">Share of the iron, 0 to 1, to six digits.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Fading(
        StockFacts Stock, double Days, double IronPerLitre, IReadOnlyList<Part> Parts, double Lost, NumberOption Limit) : Verdict;

    /// <summary>The iron that one agent holds.</summary>
    /// <param name="PerHour">First-order loss.</param>
    /// <param name="Held">Share of the iron, 0 to 1.</param>
    internal sealed record Part(string Agent, double PerHour, double Held);
}
