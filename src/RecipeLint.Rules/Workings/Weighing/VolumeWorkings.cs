using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Weighing;

namespace RecipeLint.Rules.Workings.Weighing;

/// <summary>What measures, doses and batches come to.</summary>
internal static class VolumeWorkings
{
    private const string File = "file", Shop = "shop's settings";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        new("measure-too-coarse", (subject, context) =>
            subject.Stocks.SelectMany(s => MeasuredVolume.In(subject.Facts, s)).Concat(subject.Recipes.SelectMany(MeasuredVolume.In)).Select(v => Measure(v, context.For(v.File)))),
        RuleWorkings.OnStocks("vessel-too-coarse", Vessel),
        RuleWorkings.OnRecipes("doses-shift-the-volume", Shift),
        RuleWorkings.OnRecipes("shared-dosing-syringe", Shared),
        RuleWorkings.OnStocks("batch-outlasts-shelf-life", Batch),
    ];

    private static Working Measure(MeasuredVolume taken, RuleContext context)
    {
        var pouring = taken.Pouring;
        var work = new WorkingBuilder($"{Say.Litres(pouring.Volume.Litres)} {taken.What} with '{pouring.Measure.Name}'");
        var limit = context.Number("limit") / 100;
        if (taken.Relative <= limit && MeasureTooCoarse.FilledByHand.Contains(pouring.Measure.Kind) && pouring.Fillings > context.Number("fillings"))
        {
            var fillings = work.Given("fillings", pouring.Fillings, "", File);
            work.Result("two miscounted", "100 × 2 / fillings", 100 * (Term)2 / fillings, "%");
            return work.Test("more than anyone counts rightly", fillings, Relation.Over, work.Option("most", "fillings", context)).Done(fillings);
        }

        var relative = Uncertainty(work, pouring);
        return work.Test("less sure than a volume should be", relative, Relation.Over, work.Option("limit", "limit", context), "%").Done(relative);
    }

    private static IEnumerable<Working> Vessel(StockFacts stock, RuleContext context)
    {
        if (FinishedVolume.Of(stock) is not { } finished)
        {
            yield return new WorkingBuilder($"'{stock.Stock.Name}'").Condition("a vessel or a measure of the shop is known", false).Done();
            yield break;
        }

        var work = new WorkingBuilder($"'{stock.Stock.Name}' brought to {Say.Litres(stock.Volume.Litres)} in '{finished.Pouring.Measure.Name}'{(finished.IsStated ? "" : ", the best there is")}");
        var relative = Uncertainty(work, finished.Pouring);
        work.Test("less sure than a finished volume should be", relative, Relation.Over, work.Option("limit", "limit", context), "%");
        if (VesselTooCoarse.Overflows(finished))
        {
            work.Condition("the batch fits the vessel (else vessel-too-small speaks)", false);
        }

        yield return work.Done(relative);
    }

    /// <summary>The expanded uncertainty of one volume from the limit of its measure and its reading.</summary>
    private static Term Uncertainty(WorkingBuilder work, Pouring pouring)
    {
        var volume = work.Given("volume", pouring.Volume.Millilitres, "mL", File);
        var from = pouring.LimitIsAssumed ? "usual for the kind and size" : Shop;
        var limit = work.Given("limit of error of one filling, ±", pouring.Limit.Millilitres, "mL", from);
        Term shared;
        if (pouring.Fillings > 1)
        {
            var fillings = work.Given("fillings", pouring.Fillings, "", File);
            shared = work.Result("calibration, the same at every filling", "limit / √3 × fillings", limit / Term.Root(3) * fillings, "mL");
        }
        else
        {
            shared = work.Result("calibration", "limit / √3", limit / Term.Root(3), "mL");
        }

        var standard = shared;
        if (pouring.OwnError.Litres > 0)
        {
            var reading = work.Given("reading or filling to the mark", pouring.OwnError.Millilitres, "mL", pouring.Measure.Readability is null ? "QUAM A1" : "graduation / √12, by the root of the fillings");
            standard = work.Result("standard uncertainty", "root of the sum of the squares", Term.Root(Term.Power(shared, 2) + Term.Power(reading, 2)), "mL");
        }

        return work.Result("expanded uncertainty (k = 2)", "100 × 2 × standard uncertainty / volume", 100 * (Term)2 * standard / volume, "%");
    }

    private static IEnumerable<Working> Shift(RecipeFacts recipe, RuleContext context)
    {
        var work = new WorkingBuilder($"the doses of '{recipe.Recipe.Name}' against its volume");
        if (recipe.Recipe.Final is not { Value.Litres: > 0 } final)
        {
            yield return work.Condition("a final volume is stated", false).Done();
            yield break;
        }

        var doses = recipe.Doses.Where(d => d.Volume.Litres > 0).Select(d => work.Given($"'{d.Id}'", d.Volume.Litres, "L", File)).ToList();
        var poured = doses.Count == 0 ? work.Given("doses", 0, "L", File) : work.Result("doses together", "sum", Term.Sum(doses), "L");
        var whole = work.Given("final volume", final.Value.Litres, "L", File);
        var shift = work.Result("doses in the final volume", "100 × doses / final volume", 100 * poured / whole, "%");
        work.Test("worth counting", shift, Relation.AtLeast, work.Option("limit", "shift", context), "%");
        var meaning = recipe.Recipe.VolumeMeaning?.Value;
        if (meaning == FinalVolumeMeaning.MadeUp)
        {
            work.Condition("the file leaves open whether the doses are part of the volume", false);
        }
        else if (meaning == FinalVolumeMeaning.AddedTo)
        {
            work.Condition("a target is missed because the doses thin it", shift.Value < 100 && DosesShiftTheVolume.Thinned(recipe, shift.Value / 100, context).Count > 0);
        }

        yield return work.Done(shift);
    }

    private static IEnumerable<Working> Shared(RecipeFacts recipe, RuleContext context)
    {
        var groups = recipe.Doses.Where(d => d is { Stock: not null, Measure: { } measure } && SharedDosingSyringe.Dipped.Contains(measure.Kind))
            .GroupBy(d => d.Measure!.Name, StringComparer.Ordinal).Where(g => g.Count() > 1).ToList();
        if (groups.Count == 0)
        {
            yield return new WorkingBuilder($"the syringes and pipettes of '{recipe.Recipe.Name}'").Condition("one of them takes two different stocks", false).Done();
        }

        foreach (var group in groups)
        {
            var worst = SharedDosingSyringe.Pairs([.. group])
                .Select(p => (p.First, p.Second, Met: SharedDosingSyringe.DepositWhereTheyMeet(p.First.Stock!, p.Second.Stock!)))
                .OrderByDescending(p => p.Met.Grams).FirstOrDefault();
            if (worst.First is null)
            {
                continue;
            }

            var work = new WorkingBuilder($"'{worst.First.Stock!.Stock.Name}' meets '{worst.Second.Stock!.Stock.Name}' in '{group.Key}'");
            work.Remark("A remnant of the one, half diluted by the other: equal parts of both.");
            foreach (var component in new[] { "Ca+2", "SO4-2", "H2PO4-" })
            {
                var one = worst.First.Stock.Concentration(component).MolesPerLitre;
                var other = worst.Second.Stock.Concentration(component).MolesPerLitre;
                if (one + other > 0)
                {
                    var a = work.Given($"{IonWords.Of(component)} in the one", one, "mol/L", "amounts in the file");
                    var b = work.Given($"{IonWords.Of(component)} in the other", other, "mol/L", "amounts in the file");
                    work.Result($"{IonWords.Of(component)} where they meet", "half of each", (a + b) / 2, "mol/L");
                }
            }

            var grams = work.Given($"falls out of that{(worst.Met.Names.Length > 0 ? $" ({worst.Met.Names})" : "")}", worst.Met.Grams, "g/L", "engine");
            yield return work.Test("enough to see", grams, Relation.AtLeast, work.Option("deposit from which a finding is given", "deposit", context), "g/L").Done(grams);
        }
    }

    private static IEnumerable<Working> Batch(StockFacts stock, RuleContext context)
    {
        var work = new WorkingBuilder($"how long a batch of '{stock.Stock.Name}' lasts");
        var users = context.Facts.Recipes.Select(r => (Recipe: r, Litres: r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Sum(d => d.Volume.Litres)))
            .Where(u => u.Litres > 0).ToList();
        if (stock.Stock is not { Keep.For: { Value.Days: > 0 } keep, Makes: not null } || users.Count == 0)
        {
            yield return work.Condition("it says how long it keeps, and a recipe that doses it is known", false).Done();
            yield break;
        }

        var takes = users.Select(u => work.Given($"'{u.Recipe.Recipe.Name}' takes for a filling", u.Litres, "L", File)).ToList();
        var filling = takes.Count == 1 ? takes[0] : work.Result("all recipes together", "sum", Term.Sum(takes), "L");
        var perWeek = work.Option("fillings a week", "fillingsPerWeek", context);
        var perDay = work.Result("used a day", "filling × fillings a week / 7", filling * perWeek / 7, "L");
        var batch = work.Given("the batch", stock.Volume.Litres, "L", File);
        var lasts = work.Result("the batch lasts", "batch / used a day", batch / perDay, "days");
        work.Test("longer than it keeps", lasts, Relation.Over, work.Given("it keeps", keep.Value.Days, "days", File), "days");
        if (context.Facts.Stocks.Any(s => s.Aliquots.Any(a => a.StockFile == stock.Stock.File)))
        {
            work.Condition("no other stock draws on it", false);
        }

        yield return work.Done(lasts);
    }
}
