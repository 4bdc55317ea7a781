using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>What a diagnosis of tank, lines and drippers says. Pure.</summary>
public static class TankReport
{
    /// <summary>g/L of a solid that is told: a tenth of a milligram nobody sees in a tank (common practice, no source).</summary>
    private const double LeastTold = 1e-4;

    /// <summary>The report, at most 100 columns wide.</summary>
    public static string Write(TankDiagnosis diagnosis)
    {
        var page = new BenchPage();
        Opening(page, diagnosis);
        var listed = TankDiagnosis.Listed(diagnosis.Causes.Select(c => c.Ranked)).ToHashSet();
        var shown = diagnosis.Observation.TellsNoCause ? []
            : diagnosis.Causes.Where(c => listed.Contains(c.Ranked))
                .Where(c => !(c.Ranked.Cause.NothingWrong && DiagnosisReport.IsToldOfDanger(diagnosis.Hazards))).ToList();
        DiagnosisReport.Danger(page, diagnosis.Hazards, shown.Count > 0);
        if (shown.Count == 0)
        {
            DiagnosisReport.NoCause(page, diagnosis.Hazards, diagnosis.Observation);
        }

        var number = 0;
        foreach (var cause in shown)
        {
            page.Blank();
            Write(page, ++number, cause, diagnosis);
        }

        page.Blank();
        page.Text("Amounts are computed; looks and cures are common practice and textbooks. Clean lines only without plants on them, wear "
            + "goggles and gloves, never bring acid and bleach together, "
            + "and let the labels and safety data sheets of cleaners and your local code decide, also on where the rinsings go.");
        return page.ToString();
    }

    private static void Opening(BenchPage page, TankDiagnosis diagnosis)
    {
        var recipe = diagnosis.Chemistry.Recipe;
        page.Text($"Tank, lines and drippers of '{Printable.Show(recipe.Recipe.Name)}'"
            + (diagnosis.Chemistry.SeenAt is { } seen ? $", the tank at {Say.Number(seen.Celsius)} °C" : ""));
        DiagnosisReport.Told(page, diagnosis.Observation);
        var state = diagnosis.Chemistry.Final;
        var falling = state.Deposits.Where(d => d.Mass.GramsPerLitre >= LeastTold).OrderByDescending(d => d.Mass.GramsPerLitre).Take(3)
            .Select(d => $"{Say.Number(1000 * d.Mass.GramsPerLitre)} mg/L of {d.Solid.Called}").ToList();
        page.Named("chemistry", !state.IsSolved ? $"not computed: {state.Failure}"
            : $"pH {PhDoubt.Of(state) ?? $"{Say.Ph(Math.Round(state.Ph, 1))} as the plants get it"}; "
                + (falling.Count == 0 ? "nothing should fall out of it."
                    : $"{Say.List(falling)} should fall out of it."));
        page.Named("water", recipe.Water is not { Water: { } document } water ? "pure, as far as the recipe says"
            : $"'{Printable.Show(document.Name)}' brings "
                + Say.List(new[] { "Ca", "Mg", "Fe", "Mn", "S" }
                    .Select(e => (Element: e, Milligrams: 1000 * water.Elements[new Chemistry.Composition.Element(e)].Grams
                        / water.Volume.Litres))
                    .Where(e => e.Milligrams >= 0.01).Select(e => $"{Say.Number(e.Milligrams)} mg/L {e.Element}")
                    .Append($"{Say.Number(AlkalinityOf(water))} meq/L alkalinity")) + ".");
    }

    private static double AlkalinityOf(Analysis.WaterFacts water) =>
        1000 * water.ComponentMoles.GetValueOrDefault(Chemistry.Equilibrium.Component.Carbonate) / water.Volume.Litres;

    private static void Write(BenchPage page, int number, RankedTankCause ranked, TankDiagnosis diagnosis)
    {
        var (found, cause) = (ranked.Ranked, ranked.Ranked.Cause);
        page.Head(number, Say.Capital(cause.Name), DiagnosisReport.Words(found.Likeliness));
        page.Named("for", DiagnosisReport.Reasons(found.For));
        page.Named("against", DiagnosisReport.Reasons(found.Against));
        page.Named("water", WaterPart(ranked));
        if (diagnosis.Hazards.ForLeaving is not null)
        {
            return;
        }

        page.Named("clear it", BottleHazards.Refuses(cause.RescueUses, diagnosis.Hazards) is { } rescue
            ? $"Not in the usual way. {HazardWords.Line(rescue)}" : cause.RescueSay);
        page.Named("change", BottleHazards.Refuses(cause.ChangeUses, diagnosis.Hazards) is { } change
            ? HazardWords.Line(change) : Change(ranked));
    }

    /// <summary>What to change; acid only where it was tried and helps.</summary>
    private static string Change(RankedTankCause ranked)
    {
        var cause = ranked.Ranked.Cause;
        var acid = ranked.Acid is { Helps: true } ? cause.ChangeAcid : "";
        return string.Join(' ', new[] { acid, cause.Change, ClearPh(ranked) }.Where(t => t.Length > 0));
    }

    /// <summary>What of a deposit the source water brings, computed with pure water in its place.</summary>
    private static string WaterPart(RankedTankCause ranked)
    {
        var now = ranked.Ranked.Solid.GramsPerLitre;
        return ranked.WithPureWater is not { } left || now <= 0 ? ""
            : left <= 0.01 * now ? "It is the source water's: with pure water nothing of it would fall out."
            : left < 0.9 * now ? $"With pure water {Say.Percent(left / now)} of it would fall out; the rest is the source water's part."
            : "It is the feed's own: pure water would not help.";
    }

    /// <summary>What a lower pH does to it, in the feed or in the source water.</summary>
    private static string ClearPh(RankedTankCause ranked)
    {
        if (ranked.Acid is not { } acid)
        {
            return "";
        }

        var (where, what) = ranked.Moment is TankMoment.Water or TankMoment.Warm
            ? ("In the source water at", "the source water") : ("At", "this feed");
        return acid switch
        {
            { Harm: { FallsOut: not null } harm } => $"Not by acid in this feed: {harm.Name} falls out by it, as computed.",
            { Harm: { BelowPh: { } below } harm } =>
                $"Not by acid in this feed: {Printable.Show(harm.Name)} falls out below about pH {Say.Number(below)}.",
            { Harm: { } harm } => $"Not by acid in this feed: it gels the silicate of {Printable.Show(harm.Name)}.",
            { ClearPh: { } clear } => $"{where} pH {Say.Number(clear)} and below it stays dissolved, as computed.",
            _ => $"A lower pH does not keep it dissolved in {what}, as computed down to pH 4.",
        };
    }
}
