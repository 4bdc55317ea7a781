using System.Globalization;
using RecipeLint.Chemistry.Composition;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Forms of nitrogen that a label states as one figure, moles of N per gram; a guess that the bag can hold.</summary>
/// <remarks>
/// The salts of the trade decide (common practice, no source): potassium and calcium come as nitrates, phosphate and sulfate as ammonium
/// salts, what nitrogen is left as urea. Beside calcium without phosphate, and alone up to the strength of ammonium nitrate, the rest is
/// ammonium nitrate. Where that weighs more than the bag, only as much is nitrate or ammonium as the charge needs.
/// </remarks>
internal readonly record struct UntoldNitrogen(double Nitrate, double Ammonium, double Urea, double Ammonia)
{
    /// <summary>Alone in a bag, nitrogen up to this is taken as ammonium nitrate: N in NH4NO3, 35.0 % (CIAAW weights).</summary>
    private const double AmmoniumNitrate = 0.3502;

    /// <summary>From here on it can only be ammonia (82.2 % N, CIAAW weights); urea ends at 46.6 %.</summary>
    private const double OnlyAmmonia = 0.80;

    /// <summary>Other salts up to this share of the nitrogen, as moles, leave it alone in the bag.</summary>
    private const double Alone = 0.05;

    private static readonly (string Component, int Charge)[] Cations =
        [(Component.Potassium, 1), (Component.Sodium, 1), (Component.Calcium, 2), (Component.Magnesium, 2)];

    private static readonly (string Component, int Charge)[] Anions =
        [(Component.Phosphate, 1), (Component.Sulfate, 2), (Component.Chloride, 1)];

    /// <summary>True where it could be another form as well: past the strength of ammonium nitrate only urea fits.</summary>
    public bool IsUreaTaken =>
        Urea > 0 && (Nitrate + Ammonium + Urea + Ammonia) * AtomicWeights.Of(Element.N) <= AmmoniumNitrate;

    /// <summary>In one sentence, with what is asked of who wrote the file.</summary>
    public string Sentence
    {
        get
        {
            var all = Nitrate + Ammonium + Urea + Ammonia;
            (double Moles, string Name)[] forms = [(Nitrate, "nitrate"), (Ammonium, "ammonium"), (Urea, "urea"), (Ammonia, "ammonia")];
            var told = forms
                .Where(f => f.Moles > 0.0005 * all)
                .Select(f => f.Moles > 0.9995 * all ? f.Name
                    : string.Create(CultureInfo.InvariantCulture, $"{100 * f.Moles / all:0.#} % {f.Name}"))
                .ToArray();
            var list = told.Length > 1 ? string.Join(", ", told[..^1]) + " and " + told[^1] : told[0];
            return $"The label does not say in which forms its nitrogen is: taken as {list}, as its salts are in the trade; write its "
                + "forms as 'nitrogen' if the bag or the supplier states them.";
        }
    }

    /// <param name="ions">All else that the label states.</param>
    /// <param name="nitrogen">Moles of N per gram.</param>
    /// <param name="limit">What the whole may weigh, grams per gram.</param>
    public static UntoldNitrogen Of(LabelIons ions, double nitrogen, double limit)
    {
        var net = ions.NetCharge;
        var needed = Math.Min(Math.Abs(net), nitrogen);
        var rest = nitrogen - needed;
        var cations = Cations.Sum(c => c.Charge * ions[c.Component]);
        var anions = Anions.Sum(a => a.Charge * ions[a.Component]);
        var alone = Math.Max(cations, anions) < Alone * nitrogen;
        var grams = nitrogen * AtomicWeights.Of(Element.N);
        if (alone && grams >= OnlyAmmonia)
        {
            return Split(0) with { Urea = 0, Ammonia = rest };
        }

        var pairs = alone
            ? grams <= AmmoniumNitrate ? rest / 2 : 0
            : ions[Component.Calcium] > 0 && ions[Component.Phosphate] == 0 ? rest / 2 : Math.Min(rest / 2, Math.Min(cations, anions));
        var trade = Split(pairs);
        return ions.LeastMassPerGram() + trade.Mass() <= limit ? trade : Split(0);

        UntoldNitrogen Split(double pairs) => new(
            (net > 0 ? needed : 0) + pairs, (net < 0 ? needed : 0) + pairs, Math.Max(0, rest - (2 * pairs)), 0);
    }

    private double Mass() =>
        (Nitrate * Grams("NO3")) + (Ammonium * Grams("NH4")) + (Urea * Grams("CO(NH2)2") / 2) + (Ammonia * Grams("NH3"));

    private static double Grams(string formula) => FormulaParser.Parse(formula).MolarMass.GramsPerMole;
}
