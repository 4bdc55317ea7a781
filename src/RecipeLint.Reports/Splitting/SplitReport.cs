using System.Globalization;
using System.Text;
using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Splitting;

/// <summary>A proposal as a text of at most 100 columns, for whoever mixes. Pure.</summary>
public static class SplitReport
{
    /// <summary>Columns no line exceeds.</summary>
    public const int Width = 100;

    private const int NameWidth = 52;

    /// <summary>A change of the final solution below this is rounding, as a fraction.</summary>
    private const double Unchanged = 0.005;

    public static string Write(SplitProposal proposal)
    {
        var text = new StringBuilder();
        if (proposal.Plan is not { } plan)
        {
            WriteImpossible(text, proposal);
            return text.ToString();
        }

        Paragraph(text, Head(proposal, plan));
        foreach (var part in plan.Parts)
        {
            text.Append('\n');
            WritePart(text, part);
        }

        WriteFinal(text, proposal);
        WriteReasons(text, "Why not with the water of the recipe", proposal.WithRecipeWater.Select(Forbidden));
        WriteReasons(text, "Why not fewer parts", Fewer(proposal, plan));
        WriteReasons(text, "Why not elsewhere", proposal.Elsewhere.Select(Elsewhere));
        WriteReasons(text, "Other ways", proposal.Alternatives.Select(Alternative));
        WriteReasons(text, "Every part that was given up", proposal.Rejected.Select(
            r => $"{Say.List(r.Together.Select(ObstacleWords.Short))}, 1:{Say.Number(r.Dilution)}: {ObstacleWords.All(r)}."));
        text.Append('\n');
        Paragraph(
            text,
            "Computed at equilibrium; a salt counts as dissolved only well below its saturation. Acids go into water, never water into "
                + "acid; mind the safety data sheets.");
        return text.ToString();
    }

    private static string Head(SplitProposal proposal, SplitPlan plan)
    {
        var salts = proposal.Units.Sum(u => u.Ingredients.Count);
        var count = plan.Parts.Count == 1 ? "1 part" : $"{plan.Parts.Count} parts";
        var water = proposal.WaterReplaced ? $"{proposal.Water} water, because the water of the recipe clouds them" : proposal.Water;
        return $"{Printable.Show(proposal.Of)}: {count} for its {(salts == 1 ? "one substance" : $"{salts} substances")}. Clear from "
            + $"{Span(proposal.Storage)}, made with {Printable.Show(water)}."
            + (plan.Dilution < proposal.WantedDilution * (1 - 1e-9)
                ? $" Nothing works at 1:{Say.Number(proposal.WantedDilution)}; 1:{Say.Number(plan.Dilution)} is the strongest usual dose "
                    + "that does."
                : "");
    }

    private static void WritePart(StringBuilder text, SplitPart part)
    {
        text.Append(
            CultureInfo.InvariantCulture,
            $"{part.Name}, {Say.Litres(part.Stock.Volume.Litres)}, dosed at {Say.Number(1000 / part.Dilution)} mL/L "
                + $"(1:{Say.Number(part.Dilution)})\n");
        foreach (var step in part.Stock.Stock.Steps.OfType<AddStep>())
        {
            var share = part.Shares.FirstOrDefault(s => s.Substance == step.Substance!.Name);
            var name = Printable.Show(step.Substance!.Name) + (share.Substance is null ? "" : $" ({Say.Percent(share.Share)} of it)");
            var amount = step.Amount!.Value switch
            {
                Portion.ByMass mass => Grams(mass.Mass),
                Portion.ByVolume volume => Say.Litres(volume.Volume.Litres),
                _ => "",
            };
            Row(text, "  " + name, amount);
        }

        Paragraph(text, Limit(part), "  ");
        foreach (var hazard in HazardGate.Of(part.Stock).Hazards)
        {
            Paragraph(text, HazardWords.Caution(hazard), "  ");
        }

        foreach (var finding in part.Objections)
        {
            Paragraph(text, $"'recipelint check' calls it wrong, {finding.Rule.Id}: {finding.Message}", "  ");
        }

        if (part.TooLittle is { } little)
        {
            Paragraph(
                text, $"{ObstacleWords.Of(little)}: make more at once, weigh it through a diluted pre-stock, or use a finer scale.", "  ");
        }
    }

    private static string Limit(SplitPart part)
    {
        var mixed = part.Stock.Chemistry.Mixing;
        var ph = $"pH {(mixed.TellsPh ? Say.PhShown(mixed.Ph) : "not known")}. ";
        return part is { ClearUpTo: { } most, StoppedBy: { } solid, StoppedAt: { } at }
            ? $"{ph}Stays clear up to 1:{Whole(most)}; stronger, "
                + $"{ObstacleWords.Called(solid)} {(solid.Role == SolidRole.SolubleSalt ? "may crystallise" : "falls out")} at "
                    + $"{Say.Number(at.Celsius)} °C."
            : part.Objections.Count > 0 ? $"{ph}Nothing falls out of it while it is fresh, even eight times as strong."
            : $"{ph}Stays clear even eight times as strong.";
    }

    private static void WriteFinal(StringBuilder text, SplitProposal proposal)
    {
        var after = proposal.Final!.Elements;
        var changed = proposal.Before
            .Where(b => b.Value > 0)
            .Select(b => (Key: b.Key, Before: b.Value, After: after.TryGetValue(b.Key, out var fact)
                ? fact.Concentration.MilligramsPerLitre
                : 0))
            .Where(e => Math.Abs((e.After / e.Before) - 1) > Unchanged)
            .OrderBy(e => e.Key, StringComparer.Ordinal)
            .Select(e => $"{e.Key} {Say.Number(e.Before)} to {Say.Number(e.After)} ({(e.After / e.Before) - 1:+0.0 %;-0.0 %})")
            .ToList();
        text.Append('\n');
        Paragraph(text, changed.Count == 0
            ? $"The final solution stays what it is: {Elements(proposal)} "
                + $"within {Say.Percent(Unchanged)}."
            : "The final solution changes in mg/L, by rounding weights to the scales and by the water of the parts: "
                + $"{string.Join(", ", changed)}.");
    }

