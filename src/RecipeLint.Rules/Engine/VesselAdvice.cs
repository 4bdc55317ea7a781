using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The one place in which a rule's ways out are asked of the hazard gate, and those with acid of the trial what acid does to the contents.
/// A way that adds something is left out where either forbids it; where the vessel holds a danger to people none is given, and the advice
/// ends with the danger.
/// </summary>
public sealed class VesselAdvice
{
    /// <summary>Litres of carbon dioxide per litre above which acid is not advised (common practice, no source: more foams over).</summary>
    public const double MostGas = 1;

    /// <summary>
    /// What stands for each kind and g/L of it: more than any of them is given with (common practice, no source).
    /// </summary>
    private static readonly Dictionary<Puts, (string Id, double GramsPerLitre)> _reagents = new()
    {
        [Puts.Acid] = ("sulfuric-37", Holding.TrialGramsPerLitre),
        [Puts.Alkali] = ("potassium-hydroxide", Holding.TrialGramsPerLitre),
        [Puts.Organic] = ("citric-acid-h2o", 20),
        [Puts.Preservative] = ("potassium-sorbate", 2),
        [Puts.Chelate] = ("disodium-edta-2h2o", 20),
    };

    private readonly HazardReport _report;
    private readonly SubstanceCatalogue _catalogue;
    private readonly Func<double?, AcidHarm?> _harmOfAcid;
    private readonly Func<double, ChelateWindow?> _lostToAlkali;
    private readonly bool _isKept;

    private VesselAdvice(
        HazardReport report, SubstanceCatalogue catalogue, Func<double?, AcidHarm?> harmOfAcid, Func<double, ChelateWindow?> lostToAlkali,
        bool isKept)
    {
        (_harmOfAcid, _lostToAlkali, _isKept) = (harmOfAcid, lostToAlkali, isKept);

        // Of an extract its kind is known: that alone keeps nobody from the acid such stocks are kept with.
        _report = report.Holding.HasNameless ? report : report with { Holding = report.Holding.OnlyWhatIsKnown() };
        _catalogue = catalogue;
        Danger = Dangers(report).FirstOrDefault();
    }

    /// <summary>What can hurt somebody here, the gravest; null where nothing does.</summary>
    public Hazard? Danger { get; }

    public static VesselAdvice Of(StockFacts stock, SubstanceCatalogue catalogue) =>
        new(HazardGate.Of(stock), catalogue, ph => AcidTrial.To(stock, ph), ph => AlkaliTrial.To(stock, ph), isKept: true);

    /// <summary>Of the tank of a recipe.</summary>
    public static VesselAdvice Of(RecipeFacts recipe, SubstanceCatalogue catalogue) =>
        new(HazardGate.Of(recipe), catalogue, ph => AcidTrial.To(recipe, ph), ph => AlkaliTrial.To(recipe, ph), isKept: false);

    /// <summary>
    /// What makes a vessel one into which nothing is put: its reactants are together, and it must not be mixed. Contents nobody can name
    /// are no danger yet.
    /// </summary>
    public static IEnumerable<Hazard> Dangers(HazardReport report) => report.Present.Where(h =>
        h.Kind != HazardKind.UnknownContents && (h.Forbids(VesselAction.Order) || h.ForbidsPutting));

    /// <summary>True where a way that does this may be given.</summary>
    /// <param name="toPh">The pH to which an acid or alkali takes it; null where nobody says.</param>
    public bool Allows(Puts puts, double? toPh = null) =>
        puts == Puts.Nothing || (Danger is null && Against(puts) is null && HarmOf(puts, toPh) is null && LostBy(puts, toPh) is null);

