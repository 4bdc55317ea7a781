using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>What a diagnosis says to whoever stands before the bottle. Pure.</summary>
public static class DiagnosisReport
{
    /// <summary>The report, at most 100 columns wide.</summary>
    /// <param name="seenAt">As asked for ("6 °C"); null when not told.</param>
    public static string Write(BottleDiagnosis diagnosis, string? seenAt)
    {
        var page = new BenchPage();
        Opening(page, diagnosis, seenAt);
        var shown = diagnosis.Observation.TellsNoCause || diagnosis.Unknown is { IsAll: true } ? []
            : BottleDiagnosis.Listed(diagnosis.Causes)
                .Where(c => !(c.Cause.NothingWrong && IsToldOfDanger(diagnosis.Hazards)
                    && !IsOfDanger(c.Cause, diagnosis.Hazards))).ToList();
        Danger(page, diagnosis.Hazards, shown.Count > 0);
        if (diagnosis.Unknown is { IsAll: true } unknown)
        {
            page.Blank();
            page.Text(HazardWords.Untold(unknown));
        }
        else if (diagnosis.Observation.TellsNoCause)
        {
            NoCause(page, diagnosis.Hazards, diagnosis.Observation);
        }

        if (shown.Count > 0 && shown[0].Cause.NothingWrong && shown[0].Likeliness <= Likeliness.Likely && diagnosis.Hazards.Hazards.All(h =>
            h.Grade == HazardGrade.Possible))
        {
            // What is no fault, and what hardly is, would only make a sound bottle look doubtful.
            shown.RemoveAll(c => c != shown[0] && (c.Cause.NothingWrong || c.Likeliness > Likeliness.Possible));
            page.Blank();
            page.Text($"Nothing looks wrong: {Reason(shown[0])}.{(shown.Count > 1 ? " What else it could be stands below." : "")}");
        }

        if (shown.Count == 0 && !diagnosis.Observation.TellsNoCause && diagnosis.Unknown is not { IsAll: true })
        {
            NoCause(page, diagnosis.Hazards, diagnosis.Observation);
        }

        for (var i = 0; i < shown.Count; i++)
        {
            page.Blank();
            Write(page, i + 1, shown[i], diagnosis);
        }

        Closing(page, diagnosis, shown);
        return page.ToString();
    }

    /// <summary>What can hurt whoever stands there, before anything else.</summary>
    /// <param name="lists">True when causes follow.</param>
    internal static void Danger(BenchPage page, HazardReport hazards, bool lists)
    {
        var name = "danger";
        foreach (var sentence in HazardWords.Warning(hazards.Hazards))
        {
            page.Named(name, sentence);
            name = "";
        }

        if (hazards.ForLeaving is not null)
        {
            page.Blank();
            page.Text("No test, no rescue and no change is advised while that may be so."
                + (lists ? " What it could be besides:" : ""));
        }
    }

    /// <summary>A list of causes that rests on nothing told would only send somebody the wrong way.</summary>
    internal static void NoCause(BenchPage page, HazardReport hazards, Observation told)
    {
        page.Blank();
        if (IsToldOfDanger(hazards))
        {
            page.Text("No cause is listed. Do first what stands above, and come back to the bottle only when nobody is in danger.");
            return;
        }

        page.Text("No cause is listed, because nothing was told that parts one from another. Say what lies, floats or hangs where: its "
            + "colour and form, since when, and what acid, warmth or much water does to it.");
        if (told.Unknown.Count > 0)
        {
            // What nobody understood may have been the warning: a word of another language, a slip of the pen in a hurry.
            page.Blank();
            page.Text("What was left out may have been a warning. If it smells, stings, fumes, hisses, bulges or got warm, or somebody "
                + "got some of it into the mouth, an eye or onto the skin: leave it as it stands, go out into fresh air, rinse what was "
                + "hit with running water, and call the emergency number or a poison centre.");
        }
    }

    /// <summary>True where something was told, or asked, that can hurt somebody: then nothing is called harmless.</summary>
    internal static bool IsToldOfDanger(HazardReport hazards) => hazards.Hazards.Any(h => h.Grade >= HazardGrade.Suspected);

