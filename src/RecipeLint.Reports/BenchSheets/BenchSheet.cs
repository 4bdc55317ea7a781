using RecipeLint.Advice;
using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Editions;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Labels;
using RecipeLint.Reports.Show;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.People;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>One line of the sheet.</summary>
/// <param name="Does">"weigh out 35.2 g of potassium dihydrogen phosphate and add it".</param>
/// <param name="Exact">What the recipe asks for: g, or L for a liquid; null for handling.</param>
/// <param name="Shown">The same as the scale or measure can show it; null where there is none.</param>
/// <param name="Step">Smallest step of that scale or measure, in the unit of the two.</param>
/// <param name="IsVolume">True where the two are litres.</param>
/// <param name="With">Scale or measure; null where the shop has none that fits.</param>
/// <param name="Expect">What it looks like then, with pH and temperature.</param>
/// <param name="Notes">Why the tool is the one, what to mind.</param>
public sealed record SheetLine(
    int Number, string Does, double? Exact, double? Shown, double? Step, bool IsVolume, string? With, string Expect,
    IReadOnlyList<string> Notes)
{
    /// <summary>What rounding to the display changes, as a fraction of what is asked; null where nothing is measured.</summary>
    public double? RoundingError => Exact is > 0 and var exact && Shown is { } shown ? (shown - exact) / exact : null;

    /// <summary>True where something is measured, so that there is a weight and a lot to write down.</summary>
    public bool IsMeasured => Exact is not null;
}

/// <summary>One page for whoever mixes a batch; every figure is computed for that batch. Pure.</summary>
public sealed record BenchSheet
{
    public required string Name { get; init; }

    public required string File { get; init; }

    public required Volume Batch { get; init; }

    /// <summary>Why nothing is to be mixed, whole sentences; empty when it may be.</summary>
    public IReadOnlyList<string> Refused { get; init; } = [];

    public IReadOnlyList<string> Cautions { get; init; } = [];

    public IReadOnlyList<string> Protection { get; init; } = [];

    public IReadOnlyList<SheetLine> Lines { get; init; } = [];

    /// <summary>What means stop, and what to do then.</summary>
    public IReadOnlyList<string> Stops { get; init; } = [];

    /// <summary>What to weigh and measure afterwards.</summary>
    public IReadOnlyList<string> Checks { get; init; } = [];

    public IReadOnlyList<string> CleanUp { get; init; } = [];

    public IReadOnlyList<string> Further { get; init; } = [];

    /// <summary>Errors that a check finds in the stock, however carefully it is mixed; empty until it was asked.</summary>
    public IReadOnlyList<Finding> Objections { get; init; } = [];

    /// <summary>The same with what a check says of the stock, before anything else that is to be minded. Pure.</summary>
    /// <param name="stock">The one that the sheet was made of.</param>
    /// <param name="today">The day suppressions are held against.</param>
    public BenchSheet Checked(Workspace workspace, StockFacts stock, DateOnly today)
    {
        if (Refused.Count > 0)
        {
            return this;
        }

        var objections = CheckedStock.Errors(workspace, stock.Stock, today);
        return this with
        {
            Objections = objections,
            Cautions =
            [
                .. objections.Select(f => "However carefully it is mixed, 'recipelint check' calls it wrong, "
                    + $"{f.Rule.Id}: {Sentences.First(f.Message)}"),
                .. Cautions,
            ],
        };
    }

    /// <param name="batch">How much is made.</param>
    public static BenchSheet Of(Workspace workspace, StockFacts asWritten, Volume batch)
    {
        var stock = ScaledBatch.Of(asWritten, batch / asWritten.Volume);
        var gate = HazardGate.Of(stock);
        var refusal = gate.Forbids(VesselAction.Order);
        var sheet = new BenchSheet
        {
            Name = stock.Stock.Name,
            File = stock.Stock.File,
            Batch = batch,
        };
        if (refusal is not null)
        {
            // Nothing of how to pour or weigh: it is not mixed, and what to do is the last word.
            return sheet with { Refused = [.. OthersOf(gate, refusal.Hazard), .. HazardWords.Refused(refusal)] };
        }

        if (UnknownContents.Of(stock) is { } unknown)
        {
            return sheet with { Refused = [HazardWords.Untold(unknown)] };
        }

        var proof = Proof.Of(workspace, stock);
        return sheet with
        {
            Cautions = CautionsOf(stock, gate.Hazards),
            Protection = ProtectionOf(stock),
            Lines = [.. stock.Mixing.Steps.Select(s => LineOf(stock, s))],
            Stops = StopsOf(stock, gate),
            Checks = [.. ProofReport.Checks(proof)],
            CleanUp =
            [
                "Rinse scoops, jugs and stirrers with water at once; a dried crust is the next batch's wrong weight.",
                "Spilled salt is swept up dry, then wiped. Rinsings and rests follow local rules; concentrates do not go down a drain.",
                "Close every bag, label the bottle before it leaves the bench, wash hands.",
            ],
            Further =
            [
                $"recipelint show {stock.Stock.File}: what it holds",
                $"recipelint proof {stock.Stock.File}: which slips the checks would show",
                $"recipelint order {stock.Stock.File}: whether another order is safer",
                $"recipelint label {stock.Stock.File}: the label of the bottle",
                .. Edition.Of(workspace, stock.Stock.File) is { } edition
                    ? new[]
                    {
                        $"recipelint bench-sheet {stock.Stock.File} --record run.batch.json: begins the record of this batch, with the "
                            + $"edition {edition} of the file",
                    }
                    : [],
                "the safety data sheet of every substance, which comes before this sheet",
            ],
        };
    }

