using System.Globalization;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Substances;

/// <summary>The lines of a label as grams of element per gram of product, checked against each other.</summary>
internal sealed class LabelContents
{
    /// <summary>Labels print one or two decimals; shares within this of each other agree (absolute, grams per gram).</summary>
    private const double RoundingGramsPerGram = 0.0011;

    private readonly Dictionary<(Element Element, LabelShare Share), double> _grams = [];
    private readonly List<LabelProblem> _problems;

    public LabelContents(LabelDeclaration label, List<LabelProblem> problems)
    {
        _problems = problems;
        foreach (var entry in label.Entries)
        {
            Add(entry, label.CountedIn(entry) == LabelPercent.WeightPerVolume ? 1 / label.Density!.Value.GramsPerMillilitre : 1);
        }

        CheckNitrogen();
        CheckShares();
    }

    public bool IsEmpty => _grams.Count == 0;

    public IEnumerable<Element> Elements => _grams.Keys.Select(k => k.Element).Distinct().Order();

    /// <summary>Grams of the share per gram of product; 0 when not declared.</summary>
    public double this[Element element, LabelShare share] => _grams.GetValueOrDefault((element, share));

    public bool Has(Element element, LabelShare share) => _grams.ContainsKey((element, share));

    /// <summary>Grams of the element per gram of product: the total where declared, else what the shares say.</summary>
    public double Total(Element element)
    {
        if (_grams.TryGetValue((element, LabelShare.Total), out var total))
        {
            return total;
        }

        return element == Element.N ? NitrogenForms() : Math.Max(this[element, LabelShare.Chelated], this[element, LabelShare.OrthoOrtho]);
    }

    /// <summary>Moles of the element per gram of product.</summary>
    public double Moles(Element element) => Total(element) / AtomicWeights.Of(element);

    /// <summary>Sum of the nitrogen forms, grams per gram.</summary>
    public double NitrogenForms() =>
        this[Element.N, LabelShare.Nitrate]
            + this[Element.N, LabelShare.Ammonium]
            + this[Element.N, LabelShare.Urea]
            + this[Element.N, LabelShare.Organic];

    private static string Percent(double gramsPerGram) => (gramsPerGram * 100).ToString("0.###", CultureInfo.InvariantCulture) + " %";

    private static LabelShare ShareOf(LabelEntry entry) => (entry.Form, entry.Share) switch
    {
        ("NO3", LabelShare.Total) => LabelShare.Nitrate,
        ("NH4" or "NH3", LabelShare.Total) => LabelShare.Ammonium,
        _ => entry.Share,
    };

    private void Add(LabelEntry entry, double perGram)
    {
        if (!OxideBasis.TryRead(entry.Form, out var element, out var factor))
        {
            Report(LabelProblemKind.UnknownForm, $"'{entry.Form}' is neither an element nor a form that labels use", entry.Form);
            return;
        }

        var grams = entry.Percent / 100 * perGram;
        if (!double.IsFinite(grams) || grams < 0 || grams > 1)
        {
            Report(
                LabelProblemKind.BadPercent,
                string.Create(CultureInfo.InvariantCulture, $"{entry.Percent} % {entry.Form} is not a possible content"),
                entry.Form);
            return;
        }

        var share = ShareOf(entry);
        var ofNitrogen = share is LabelShare.Nitrate or LabelShare.Ammonium or LabelShare.Urea or LabelShare.Organic;
        if (share != LabelShare.Total && ofNitrogen != (element == Element.N))
        {
            Report(
                LabelProblemKind.MisplacedShare, $"{element} has no share of the kind '{share.ToString().ToLowerInvariant()}'", entry.Form);
            return;
        }

        grams *= factor;
        if (!_grams.TryAdd((element, share), grams)
            && Math.Abs(_grams[(element, share)] - grams) > Math.Max(RoundingGramsPerGram, 0.02 * grams))
        {
            Report(
                LabelProblemKind.Contradiction,
                $"{element} is stated twice: {Percent(_grams[(element, share)])} and {Percent(grams)}, counted as {element}",
                entry.Form);
        }
    }

    private void CheckNitrogen()
    {
        if (!Has(Element.N, LabelShare.Total) || NitrogenForms() is not (var forms and > 0))
        {
            return;
        }

        var total = this[Element.N, LabelShare.Total];
        if (Math.Abs(forms - total) > RoundingGramsPerGram)
        {
            var left = forms < total ? $"; {Percent(total - forms)} of it is left without a form, so name that too" : "";
            Report(
                LabelProblemKind.NitrogenForms,
                $"The forms of nitrogen add up to {Percent(forms)}, the total says {Percent(total)}{left}",
                "N");
        }
    }

    private void CheckShares()
    {
        foreach (var element in Elements.ToArray())
        {
            if (this[element, LabelShare.Chelated] > Total(element) + 1e-9 || this[element, LabelShare.OrthoOrtho] > Total(element) + 1e-9)
            {
                Report(
                    LabelProblemKind.ShareOverTotal,
                    $"More {element} is chelated than there is ({Percent(Total(element))})",
                    element.Symbol);
            }
            else if (Has(element, LabelShare.Chelated) && this[element, LabelShare.OrthoOrtho] > this[element, LabelShare.Chelated] + 1e-9)
            {
                Report(
                    LabelProblemKind.ShareOverTotal,
                    $"More {element} is ortho-ortho than chelated ({Percent(this[element, LabelShare.Chelated])})",
                    element.Symbol);
            }
        }
    }

    private void Report(LabelProblemKind kind, string message, string form) => _problems.Add(new LabelProblem(kind, message, form));
}