    /// <summary>True for a cause that is the very danger: what to do about it is said there and only there.</summary>
    private static bool IsOfDanger(Cause cause, HazardReport hazards) =>
        cause.IsHazard is { } kind && hazards.Find(kind) is { Grade: >= HazardGrade.Suspected };

    private static string Reason(RankedCause cause) =>
        cause.For.Select(e => e.Text).Take(3).ToList() is { Count: > 0 } reasons ? Say.List(reasons) : cause.Cause.Name;

    private static void Opening(BenchPage page, BottleDiagnosis diagnosis, string? seenAt)
    {
        var stock = diagnosis.Chemistry.Stock;
        var at = seenAt is null
            ? $"at {Celsius(diagnosis.Chemistry.AtSeen)}, {KeptWords.Coldest(stock)}"
            : $"at {Printable.Show(seenAt)}";
        page.Text($"'{Printable.Show(stock.Stock.Name)}', as it stood {at}");
        Told(page, diagnosis.Observation);
        page.Named("chemistry", diagnosis.Unknown switch
        {
            { IsAll: true } => "not computed: what is in it is not known.",
            { } partly => $"{Chemistry(diagnosis.Chemistry)} {HazardWords.LeftOut(partly, "this is computed")}",
            _ => Chemistry(diagnosis.Chemistry),
        });
    }

    /// <summary>What was understood of the words, and what was not.</summary>
    internal static void Told(BenchPage page, Observation observation)
    {
        var told = observation.Signs.Select(s => s.Say).Concat(observation.LiquidColours.Select(c => $"{c.Say} liquid")).ToList();
        page.Named(
            "seen", told.Count > 0 ? string.Join(" · ", told)
                : observation.TellsNoCause ? "nothing of bottle, tank or lines that could be understood"
                : "nothing that tells causes apart: what follows rests on the recipe alone");
        foreach (var part in observation.Parts)
        {
            page.Named("put in", $"{part}, counted as another concentrate");
        }

        foreach (var put in observation.PutIn)
        {
            page.Named(
                put.IsAsked ? "asked of" : "put in", put.Substance is not { } known ? $"{put.Written}, which nobody can name"
                    : put.HoldsMore ? $"{put.Written}, counted as {known.Name} and what else its label may tell"
                    : $"{put.Written}, counted as {known.Name}");
        }

        foreach (var plant in observation.Plants)
        {
            page.Named(
                "plants",
                $"'{Printable.Show(plant)}': no plant is judged by its looks here; 'recipelint check' judges the elements that a recipe "
                    + "gives it, and 'recipelint show' lists them.");
        }

        foreach (var reread in observation.Reread)
        {
            page.Named("read as", $"'{Printable.Show(reread.Written)}' as '{reread.ReadAs}'");
        }

        foreach (var word in observation.Unknown)
        {
            page.Named("left out", $"I do not know the word '{Printable.Show(word)}'; left out.");
        }

        foreach (var sign in observation.Contradictions)
        {
            page.Named("left out", $"'{sign.Say}' and '{sign.SayNot}' contradict each other; both are left out.");
        }
    }

    private static string Chemistry(BottleChemistry chemistry)
    {
        var state = chemistry.AtSeen;
        if (!state.IsSolved)
        {
            return $"not computed: {state.Failure}";
        }

        var falls = chemistry.DepositsSeen.Where(d => d.GramsPerLitre > 0).Take(3)
            .Select(d => $"{Say.Grams(d.GramsPerLitre)}/L of {Say.List(d.Deposits.Select(s => s.Solid.Called))}").ToList();
        var ph = PhDoubt.Of(state) ?? $"{Say.Ph(Math.Round(state.Ph, 1))} at {Celsius(state)}";
        return $"pH {ph}; "
            + (falls.Count > 0 ? $"{Say.List(falls)} should fall out." : "nothing should fall out.");
    }

