using System.Globalization;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Show;

namespace RecipeLint.Reports.Dissolve;

/// <summary>What a beaker comes to, as a text of at most 100 columns in words for whoever learns it. Pure.</summary>
public static class DissolveReport
{
    /// <summary>Columns no line exceeds.</summary>
    public const int Width = 100;

    /// <summary>Salts are mentioned from this index on: a tenth of their saturated product.</summary>
    private const double MentionedFromIndex = -1;

    /// <summary>Species that hold less than this share of a component go unnamed.</summary>
    private const double NamedShare = 0.01;

    /// <summary>Constants without an enthalpy are those of this temperature, and serve as they are within so many degrees of it.</summary>
    private const double ConstantsAtCelsius = 25, NearTheirTemperature = 5;

    /// <summary>Free ammonia below this share of the ammonium goes unsaid.</summary>
    private const double LeastAmmonia = 0.005;

    /// <summary>No and why, for a beaker that nobody should mix; null for any other.</summary>
    public static string? Refused(Beaker beaker)
    {
        if (HazardGate.Of(beaker).ForLeaving is not { } danger)
        {
            return null;
        }

        var page = new TablePage();
        foreach (var sentence in HazardWords.Refused(new Refusal(danger, VesselAction.Order, null, false)))
        {
            page.Text(sentence);
        }

        return page.ToString();
    }

    /// <summary>
    /// What things that were named without amounts can do together, and what to do; null where nothing is known to happen.
    /// </summary>
    /// <param name="dangers">The gravest first.</param>
    public static string? Unweighed(IReadOnlyList<Hazard> dangers)
    {
        if (dangers is not [var worst, ..])
        {
            return null;
        }

        var page = new TablePage();
        IEnumerable<string> said = worst.NeedsParting
            ? HazardWords.Refused(new Refusal(worst, VesselAction.KeepTogether, null, false))
            : worst.IsForLeaving ? HazardWords.Refused(new Refusal(worst, VesselAction.Order, null, false))
            : [HazardWords.Caution(worst), $"{worst.Text.First} {worst.Text.Help}", HazardText.Deference];
        foreach (var sentence in dangers.Skip(1).Aggregate(said, (all, other) => all.Append(HazardWords.Of(other))))
        {
            page.Text(sentence);
        }

        page.Text("This goes by both as they are bought, one put onto the other, whatever the amounts.");
        return page.ToString();
    }

    /// <param name="beaker">What was put in.</param>
    /// <param name="state">Its state; must be solved.</param>
    /// <param name="setPh">The pH that was asked for; null when it follows.</param>
    /// <param name="full">Every species too.</param>
    /// <param name="held">True when that pH was held while things fell out.</param>
    /// <exception cref="ArgumentException">The state has a failure.</exception>
    public static string Write(Beaker beaker, SolutionState state, double? setPh, bool full, bool held = false)
    {
        if (!state.IsSolved)
        {
            throw new ArgumentException("There is no state to show.", nameof(state));
        }

        var page = new TablePage();
        page.Text(string.Create(
            CultureInfo.InvariantCulture,
            $"In {Figure(beaker.Volume.Litres)} L of solution at {state.Temperature.Celsius:0.#} °C, "
                + $"{(state.OpenToAir ? "open to the air" : "closed to the air")}"));
        page.Blank();
        page.Head("put in", ["g/L"]);
        foreach (var item in beaker.Items)
        {
            page.Row(item.Substance.Name, [Figure(item.Mass.Grams / beaker.Volume.Litres)]);
        }

        page.Blank();
        foreach (var hazard in HazardGate.Of(beaker).Hazards)
        {
            page.Text(HazardWords.Caution(hazard));
        }

        WriteDeposits(page, state);
        WriteSolution(page, state, setPh, held);
        WriteNear(page, state);
        WriteDissolved(page, state);
        WriteHolders(page, state);
        if (full)
        {
            WriteSpecies(page, state);
        }

        WriteTrust(page, state);
        return page.ToString();
    }