    /// <summary>What else is in what must not be mixed, a sentence each.</summary>
    private static IEnumerable<string> OthersOf(HazardReport gate, Hazard refused) =>
        gate.Present.Where(h => h != refused).Select(HazardWords.Of).Distinct(StringComparer.Ordinal);

    private static List<string> CautionsOf(StockFacts stock, IEnumerable<Hazard> hazards)
    {
        var cautions = hazards.Select(HazardWords.Caution).Distinct(StringComparer.Ordinal).ToList();
        cautions.AddRange(MixtureStatements.Of(stock).Select(s => $"The finished stock: {GhsWords.Statement(s)}"));
        cautions.AddRange(stock.Additions.Select(a => a.Substance).DistinctBy(s => s.Id)
            .Select(s => (s.Name, Codes: s.Hazards is { } hazards ? hazards.Statements.Concat(hazards.SupplierAdds).ToList() : []))
            .Where(s => s.Codes.Count > 0)
            .Select(s => $"{Say.Capital(s.Name)} as bought: {string.Join(", ", s.Codes.Select(GhsWords.InASentence))}."));
        if (stock.Additions.Any(a => a.Substance.Kind == SubstanceKind.Acid)
            || stock.Adjustments.Any(a => a.Reagent?.Kind == SubstanceKind.Acid))
        {
            cautions.Add("Pour acid into water, slowly and stirring, never water into acid.");
        }

        return cautions;
    }

    private static List<string> ProtectionOf(StockFacts stock)
    {
        var protection = new List<string> { "Goggles that close at the sides, gloves and an apron (common practice)." };
        if (stock.Additions.Any(a => a is { ThroughAliquot: false, Substance.Form: PhysicalForm.Solid }))
        {
            protection.Add("Weigh powders without raising dust; a dust mask where it rises all the same.");
        }

        if (stock.Additions.Any(a => a.Substance.Hazards?.Statements.Any(s => s is "H314" or "H331" or "EUH071") == true))
        {
            protection.Add("Strong acids and alkalis only with a face shield, moving air and running water within reach.");
        }

        return protection;
    }

    private static List<string> StopsOf(StockFacts stock, HazardReport gate)
    {
        var stops = gate.Hazards.Where(h => h.Grade >= HazardGrade.Possible)
            .Select(h => $"You notice {h.Text.Notice}: {h.Text.First}")
            .Distinct(StringComparer.Ordinal)
            .ToList();
        stops.Add(
            "It turns cloudy or drops a solid where this sheet says clear: stop, add nothing more, keep the vessel and note after which "
                + "step. "
            + $"'recipelint diagnose {stock.Stock.File} --seen ...' says what it may be.");
        stops.Add("A weight was missed by more than the scale's step, or a bag was taken by mistake: write down what really went in "
            + "before going on.");
        return stops;
    }

    private static SheetLine LineOf(StockFacts stock, MixingStep step)
    {
        var (amount, tool) = Measured(stock, step);
        return new SheetLine(
            step.Index + 1, Does(step, stock, amount), amount?.Value, tool is { } known ? known.Shown : null, tool?.Step,
            amount?.IsVolume ?? false,
            tool?.Name ?? Mark(stock, step), Expect(stock, step), Notes(step, amount, tool));
    }

    /// <summary>The mark that the last top-up goes up to, by the measure or vessel it is read on; null for other steps.</summary>
    private static string? Mark(StockFacts stock, MixingStep step) =>
        step.Step is TopUpStep && step.Index == stock.Mixing.Steps.Where(s => s.Step is TopUpStep).Max(s => s.Index)
            ? FinishedVolume.Of(stock)?.Pouring.Measure.Name
            : null;