    private static void Write(BenchPage page, int number, RankedCause ranked, BottleDiagnosis diagnosis)
    {
        var cause = ranked.Cause;
        page.Head(number, Say.Capital(cause.Name), Words(ranked.Likeliness));
        page.Named("for", Reasons(ranked.For));
        page.Named("against", Reasons(ranked.Against));
        if (diagnosis.Hazards.ForLeaving is not null)
        {
            return;
        }

        if (cause.NothingWrong && cause.Id == "nothing-wrong")
        {
            page.Named("save it", diagnosis.Hazards.Hazards.Count == 0 ? cause.RescueSay : "Heed the danger above first.");
            return;
        }

        if (IsOfDanger(cause, diagnosis.Hazards))
        {
            page.Named("save it", "Do what the danger above says, and nothing else.");
            page.Named("change", HazardText.Of(cause.IsHazard!.Value).Instead);
            return;
        }

        // Advice is tried in the engine before it is printed, for every cause that is shown.
        var advice = BottleAdvice.Of(diagnosis.Chemistry, ranked);
        if (!cause.NothingWrong && QuestionChooser.Settling(ranked, diagnosis) is { } settling)
        {
            page.Named("test", Say.Capital(settling.Test.Do!)
                + $": {settling.Expected.Say} if it is this."
                + (settling.Test.Caution is { } caution ? " " + caution : ""));
        }

        page.Named("save it", $"{Rescue(ranked, advice, diagnosis)} {Water(ranked, advice, diagnosis)}".TrimEnd());
        page.Named("change", BottleHazards.Refuses(cause.ChangeUses, diagnosis.Hazards.OfTheNextBottle()) is { } change
            ? HazardWords.Line(change)
            : DiagnosisWording.Change(cause, ranked, advice, diagnosis.Chemistry, diagnosis.Hazards));
    }

    /// <summary>The usual rescue, where the gate has nothing against it.</summary>
    private static string Rescue(RankedCause ranked, BottleAdvice advice, BottleDiagnosis diagnosis) =>
        BottleHazards.Refuses(ranked.Cause.RescueUses.Where(u => u != "water"), diagnosis.Hazards) is { } refusal
            ? $"Not in the usual way. {HazardWords.Line(refusal)}"
            : DiagnosisWording.Rescue(ranked.Cause, ranked, advice, diagnosis.Hazards);

    /// <summary>Water beside it: a danger of acid or warmth says nothing against it.</summary>
    private static string Water(RankedCause ranked, BottleAdvice advice, BottleDiagnosis diagnosis) =>
        BottleHazards.Refuses(["water"], diagnosis.Hazards) is null
            ? DiagnosisWording.Water(ranked, advice.Water, diagnosis.Chemistry.Stock.Stock.Dose?.Value)
            : "";

    private static void Closing(BenchPage page, BottleDiagnosis diagnosis, List<RankedCause> shown)
    {
        page.Blank();
        var asks = diagnosis.Unknown is { IsAll: true } ? false : diagnosis.Observation.TellsNoCause
            ? !IsToldOfDanger(diagnosis.Hazards)
            : diagnosis.Hazards.ForLeaving is null && shown.Count > 1 && shown[0].Likeliness != Likeliness.VeryLikely;
        if (asks
            && QuestionChooser.Next(diagnosis, new HashSet<string>()) is { } question)
        {
            page.Text($"What would tell more: {question.Ask} ({string.Join("; ", question.Answers.Select(a => a.Say))})");
            if (question.Caution is { } caution)
            {
                page.Text(caution);
            }
        }

        page.Text("The amounts are computed; looks and behaviour are common practice and textbooks. Do not give a bottle you are not sure "
            + "of to the plants, and dispose of it as your local code says, not down a drain.");
    }

    /// <summary>What was seen, then what the recipe says.</summary>
    internal static string Reasons(IEnumerable<Evidence> evidence)
    {
        var all = evidence.ToList();
        var seen = string.Join(", ", all.Where(e => !e.FromStock).Select(e => e.Text).Distinct(StringComparer.Ordinal).Take(6));
        var stock = string.Join("; ", all.Where(e => e.FromStock).Select(e => e.Text).Distinct(StringComparer.Ordinal).Take(3));
        return seen.Length == 0 ? stock : stock.Length == 0 ? seen : $"{seen}; {stock}";
    }

    internal static string Words(Likeliness likeliness) => likeliness switch
    {
        Likeliness.VeryLikely => "very likely",
        Likeliness.Likely => "likely",
        Likeliness.Possible => "possible",
        _ => "unlikely",
    };

    private static string Celsius(SolutionState state) => $"{Say.Number(Math.Round(state.Temperature.Celsius, 1))} °C";
}