    private static void WriteDeposits(TablePage page, SolutionState state)
    {
        var judgement = DepositJudgement.Of(state, DepositLimits.Default);
        var counted = judgement.Deposits;
        var later = counted.Where(d => d.State != state).SelectMany(d => d.Deposits).ToList();
        if (state.Deposits.Count + later.Count == 0)
        {
            page.Text(UreaSolubility.IsPassed(state.Solution!, state.Mix.Totals)
                ? "Nothing falls out that the model follows; of urea there is more than water holds."
                : "Everything dissolves; nothing falls out.");
            page.Blank();
            return;
        }

        page.Head("falls out", ["g/L", "mmol/L", "index"]);
        foreach (var deposit in state.Deposits)
        {
            Row(deposit, Remark(deposit, counted.FirstOrDefault(d => d.Deposits.Any(s => s.Solid == deposit.Solid))));
        }

        foreach (var deposit in later)
        {
            Row(deposit, " (once the air has oxidised the iron)");
        }

        page.Blank();

        void Row(SolidDeposit deposit, string remark) => page.Row(
            NameOf(deposit.Solid) + remark,
            [Figure(deposit.Mass.GramsPerLitre), Figure(deposit.Amount.MillimolesPerLitre), Signed(deposit.Index)]);
    }

    private static string Remark(SolidDeposit deposit, JudgedDeposit? counted) =>
        counted is { Sureness: Sureness.NearTheLimit, Salt: null } ? $" (index good to ±{Figure(Math.Round(counted.Doubt, 1))})"
        : counted is not null ? ""
        : deposit.IsTrace ? " (a trace)"
        : deposit.Mass.GramsPerLitre < DepositLimits.Default.Of(deposit.Solid.Owner ?? "").Visible ? " (too little to matter)"
        : " (counted by no rule)";

    private static void WriteSolution(TablePage page, SolutionState state, double? setPh, bool held)
    {
        page.Head("the solution", []);
        page.Row("pH", [setPh is null ? Cells.Ph(state) : Cells.Ph(state.Ph)], PhNote(state, setPh, held));
        page.Row(
            "EC at 25 °C",
            [state.Conductivity.At25 is { } ec ? Figure(ec.MillisiemensPerCentimetre) + " mS/cm" : "not given"],
            state.Conductivity.NotGivenBecause ?? (state.Conductivity.EstimateBecause is [var first, ..] ? first : null));
        page.Row("density", [state.Density is { } density
            ? density.GramsPerMillilitre.ToString("0.000", CultureInfo.InvariantCulture) + " g/mL"
            : "not given"]);
        page.Row("ionic strength", [Figure(state.IonicStrengthMolPerKg) + " mol/kg"]);
        page.Row("osmotic potential", [state.OsmoticPotentialMPa is { } potential ? Figure(potential) + " MPa" : "not given"]);
        if (Frost.Of(state.Mix, DepositLimits.Default, setPh) is { } frost)
        {
            page.Row(
                "ice",
                [Ice(frost)],
                frost.Before is { } before ? $"{before.Called} falls out before it" : null);
        }

        if (AmmoniaShare(state.Solution!) is >= LeastAmmonia and var ammonia)
        {
            page.Row(
                "ammonia",
                [string.Create(CultureInfo.InvariantCulture, $"{100 * ammonia:0.##} %")],
                "of the ammonium is free ammonia: it smells, and roots and fish bear little of it");
        }

        foreach (var acid in state.Preservatives)
        {
            page.Row(
                acid.Acid + ", undissociated",
                [Figure(acid.Undissociated.GramsPerLitre) + " g/L"],
                string.Create(CultureInfo.InvariantCulture, $"{100 * acid.Share:0} % of it is in the form that acts"));
        }

        page.Blank();
    }

    /// <summary>From where ice may be to where the model has it, in half degrees: it is known to no more.</summary>
    private static string Ice(Frost frost)
    {
        var from = Half(frost.IceFrom.Celsius);
        return frost.IceAt is not { } ice ? string.Create(CultureInfo.InvariantCulture, $"below {from:0.#} °C")
            : from > -0.25 ? "just below 0 °C"
            : Half(ice.Celsius) == from ? string.Create(CultureInfo.InvariantCulture, $"at about {from:0.#} °C")
            : string.Create(CultureInfo.InvariantCulture, $"at {from:0.#} to {Half(ice.Celsius):0.#} °C");

        static double Half(double celsius) => (Math.Ceiling(2 * celsius) / 2) + 0.0;
    }

