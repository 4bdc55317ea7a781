using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>An iron chelate that is kept where light reaches it, long enough to lose its iron.</summary>
public sealed class ChelateInLight : StockRule, IProposesRepairs
{
    /// <summary>Hours of light a day on a shelf by the window or under lamps (common practice, no source).</summary>
    internal const double HoursPerDay = 12;

    /// <summary>Light in the shade as part of full light (common practice, no source).</summary>
    internal const double ShadePart = 0.1;

    /// <summary>Days taken where the file states no storage time.</summary>
    internal const double UnstatedDays = 30;

    /// <summary>
    /// First-order loss per hour at 500 µmol m-2 s-1, from what was left of soluble iron: 15 % of a 100 times Fe-EDTA stock after 240 h and
    /// 3 % of a 10 times Hoagland solution with Fe-DTPA after 72 h (J. P. Albano and W. B. Miller, HortScience 30 (1995) 845, abstract). HEDTA is
    /// taken as EDTA and citrate as DTPA, without a source. EDDHA fades far more slowly and is left out.
    /// </summary>
    internal static readonly (string Agent, string Name, double PerHour)[] Rates =
    [
        ("EDTA-4", "EDTA", -Math.Log(0.15) / 240),
        ("DTPA-5", "DTPA", -Math.Log(0.03) / 72),
        ("HEDTA-3", "HEDTA", -Math.Log(0.15) / 240),
        ("Citrate-3", "citrate", -Math.Log(0.03) / 72),
    ];

    public override string Name => "chelate-in-light";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var state = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        if (stock.Stock.Keep is not { Light: { Value: not LightExposure.Dark } light } keep || !state.IsSolved || Iron.Supplier(stock) is not { } supplier)
        {
            yield break;
        }

        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var days = keep.For?.Value.Days ?? UnstatedDays;
        var hours = days * HoursPerDay * (light.Value == LightExposure.Shade ? ShadePart : 1);
        double lost = 0;
        var (agent, most) = ("", 0.0);
        foreach (var (component, name, perHour) in Rates)
        {
            var held = state.Chelates
                .Where(c => c.Agent == component && (c.Metal is Iron.Ferrous or Iron.Ferric))
                .Sum(c => c.OfMetal * state.Metals.First(m => m.Metal == c.Metal).Dissolved.MolesPerLitre) / iron;
            lost += held * (1 - Math.Exp(-perHour * hours));
            (agent, most) = held > most ? (name, held) : (agent, most);
        }

        lost = Rounding.SixDigits(lost);
        var limit = context.Number("mostLost") / 100;
        if (lost <= limit)
        {
            yield break;
        }

        var where = light.Value == LightExposure.Shade ? "in the shade" : "in the light";
        var message = $"'{stock.Stock.Name}' keeps Fe-{agent} {where} for {Say.Days(days)}{(keep.For is null ? " (assumed, the file states no time)" : "")}: about {Say.Percent(lost)} of {Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron can be lost, by the rate measured under lamps. "
            + "Blue and ultraviolet light break the chelating agent, the iron settles as a tan sludge and the pH climbs. "
            + "Keep it in an opaque bottle or a dark cupboard and write \"light\": \"dark\".";
        yield return context.Find(light.Place, message, light.Value == LightExposure.Shade ? Level.Note : null) with
        {
            Related = [new RelatedPlace(supplier.Place, "brings the iron")],
            Measured = new Measured("iron lost to light", lost * 100, limit * 100, "%"),
            Values = [new NamedValue("iron lost to light", lost * 100, "%"), new NamedValue("time", days, "days")],
        };
    }

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is { } stock)
        {
            yield return Keep.Dark(context, stock);
        }
    }
}
