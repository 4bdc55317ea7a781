using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Tests.Support;

/// <summary>Substances that do the same to others and bring the same ions: strengths of one acid, hydrates of one salt.</summary>
internal static class CatalogueClasses
{
    /// <summary>One pair for each two classes, the first of the list.</summary>
    public static List<(string One, string Other)> FirstOfEach(IEnumerable<(string One, string Other)> pairs)
    {
        var classes = SubstanceCatalogue.BuiltIn.Substances.ToDictionary(s => s.Id, Of, StringComparer.Ordinal);
        return [.. pairs.DistinctBy(p => Ordered(classes[p.One], classes[p.Other]))];
    }

    private static (string Lower, string Higher) Ordered(string one, string other) =>
        string.CompareOrdinal(one, other) <= 0 ? (one, other) : (other, one);

    private static string Of(Substance substance) => string.Join(
        ' ',
        [
            $"{substance.Kind} {substance.Form} {substance.Extract?.Key} {substance.FeedsMicrobes}",
            .. Held.Of(Bench.Substance(substance.Id), 1).Roles.Select(r => r.ToString()).Order(StringComparer.Ordinal),
            .. substance.Dissolves.Select(d => d.Component).Order(StringComparer.Ordinal),
        ]);
}
