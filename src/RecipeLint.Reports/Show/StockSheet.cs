using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Show;

/// <summary>What a bottle holds and how much room it has.</summary>
public static class StockSheet
{
    /// <param name="facts">Of the run, for stocks it is made of.</param>
    /// <param name="mixings">So many times it is mixed in thought; 0 for not at all.</param>
    public static Sheet Of(Facts facts, StockFacts stock, int mixings = 0)
    {
        var uncertainty = ElementUncertainty.Of(stock, facts.FindStock);
        return new Sheet("stock", stock.Stock.Name, stock.Stock.File,
        [
            .. new[]
            {
                new SheetSection("about", "About", About(stock)),
                new SheetSection("hazards", "Cautions", [.. HazardGate.Of(stock).Hazards.Select(HazardWords.Caution)]),
                Additions(stock),
                Elements(stock, uncertainty),
                States(stock),
                Room(stock),
                FallsOut(stock),
                new SheetSection(
                    "mixings", "Mixed many times", mixings == 0 ? [] : TrialWords.Of(ShopTrials.Of(facts, stock, mixings), stock)),
                CostSections.Of(stock),
                HouseRuleSection.Of(facts, stock.Stock.File, HouseRuleScope.Stock),
                new SheetSection(
                    "assumed",
                    "Assumed",
                    [.. stock.Assumptions.Concat(uncertainty.Assumptions).Select(a => a.Text).Distinct(StringComparer.Ordinal)]),
            }.Where(s => !s.IsEmpty),
        ]);
    }

    private static List<string> About(StockFacts stock)
    {
        var keep = stock.Stock.Keep;
        var dosed = stock.Stock.Dose?.Value is { LitresPerLitre: > 0 } dose
            ? $", dosed {Say.Number(dose.MillilitresPerLitre)} mL/L (1:{Say.Number(dose.Dilution)})"
            : "";
        var howLong = keep?.For is { } time ? $" for {Say.Days(time.Value.Days)}" : "";
        var light = keep?.Light is { } written ? $", {Light(written.Value)}" : "";
        var says = new List<string>
        {
            $"Makes {Say.Litres(stock.Volume.Litres)}{dosed}.",
            $"{Say.Capital(KeptWords.Span(stock))}{howLong}{light}.",
        };
        if (!stock.IsComplete || !stock.Chemistry.IsComplete)
        {
            says.Add(
                "Something could not be read or is of unknown composition: figures are computed without it. 'recipelint check' says what.");
        }

        return says;
    }

    private static string Light(Recipes.Documents.LightExposure light) => light switch
    {
        Recipes.Documents.LightExposure.Dark => "in the dark",
        Recipes.Documents.LightExposure.Shade => "in the shade",
        _ => "in the light",
    };

    private static SheetSection Additions(StockFacts stock) => new(
        "additions", "What goes in", [],
        new Table(
            [new("what"), new("amount", true), new("± %", true), new("taken with")],
            [
                .. stock.Additions.Select(a => (IReadOnlyList<string>)
                [
                    a.Substance.Name,
                    a.Volume is { } volume && a.Scale is null ? Say.Litres(volume.Litres) : Say.Grams(a.Mass.Grams),
                    a is { Scale: { } scale, ThroughAliquot: false }
                        ? Cells.Number(100 * new Weighing(scale, a.Mass).RelativeExpanded)
                        : "",
                    a.ThroughAliquot ? "a part of another stock" : (a.Scale?.Name ?? a.Measure?.Name ?? "not said"),
                ]),
            ]));

    private static SheetSection Elements(StockFacts stock, UncertaintyFacts uncertainty)
    {
        var dose = stock.Stock.Dose?.Value.LitresPerLitre;
        var rows = FactsJson.MassesOf(stock.Totals)
            .Where(m => m.Name is not ("H" or "O" or "C"))
            .Select(m => (m.Name, Concentration: new Mass(m.Grams) / stock.Volume))
            .OrderByDescending(m => m.Concentration)
            .Select(m => (IReadOnlyList<string>)
            [
                m.Name,
                Say.Number(m.Concentration.GramsPerLitre),
                Cells.Number(uncertainty.Elements.GetValueOrDefault(m.Name) is { } known ? 100 * known.RelativeExpanded : null),
                Say.Number((m.Concentration / new MolarMass(AtomicWeights.Of(NutrientKeys.ElementOf(m.Name)))).MillimolesPerLitre),
                Cells.Number(dose * m.Concentration.MilligramsPerLitre),
            ]);
        return new SheetSection(
            "elements", "What it holds", [],
            new Table([new("element"), new("g/L", true), new("± %", true), new("mmol/L", true), new("mg/L in the tank", true)], [.. rows]),
            dose is null ? ["It states no dose, so what reaches the tank is not known."] : []);
    }

