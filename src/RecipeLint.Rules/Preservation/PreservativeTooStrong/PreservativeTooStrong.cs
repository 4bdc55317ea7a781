using RecipeLint.Analysis;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>More preservative than the plants should get, or so much that it is about to crystallise on a cold night.</summary>
internal sealed class PreservativeTooStrong : WorkspaceRule<StrongPreservative>, IProposesRepairs
{
    /// <summary>Parts of the dose that the message tells, tried one after the other.</summary>
    private static readonly double[] Parts = [1, 0.95, 0.9, 0.8, 0.6, 0.4, 0.2, 0.1];

    public const string RuleName = "preservative-too-strong";

    public override string Name => RuleName;

    /// <summary>What the plants get hangs on who doses the stock; how near it stands to crystallising on the stock alone.</summary>
    protected override IEnumerable<StrongPreservative> Judge(Facts facts, RuleContext context) =>
        facts.Stocks.Select(s => CarryOver(s, context.For(s.Stock.File)))
            .Concat(context.OfEachStockAlone<StrongPreservative>(s => Near(s, context.For(s.Stock.File))));

    private static IEnumerable<NearCrystals> Near(StockFacts stock, RuleContext context)
    {
        if (Dosed(stock) is not { } dosed || PreservativeCrystals.Of(stock) is not { } crystals)
        {
            yield break;
        }

        var used = new Check("near the limit", crystals.UsedPercent, Relation.Over,
            context.Options<PreservativeTooStrongOptions>().CloseTo, "%");
        yield return new NearCrystals(stock, dosed, crystals, used)
        {
            Files = [stock.Stock.File],
            WarmFrom = used.Holds && crystals.Acid.StaysDissolved
                ? PreservativeCrystals.ClearFrom(stock, used.Limit, DepositOptions.Of(stock.Settings)) : null,
            Checks = [used, Check.That("it does not crystallise by the constants (the rules on deposits speak of "
                + "that)", crystals.Acid.StaysDissolved)],
        };
    }

    /// <summary>The largest addition of a preservative; null where none goes in.</summary>
    private static AdditionFacts? Dosed(StockFacts stock) =>
        PreservativeJudgement.DosedIn(stock) is { Count: > 0 } dosed ? dosed[0] : null;

    protected override Finding Describe(StrongPreservative verdict, RuleContext context) => verdict switch
    {
        NearCrystals near => Describe(near, context.For(verdict.Stock.Stock.File)),
        var carried => Describe((CarriedPreservative)carried, context.For(verdict.Stock.Stock.File)),
    };

    protected override Working Work(StrongPreservative verdict, RuleContext context) => verdict switch
    {
        NearCrystals near => Work(near, context.For(verdict.Stock.Stock.File)),
        var carried => Work((CarriedPreservative)carried, context.For(verdict.Stock.Stock.File)),
    };

    /// <summary>Less of it, or a warmer place.</summary>
    protected override IEnumerable<RepairProposal> Repair(StrongPreservative verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (context.AdditionAt(stock, finding.Place) is { } preservative)
        {
            // What the message tells first; less where that is not enough.
            var told = verdict.ToldGramsPerLitre * stock.Volume.Litres / preservative.Mass.Grams;
            yield return new RepairProposal.Ladder(
                Parts.Select(step => Additions.Times(context, preservative, step * told, "less", Round.Down)).OfType<Repair>());
        }

        if (verdict is NearCrystals)
        {
            yield return Keep.Warmer(context, stock);
        }
        else if (Strength.Stronger(context, stock) is { } stronger)
        {
            yield return stronger;
        }
    }

