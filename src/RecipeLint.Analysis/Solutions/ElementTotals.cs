using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Solutions;

/// <summary>Element masses in some volume or addition, in grams; nitrogen also by form.</summary>
public sealed class ElementTotals
{
    private static readonly NitrogenForm[] Forms = Enum.GetValues<NitrogenForm>();

    private readonly Amounts<Element> _grams;
    private readonly Amounts<NitrogenForm> _nitrogen;

    private ElementTotals(Amounts<Element> grams, Amounts<NitrogenForm> nitrogen)
    {
        _grams = grams;
        _nitrogen = nitrogen;
    }

    public static ElementTotals Empty { get; } = new(Amounts<Element>.Empty, Amounts<NitrogenForm>.Empty);

    /// <summary>Elements present, in the order of their symbols.</summary>
    public IEnumerable<Element> Elements => Array.AsReadOnly(_grams.Keys);

    public Mass this[Element element] => new(_grams.Of(element));

    public Mass this[NitrogenForm form] => new(_nitrogen.Of(form));

    /// <summary>What this much of a substance brings, before impurities.</summary>
    public static ElementTotals Of(ElementContent content, Mass mass) =>
        OfGrams(
            content.Elements.Select(e => KeyValuePair.Create(e, content[e] * mass.Grams)),
            Forms.Where(f => content[f] > 0).Select(f => KeyValuePair.Create(f, content[f] * mass.Grams)));

    /// <summary>Each element and form once.</summary>
    public static ElementTotals OfGrams(
        IEnumerable<KeyValuePair<Element, double>> grams, IEnumerable<KeyValuePair<NitrogenForm, double>> nitrogenGrams) =>
        new(Amounts<Element>.Sum([.. grams]), Amounts<NitrogenForm>.Sum([.. nitrogenGrams]));

    /// <summary>
    /// The sum of several contributions. Each element is added up from the smallest to the largest share, so that the order of additions
    /// never shows in the last digits.
    /// </summary>
    public static ElementTotals Sum(IEnumerable<ElementTotals> parts)
    {
        var grams = new List<KeyValuePair<Element, double>>();
        var nitrogen = new List<KeyValuePair<NitrogenForm, double>>();
        foreach (var part in parts)
        {
            part._grams.AddTo(grams);
            part._nitrogen.AddTo(nitrogen);
        }

        return new ElementTotals(Amounts<Element>.Sum(grams), Amounts<NitrogenForm>.Sum(nitrogen));
    }

    public ElementTotals Times(double factor) => new(_grams.Times(factor), _nitrogen.Times(factor));

    /// <summary>Grams by key, in the order of the keys.</summary>
    private sealed class Amounts<TKey>(TKey[] keys, double[] grams)
        where TKey : notnull
    {
        public static Amounts<TKey> Empty { get; } = new([], []);

        private static readonly Comparison<KeyValuePair<TKey, double>> Order = static (a, b) =>
            Comparer<TKey>.Default.Compare(a.Key, b.Key) is not 0 and var order ? order : a.Value.CompareTo(b.Value);

        public TKey[] Keys => keys;

        public double Of(TKey key)
        {
            for (var i = 0; i < keys.Length; i++)
            {
                if (EqualityComparer<TKey>.Default.Equals(keys[i], key))
                {
                    return grams[i];
                }
            }

            return 0;
        }

        public void AddTo(List<KeyValuePair<TKey, double>> shares)
        {
            for (var i = 0; i < keys.Length; i++)
            {
                shares.Add(KeyValuePair.Create(keys[i], grams[i]));
            }
        }

        public Amounts<TKey> Times(double factor) => new(keys, Array.ConvertAll(grams, g => g * factor));

        /// <summary>Keys that occur several times added up from the smallest share to the largest.</summary>
        public static Amounts<TKey> Sum(List<KeyValuePair<TKey, double>> shares)
        {
            if (shares.Count == 0)
            {
                return Empty;
            }

            shares.Sort(Order);
            var keys = new List<TKey>(shares.Count);
            var grams = new List<double>(shares.Count);
            foreach (var (key, value) in shares)
            {
                if (keys.Count > 0 && EqualityComparer<TKey>.Default.Equals(keys[^1], key))
                {
                    grams[^1] += value;
                }
                else
                {
                    keys.Add(key);
                    grams.Add(value);
                }
            }

            return new Amounts<TKey>([.. keys], [.. grams]);
        }
    }
}
