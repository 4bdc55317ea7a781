using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Phosphate beside unchelated trace metals in a concentrate, past the solubility of the metal phosphates.</summary>
public sealed class PhosphateInTraceStock : StockRule
{
    /// <summary>
    /// Solids that form in a bottle within hours to days, with log K of dissolution at 25 °C into metal ion, H2PO4- and H+.
    /// Hopeite and copper phosphate: MINTEQA2 4.0; amorphous ferric phosphate: NIST SRD 46, -21.76 at I = 3 mol/L carried to I = 0.
    /// </summary>
    private static readonly MetalPhosphate[] _solids =
    [
        new("Fe+3", "iron", "ferric phosphate", 1, 1, 2, -5.17, 186.85),
        new("Zn+2", "zinc", "zinc phosphate", 3, 2, 4, 3.726, 152.73),
        new("Cu+2", "copper", "copper phosphate", 3, 2, 4, 4.026, 144.88),
    ];

    private static readonly string[] _chelators = ["EDTA-4", "DTPA-5", "HEDTA-3", "EDDHA-4"];

    public override string Name => "phosphate-in-trace-stock";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var phosphate = stock.Concentration("H2PO4-").MolesPerLitre;
        if (phosphate <= 0 || stock.SuppliersOf("H2PO4-").FirstOrDefault() is not { } source)
        {
            yield break;
        }

        var pH = stock.DeclaredPh ?? context.Number("worstCasePh");
        var hits = Hits(stock, phosphate, pH, context.Number("timesLimit"));
        if (hits.Count == 0)
        {
            yield break;
        }

        var worst = hits.MaxBy(h => h.Free / h.Limit)!;
        var where = stock.DeclaredPh is null ? $"pH {Say.Number(pH)} (assumed, the file sets none)" : $"pH {Say.Number(pH)}";
        var message = $"{Say.Number(phosphate * 1000)} mmol/L phosphate stands beside {Say.Number(worst.Free * 1000)} mmol/L unchelated {worst.Solid.Metal} in '{stock.Stock.Name}'; "
            + $"at {where} only {Say.Number(worst.Limit * 1000)} mmol/L {worst.Solid.Metal} stays dissolved next to it, and up to {Say.Number(worst.Grams)} g/L of {worst.Solid.Name} can settle. "
            + "The metal is then missing from every dose and the sludge does not dissolve again. "
            + $"Move {source.Substance.Name} to the part that holds no trace metals.";
        yield return context.Find(source.Place, message) with
        {
            Related = [.. hits.Select(h => new RelatedPlace(h.By.Place, $"{h.Solid.Metal}: {Say.Number(h.Free * 1000)} mmol/L, {Say.Number(h.Limit * 1000)} stay dissolved"))],
            Measured = new Measured($"{worst.Solid.Metal} over what stays dissolved", worst.Free / worst.Limit, 1, ""),
            Values =
            [
                new NamedValue("phosphate", phosphate * 1000, "mmol/L"),
                new NamedValue(worst.Solid.Metal, worst.Free * 1000, "mmol/L"),
                new NamedValue("limit", worst.Limit * 1000, "mmol/L"),
                new NamedValue("pH", pH, ""),
            ],
        };
    }

    private static List<Hit> Hits(StockFacts stock, double phosphate, double pH, double timesLimit)
    {
        var ionicStrength = ConditionalSolubility.IonicStrength(stock);
        var chelator = _chelators.Sum(c => stock.Concentration(c).MolesPerLitre);
        var logPhosphate = Math.Log10(phosphate * ConditionalSolubility.DihydrogenPhosphateFraction(pH))
            + ConditionalSolubility.LogActivityCoefficient(1, ionicStrength);

        var hits = new List<Hit>();
        foreach (var solid in _solids)
        {
            // Chelating agents hold ferric iron first, then zinc and copper, mole for mole.
            var total = stock.Concentration(solid.Component).MolesPerLitre;
            var free = Math.Max(0, total - chelator);
            chelator = Math.Max(0, chelator - total);
            if (free <= 0 || stock.SuppliersOf(solid.Component).FirstOrDefault() is not { } by)
            {
                continue;
            }

            var charge = Components.Charge(solid.Component);
            var limit = Math.Pow(10, solid.LogMetalActivity(logPhosphate, pH) - ConditionalSolubility.LogActivityCoefficient(charge, ionicStrength));
            if (Rounding.SixDigits(free / limit) > timesLimit)
            {
                hits.Add(new Hit(solid, free, limit, (free - limit) * solid.GramsPerMoleMetal, by));
            }
        }

        return hits;
    }

    private sealed record MetalPhosphate(
        string Component, string Metal, string Name, int Metals, int Phosphates, int Protons, double LogK, double GramsPerMoleMetal)
    {
        /// <summary>log10 of the metal activity in equilibrium: logK = metals log{M} + phosphates log{H2PO4-} + protons pH.</summary>
        public double LogMetalActivity(double logPhosphateActivity, double pH) =>
            (LogK - (Phosphates * logPhosphateActivity) - (Protons * pH)) / Metals;
    }

    private sealed record Hit(MetalPhosphate Solid, double Free, double Limit, double Grams, AdditionFacts By);
}