    private static CarriedPreservative CarryOver(StockFacts stock, RuleContext context)
    {
        var dosed = Dosed(stock);
        var concentration = PreservativeAcids.Components.Sum(c => stock.Concentration(c).MolesPerLitre);
        List<RecipeFacts> users = context.OnlyWhatFires && dosed is null ? [] : [.. context.Facts.RecipesWith(stock.Stock.File)];
        var doses = users.Where(r => !r.Recipe.IsForLeaves)
            .SelectMany(r => r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Select(d => d.Volume / r.FinalVolume))
            .ToList();
        var dose = doses.Count > 0 ? doses.Max() : users.Count > 0 ? 0 : stock.Stock.Dose?.Value.LitresPerLitre ?? 0;
        var carried = Limits(context).Check(Rounding.SixDigits(concentration * dose * 1e6));
        return new CarriedPreservative(stock, dosed, dose, users.Count > 0, carried)
        {
            Files = [stock.Stock.File],
            Checks = [carried, Check.That("a preservative is in it", dosed is not null)],
        };
    }

    private static Finding Describe(CarriedPreservative verdict, RuleContext context)
    {
        var (stock, dosed, carried, limit) = (verdict.Stock, verdict.Dosed!, verdict.Carried.Value, verdict.Carried.Limit);
        var message = $"'{stock.Stock.Name}' carries {Say.Number(carried)} µmol/L of preservative to the plants at "
            + $"{Say.Number(verdict.Dose * 1000)} mL/L. "
            + $"{Limits(context).Why} "
            + context.AdviceFor(stock).Sentence(
                new Way($"use at most {Say.Number(verdict.ToldGramsPerLitre)} g/L of {dosed.Substance.Name}"),
                new Way("make the stock stronger and dose less of it", Puts.Keeping));
        return context.Find(
            dosed.Place,
            IdPath.Of(context.Facts.Workspace, dosed.Place) + "#carried",
            message,
            Harm.Damage,
            Limits(context).Sure(carried)) with
        {
            Measured = new Measured("preservative in the feed", carried, limit, "µmol/L"),
            Values = [new NamedValue("preservative in the feed", carried, "µmol/L"), new NamedValue("dose", verdict.Dose * 1000, "mL/L")],
        };
    }

    private static Finding Describe(NearCrystals verdict, RuleContext context)
    {
        var (stock, dosed, (acid, index, coldest)) = (verdict.Stock, verdict.Dosed!, verdict.Crystals);
        var salted = index > acid.Index + 0.02 ? ", because the salts push it out" : "";

        var message = $"At {Say.Number(coldest.Temperature.Celsius)} °C the {acid.Acid} of '{stock.Stock.Name}' stands at "
            + $"{Say.Number(verdict.Used.Value)} % of what stays dissolved at pH {Say.Ph(Math.Round(coldest.Ph, 2))}{salted}. "
            + "A colder night or a splash of acid brings shiny plates that float, clog the tube and leave the stock unprotected. "
            + context.AdviceFor(stock).Sentence(
                [
                    new Way($"use at most {Say.Number(verdict.ToldGramsPerLitre)} g/L of {dosed.Substance.Name}"),
                    .. verdict.WarmFrom is { } warm
                        ? [new Way($"keep the stock at {Say.Number(warm)} °C or warmer", Puts.Warmth)] : Array.Empty<Way>(),
                ]);
        return context.Find(dosed.Place, message, Harm.Damage, Odds.Certain) with
        {
            Measured = new Measured("share of the solubility", verdict.Used.Value, verdict.Used.Limit, "%"),
            Values =
            [
                new NamedValue("share of the solubility", verdict.Used.Value, "%"),
                new NamedValue("temperature", coldest.Temperature.Celsius, "°C"),
                new NamedValue("undissociated " + acid.Acid, acid.Undissociated.GramsPerLitre * 1000, "mg/L"),
            ],
        };
    }

