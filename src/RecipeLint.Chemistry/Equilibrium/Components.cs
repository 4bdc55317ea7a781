namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The components every aqueous species and solid is written in. H+ and H2O are components too, but a solution is described
/// without them: the first follows from charge balance or a given pH, the second is the solvent.
/// </summary>
public static class Components
{
    internal const int Hydrogen = 0, Water = 1;
    private static readonly Dictionary<string, int> Places =
        ThermoTables.ComponentNames.Index().ToDictionary(n => n.Item, n => n.Index, StringComparer.Ordinal);
    internal static readonly int Carbonate = Find(Component.Carbonate);

    private static readonly Lazy<Lists> Chosen = new(() => new Lists());

    // Apart from the other lists, which every run needs: this one needs the solids.
    private static readonly Lazy<Dictionary<string, string[]>> Partners = new(OppositesInSolids);

    /// <summary>Number of components, H+ and H2O included.</summary>
    public static int Count => ThermoTables.ComponentNames.Length;

    /// <summary>Names in table order, for example "Ca+2", "NO3-", "H2PO4-", "EDTA-4".</summary>
    public static IReadOnlyList<string> Names => ThermoTables.ComponentNames;

    /// <summary>Charge number of a component.</summary>
    public static int Charge(int component) => ThermoTables.ComponentCharges[component];

    /// <summary>Molar mass in g/mol.</summary>
    public static double MolarMassGramsPerMole(int component) => ThermoTables.ComponentMolarMass[component];

    /// <summary>Index of a component, or -1 when there is none of that name.</summary>
    public static int Find(string name) => Places.TryGetValue(name, out var place) ? place : -1;

    /// <summary>Every component with what is known of it, in table order.</summary>
    public static IReadOnlyList<ComponentRow> All => ComponentRows.All;

    /// <summary>What is known of a component; null for a name that is none (an inert ion, a complex).</summary>
    public static ComponentRow? Row(string name) => Find(name) is >= 0 and var i ? ComponentRows.All[i] : null;

    /// <summary>"calcium" for "Ca+2"; the name itself where it is no component.</summary>
    public static string Word(string name) => Row(name)?.Word ?? name;

    /// <summary>The metals chelates hold, in table order.</summary>
    public static IReadOnlyList<string> Metals => Chosen.Value.Metals;

    /// <summary>The metals fed in traces, the one that takes a chelator from the others first.</summary>
    public static IReadOnlyList<string> TraceMetals => Chosen.Value.TraceMetals;

    /// <summary>The chelating agents, the strongest first.</summary>
    public static IReadOnlyList<string> Chelators => Chosen.Value.Chelators;

    /// <summary>The chelating agents and then what holds metals weakly, the strongest first.</summary>
    public static IReadOnlyList<string> Holders => Chosen.Value.Holders;

    /// <summary>The anions of preserving acids, in table order.</summary>
    public static IReadOnlyList<string> Preservatives => Chosen.Value.Preservatives;

    /// <summary>
    /// The components with which one of them falls out readily: those of the other charge (neutral acids count as anions) in the solids it
    /// is part of; in table order, empty for a name that is no component.
    /// </summary>
    public static IReadOnlyList<string> PartnersOf(string name) => Partners.Value.GetValueOrDefault(name) ?? [];

    private static Dictionary<string, string[]> OppositesInSolids()
    {
        var found = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        foreach (var solid in ConstantSet.Product.Solids.Where(s => s.Role == SolidRole.FormsReadily))
        {
            var names = solid.Composition.Select(c => c.Key).Where(n => n is not (Component.Hydrogen or Component.Water)).ToList();
            foreach (var name in names)
            {
                if (!found.TryGetValue(name, out var partners))
                    found.Add(name, partners = new(StringComparer.Ordinal));
                partners.UnionWith(names.Where(n => Row(n)!.Charge > 0 != Row(name)!.Charge > 0));
            }
        }

        return found.ToDictionary(f => f.Key, f => Names.Where(f.Value.Contains).ToArray(), StringComparer.Ordinal);
    }

    private sealed class Lists
    {
        public readonly string[] Metals = [.. With(ComponentRoles.Metal).Select(c => c.Name)];
        public readonly string[] TraceMetals = [.. With(ComponentRoles.TraceMetal).OrderBy(c => c.Rank).Select(c => c.Name)];
        public readonly string[] Chelators = [.. With(ComponentRoles.Chelator).OrderBy(c => c.Rank).Select(c => c.Name)];
        public readonly string[] Holders =
            [.. With(ComponentRoles.Chelator | ComponentRoles.Ligand).OrderBy(c => c.Rank).Select(c => c.Name)];
        public readonly string[] Preservatives = [.. With(ComponentRoles.Preservative).Select(c => c.Name)];

        private static IEnumerable<ComponentRow> With(ComponentRoles roles) => All.Where(c => (c.Roles & roles) != 0);
    }
}
