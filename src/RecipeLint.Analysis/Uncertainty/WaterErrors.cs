using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>The errors of a water analysis.</summary>
internal sealed class WaterErrors(UncertaintyNotes notes)
{
    private readonly Dictionary<WaterDocument, List<(string Key, Uncertain GramsPerLitre)>> _known =
        new(ReferenceEqualityComparer.Instance);

    /// <summary>
    /// What the water brings of each key, in grams per litre of water, with the error of its analysis. One water fills all stocks of a
    /// recipe and its tank.
    /// </summary>
    public IReadOnlyList<(string Key, Uncertain GramsPerLitre)> Of(WaterDocument water)
    {
        if (_known.TryGetValue(water, out var known))
        {
            return known;
        }

        var list = new List<(string Key, Uncertain GramsPerLitre)>();
        foreach (var (key, grams, place) in SourceWater.Nutrients(water))
        {
            list.Add((key, Uncertain.MeasuredRelative(grams, [Of(water, key, place)])));
        }

        _known[water] = list;
        return list;
    }

    /// <summary>
    /// A yearly range is rectangular between its ends; a single figure has the largest uncertainty a drinking water laboratory may have:
    /// German Trinkwasserverordnung 2001 (as of 2018), annex 5 part I, k = 2, which takes over Directive 98/83/EC annex III: 15 % for
    /// chloride, sodium and nitrate, 25 % boron, copper and nickel, 30 % iron and manganese, 40 % ammonium. Other ions are taken with the
    /// 15 %.
    /// </summary>
    private RelativeError Of(WaterDocument water, string key, Place place)
    {
        var source =
            new ErrorSource($"water:{place.File}#{place.Pointer.Value}", $"the analysis of the water '{water.Name}' ({key})", place);
        var value = water.Values.FirstOrDefault(v => v.Key.Place == place);
        if (value?.Concentration is { } range && range.High > range.Low && range.High.MolesPerLitre + range.Low.MolesPerLitre > 0)
        {
            var half = (range.High.MolesPerLitre - range.Low.MolesPerLitre) / (range.High.MolesPerLitre + range.Low.MolesPerLitre);
            return new RelativeError(source, StandardUncertainty.Rectangular(half), ErrorShape.Rectangular);
        }

        notes.Add(
            "uncertainty-water",
            "The values of {0} are taken with the largest uncertainty a drinking water laboratory may have (15 to 40 %, k = 2).",
            $"'{water.Name}'",
            water.Place);
        return new RelativeError(source, StandardUncertainty.Quoted(Expanded(key, value?.Component)), ErrorShape.Normal);
    }

    private static double Expanded(string key, string? component) => (key, component) switch
    {
        (_, Component.Ammonium) => 0.40,
        ("Fe" or "Mn", _) => 0.30,
        ("B" or "Cu" or "Ni", _) => 0.25,
        _ => 0.15,
    };
}
