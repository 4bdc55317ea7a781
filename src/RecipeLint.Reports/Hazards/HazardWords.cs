using RecipeLint.Analysis.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Hazards;

/// <summary>What is said of hazards, the same in every command.</summary>
public static class HazardWords
{
    /// <summary>Names of what nobody can tell more of that one sentence lists.</summary>
    private const int MostNamed = 3;

    /// <summary>One sentence on what is there and what it does, with its figure.</summary>
    public static string Of(Hazard hazard) => hazard.Grade switch
    {
        HazardGrade.Suspected when hazard.From is { } from =>
            $"What was told can mean {hazard.Text.Name}: {Printable.Show(from.Name)} {hazard.Text.Happens}{Figure(hazard)}.",
        HazardGrade.Suspected => $"What was told can mean {hazard.Text.Name}, whatever the recipe says.",
        HazardGrade.Possible => $"{Subject(hazard)} {hazard.Text.Happens}, {hazard.Text.When}{Figure(hazard)}.",
        _ => $"{Subject(hazard)}{Partner(hazard)} {hazard.Text.Happens}{Figure(hazard)}.",
    };

    private static string Partner(Hazard hazard) => hazard.With is null ? "" : $" with {Printable.Show(Say.Called(hazard.With.Name))}";

    /// <summary>The same for the middle of a list: without the full stop.</summary>
    public static string Short(Hazard hazard) => Of(hazard).TrimEnd('.');

    /// <summary>What is said beside advice that the hazard does not forbid.</summary>
    public static string Caution(Hazard hazard) => hazard.Grade == HazardGrade.Possible
        ? $"{Of(hazard)} Mind the safety data sheet."
        : $"{Of(hazard)} {hazard.Text.Instead}";

    /// <summary>What is forbidden: "Mixing it is not advised, in any order."</summary>
    public static string Action(Refusal refusal) => refusal switch
    {
        { Reagent: { } reagent } => $"{Say.Capital(Printable.Show(reagent.Name))} must not go into it",
        { Action: VesselAction.Order } => "Do not mix this, in any order",
        { Action: VesselAction.KeepTogether } => "These must not share a bottle or a tank",
        { Action: VesselAction.MakeStronger } => "Do not make this stronger, nor as it is",
        { Action: VesselAction.Heat } => "Do not warm it",
        { Action: VesselAction.Cap } => "Do not close it tightly",
        { Action: VesselAction.Shake } => "Do not shake it or turn it over",
        { Action: VesselAction.Filter } => "Do not filter it",
        { Action: VesselAction.Smell } => "Do not smell at it",
        { Action: VesselAction.Open } => "Do not open it for this",
        { Action: VesselAction.Wipe } => "Wipe it off only with gloves and goggles on and with much water, as its safety data sheet says",
        _ => "Leave it alone",
    };

    /// <summary>Why something is not advised, in one line: "Do not warm it: hydrogen peroxide ...".</summary>
    public static string Line(Refusal refusal) => $"{Action(refusal)}: {Lower(Of(refusal.Hazard), refusal.Hazard)}";

    /// <summary>
    /// All that is said instead of advice: no and why, how the cause is taken away, and what to do if it is mixed already.
    /// </summary>
    public static IEnumerable<string> Refused(Refusal refusal)
    {
        var text = refusal.Hazard.Text;
        yield return $"{Action(refusal)}: somebody could be hurt.";
        yield return Of(refusal.Hazard);
        yield return text.Instead;
        yield return $"If it is mixed already, you may notice {text.Notice}.";
        yield return $"{text.First} {text.Help}";
        yield return HazardText.Deference;
    }

    /// <summary>Said instead of advice on what nobody can name.</summary>
    public static string Untold(UnknownContents unknown) =>
        $"{NotKnown(unknown)}, so nothing is advised of this stock. "
            + HazardText.Of(HazardKind.UnknownContents).Instead + " Until then add nothing to it, do not warm it and do not close it "
            + "tightly.";

    /// <summary>Said where something is worked out without what nobody can name.</summary>
    /// <param name="what">A clause: "the order is worked out".</param>
    public static string LeftOut(UnknownContents unknown, string what) => $"{NotKnown(unknown)}: {what} without it.";

    private static string NotKnown(UnknownContents unknown) =>
        $"What {Say.List(unknown.Names.Take(MostNamed).Select(n => $"'{Printable.Show(n)}'"))} "
            + $"{(unknown.Names.Count == 1 ? "holds" : "hold")} is not known";

    /// <summary>What is said of a bottle before anything else, the gravest hazard whole and the others in one sentence each.</summary>
    public static IEnumerable<string> Warning(IReadOnlyList<Hazard> hazards)
    {
        if (hazards.Count == 0)
        {
            yield break;
        }

        var worst = hazards[0];
        yield return Of(worst);
        foreach (var other in hazards.Skip(1))
        {
            yield return Of(other);
        }

        if (worst.Grade == HazardGrade.Possible)
        {
            if (hazards.FirstOrDefault(h => h.Kind is HazardKind.Splashed or HazardKind.Caustic) is { } burning)
            {
                yield return burning.Text.Instead;
            }

            yield return $"Should you notice {worst.Text.Notice}: {worst.Text.First} {worst.Text.Help}";
            yield return HazardText.Deference;
            yield break;
        }

        yield return $"You may notice {worst.Text.Notice}.";
        yield return worst.Text.First;
        foreach (var more in hazards.Skip(1).Where(h => h.Grade > HazardGrade.Possible && h.Text.First != worst.Text.First).Select(h =>
            h.Text.First).Distinct(StringComparer.Ordinal))
        {
            yield return more;
        }

        foreach (var help in hazards.Where(h => h == worst || h.Grade > HazardGrade.Possible).Select(h => h.Text.Help)
            .Distinct(StringComparer.Ordinal))
        {
            yield return help;
        }

        yield return HazardText.Deference;
    }

    private static string Subject(Hazard hazard) => hazard.From is { } from ? Say.Capital(Printable.Show(Say.Called(from.Name)))
        : Say.Capital(hazard.Text.Name);

    private static string Figure(Hazard hazard) => hazard.Unit switch
    {
        "" => "",
        "L/L" => $": up to {Say.Number(hazard.Value)} litres of {hazard.What} from a litre",
        "°C" => $": up to {Say.Number(Math.Min(hazard.Value, 100))} °C",
        _ => $": {Say.Number(hazard.Value)} {hazard.Unit} {hazard.What}, which counts from {Say.Number(hazard.Limit)} {hazard.Unit} on",
    };

    private static string Lower(string text, Hazard hazard) =>
        (hazard.From is null && hazard.Grade != HazardGrade.Suspected) || text.Length < 2 || char.IsUpper(text[1]) ? text
            : char.ToLowerInvariant(text[0]) + text[1..];
}
