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

    private static readonly (string Name, string Component)[] Agents =
    [
        ("EDTA", Component.Edta), ("DTPA", Component.Dtpa), ("HEDTA", Component.Hedta), ("HEEDTA", Component.Hedta),
        ("EDDHA", Component.Eddha), ("EDDHMA", Component.Eddha), ("EDDHSA", Component.Eddha), ("EDDCHA", Component.Eddha),
        ("IDHA", Component.Idha), ("IDS", Component.Idha), ("citric acid", Component.Citrate),
        ("citrate", Component.Citrate), ("gluconic acid", Component.Gluconate),
        ("gluconate", Component.Gluconate), ("glycine", Component.Glycinate), ("lactic acid", Component.Lactate),
        ("lactate", Component.Lactate), ("malic acid", Component.Malate), ("malate", Component.Malate),
    ];

    /// <summary>Agents taken as another that is built alike: methyl, sulfo or carboxyl groups on the rings of EDDHA (estimate).</summary>
    private static readonly string[] TakenAsEddha = ["EDDHMA", "EDDHSA", "EDDCHA"];

    /// <summary>Agents without constants: the complex comes along whole, as an inert molecule.</summary>
    private static readonly string[] WholeComplex =
        ["HBED", "EDDS", "lignosulfonate", "amino acid", "heptagluconate", "humic acid", "fulvic acid"];

    /// <summary>Of them those that let go of iron in neutral solutions (common practice, no source).</summary>
    private static readonly string[] WeakAgents = ["lignosulfonate", "amino acid", "heptagluconate", "humic acid", "fulvic acid"];

    // The least that one mole can weigh in the dry product, where that is less than the dissolved form: SiO2 for H4SiO4 and so on.
    private static readonly (string Component, string Dry, int Units)[] DryForms =
        [(Component.Silicate, "SiO2", 1), (Component.Phosphate, "PO3", 1), (Component.Boron, "B2O3", 2), (Component.Molybdate, "MoO3", 1)];

    private readonly SortedDictionary<string, double> _moles = new(StringComparer.Ordinal);
    private readonly List<LabelProblem> _problems;
    private readonly LabelContents _contents;

    public LabelIons(LabelContents contents, LabelDeclaration label, List<LabelProblem> problems)
    {
        _contents = contents;
        _problems = problems;
        var share = HeldByCharge.Share(contents, label, Plain.Sum(p => Bound(p.Element) / AtomicWeights.Of(p.Element)));
        if (HeldByCharge.EquivalentsPerGram(label.Agent) is not null && Plain.Any(p => Bound(p.Element) > 0))
        {
            Assumptions.Add(HeldByCharge.Told(label.Agent!, share));
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

        Add("inert:urea", contents[Element.N, LabelShare.Urea] / AtomicWeights.Of(Element.N) / 2);
        AddNitrogen();
    }

    public List<string> Assumptions { get; } = [];

    /// <summary>Moles of nitrate per gram.</summary>
    public double Nitrate { get; private set; }

    /// <summary>Moles of ammonium per gram.</summary>
    public double Ammonium { get; private set; }

    /// <summary>Charge that the chelating agents bring beyond the metals they bind, moles per gram, positive.</summary>
    public double OpenChelateCharge { get; private set; }

    /// <summary>Net charge in moles per gram.</summary>
    public double NetCharge => _moles.Sum(m => Charge(m.Key) * m.Value);

    /// <summary>Sum of the positive charge or of the negative charge, whichever is larger, moles per gram.</summary>
    public double Strength => Math.Max(
        _moles.Sum(m => Math.Max(0, Charge(m.Key) * m.Value)),
        _moles.Sum(m => Math.Max(0, -Charge(m.Key) * m.Value)));

    public double this[string component] => _moles.GetValueOrDefault(component);

    public void Add(string component, double moles)
    {
        if (moles != 0)
        {
            _moles[component] = _moles.GetValueOrDefault(component) + moles;
        }
    }

    public IReadOnlyList<ComponentYield> Yields() => [.. _moles.Select(m => new ComponentYield(m.Key, m.Value))];

    /// <summary>Grams that all this weighs at least, in one gram of product.</summary>
    public double LeastMassPerGram() =>
        _moles.Where(m => m.Value > 0 && m.Key != Component.Hydrogen).Sum(m => m.Value * LeastMolarMass(m.Key));

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

    private double Bound(Element element) =>
        Math.Min(_contents.Total(element), Math.Max(_contents[element, LabelShare.Chelated], _contents[element, LabelShare.OrthoOrtho]));

    private void Bind(Element metal, double moles, string? agentName)
    {
        var agent = Array.Find(Agents, a => string.Equals(a.Name, agentName, StringComparison.OrdinalIgnoreCase)).Component;
        if (agent is null)
        {
            if (agentName is null || !WholeComplex.Contains(agentName, StringComparer.OrdinalIgnoreCase))
            {
                var message = agentName is null
                    ? $"No chelating agent is named for the chelated {metal}"
                    : $"'{agentName}' is not a chelating agent known here";
                _problems.Add(new(LabelProblemKind.UnknownAgent, message, metal.Symbol));
            }

            Assumptions.Add(WeakAgents.Contains(agentName, StringComparer.OrdinalIgnoreCase)
                ? $"Of {agentName} no constants are known here: the {metal} it holds counts as dissolved whatever the pH, although such an "
                    + "agent lets go of iron from about pH 7 on."
                : $"The chelated {metal} counts as dissolved whatever the pH.");
            Add($"inert:{metal}-complex", moles);
            return;
        }

        if (TakenAsEddha.Contains(agentName, StringComparer.OrdinalIgnoreCase))
        {
            Assumptions.Add($"{agentName} is taken as EDDHA, which is built alike (an estimate).");
        }

        var ion = metal == Element.Fe && agent is not (Component.Gluconate or Component.Glycinate or Component.Lactate)
            ? Component.FerricIron
            : Array.Find(Plain, p => p.Element == metal).Component;
        Add(ion, moles);
        Add(agent, moles);
        OpenChelateCharge += moles * Math.Max(0, -Charge(agent) - Charge(ion));
    }

    private void AddNitrogen()
    {
        var weight = AtomicWeights.Of(Element.N);
        Nitrate = _contents[Element.N, LabelShare.Nitrate] / weight;
        Ammonium = _contents[Element.N, LabelShare.Ammonium] / weight;
        if (_contents.NitrogenForms() == 0 && _contents.Total(Element.N) > 0)
        {
            var moles = _contents.Moles(Element.N);
            var needed = Math.Clamp(NetCharge, 0, moles);
            Nitrate = needed + ((moles - needed) / 2);
            Ammonium = (moles - needed) / 2;
            Assumptions.Add("The label does not say in which form the nitrogen is: as much was taken as nitrate as the cations need, the "
                + "rest as ammonium nitrate.");
        }

        Add(Component.Nitrate, Nitrate);
        Add(Component.Ammonium, Ammonium);
    }
}
