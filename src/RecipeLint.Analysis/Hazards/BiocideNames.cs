using System.Runtime.CompilerServices;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What is sold to kill what grows and is known by its name alone.</summary>
public static class BiocideNames
{
    /// <summary>Parts of trade names without blanks and hyphens (common practice, no source).</summary>
    private static readonly string[] Words =
    [
        "isothiazol", "bronopol", "benzalkonium", "quaternaryammon", "didecyldimethyl", "polyquat", "glutaral", "formaldehyde", "formalin",
        "algicid", "algaecid", "algecid", "biocid", "bactericid", "slimicid", "peracet", "peroxyacet", "chlorinedioxide", "chlorite",
        "permangan", "iodophor", "dichlorophen", "phenoxyethanol", "paraben", "natamycin", "dehydroacet",
    ];

    // Asked of everything that goes into a feed, which is mostly the same few substances.
    private static readonly ConditionalWeakTable<Substance, object> Known = [];

    /// <summary>True where the name says so and no figure of the catalogue tells what roots bear of it.</summary>
    public static bool Has(Substance substance) => (bool)Known.GetValue(substance, static s => Reads(s));

    private static bool Reads(Substance substance) =>
        substance.Kind != SubstanceKind.Preservative

        // Of bleach, which has 'chlorite' in its name, limits are known and judged elsewhere.
        && !HazardRoles.Of(substance).Contains(HazardRole.Hypochlorite)
        && new[] { substance.Name, substance.Id }.Concat(substance.Aliases).Select(Compact)
            .Any(n => Words.Any(w => n.Contains(w, StringComparison.Ordinal)));

    private static string Compact(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToLowerInvariant();
}
