using System.Globalization;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using Component = RecipeLint.Chemistry.Equilibrium.Component;
using Digits = RecipeLint.Chemistry.Quantities.Rounding;

namespace RecipeLint.Rules.Documents;

/// <summary>
/// Cations against anions: 100 (sum of cations - sum of anions) / (sum of both), in meq/L (Standard Methods for the Examination of
/// Water and Wastewater, method 1030 E; recalled). Values that are a range count by their middle.
/// </summary>
/// <param name="Missing">Major ions that the analysis does not state.</param>
/// <param name="Apart">Null where the analysis states none of one kind.</param>
internal sealed record IonBalance(
    WaterDocument Water, Place Place, StatedCharge Cations, StatedCharge Anions, IReadOnlyList<string> Missing, Check? Apart)
    : WaterComparison(Water, Place)
{
    /// <summary>Per cent; the bound the laboratory trade puts on a routine analysis is 5 to 10 (common practice, no source).</summary>
    private const double LimitPercent = SlackPercent;

    /// <summary>With less than this the check would only say that the analysis is partial.</summary>
    private const int MajorsNeeded = 3;

    /// <summary>Below 0.4 meq/L in all, rounding alone unbalances an analysis.</summary>
    private const double LeastCharge = 0.4;

    private static readonly string[] _majors = ["Ca", "Mg", "Na", "alkalinity", "Cl", "SO4"];

    internal override string Message
    {
        get
        {
            var shortOf = Percent > 0 ? "anions" : "cations";
            var hint = Missing.Count > 0 ? $" Not stated: {Say.List(Missing)}." : "";
            return string.Create(CultureInfo.InvariantCulture, $"Cations carry {Cations.Middle:0.00} meq/L ")
                + string.Create(CultureInfo.InvariantCulture, $"and anions {Anions.Middle:0.00} meq/L, ")
                + string.Create(CultureInfo.InvariantCulture, $"an imbalance of {Math.Abs(Percent):0.0} %; ")
                + string.Create(CultureInfo.InvariantCulture, $"over {LimitPercent} % a value, a unit or a basis is wrong, ")
                + $"or {shortOf} are missing.{hint} "
                + "Check 'as CaCO3', 'as N' and 'as S' on the report.";
        }
    }

    internal override IReadOnlyList<NamedValue> Values =>
    [
        new("ImbalancePercent", Percent, "%"),
        new("limit", LimitPercent, "%"),
        new("cations", Cations.Middle, Unit),
        new("anions", Anions.Middle, Unit),
    ];

    /// <summary>%, the spread of 1062 published analyses about their mean (Ground Water 32, 1994, 539, abstract).</summary>
    private const double SpreadPercent = 6.6;

    protected override bool IsSure => Apart is { } apart && apart.Value > LimitPercent + SpreadPercent;

    protected override double Off => Math.Abs(Cations.Middle - Anions.Middle);

    private double Sum => Cations.Middle + Anions.Middle;

    private double Percent => 100 * (Cations.Middle - Anions.Middle) / Sum;

    internal static IEnumerable<IonBalance> Of(WaterDocument water, WaterFigures stated)
    {
        if (stated.IonsPlace is not { } place)
        {
            yield break;
        }

        // A hardness stands for the calcium and magnesium that are not stated one by one.
        var hardness = States("Ca", stated) && States("Mg", stated) ? null : stated.Hardness;
        var cations = StatedCharge.Of("cations", stated.Ions.Where(i => i.Charge > 0 && (hardness is null || i.Key is not ("Ca" or "Mg"))))
            .With(StatedCharge.Of("hardness", hardness));
        var negative = stated.Ions.Where(i => i.Charge < 0 && (stated.Alkalinity is null || i.Component != Component.Carbonate));
        var anions = StatedCharge.Of("anions", negative)
            .With(StatedCharge.Of("alkalinity", stated.Alkalinity));
        var missing = _majors.Where(m => !States(m, stated) && (hardness is null || m is not ("Ca" or "Mg"))).ToList();
        var balance = new IonBalance(water, place, cations, anions, missing, null) { Checks = [] };
        if (cations.Middle == 0 || anions.Middle == 0)
        {
            yield return balance with { Checks = [Check.That("the analysis states cations and anions", false)] };
            yield break;
        }

        var percent = Digits.SixDigits(Math.Abs(balance.Percent));
        var apart = new Check("worse than a laboratory lets pass", percent, Relation.Over, LimitPercent, "%");
        yield return balance with
        {
            Apart = apart,
            Checks =
            [
                apart,
                new("enough in it to say so", Digits.SixDigits(balance.Sum), Relation.AtLeast, LeastCharge, Unit),
                new("enough of the major ions", _majors.Length - missing.Count, Relation.AtLeast, MajorsNeeded),
            ],
        };
    }

    internal override Working Work()
    {
        var work = new WorkingBuilder($"charges of the water '{Water.Name}'");
        if (Apart is null)
        {
            return work.Statements(this).Done();
        }

        var (plus, minus) = (Cations.Write(work, p => p.Middle, Middle), Anions.Write(work, p => p.Middle, Middle));
        var apart = work.Result(
            "imbalance", "100 × |cations - anions| / (cations + anions)", 100 * Term.Size(plus - minus) / (plus + minus), "%");
        work.Check(Apart, apart, LimitPercent);
        work.Check(Checks[1], work.Result("charges in all", "cations + anions", plus + minus, Unit), LeastCharge);
        var majors = work.Given($"stated of {Say.List(_majors)}", _majors.Length - Missing.Count, "", From.Count);
        return work.Check(Checks[2], majors, MajorsNeeded).Done(apart);
    }

    private static bool States(string major, WaterFigures stated) => major switch
    {
        "alkalinity" => stated.Alkalinity is not null || stated.Ions.Any(i => i.Component == Component.Carbonate),
        "SO4" => stated.Ions.Any(i => i.Component == Component.Sulfate),
        _ => stated.Ions.Any(i => i.Key == major),
    };
}
