using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>One solution at one moment.</summary>
internal static class StateFactsJson
{
    /// <param name="full">Every dissolved species too.</param>
    public static void Write(FactsJson facts, SolutionState state, bool full)
    {
        var json = facts.Json;
        double? Known(double value) => state.IsSolved ? value : null;

        json.WriteStartObject();
        json.WriteString("moment", MomentName(state));
        facts.Number("temperature_degC", state.Temperature.Celsius);
        json.WriteBoolean("openToAir", state.OpenToAir);
        facts.Text("failure", state.Failure);
        facts.Number("pH", state.PhIsKnown ? Known(state.Ph) : null);
        facts.Number(
            "pH_beforeDeposit",
            state.PhIsKnown && PhDoubt.IsInTheModel(state.PhBeforeDeposit) ? Known(state.PhBeforeDeposit) : null);
        facts.Number("ionicStrength_mol_per_kg", Known(state.IonicStrengthMolPerKg));
        facts.Number("waterActivity", Known(state.WaterActivity));
        facts.Number("osmoticPotential_MPa", state.OsmoticPotentialMPa);
        facts.Number("density_g_per_mL", state.Density?.GramsPerMillilitre);
        json.WriteStartObject("conductivity");
        facts.Number("at25degC_mS_per_cm", state.Conductivity.At25?.MillisiemensPerCentimetre);
        facts.Text("reason", state.Conductivity.NotGivenBecause);
        Texts(facts, "estimateBecause", state.Conductivity.EstimateBecause);
        json.WriteEndObject();
        facts.Number("carbonateAlkalinity_meq_per_L", Known(state.CarbonateAlkalinity.MilliequivalentsPerLitre));
        json.WriteStartObject("validity");
        json.WriteString("trust", TrustName(state.Validity.Trust));
        Texts(facts, "reasons", PhDoubt.Why(state.Mix) is { } why ? [.. state.Validity.Reasons, $"pH {why}"] : state.Validity.Reasons);
        json.WriteEndObject();
        WriteSolids(facts, state);
        WriteDissolved(facts, state);
        if (full)
        {
            WriteSpecies(facts, state);
        }

        json.WriteEndObject();
    }

    /// <summary>How a moment is called.</summary>
    public static string MomentName(SolutionState state) => state.Moment switch
    {
        StateMoment.Mixing => "mixing",
        StateMoment.Coldest => "coldest storage",
        StateMoment.Warmest => "warmest storage",
        StateMoment.Aged => "aged",
        StateMoment.Turned => state.Mix.PyrophosphateTurned > 0 ? "pyrophosphate turned" : "sulfamate turned",
        StateMoment.Tank => "tank",
        StateMoment.TankInAir => "tank in air",
        StateMoment.TankAdjusted => "tank adjusted",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    private static void WriteSolids(FactsJson facts, SolutionState state)
    {
        var json = facts.Json;
        json.WriteStartObject("deposits");
        foreach (var deposit in state.Deposits)
        {
            json.WriteStartObject(deposit.Solid.Name);
            json.WriteString("formula", deposit.Solid.Formula);
            facts.Number("saturationIndex", deposit.Index);
            facts.Number("amount_mol_per_L", deposit.Amount.MolesPerLitre);
            facts.Number("mass_g_per_L", deposit.Mass.GramsPerLitre);
            json.WriteBoolean("trace", deposit.IsTrace);
            json.WriteBoolean("byHandbook", deposit.ByHandbook);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("nearSaturation");
        foreach (var standing in state.NearSaturation)
        {
            json.WriteStartObject(standing.Solid.Name);
            json.WriteString("formula", standing.Solid.Formula);
            facts.Number("saturationIndex", standing.Index);
            json.WriteBoolean("formsReadily", standing.Solid.Role == SolidRole.FormsReadily);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("salts");
        foreach (var salt in state.Salts)
        {
            json.WriteStartObject(salt.Solid.Name);
            json.WriteString("formula", salt.Solid.Formula);
            json.WriteString("verdict", salt.State switch { SaltState.Clear => "clear", SaltState.Close => "close", _ => "crystallises" });
            facts.Number("calibratedIndex", salt.CalibratedIndex);
            facts.Number("productIndex", salt.ProductIndex);
            facts.Number("handbookSolubility_mol_per_kg", salt.HandbookMolPerKg);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteDissolved(FactsJson facts, SolutionState state)
    {
        var json = facts.Json;
        json.WriteStartObject("dissolved");
        foreach (var (name, moles) in state.DissolvedMolesPerLitre)
        {
            json.WriteStartObject(name);
            facts.Number("concentration_mol_per_L", moles);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("metals");
        foreach (var metal in state.Metals)
        {
            json.WriteStartObject(metal.Metal);
            facts.Number("dissolved_mol_per_L", metal.Dissolved.MolesPerLitre);
            facts.Number("unchelated_mol_per_L", metal.Unchelated.MolesPerLitre);
            json.WriteStartObject("heldBy");
            foreach (var share in state.Chelates.Where(c => c.Metal == metal.Metal))
            {
                json.WriteStartObject(share.Agent);
                facts.Number("ofMetal_fraction", share.OfMetal);
                facts.Number("ofAgent_fraction", share.OfAgent);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("preservatives");
        foreach (var acid in state.Preservatives)
        {
            json.WriteStartObject(acid.Acid);
            facts.Number("undissociated_g_per_L", acid.Undissociated.GramsPerLitre);
            facts.Number("undissociated_fraction", acid.Share);
            facts.Number("saturationIndex", acid.Index);
            json.WriteBoolean("staysDissolved", acid.StaysDissolved);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteSpecies(FactsJson facts, SolutionState state)
    {
        var json = facts.Json;
        json.WriteStartObject("species");
        foreach (var species in state.Solution?.Species ?? [])
        {
            json.WriteStartObject(species.Name);
            json.WriteNumber("charge", species.Charge);
            facts.Number("molality_mol_per_kg", species.MolPerKg);
            facts.Number("logActivity", species.LogActivity);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Texts(FactsJson facts, string key, IReadOnlyList<string> texts)
    {
        facts.Json.WriteStartArray(key);
        foreach (var text in texts)
        {
            facts.Json.WriteStringValue(text);
        }

        facts.Json.WriteEndArray();
    }

    internal static string TrustName(Trust trust) => trust switch
    {
        Trust.InRange => "in range",
        Trust.Estimate => "estimate",
        _ => "out of range",
    };
}
