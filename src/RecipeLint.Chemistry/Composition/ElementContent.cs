namespace RecipeLint.Chemistry.Composition;

/// <summary>The forms of nitrogen that plants and labels tell apart.</summary>
public enum NitrogenForm
{
    Nitrate,
    Ammonium,
    Urea,

    /// <summary>
    /// Bound in chelating agents, amino acids and dyes, and what is left over, as in nitrite and sulfamate: counted by an analysis, hardly
    /// by a plant.
    /// </summary>
    Organic,
}

/// <summary>
/// Mass fractions of elements in a substance: grams of element per gram of substance. Nitrogen also by form;
/// the forms sum to the nitrogen total.
/// </summary>
public sealed class ElementContent
{
    private readonly SortedList<string, double> _fractions = new(StringComparer.Ordinal);
    private readonly double[] _nitrogen;

    public ElementContent(
        IEnumerable<KeyValuePair<Element, double>> gramsPerGram, IEnumerable<KeyValuePair<NitrogenForm, double>> nitrogenByForm)
    {
        foreach (var (element, value) in gramsPerGram)
        {
            _fractions[element.Symbol] = _fractions.GetValueOrDefault(element.Symbol) + value;
        }

        _nitrogen = new double[4];
        foreach (var (form, value) in nitrogenByForm)
        {
            _nitrogen[(int)form] += value;
        }
    }

    public static ElementContent Empty { get; } = new([], []);

    /// <summary>Elements present, in the order of their symbols.</summary>
    public IEnumerable<Element> Elements => _fractions.Keys.Select(symbol => new Element(symbol));

    /// <summary>Grams of the element per gram of substance; 0 when absent.</summary>
    public double this[Element element] => _fractions.GetValueOrDefault(element.Symbol);

    /// <summary>Grams of nitrogen in this form per gram of substance.</summary>
    public double this[NitrogenForm form] => _nitrogen[(int)form];
}
