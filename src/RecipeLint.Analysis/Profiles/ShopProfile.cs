using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Profiles;

/// <summary>A shop's own profile file laid over the built-in profile it extends.</summary>
public sealed class ShopProfile
{
    private readonly ProfileDocument _document;
    private readonly ProfileData _inherited;
    private readonly CropProfile _known;
    private readonly string _source;

    private ShopProfile(ProfileDocument document)
    {
        _document = document;
        _inherited = ProfileLibrary.DataOf(document.Extends?.Value ?? ProfileLibrary.GenericName);
        _known = _inherited.For(null);
        _source = document.Source ?? $"stated in {document.File}";
    }

    /// <param name="stage">As a recipe names it; null for any.</param>
    public static CropProfile Of(ProfileDocument document, string? stage) => new ShopProfile(document).Data().For(stage);

    private ProfileData Data() => new()
    {
        Name = _document.Name,
        Aliases = [],
        StageAliases = _document.Stages.Keys.ToDictionary(s => s.Trim().ToLowerInvariant(), s => s, StringComparer.Ordinal),
        Base = _inherited,
        Rows = [.. Rows(null, _document.Any), .. _document.Stages.SelectMany(s => Rows(s.Key, s.Value))],
        Ratios =
        [
            .. _document.Ratios.Select(r => new RatioRange(
                r.Of, r.To, r.Range.Low, r.Range.High, r.By, r.Source ?? _source, _document.IsPractice)),
        ],
        Ec = ToWindow(_document.Any.Ec),
        Ph = ToWindow(_document.Any.Ph),
        StageWindows = _document.Stages.ToDictionary(s => s.Key, s => (ToWindow(s.Value.Ec), ToWindow(s.Value.Ph)), StringComparer.Ordinal),
    };

    private IEnumerable<ElementRow> Rows(string? stage, ProfileBounds bounds) =>
        bounds.Elements.Select(e => new ElementRow(e.Key, stage, Bounds(e), null));

    private Window? ToWindow(Located<Interval<double>>? window) =>
        window is null ? null : new Window(ToBound(window.Value.Low, _source), ToBound(window.Value.High, _source), null);

    /// <summary>
    /// A range of the shop's own replaces that of the base, and bounds of the base that would then be out of order go with it.
    /// </summary>
    private Dictionary<string, Bound?> Bounds(ProfileElement element)
    {
        var own = element.Source ?? _source;
        var bounds = new Dictionary<string, Bound?>(StringComparer.Ordinal);
        if (element.Range is { } range)
        {
            bounds[BoundNames.Low] = ToBound(range.Low, own);
            bounds[BoundNames.High] = ToBound(range.High, own);
            bounds[BoundNames.Upper] = null;
            if (_known.Find(element.Key)?.DeficientBelow > range.Low)
            {
                bounds[BoundNames.DeficientBelow] = null;
            }

            if (_known.Find(element.Key)?.ToxicAbove < range.High)
            {
                bounds[BoundNames.ToxicAbove] = null;
            }
        }

        Set(BoundNames.DeficientBelow, element.DeficientBelow);
        Set(BoundNames.Upper, element.UpTo);
        Set(BoundNames.ToxicAbove, element.ToxicAbove);
        return bounds;

        void Set(string name, double? value)
        {
            if (value is { } stated)
            {
                bounds[name] = ToBound(stated, own);
            }
        }
    }

    private Bound ToBound(double value, string from) =>
        new(new Sourced<double>(Rounding.SixDigits(value), from, Confidence.Found), _document.IsPractice);
}