    /// <summary>What is taken in a step and with which scale or measure.</summary>
    private static (Quantity? Amount, Tool? Tool) Measured(StockFacts stock, MixingStep step)
    {
        if (stock.Aliquots.FirstOrDefault(a => a.Place == step.Step.Place) is { } aliquot)
        {
            return (new Quantity(aliquot.Volume.Litres, true), Tool.ForVolume(stock.Settings, aliquot.Volume, aliquot.Measure));
        }

        if (step.Added is [{ ThroughAliquot: false } addition, ..])
        {
            return addition is { Volume: { } volume, Scale: null }
                ? (new Quantity(volume.Litres, true), Tool.ForVolume(stock.Settings, volume, addition.Measure))
                : (new Quantity(addition.Mass.Grams, false), Tool.ForMass(stock, addition));
        }

        if (stock.Adjustments.FirstOrDefault(a => a.Place == step.Step.Place) is { Amount: { } grams } adjustment)
        {
            return adjustment.Volume is { } poured ? (new Quantity(poured.Litres, true), null) : (new Quantity(grams.Grams, false), null);
        }

        return step.Step is PourStep { Volume: { } water }
            ? (new Quantity(water.Value.Litres, true), Tool.ForVolume(stock.Settings, water.Value, null))
            : (null, null);
    }

    private static string Does(MixingStep step, StockFacts stock, Quantity? amount)
    {
        var much = amount is { } known ? known.IsVolume ? Say.Litres(known.Value) : Say.Grams(known.Value) : "";
        return step.Step switch
        {
            PourStep pour =>
                $"Pour {much} of {Water(stock.Waters.FirstOrDefault(w => w.Place == pour.Place))} into the vessel.",
            AddStep add =>
                $"{(amount is { IsVolume: true } ? "Measure" : "Weigh")} {much} of {add.Substance?.Name ?? add.What.Value} and add it, "
                    + "stirring.",
            AliquotStep aliquot => $"Measure {much} of '{aliquot.What.Value}' and add it, stirring.",
            AdjustStep =>
                Say.Capital(StepWords.Of(step.Step))
                    + (much.Length > 0 ? $"; that takes about {much}: add nine tenths, measure, then drop by drop." : "."),
            _ => Say.Capital(StepWords.Of(step.Step)) + ".",
        };
    }

    /// <summary>A built-in water by its kind, any other by the name of its file.</summary>
    private static string Water(WaterFacts? water) =>
        water is null ? "distilled water" : water.Water is null ? $"{water.Name} water" : water.Name;

    private static string Expect(StockFacts stock, MixingStep step)
    {
        var state = stock.Mixing.States[step.Index];
        if (state.IsEmpty)
        {
            return "clear water";
        }

        if (state.Failure is { } failure)
        {
            return $"not computed: {failure}";
        }

        var seen = state.Solids.Where(s => s.Mass.Grams / step.After.Litres >= Analysis.Equilibria.SolidDeposit.VisibleGramsPerLitre)
            .Select(s => s.Undissolved is { } salt
                ? $"{Say.Grams(s.Mass.Grams)} of {salt.Name} not yet dissolved"
                : $"cloudy: {Say.Grams(s.Mass.Grams)} of {(s.Solid is { } solid ? Rules.Precipitation.SolidWords.Called(solid) : s.Name)}")
            .ToList();
        var colours = step.After.Additions.Select(a => a.Substance.Colour).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        var look = seen.Count > 0 ? Say.List(seen) : colours.Count > 0 ? $"clear, {Say.List(colours)}" : "clear";
        var ph = PhDoubt.In(step.After.Additions, step.After.Litres) ? "not known" : Cells.Ph(state.Ph);
        return $"{look}; pH {ph}; {Warmth(step)}";
    }

    /// <summary>How warm it is then. Every step begins at the temperature of the bench, or at what the vessel was warmed to.</summary>
    private static string Warmth(MixingStep step)
    {
        var begins = step.At.Celsius;
        return step.HeatOfDissolving is not { ChangeKelvin: { } change } || Math.Abs(change) < 1 ? $"{Say.Number(begins)} °C"
            : begins + change <= 0
                ? "would chill bench-warm water to freezing: take warm water, and let it come back to room temperature before going on"
            : $"{(change < 0 ? "cools" : "warms")} by about {Say.Number(Math.Round(Math.Abs(change)))} °C, to "
                + $"{Say.Number(Math.Round(begins + change))} °C";
    }

    private static List<string> Notes(MixingStep step, Quantity? amount, Tool? tool)
    {
        var notes = new List<string>();
        if (step.Step.Note is { } note)
        {
            notes.Add(note);
        }

        if (amount is not null && tool is null && step.Step is AddStep or AliquotStep)
        {
            notes.Add("The shop has no scale or measure that fits: see recipelint.json.");
        }

        if (tool is { Portions: > 1 } often)
        {
            notes.Add($"In {Say.Number(often.Portions)} portions.");
        }

        return notes;
    }

    private readonly record struct Quantity(double Value, bool IsVolume);
}