    /// <summary>Share of ammonium and ammonia together that is ammonia, 0 to 1; 0 without either.</summary>
    private static double AmmoniaShare(Equilibrium solution)
    {
        double ammonia = solution.Molality("NH3"), all = ammonia + solution.Molality(Component.Ammonium);
        return all > 0 ? ammonia / all : 0;
    }

    private static string? PhNote(SolutionState state, double? setPh, bool held)
    {
        if (setPh is null)
        {
            return PhDoubt.Of(state) is { } doubt ? doubt["not known: ".Length..]
                : Math.Abs(state.Ph - state.PhBeforeDeposit) > 0.005
                ? $"{Cells.Ph(state.PhBeforeDeposit)} before anything falls out"
                : null;
        }

        if (held)
        {
            var dosed = state.Solution!.ChargeGapEquivalentsPerKg * state.KilogramsWaterLeftPerLitre * 1000;
            return Math.Abs(dosed) < 1e-6
                ? "as held"
                : $"held; that takes {Figure(Math.Abs(dosed))} mmol/L of a strong {(dosed > 0 ? "acid" : "alkali")} in all";
        }

        var gap = state.Clear!.ChargeGapEquivalentsPerKg * state.KilogramsWaterPerLitre * 1000;
        var set = Math.Abs(state.Ph - state.PhBeforeDeposit) > 0.005
            ? string.Create(CultureInfo.InvariantCulture, $"set to {setPh:0.00} before anything falls out")
            : "as set";
        return Math.Abs(gap) < 1e-6 ? set : $"{set}; that takes {Figure(Math.Abs(gap))} mmol/L of a strong {(gap > 0 ? "acid" : "alkali")}";
    }

    private static void WriteNear(TablePage page, SolutionState state)
    {
        var fallen = state.Deposits.Select(d => d.Solid.Name).ToHashSet(StringComparer.Ordinal);
        var untold = DepositJudgement.UntoldIn(state);
        var rows = state.NearSaturation
            .Where(s => !fallen.Contains(s.Solid.Name))
            .Select(s => (s.Solid, s.Index, Note: Forming.StaysDissolvedBecause(state.Mix, s.Solid) is { } held
                ? held
                : untold.Contains(s.Solid)
                ? $"cannot be told: the model ends at an ionic strength of {Figure(SaltVerdicts.HighestIonicStrength)} mol/kg"
                : s.Solid.Role == SolidRole.FormsSlowly
                ? (s.Index > 0 ? "over saturation, but it forms slowly" : "forms slowly")
                : s.Index > 0 ? "over saturation, but what falls out leaves it too little" : "near"))
            .Concat(state.Salts
                .Where(v => !fallen.Contains(v.Solid.Name)
                    && v.Solid.Role == SolidRole.SolubleSalt
                    && (v.State != SaltState.Clear || v.Index > MentionedFromIndex))
                .Select(v => (v.Solid, v.Index, Note: v.State switch
                {
                    SaltState.Clear => "stays dissolved",
                    SaltState.Close => "too close to promise",
                    _ => "over saturation, but what falls out leaves it too little",
                })))
            .OrderByDescending(r => Math.Round(r.Index, 9))
            .ThenBy(r => r.Solid.Name, StringComparer.Ordinal)
            .ToList();
        if (rows.Count == 0)
        {
            return;
        }

        page.Head("near saturation", ["index"]);
        foreach (var (solid, index, note) in rows)
        {
            page.Row(NameOf(solid), [Signed(index)], note);
        }

        page.Blank();
    }

    private static void WriteDissolved(TablePage page, SolutionState state)
    {
        page.Head("stays dissolved", ["mmol/L"], "mostly as");
        foreach (var (component, moles) in state.DissolvedMolesPerLitre
            .OrderByDescending(d => d.Value)
            .ThenBy(d => d.Key, StringComparer.Ordinal))
        {
            page.Row(component, [Figure(moles * 1000)], Forms(state.Solution!, component));
        }

        page.Blank();
    }

