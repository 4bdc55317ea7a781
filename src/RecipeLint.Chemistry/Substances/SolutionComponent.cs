using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Data;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// One of the things a dissolving substance sets free, by the name used in <see cref="ComponentYield"/>.
/// </summary>
/// <remarks>
/// The names are those of the equilibrium constants: species with their charge at the end, "Ca+2", "SO4-2", "NH4+", "H2PO4-",
/// "CO3-2", "EDTA-4", "B(OH)3". Acids set free H+; a base is written as H+ taken away (KOH: K+ 1, H+ -1); water is never written.
/// What the constants do not know comes along as an inert ion or molecule, "inert:" and its own name and charge:
/// "inert:I-1", "inert:ClO-1", "inert:urea", "inert:FeHBED-1". An inert name always writes the size of its charge; no charge means neutral.
/// A charge that a stated assumption supplies, without saying which ion, is "inert:cation+1" or "inert:anion-1".
/// </remarks>
/// <param name="Name">The full name, with "inert:" where it belongs.</param>
/// <param name="Charge">In elementary charges.</param>
/// <param name="Formula">Its atoms; null where only the charge is known.</param>
/// <param name="Nitrogen">The label's form of the nitrogen it holds; null when it holds none.</param>
public sealed record SolutionComponent(string Name, int Charge, Formula? Formula, NitrogenForm? Nitrogen)
{
    /// <summary>What marks a name that no equilibrium constant knows.</summary>
    public const string InertPrefix = "inert:";

    /// <summary>Charge of which nothing but its sign is known: what the rounding of a label leaves open.</summary>
    public const string ClosingAnion = "inert:anion-1", ClosingCation = "inert:cation+1";

    private const string Resource = "RecipeLint.Chemistry.Data.substances.components.json";

    private static readonly Lazy<Dictionary<string, Lazy<SolutionComponent>>> Table = new(Load);

    /// <summary>Components that the built-in data knows, in ordinal order of their names.</summary>
    public static IEnumerable<SolutionComponent> Known =>
        Table.Value.Values.Select(c => c.Value).OrderBy(c => c.Name, StringComparer.Ordinal);

    public bool IsInert => Name.StartsWith(InertPrefix, StringComparison.Ordinal);

    /// <summary>A component of the built-in data by its name.</summary>
    public static bool TryGet(string name, [NotNullWhen(true)] out SolutionComponent? component)
    {
        component = Table.Value.TryGetValue(name, out var known) ? known.Value : null;
        return component is not null;
    }

    /// <summary>
    /// Reads any component name, known or not: prefix, species and charge. For names outside the built-in data
    /// <see cref="Formula"/> is null.
    /// </summary>
    /// <returns>False for an empty name or a charge that cannot be read.</returns>
    public static bool TryParse(string name, [NotNullWhen(true)] out SolutionComponent? component)
    {
        if (TryGet(name, out component))
        {
            return true;
        }

        var inert = name.StartsWith(InertPrefix, StringComparison.Ordinal);
        var species = inert ? name[InertPrefix.Length..] : name;
        var sign = species.Length - 1;
        while (sign >= 0 && char.IsAsciiDigit(species[sign]))
        {
            sign--;
        }

        var charge = 0;
        if (sign > 0 && species[sign] is '+' or '-')
        {
            var digits = species[(sign + 1)..];
            if (digits.Length == 0)
            {
                charge = 1;
            }
            else if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out charge) || charge is 0 or > 20)
            {
                return false;
            }

            charge = species[sign] == '-' ? -charge : charge;
        }

        if (species.Length == 0 || sign == 0)
        {
            return false;
        }

        component = new SolutionComponent(name, charge, null, null);
        return true;
    }

    /// <summary>Net charge of a set of yields in moles of elementary charge per gram; 0 when everything closes.</summary>
    /// <exception cref="ArgumentException">A name cannot be read.</exception>
    public static double NetChargePerGram(IEnumerable<ComponentYield> yields) => yields.Sum(y =>
        TryParse(y.Component, out var component)
            ? component.Charge * y.MolesPerGram
            : throw new ArgumentException($"'{y.Component}' is not the name of a component.", nameof(yields)));

    private static Dictionary<string, Lazy<SolutionComponent>> Load()
    {
        using var document = EmbeddedJson.Open(typeof(SolutionComponent).Assembly, Resource);
        var table = new Dictionary<string, Lazy<SolutionComponent>>(StringComparer.Ordinal);
        foreach (var row in Components.All)
        {
            if (row.Name != Component.Water)
            {
                table.Add(row.Name, new(() => Read(row.Name, row.Formula + ChargeText(row.Charge), row.Nitrogen, row.Charge)));
            }
        }

        foreach (var row in document.RootElement.GetProperty("components").EnumerateObject())
        {
            var name = row.Name;
            var formula = row.Value.GetProperty("formula").GetString();
            var nitrogen = row.Value.TryGetProperty("nitrogen", out var form) ? form.GetString() : null;
            var charge = formula is null ? row.Value.GetProperty("charge").GetInt32() : 0;
            table.Add(name, new(() => Read(name, formula, nitrogen, charge)));
        }

        return table;
    }

    private static string ChargeText(int charge) => charge switch
    {
        0 => string.Empty,
        1 => "+",
        -1 => "-",
        _ => charge.ToString("+0;-0", CultureInfo.InvariantCulture),
    };

    private static SolutionComponent Read(string name, string? formulaText, string? nitrogen, int charge)
    {
        var formula = formulaText is null ? null : FormulaParser.Parse(formulaText);
        NitrogenForm? form = nitrogen switch
        {
            null => null,
            "nitrate" => NitrogenForm.Nitrate,
            "ammonium" => NitrogenForm.Ammonium,
            "urea" => NitrogenForm.Urea,
            "organic" => NitrogenForm.Organic,
            _ => throw new InvalidOperationException($"{Resource}, '{name}': '{nitrogen}' is not a form of nitrogen."),
        };
        return new SolutionComponent(name, formula?.Charge ?? charge, formula, form);
    }
}
