using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using Digits = RecipeLint.Chemistry.Quantities.Rounding;

namespace RecipeLint.Rules.Documents;

/// <summary>
/// Conductivity against what is dissolved. Cations in meq/L for each mS/cm: about 10 in natural waters (US Salinity Laboratory, Agriculture
/// Handbook 60, 1954; recalled); between potassium chloride (7, from its limiting molar conductivity) and water near saturation with gypsum
/// (14, 30.5 meq/L at 2.2 mS/cm; recalled). A range counts by the end that fits best.
/// </summary>
/// <param name="Low">mS/cm, lowest of the year.</param>
/// <param name="High">mS/cm, highest of the year.</param>
/// <param name="Sides">Charge on one side each: cations, anions, hardness, alkalinity. Only cations for what is too little.</param>
/// <param name="IsTooLittle">True to ask whether the cations are too few for the conductivity, false whether something is too much.</param>
internal sealed record ConductivityRoom(
    WaterDocument Water, Place Place, double Low, double High, IReadOnlyList<StatedCharge> Sides, bool IsTooLittle)
    : WaterComparison(Water, Place)
{
    private const double LeastPerMillisiemens = 7, MostPerMillisiemens = 14;

    internal override string Message => (IsTooLittle
        ? $"A conductivity of {Shown} mS/cm needs at least about {Number(Needed)} meq/L of cations, "
            + $"but those stated come to {Number(Sides[0].High)} meq/L."
        : $"A conductivity of {Shown} mS/cm has room for about {Number(Room)} meq/L, "
            + $"but {Number(Most)} meq/L are stated on one side.") + Advice;

    internal override IReadOnlyList<NamedValue> Values => IsTooLittle
        ? [new("stated", Needed, Unit), new("from the others", Sides[0].Middle, Unit)]
        : [new("stated", Room, Unit), new("from the others", Most, Unit)];

    protected override double Off => IsTooLittle ? Needed - Sides[0].High : Most - Room;

    private string Shown => Number((Low + High) / 2);

    private double Room => High * MostPerMillisiemens;

    private double Needed => Low * LeastPerMillisiemens;

    private double Most => Sides.Max(s => s.Low);

    internal static IEnumerable<ConductivityRoom> Of(WaterDocument water, WaterFigures stated)
    {
        if (stated.Ec is not { } ec)
        {
            yield break;
        }

        var cations = StatedCharge.Of("cations", stated.Ions.Where(i => i.Charge > 0));
        StatedCharge[] all =
        [
            cations,
            StatedCharge.Of("anions", stated.Ions.Where(i => i.Charge < 0)),
            StatedCharge.Of("hardness", stated.Hardness),
            StatedCharge.Of("alkalinity", stated.Alkalinity),
        ];
        List<StatedCharge> sides = [.. all.Where(s => s.IsStated)];
        if (sides.Count == 0)
        {
            yield break;
        }

        var (low, high) = (ec.Value.Low.MillisiemensPerCentimetre, ec.Value.High.MillisiemensPerCentimetre);
        var much = new ConductivityRoom(water, ec.Place, low, high, sides, false) { Checks = [] };
        much = much with
        {
            Checks =
            [
                new("more than it has room for", Digits.SixDigits(much.Most), Relation.Over, Digits.SixDigits(much.Room + Rounding), Unit),
            ],
        };
        yield return much;
        if (new[] { "Ca", "Mg", "Na" }.All(k => stated.Ions.Any(i => i.Key == k)))
        {
            var little = new ConductivityRoom(water, ec.Place, low, high, [cations], true) { Checks = [] };
            yield return little with
            {
                Checks =
                [
                    new(
                        "less than it needs", Digits.SixDigits(cations.High), Relation.Under,
                        Digits.SixDigits(little.Needed - Rounding), Unit),
                    Check.That("nothing stated is too much for it", !much.Fires),
                ],
            };
        }
    }

    internal override Working Work()
    {
        var against = IsTooLittle ? "needed for it" : "dissolved";
        var work = new WorkingBuilder($"conductivity of the water '{Water.Name}' against what is {against}");
        if (IsTooLittle)
        {
            var cations = Sides[0].Write(work, p => p.High, Highest);
            var needed = work.Result(
                "cations needed at least", $"mS/cm × {Number(LeastPerMillisiemens)} - {Number(Rounding)}",
                (work.Given($"conductivity, {Lowest}", Low, "mS/cm", From.File) * LeastPerMillisiemens) - Rounding, Unit);
            return work.Check(Checks[0], cations, needed).Statements(this).Done(cations);
        }

        var sides = Sides.Select(s => s.Write(work, p => p.Low, Lowest)).ToList();
        var most = sides.Count == 1
            ? sides[0]
            : work.Result("the most on one side", "the largest of these", sides.Aggregate(Term.Larger), Unit);
        var room = work.Result(
            "room for at most", $"mS/cm × {Number(MostPerMillisiemens)} + {Number(Rounding)}",
            (work.Given($"conductivity, {Highest}", High, "mS/cm", From.File) * MostPerMillisiemens) + Rounding, Unit);
        return work.Check(Checks[0], most, room).Done(most);
    }
}