    /// <summary>The species that hold a component, the largest first: "SO4-2 88 %, MgSO4 12 %".</summary>
    private static string? Forms(Equilibrium solution, string component)
    {
        var held = solution.Species
            .Select(s => (s.Name, Amount: SpeciesComposition.Of(s.Name).Where(p => p.Key == component).Sum(p => p.Value) * s.MolPerKg))
            .Where(s => s.Amount > 0)
            .OrderByDescending(s => s.Amount)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .ToList();
        var total = held.Sum(s => s.Amount);
        var named = held.Where(s => s.Amount >= NamedShare * total).Take(4).ToList();
        return named.Count == 0 || (named.Count == 1 && named[0].Name == component)
            ? null
            : string.Join(", ", named.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name} {100 * s.Amount / total:0.#} %")));
    }

    private static void WriteHolders(TablePage page, SolutionState state)
    {
        var rows = state.Metals.Where(m => state.Chelates.Any(c => c.Metal == m.Metal)).ToList();
        if (rows.Count == 0)
        {
            return;
        }

        page.Head("held by chelates", ["share"]);
        foreach (var metal in rows)
        {
            var held = state.Chelates
                .Where(c => c.Metal == metal.Metal)
                .OrderByDescending(c => c.OfMetal)
                .ThenBy(c => c.Agent, StringComparer.Ordinal)
                .ToList();
            page.Row(
                metal.Metal,
                [string.Create(CultureInfo.InvariantCulture, $"{100 * held.Sum(c => c.OfMetal):0.#} %")],
                string.Join(", ", held.Where(c => c.OfMetal >= 0.0005)
                    .Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Agent} {100 * c.OfMetal:0.#} %")))
                + $"; not held: {Small(metal.Unchelated)}");
        }

        page.Blank();
    }

    private static void WriteSpecies(TablePage page, SolutionState state)
    {
        page.Head("every species", ["mmol/kg", "log activity"]);
        foreach (var species in state.Solution!.Species.OrderByDescending(s => s.MolPerKg).ThenBy(s => s.Name, StringComparer.Ordinal))
        {
            page.Row(species.Name, [Figure(species.MolPerKg * 1000), species.LogActivity.ToString("0.000", CultureInfo.InvariantCulture)]);
        }

        page.Blank();
    }

    private static void WriteTrust(TablePage page, SolutionState state)
    {
        page.Text(state.Validity.Trust switch
        {
            Trust.InRange => "Inside the range of the model.",
            Trust.Estimate => "An estimate:",
            _ => "Outside the range of the model:",
        });
        foreach (var reason in state.Validity.Reasons)
        {
            page.Text("- " + reason);
        }

        foreach (var chelator in Components.Chelators.Where(c => state.Mix.Totals[c] > 0
            && Math.Abs(state.Temperature.Celsius - ConstantsAtCelsius) > NearTheirTemperature
            && !ConstantSet.Product.ChangesWithTemperature(c)))
        {
            page.Text(string.Create(CultureInfo.InvariantCulture,
                $"How firmly {Components.Word(chelator)} holds metals is known at {ConstantsAtCelsius} °C only; the same is taken here."));
        }

        page.Text("An index is log10 of the product of the ions over the product that saturates: 0 is saturated, above 0 too much.");
        page.Text("Minerals that do not form in a bottle and solids whose constants are too weak for a verdict are left out.");
    }

    private static string Small(AmountConcentration amount) => amount.MillimolesPerLitre < 0.1
        ? Figure(amount.MolesPerLitre * 1e6) + " µmol/L"
        : Figure(amount.MillimolesPerLitre) + " mmol/L";

    private static string NameOf(Solid solid) => $"{solid.Name} ({solid.Formula})";

    private static string Signed(double index) => index.ToString("+0.00;-0.00;0.00", CultureInfo.InvariantCulture);

    /// <summary>Four significant digits without an exponent where that stays readable.</summary>
    private static string Figure(double value)
    {
        if (value == 0)
        {
            return "0";
        }

        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return magnitude is < -5 or > 6
            ? value.ToString("0.00E+0", CultureInfo.InvariantCulture)
            : Math.Round(value, Math.Clamp(3 - magnitude, 0, 9)).ToString("0.#########", CultureInfo.InvariantCulture);
    }
}
