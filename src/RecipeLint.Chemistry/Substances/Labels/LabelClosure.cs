using System.Globalization;
using RecipeLint.Chemistry.Composition;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Closes the charge of a label whose counter-ions are not declared, and says how.</summary>
internal static class LabelClosure
{
    /// <summary>What rounding to one or two decimals can leave open, as share of the charge.</summary>
    private const double Rounding = 0.02;

    public static IEnumerable<string> Close(LabelIons ions, LabelContents contents, LabelDeclaration label, List<LabelProblem> problems)
    {
        var open = ions.NetCharge;
        var strength = ions.Strength;
        if (Math.Abs(open) <= 1e-12 * Math.Max(strength, 1e-12))
        {
            return [];
        }

        var percent = (100 * Math.Abs(open) / strength).ToString("0.##", CultureInfo.InvariantCulture);
        if (Math.Abs(open) <= Rounding * strength)
        {
            ions.Add(open > 0 ? SolutionComponent.ClosingAnion : SolutionComponent.ClosingCation, Math.Abs(open));
            return [$"The rounding of the label leaves {percent} % of the charge open; an inert ion closes it."];
        }

        if (label.CounterIon is { } given)
        {
            if (SolutionComponent.TryParse(given, out var ion) && ion.Charge * open < 0)
            {
                ions.Add(ion.Name, -open / ion.Charge);
                return [$"The label leaves {percent} % of the charge open; it is closed with {ion.Name} as declared."];
            }

            problems.Add(new(
                LabelProblemKind.BadCounterIon, $"'{given}' cannot close this label: {(open > 0 ? "an anion" : "a cation")} is missing"));
        }

        // What potash and silica leave open is the alkalinity of the glass itself.
        ions.GuessedCharge = open > 0 && ions[Component.Silicate] > 0 ? 0 : Math.Abs(open);
        var used = open > 0 ? AddAnions(ions, contents, label, open) : AddCations(ions, -open);
        return [$"The label leaves {percent} % of the charge open; it is closed with {string.Join(", then ", used)}."];
    }

    private static List<string> AddAnions(LabelIons ions, LabelContents contents, LabelDeclaration label, double open)
    {
        var used = new List<string>();
        if (ions[Component.Silicate] > 0)
        {
            ions.Add(Component.Hydrogen, -open);
            used.Add("the alkalinity of the silicate (as hydroxide)");
            return used;
        }

        var phosphate = label.Form == PhysicalForm.Liquid ? Math.Min(open, ions[Component.Phosphate]) : 0;
        if (phosphate > 0)
        {
            ions.Add(Component.Hydrogen, -phosphate);
            used.Add("hydrogen phosphate instead of dihydrogen phosphate");
        }

        var rest = open - phosphate;
        if (rest > 1e-12)
        {
            // Sulfate is the ion that labels leave out; with calcium, or with sulfur declared, it cannot be, nor where the bag has no
            // room for it: potash of 60 % K2O is the chloride, of 68 % the carbonate.
            var room = LabelProduct.MostPerGram - ions.LeastMassPerGram();
            var sulfate = !contents.Has(Element.S, LabelShare.Total) && !contents.Has(Element.Ca, LabelShare.Total)
                && rest / 2 * Grams("SO4") <= room;
            var chloride = !sulfate && rest * Grams("Cl") <= room;
            ions.Add(
                sulfate ? Component.Sulfate : chloride ? Component.Chloride : Component.Hydrogen,
                sulfate ? rest / 2 : chloride ? rest : -rest);
            used.Add(sulfate ? "sulfate" : chloride ? "chloride" : "hydroxide, for which alone the product has room");
        }

        return used;
    }

    private static List<string> AddCations(LabelIons ions, double open)
    {
        var used = new List<string>();
        var chelate = Math.Min(open, ions.OpenChelateCharge);
        if (chelate > 0)
        {
            ions.Add(Component.Sodium, chelate);
            used.Add("sodium of the chelate");
        }

        var acid = Math.Min(open - chelate, ions[Component.Phosphate]);
        if (acid > 1e-12)
        {
            ions.Add(Component.Hydrogen, acid);
            used.Add("free phosphoric acid");
        }

        var rest = open - chelate - acid;
        if (rest > 1e-12)
        {
            ions.Add(Component.Sodium, rest);
            used.Add("sodium");
        }

        return used;
    }

    private static double Grams(string formula) => FormulaParser.Parse(formula).MolarMass.GramsPerMole;
}