    private static string Elements(SplitProposal proposal) => proposal.Before.Count(b => b.Value > 0) switch
    {
        1 => "its one element agrees",
        var many => $"all {many} elements and forms of nitrogen agree",
    };

    private static IEnumerable<string> Fewer(SplitProposal proposal, SplitPlan plan)
    {
        foreach (var rejected in proposal.Fewer)
        {
            yield return $"{Say.List(rejected.Parts)} in one at 1:{Say.Number(rejected.Dilution)}: {ObstacleWords.All(rejected)}.";
        }

        if (proposal.FewerGroupings > 1)
        {
            var fewer = plan.Parts.Count(p => !p.IsTrace) - 1;
            yield return $"None of the {proposal.FewerGroupings} ways to put them into {fewer} main parts works.";
        }
    }

    private static string Forbidden(RejectedPart rejected) =>
        $"{Say.List(rejected.Together.Select(ObstacleWords.Short))}{(rejected.Together.Count == 1 ? " alone" : " in one")}, "
            + $"1:{Say.Number(rejected.Dilution)}: {ObstacleWords.All(rejected)}.";

    private static string Elsewhere(RejectedPart rejected) =>
        $"{ObstacleWords.Short(rejected.Newcomer!)} in {rejected.Parts[0]}: {ObstacleWords.First(rejected)}.";

    private static string Alternative(SplitPlan plan)
    {
        var parts = plan.Parts.Select(p =>
            $"{p.Name} 1:{Say.Number(p.Dilution)} ({Say.List(Contents(p))})");
        return $"{plan.Parts.Count} parts: {string.Join("; ", parts)}.";
    }

    private static IEnumerable<string> Contents(SplitPart part) =>
        part.HoldsTraceElements
            ? ["the trace elements"]
            : part.Stock.Additions.Select(a =>
                part.Shares.FirstOrDefault(s => s.Substance == a.Substance.Name) is { Substance: not null } share
                    ? $"{Say.Percent(share.Share)} of the {ObstacleWords.Short(a.Substance.Name)}"
                    : ObstacleWords.Short(a.Substance.Name));

    private static void WriteImpossible(StringBuilder text, SplitProposal proposal)
    {
        if (proposal.Refused is { } refused)
        {
            Paragraph(text, $"{Printable.Show(proposal.Of)} is not split.");
            foreach (var sentence in HazardWords.Refused(refused))
            {
                Paragraph(text, sentence);
            }

            return;
        }

        if (proposal.Failure is { } failure)
        {
            Paragraph(text, $"{Printable.Show(proposal.Of)} cannot be split: {failure}.");
            return;
        }

        if (proposal.StaysWrong)
        {
            Paragraph(
                text, $"{Printable.Show(proposal.Of)} is not split: parts that stay clear were found, and 'recipelint check' calls "
                    + "one of them an error however they are grouped. Mend that first.");
            WriteReasons(text, "What is wrong", proposal.Fewer.Select(Forbidden));
            return;
        }

        Paragraph(
            text,
            $"{Printable.Show(proposal.Of)} cannot be split into parts that stay clear from {Span(proposal.Storage)}, not even at "
                + $"1:{Say.Number(proposal.LookedAtDilution)}, made with {Printable.Show(proposal.Water)}.");
        WriteReasons(text, "What forbids it", proposal.Fewer.Select(Forbidden));
    }

    private static void WriteReasons(StringBuilder text, string head, IEnumerable<string> reasons)
    {
        var list = reasons.ToList();
        if (list.Count == 0)
        {
            return;
        }

        text.Append('\n').Append(head).Append('\n');
        foreach (var reason in list)
        {
            Paragraph(text, Printable.Show(reason), "  ", "    ");
        }
    }

    private static void Row(StringBuilder text, string name, string amount)
    {
        var width = DisplayWidth.Of(name);
        text.Append(name).Append(' ', Math.Max(1, NameWidth + 14 - width - DisplayWidth.Of(amount))).Append(amount).Append('\n');
    }

    private static void Paragraph(StringBuilder text, string paragraph, string first = "", string? next = null)
    {
        var indent = first;
        foreach (var line in TextWrap.Wrap(Printable.Show(paragraph), Width - (next ?? first).Length))
        {
            text.Append(indent).Append(line).Append('\n');
            indent = next ?? first;
        }
    }

    /// <summary>With the digits the scale shows.</summary>
    private static string Grams(Mass mass) => mass.Grams.ToString("0.######", CultureInfo.InvariantCulture) + " g";

    private static string Whole(double value) => Say.Number(Math.Floor(value / 5) * 5);

    /// <summary>The part of it for which there is a model, and what it is kept at where that is more.</summary>
    private static string Span(Interval<Temperature> kept)
    {
        var (low, high) = (Within(kept.Low), Within(kept.High));
        return Degrees(low, high)
            + (low == kept.Low && high == kept.High ? "" : $" (kept at {Degrees(kept.Low, kept.High)}, which the model does not reach)");
    }

    private static Temperature Within(Temperature kept) =>
        new(Math.Clamp(kept.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius));

    private static string Degrees(Temperature low, Temperature high) => $"{Say.Number(low.Celsius)} to {Say.Number(high.Celsius)} °C";
}