    /// <summary>
    /// The ways that may be given as a sentence; the danger, where there is one; why not, where no way is left.
    /// </summary>
    /// <param name="more">Ends the sentence where there is no danger, such as at what strength it stays clear; empty for nothing.</param>
    public string Sentence(IEnumerable<Way> ways, string more = "")
    {
        List<Way> all = [.. ways];
        var harm = Danger is not null ? null
            : all.Where(w => Against(w.Puts) is null).Select(w => HarmOf(w.Puts, w.ToPh)).FirstOrDefault(h => h is not null);
        List<string> texts =
        [
            .. all.Where(w => Allows(w.Puts, w.ToPh)).Select(w => w.Text + Caution(w.Puts)),
            .. harm is null or { FallsOut: not null } ? [] : Instead(harm, all),
        ];
        List<string> parts = [];
        if (texts.Count > 0)
        {
            parts.Add(texts.Count < 3 ? string.Join(", or ", texts) : $"{string.Join(", ", texts.SkipLast(1))}, or {texts[^1]}");
        }

        if (Danger is { } danger)
        {
            parts.Add($"the danger comes first: take away what makes {danger.Text.Name} here before anything else");
        }
        else if (more.Length > 0)
        {
            parts.Add(more);
        }

        if (harm is not null)
        {
            parts.Add(harm.FallsOut is not null ? $"acid does not help here: {harm.Name} falls out by it"
                : harm.BelowPh is { } below
                ? $"with acid {harm.Name} falls out below about pH {Say.Number(below)}"
                : $"put no acid to it, which gels the silicate of {harm.Name}");
        }

        if (Danger is null && all.Select(w => LostBy(w.Puts, w.ToPh)).FirstOrDefault(w => w is not null) is { } lost)
        {
            parts.Add($"alkali is no way here: above about pH {Say.Number(lost.Highest)} Fe-{lost.Agent} lets its iron go");
        }

        if (parts.Count == 0)
        {
            parts.AddRange(all.Select(w => WhyNot(w.Puts)).OfType<string>().Distinct(StringComparer.Ordinal).Take(1));
        }

        return parts.Count == 0 ? "" : $"{Say.Capital(string.Join("; ", parts))}.";
    }

    /// <inheritdoc cref="Sentence(IEnumerable{Way}, string)"/>
    public string Sentence(params Way[] ways) => Sentence(ways, "");

    /// <summary>What acid does to the contents; null for whatever is no acid.</summary>
    private AcidHarm? HarmOf(Puts puts, double? toPh) => puts == Puts.Acid ? _harmOfAcid(toPh) : null;

    /// <summary>The iron chelate that lets its iron go; null for whatever is no alkali, or where nobody says how far it goes.</summary>
    private ChelateWindow? LostBy(Puts puts, double? toPh) => puts == Puts.Alkali && toPh is { } ph ? _lostToAlkali(ph) : null;

    /// <summary>What is left to do where acid is no way out.</summary>
    private IEnumerable<string> Instead(AcidHarm harm, List<Way> all)
    {
        yield return !_isKept ? $"give {harm.Name} as a watering of its own"
            : harm.IsAlone ? $"buy {harm.Name} ready preserved"
            : $"keep {harm.Name} in a part of its own";
        if (_isKept && all.TrueForAll(w => w.Puts != Puts.Keeping))
        {
            yield return "make less of it, keep it cold and use it within days";
        }
    }

    /// <summary>What the gate has against it; null for nothing. What only fizzes or warms a little is said and not forbidden.</summary>
    private Hazard? Against(Puts puts)
    {
        if (puts == Puts.Warmth)
        {
            return _report.Forbids(VesselAction.Heat)?.Hazard;
        }

        if (ReagentOf(puts) is not var (reagent, grams))
        {
            return null;
        }

        if (Gas(puts) > MostGas)
        {
            return GasHazard(puts);
        }

        return _report.Forbids(reagent, grams) is { Hazard: var hazard } refusal
            && (!refusal.ByReagent || hazard.Forbids(VesselAction.Order) || hazard.ForbidsPutting)
                ? hazard
                : null;
    }

    private (Substance Reagent, double GramsPerLitre)? ReagentOf(Puts puts) =>
        _reagents.TryGetValue(puts, out var usual) && _catalogue.ById(usual.Id) is { } reagent ? (reagent, usual.GramsPerLitre) : null;

    /// <summary>Litres of carbon dioxide that acid sets free from a litre.</summary>
    private double Gas(Puts puts) => GasHazard(puts)?.Value ?? 0;

    private Hazard? GasHazard(Puts puts) => puts is Puts.Acid or Puts.Organic && ReagentOf(puts) is var (reagent, grams)
        ? HazardGate.Of(_report.Holding.With(Held.Of(reagent, grams * _report.Holding.Litres)), _report.Limits)
            .Find(HazardKind.CarbonDioxidePressure)
        : null;

    private string Caution(Puts puts) => Gas(puts) is > 0 and var litres
        ? $" (in small steps in an open vessel: up to {Say.Number(litres)} litres of carbon dioxide leave each litre)"
        : "";

    private string? WhyNot(Puts puts)
    {
        if (Against(puts) is not { } hazard)
        {
            return null;
        }

        var what = hazard.From?.Name is { } name && hazard.Kind != HazardKind.UnknownContents ? $"with {name} it " : "what is in it ";
        return puts == Puts.Warmth
            ? $"do not warm it: {what}{hazard.Text.Happens}"
            : $"put no {Word(puts)} to it: {what}{hazard.Text.Happens}";
    }

    private static string Word(Puts puts) => puts switch
    {
        Puts.Chelate => "chelating agent",
        Puts.Organic => "organic acid",
        _ => puts.ToString().ToLowerInvariant(),
    };
}