    private static SheetSection States(StockFacts stock)
    {
        var rows = stock.Chemistry.States.Select(s => (IReadOnlyList<string>)(s.IsSolved
            ?
            [
                StateFactsJson.MomentName(s), Say.Number(s.Temperature.Celsius), Cells.Ph(s),
                Cells.Number(s.Density?.GramsPerMillilitre),
                Say.Number(s.IonicStrengthMolPerKg), StateFactsJson.TrustName(s.Validity.Trust),
            ]
            : [StateFactsJson.MomentName(s), Say.Number(s.Temperature.Celsius), "", "", "", s.Failure!]));
        return new SheetSection(
            "states", "As a solution", [],
            new Table([new("moment"), new(
                "°C", true), new("pH", true), new("g/mL", true), new("ionic strength mol/kg", true), new("figures are")], [.. rows]),
            [
                .. stock.Chemistry.States.SelectMany(s => s.Validity.Reasons).Distinct(StringComparer.Ordinal),
                .. PhDoubt.Of(stock.Chemistry.Mixing) is { } doubt ? [$"The pH is {doubt}."] : Array.Empty<string>(),
            ]);
    }

    /// <summary>How strong it may be made, as 'stretch' says it.</summary>
    private static SheetSection Room(StockFacts stock)
    {
        var rows = StockStretch.Judged(stock).Select(r => (IReadOnlyList<string>)
        [
            Say.Number(r.At.Celsius),
            r.Highest.Factor is { } factor
                ? (factor >= HighestConcentration.MostFactor ? "more than " : "") + Say.Number(factor)
                : "none",
            r.NoRoom ? "no room is left for water"
                : r.Highest.Failure ?? (r.Highest.StoppedBy.Count > 0 ? SolidWords.Called(r.Highest.StoppedBy[0]) : ""),
        ]);
        return new SheetSection(
            "room", "Room to the nearest solid", [],
            new Table([new("kept at °C", true), new("times the strength", true), new("then falls out")], [.. rows]),
            "Below 1 it is too strong already. Near a limit nothing is promised.");
    }

    /// <summary>What falls out in time, once the air has been at the iron; null for nothing.</summary>
    private static string? Later(StockFacts stock)
    {
        if (stock.Chemistry.Aged is not { IsSolved: true } aged)
        {
            return null;
        }

        var falls = DepositJudgement.Of(aged, DepositOptions.Of(stock.Settings)).Deposits.Where(d => d.FallsOut)
            .Select(d => $"{Say.Grams(d.GramsPerLitre)}/L of {SolidWords.Called(d.Solid)}").ToList();
        return falls.Count == 0 ? null : $"Once the air has oxidised the iron: {Say.List(falls)}.";
    }

    private static SheetSection FallsOut(StockFacts stock)
    {
        var judged = DepositJudgement.Of(stock, DepositOptions.Of(stock.Settings));
        var later = Later(stock);
        return new SheetSection(
            "deposits", "What does not stay dissolved",
            judged.Failure is { } failure ? [failure]
                : [.. judged.IsClear ? new[] { later is null ? "Nothing that counts." : "Nothing that counts as it is mixed." } : [],
                    .. later is null ? Array.Empty<string>() : [later]],
            new Table(
                [new("solid"), new("when"), new("g/L", true), new("times its limit", true)],
                [
                    .. judged.Deposits.Select(d => (IReadOnlyList<string>)
                    [
                        SolidWords.Called(d.Solid),
                        d.Solid.TemperatureKnown && d.UntoldHolder is { } agent
                            ? $"{Say.Number(d.State.Temperature.Celsius)} °C; how firmly {agent} holds metals is known at 25 °C only"
                            : d.Solid.TemperatureKnown
                            ? $"{StateFactsJson.MomentName(d.State)}, {Say.Number(d.State.Temperature.Celsius)} °C"
                            : $"{Say.Number(d.State.Temperature.Celsius)} °C; how it changes with temperature is not known",
                        d.FallsOut ? Say.Number(d.GramsPerLitre) : "comes close", Say.Number(Math.Pow(10, d.Index)),
                    ]),
                ]),
            [.. judged.Untold.Select(s => $"Whether {SolidWords.Called(s)} stays dissolved cannot be told in so strong a solution.")]);
    }
}
