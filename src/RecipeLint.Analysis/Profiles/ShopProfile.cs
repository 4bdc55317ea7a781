using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Profiles;

/// <summary>A shop's own profile file laid over the built-in profile it extends.</summary>
internal static class ShopProfile
{
    public static CropProfile Of(ProfileDocument document, string? stage) => Data(document).For(stage);

    private static ProfileData Data(ProfileDocument document)
    {
        var source = document.Source ?? $"stated in {document.File}";
        var inherited = ProfileLibrary.DataOf(document.Extends?.Value ?? ProfileLibrary.GenericName);
        var known = inherited.For(null);
        return new ProfileData
        {
            Name = document.Name,
            Aliases = [],
            StageAliases = document.Stages.Keys.ToDictionary(s => s.Trim().ToLowerInvariant(), s => s, StringComparer.Ordinal),
            Base = inherited,
            Rows = [.. Rows(null, document.Any), .. document.Stages.SelectMany(s => Rows(s.Key, s.Value))],
            Ratios =
            [
                .. document.Ratios.Select(r => new RatioRange(r.Of, r.To, r.Range.Low, r.Range.High, r.By, r.Source ?? source, document.IsPractice)),
            ],
            Ec = ToWindow(document.Any.Ec),
            Ph = ToWindow(document.Any.Ph),
            StageWindows = document.Stages.ToDictionary(s => s.Key, s => (ToWindow(s.Value.Ec), ToWindow(s.Value.Ph)), StringComparer.Ordinal),
        };

        IEnumerable<ElementRow> Rows(string? stage, ProfileBounds bounds) => bounds.Elements.Select(e => new ElementRow(e.Key, stage, Bounds(e), null));

        Window? ToWindow(Located<Interval<double>>? window) =>
            window is null ? null : new Window(ToBound(window.Value.Low, source), ToBound(window.Value.High, source), null);

        // A range of the shop's own replaces that of the base, and bounds of the base that would then be out of order go with it.
        Dictionary<string, Bound?> Bounds(ProfileElement element)
        {
            var own = element.Source ?? source;
            var bounds = new Dictionary<string, Bound?>(StringComparer.Ordinal);
            if (element.Range is { } range)
            {
                bounds[BoundNames.Low] = ToBound(range.Low, own);
                bounds[BoundNames.High] = ToBound(range.High, own);
                bounds[BoundNames.Upper] = null;
                if (known.Find(element.Key)?.DeficientBelow > range.Low)
                {
                    bounds[BoundNames.DeficientBelow] = null;
                }

                if (known.Find(element.Key)?.ToxicAbove < range.High)
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

        Bound ToBound(double value, string from) => new(new Sourced<double>(Rounding.SixDigits(value), from, Confidence.Found), document.IsPractice);
    }
}
