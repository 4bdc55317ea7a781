using System.Collections.Immutable;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Solutions;

/// <summary>Element masses in some volume or addition, in grams; nitrogen also by form.</summary>
public sealed class ElementTotals
{
    private readonly ImmutableSortedDictionary<Element, double> _grams;
    private readonly ImmutableSortedDictionary<NitrogenForm, double> _nitrogen;

    private ElementTotals(ImmutableSortedDictionary<Element, double> grams, ImmutableSortedDictionary<NitrogenForm, double> nitrogen)
    {
        _grams = grams;
        _nitrogen = nitrogen;
    }

    public static ElementTotals Empty { get; } =
        new(ImmutableSortedDictionary<Element, double>.Empty, ImmutableSortedDictionary<NitrogenForm, double>.Empty);

    /// <summary>Elements present, in the order of their symbols.</summary>
    public IEnumerable<Element> Elements => _grams.Keys;

    public Mass this[Element element] => new(_grams.GetValueOrDefault(element));

    public Mass this[NitrogenForm form] => new(_nitrogen.GetValueOrDefault(form));

    /// <summary>What this much of a substance brings, before impurities.</summary>
    public static ElementTotals Of(ElementContent content, Mass mass) =>
        new(
            content.Elements.ToImmutableSortedDictionary(e => e, e => content[e] * mass.Grams),
            Enum.GetValues<NitrogenForm>().Where(f => content[f] > 0).ToImmutableSortedDictionary(f => f, f => content[f] * mass.Grams));

    public static ElementTotals OfGrams(
        IEnumerable<KeyValuePair<Element, double>> grams, IEnumerable<KeyValuePair<NitrogenForm, double>> nitrogenGrams) =>
        new(grams.ToImmutableSortedDictionary(), nitrogenGrams.ToImmutableSortedDictionary());

    public ElementTotals Plus(ElementTotals other)
    {
        var grams = _grams.ToBuilder();
        foreach (var (element, value) in other._grams)
        {
            grams[element] = grams.GetValueOrDefault(element) + value;
        }

        var nitrogen = _nitrogen.ToBuilder();
        foreach (var (form, value) in other._nitrogen)
        {
            nitrogen[form] = nitrogen.GetValueOrDefault(form) + value;
        }

        return new ElementTotals(grams.ToImmutable(), nitrogen.ToImmutable());
    }

    /// <summary>
    /// The sum of several contributions. Each element is added up from the smallest to the largest share, so that the order of additions
    /// never shows in the last digits.
    /// </summary>
    public static ElementTotals Sum(IEnumerable<ElementTotals> parts)
    {
        var list = parts.ToList();
        return new ElementTotals(SumOf(list.SelectMany(p => p._grams)), SumOf(list.SelectMany(p => p._nitrogen)));
    }

    public ElementTotals Times(double factor) =>
        new(
            _grams.ToImmutableSortedDictionary(p => p.Key, p => p.Value * factor),
            _nitrogen.ToImmutableSortedDictionary(p => p.Key, p => p.Value * factor));

    private static ImmutableSortedDictionary<TKey, double> SumOf<TKey>(IEnumerable<KeyValuePair<TKey, double>> shares)
        where TKey : notnull =>
        shares.GroupBy(p => p.Key).ToImmutableSortedDictionary(g => g.Key, g => g.Select(p => p.Value).Order().Sum());
}
