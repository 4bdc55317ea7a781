using RecipeLint.Chemistry.Composition;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Substances;

/// <summary>The ions that the declared contents of a label stand for, in moles per gram of product.</summary>
internal sealed class LabelIons
{
    private static readonly (Element Element, string Component)[] Plain =
    [
        (Element.K, Component.Potassium), (Element.Na, Component.Sodium), (Element.Ca, Component.Calcium),
        (Element.Mg, Component.Magnesium), (Element.P, Component.Phosphate), (Element.S, Component.Sulfate),
        (Element.Cl, Component.Chloride), (Element.B, Component.Boron), (Element.Mo, Component.Molybdate),
        (Element.Si, Component.Silicate), (Element.Fe, Component.FerrousIron), (Element.Mn, Component.Manganese),
        (Element.Zn, Component.Zinc), (Element.Cu, Component.Copper), (new("Co"), Component.Cobalt), (new("Ni"), Component.Nickel),
        (new("Al"), Component.Aluminium), (new("I"), "inert:I-1"),
        (new("Se"), "inert:SeO4-2"),
    ];

    // The least that one mole can weigh in the dry product, where that is less than the dissolved form: SiO2 for H4SiO4 and so on.
    private static readonly (string Component, string Dry, int Units)[] DryForms =
        [(Component.Silicate, "SiO2", 1), (Component.Phosphate, "PO3", 1), (Component.Boron, "B2O3", 2), (Component.Molybdate, "MoO3", 1)];

    private static readonly string[] WithOxide =
        [Component.Calcium, Component.Magnesium, Component.Phosphate, Component.Silicate, Component.Boron];

    private readonly SortedDictionary<string, double> _moles = new(StringComparer.Ordinal);
    private readonly List<LabelProblem> _problems;
    private readonly LabelContents _contents;

    public LabelIons(LabelContents contents, LabelDeclaration label, List<LabelProblem> problems)
    {
        _contents = contents;
        _problems = problems;
        var agent = LabelAgents.Taken(LabelAgents.Named(label.Agent));
        var share = HeldByCharge.Share(contents, label.Form, agent, Plain.Sum(p => Bound(p.Element) / AtomicWeights.Of(p.Element)));
        if (HeldByCharge.EquivalentsPerGram(agent) is not null && Plain.Any(p => Bound(p.Element) > 0))
        {
            Assumptions.Add(HeldByCharge.Told(agent!, share));
        }

        foreach (var (element, component) in Plain)
        {
            var bound = share * Bound(element);
            if (bound > 0)
            {
                Bind(element, bound / AtomicWeights.Of(element), label.Agent);
            }

            Add(component, Math.Max(0, contents.Total(element) - bound) / AtomicWeights.Of(element));
        }

        if (SaysThiosulfate(label.Name) && this[Component.Sulfate] is > 0 and var sulfur)
        {
            Add(Component.Sulfate, -sulfur);
            Add(Component.Thiosulfate, sulfur / 2);
            Assume("The sulfur counts as thiosulfate, which the name says.");
        }

        AddNitrogen();
    }

    public List<string> Assumptions { get; } = [];

    /// <summary>Moles of nitrate per gram.</summary>
    public double Nitrate { get; private set; }

    /// <summary>Moles of ammonium per gram.</summary>
    public double Ammonium { get; private set; }

    /// <summary>Moles of nitrogen in urea per gram.</summary>
    public double Urea { get; private set; }

    /// <summary>True where the label does not say that there is urea in it.</summary>
    public bool IsUreaTaken { get; private set; }

    /// <summary>Charge that the chelating agents bring beyond the metals they bind, moles per gram, positive.</summary>
    public double OpenChelateCharge { get; private set; }

    /// <summary>Charge that was closed with ions of which the label says nothing, moles per gram.</summary>
    public double GuessedCharge { get; set; }

    /// <summary>Net charge in moles per gram.</summary>
    public double NetCharge => _moles.Sum(m => Charge(m.Key) * m.Value);

    /// <summary>Sum of the positive charge or of the negative charge, whichever is larger, moles per gram.</summary>
    public double Strength => Math.Max(
        _moles.Sum(m => Math.Max(0, Charge(m.Key) * m.Value)),
        _moles.Sum(m => Math.Max(0, -Charge(m.Key) * m.Value)));

    public double this[string component] => _moles.GetValueOrDefault(component);

    public void Add(string component, double moles)
    {
        var all = _moles.GetValueOrDefault(component) + moles;
        if (all == 0)
        {
            _moles.Remove(component);
            return;
        }

        _moles[component] = all;
    }

    public IReadOnlyList<ComponentYield> Yields() => [.. _moles.Select(m => new ComponentYield(m.Key, m.Value))];