    private static Working Work(CarriedPreservative verdict, RuleContext context)
    {
        var stock = verdict.Stock;
        var work = new WorkingBuilder($"preservative that '{stock.Stock.Name}' carries to the plants");
        var parts = PreservativeAcids.Components.Where(p => stock.Concentration(p).MolesPerLitre > 0)
            .Select(p => work.Given(p.Replace("inert:", "", StringComparison.Ordinal), 1000 * stock.Concentration(p).MolesPerLitre,
                "mmol/L", From.Amounts))
            .ToList();
        var total = parts.Count switch
        {
            0 => work.Given("preservative", 0, "mmol/L", From.Amounts),
            1 => parts[0],
            _ => work.Result("together", "sum", Term.Sum(parts), "mmol/L"),
        };
        var dose = work.Given("highest dose", 1000 * verdict.Dose, "mL/L", verdict.DoseIsOfRecipes ? "recipe" : From.File);
        var carried = work.Result("in the feed", "mmol/L × mL/L", total * dose, "µmol/L");
        return work.Check(verdict.Carried, carried,
            work.Option("limit", Limits(context).NoteFrom)).Statements(verdict).Done(carried);
    }

    private static PreservativeAtTheRoots Limits(RuleContext context) =>
        PreservativeAtTheRoots.Of(context.Options<PreservativeTooStrongOptions>());

    private static Working Work(NearCrystals verdict, RuleContext context)
    {
        var (acid, _, coldest) = verdict.Crystals;
        var work = new WorkingBuilder($"{acid.Acid} of '{verdict.Stock.Stock.Name}' at {Say.Number(coldest.Temperature.Celsius)} °C, "
            + KeptWords.Coldest(verdict.Stock));
        var index = work.Given("saturation index of the solid acid", acid.Index, "", From.Engine);
        if (verdict.Crystals.IsSalted)
        {
            var strength = work.Given("ionic strength", coldest.IonicStrengthMolPerKg, "mol/kg", From.Engine);
            index = work.Result(
                "with what the salts push out (0.16 kg/mol)", "index + 0.16 × ionic strength",
                    index + (PreservativeCrystals.SaltingOut * strength));
        }

        var used = work.Result("of what stays dissolved", "100 × 10^index", 100 * Term.TenTo(index), "%");
        return work.Check(verdict.Used, used, work.Option("limit",
            context.Options<PreservativeTooStrongOptions>().CloseTo)).Statements(verdict).Done(used);
    }
}

/// <summary>A preservative that goes too far, in one of two ways.</summary>
/// <param name="Dosed">The largest addition; null where none goes in.</param>
internal abstract record StrongPreservative(StockFacts Stock, AdditionFacts? Dosed) : Verdict
{
    /// <summary>The part of the dose that would do.</summary>
    protected abstract double Part { get; }

    /// <summary>g/L that the message tells and the repair takes, two decimals rounded down.</summary>
    public double ToldGramsPerLitre => Math.Floor(100 * Part * Dosed!.Mass.Grams / Stock.Volume.Litres) / 100;
}

/// <summary>What the plants get of it.</summary>
/// <param name="Dose">The highest, as a fraction of the final volume.</param>
/// <param name="DoseIsOfRecipes">False where only the stock itself states one.</param>
internal sealed record CarriedPreservative(StockFacts Stock, AdditionFacts? Dosed, double Dose, bool DoseIsOfRecipes, Check Carried)
    : StrongPreservative(Stock, Dosed)
{
    /// <inheritdoc/>
    protected override double Part => Carried.Limit / Carried.Value;
}

/// <summary>How near it stands to crystallising.</summary>
internal sealed record NearCrystals(
    StockFacts Stock, AdditionFacts? Dosed, PreservativeCrystals Crystals, Check Used) : StrongPreservative(Stock, Dosed)
{
    /// <summary>°C from which it is far enough from crystallising and nothing else falls out; null where warmth is no way.</summary>
    public double? WarmFrom { get; init; }

    /// <summary>A little less than in proportion: with less of the salt the stock is more acid.</summary>
    protected override double Part => 0.95 * Used.Limit / Used.Value;
}