    /// <summary>Grams that all this weighs at least, in one gram of product, without what closes its charge.</summary>
    public double LeastMassPerGram() => _moles
        .Where(m => m.Key == Component.Hydrogen ? m.Value < 0 : m.Value > 0)
        .Sum(m => m.Value * LeastMolarMass(m.Key));

    /// <summary>
    /// Grams per gram of product of the lightest that can close what charge is open: oxide beside what is sold as oxide or makes larger
    /// anions with it (lime, magnesia, phosphates, silicates, borates), carbonate beside all else, and free acid where cations are short.
    /// </summary>
    public double LeastMassToClose()
    {
        var open = Math.Max(0, NetCharge);
        var oxide = Math.Min(open, 2 * WithOxide.Sum(c => this[c]));
        return (oxide * FormulaParser.Parse("O").MolarMass.GramsPerMole / 2)
            + ((open - oxide) * FormulaParser.Parse("CO3").MolarMass.GramsPerMole / 2);
    }

    private static double LeastMolarMass(string component)
    {
        var (_, dry, units) = Array.Find(DryForms, d => d.Component == component);
        if (dry is not null)
        {
            return FormulaParser.Parse(dry).MolarMass.GramsPerMole / units;
        }

        return SolutionComponent.TryGet(component, out var known) && known.Formula is { } formula ? formula.MolarMass.GramsPerMole : 0;
    }

    private static int Charge(string component) => SolutionComponent.TryParse(component, out var known) ? known.Charge : 0;

    /// <summary>
    /// A label gives the sulfur of a thiosulfate as S, like that of a sulfate. A name that speaks of a sulfate besides does not say
    /// which is how much.
    /// </summary>
    private static bool SaysThiosulfate(string name)
    {
        var words = name.Replace("sulph", "sulf", StringComparison.OrdinalIgnoreCase);
        var rest = words.Replace("thiosulfate", "", StringComparison.OrdinalIgnoreCase);
        return rest.Length < words.Length && !rest.Contains("sulfate", StringComparison.OrdinalIgnoreCase);
    }

    private double Bound(Element element) =>
        Math.Min(_contents.Total(element), Math.Max(_contents[element, LabelShare.Chelated], _contents[element, LabelShare.OrthoOrtho]));

    private void Bind(Element metal, double moles, string? text)
    {
        var names = LabelAgents.Named(text);
        var name = LabelAgents.Taken(names);
        var stranger = names.FirstOrDefault(n => !LabelAgents.IsKnown(n));
        if (name is null || stranger is not null)
        {
            var message = name is null
                ? $"No chelating agent is named for the chelated {metal}"
                : $"'{stranger}' is not a chelating agent known here";
            _problems.Add(new(LabelProblemKind.UnknownAgent, message, metal.Symbol));
        }

        if (LabelAgents.ComponentOf(name) is not { } agent)
        {
            Assume(LabelAgents.LetsGo(name)
                ? $"Of {name} no constants are known here: the {metal} it holds counts as dissolved whatever the pH, although such an "
                    + "agent lets go of iron from about pH 7 on."
                : $"The chelated {metal} counts as dissolved whatever the pH.");
            Add($"inert:{metal}-complex", moles);
            return;
        }

        foreach (var said in LabelAgents.Said(text!, names, name!))
        {
            Assume(said);
        }

        var ion = metal == Element.Fe && agent is not (Component.Gluconate or Component.Glycinate or Component.Lactate)
            ? Component.FerricIron
            : Array.Find(Plain, p => p.Element == metal).Component;
        Add(ion, moles);
        Add(agent, moles);
        OpenChelateCharge += moles * Math.Max(0, -Charge(agent) - Charge(ion));
    }

    private void Assume(string sentence)
    {
        if (!Assumptions.Contains(sentence))
        {
            Assumptions.Add(sentence);
        }
    }

    private void AddNitrogen()
    {
        var weight = AtomicWeights.Of(Element.N);
        Nitrate = _contents[Element.N, LabelShare.Nitrate] / weight;
        Ammonium = _contents[Element.N, LabelShare.Ammonium] / weight;
        Urea = _contents[Element.N, LabelShare.Urea] / weight;
        if (_contents.NitrogenForms() == 0 && _contents.Total(Element.N) > 0)
        {
            var taken = UntoldNitrogen.Of(this, _contents.Moles(Element.N), LabelProduct.MostPerGram);
            Nitrate = taken.Nitrate;
            Ammonium = taken.Ammonium + taken.Ammonia;
            Urea = taken.Urea;
            Add(Component.Hydrogen, -taken.Ammonia);
            IsUreaTaken = taken.IsUreaTaken;
            Assume(taken.Sentence);
        }

        Add("inert:urea", Urea / 2);
        Add(Component.Nitrate, Nitrate);
        Add(Component.Ammonium, Ammonium);
    }
}
