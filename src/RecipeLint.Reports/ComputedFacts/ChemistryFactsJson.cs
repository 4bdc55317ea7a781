using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.ComputedFacts;

/// <summary>The chemistry of a stock or a final solution beside its states: what it can bear and what would mend it.</summary>
internal static class ChemistryFactsJson
{
    public static void Write(FactsJson facts, StockFacts stock, bool full)
    {
        var json = facts.Json;
        var chemistry = stock.Chemistry;
        Begin(facts, chemistry.Mix, chemistry.IsComplete, chemistry.States, full);
        var limits = DepositOptions.Of(stock.Settings);
        var highest = HighestConcentration.Of(stock, limits);
        json.WriteStartObject("highestConcentration");
        facts.Number("factor", highest.Factor);
        facts.Number("dilution_1_to", highest.Dilution);
        Names(facts, "stoppedBy", highest.StoppedBy.Select(s => s.Name));
        facts.Text("reason", highest.Failure);
        json.WriteEndObject();

        var crystals = FirstCrystals.Of(chemistry.Mix, limits);
        json.WriteStartObject("firstCrystals");
        Names(facts, "atBench", crystals.AtBench.Select(s => s.Name));
        Point(facts, "onCooling", crystals.OnCooling);
        Point(facts, "onWarming", crystals.OnWarming);
        facts.Text("reason", crystals.Failure);
        json.WriteEndObject();

        json.WriteStartArray("repairs");
        foreach (var deposit in DepositJudgement.Of(chemistry.Coldest, limits).Deposits.SelectMany(d => d.Deposits))
        {
            var nearest = NearestClear.Of(stock, deposit.Solid, limits);
            json.WriteStartObject();
            json.WriteString("solid", deposit.Solid.Name);
            facts.Number("factor", nearest.Factor);
            facts.Number("dilution_1_to", nearest.Dilution);
            facts.Number("temperature_degC", nearest.Temperature?.Celsius);
            facts.Number("pH", nearest.Ph);
            Suppliers(facts, SuppliersOfSolid.In(stock, deposit.Solid));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Write(FactsJson facts, RecipeFacts recipe, bool full)
    {
        var json = facts.Json;
        var chemistry = recipe.Chemistry;
        Begin(facts, chemistry.Mix, chemistry.IsComplete, chemistry.States, full);
        json.WriteStartArray("suppliers");
        foreach (var deposit in chemistry.Final.Deposits.Where(d => !d.IsTrace))
        {
            json.WriteStartObject();
            json.WriteString("solid", deposit.Solid.Name);
            Suppliers(facts, SuppliersOfSolid.In(recipe, deposit.Solid));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Begin(FactsJson facts, SolutionMix mix, bool complete, IReadOnlyList<SolutionState> states, bool full)
    {
        var json = facts.Json;
        json.WriteStartObject("chemistry");
        json.WriteString("constants", ConstantSet.Product.Name);
        json.WriteBoolean("complete", complete);
        facts.Number("water_kg_per_L", mix.Failure is null ? mix.KilogramsWaterPerLitre : null);
        facts.Number("unmeasured_meq_per_kg", mix.UnmeasuredEquivalentsPerKg * 1000);
        json.WriteStartArray("states");
        foreach (var state in states)
        {
            StateFactsJson.Write(facts, state, full);
        }

        json.WriteEndArray();
    }

    private static void Suppliers(FactsJson facts, IReadOnlyList<SolidSupplier> suppliers)
    {
        var json = facts.Json;
        json.WriteStartArray("suppliers");
        foreach (var supplier in suppliers)
        {
            json.WriteStartObject();
            json.WriteString("id", supplier.Id);
            facts.Locator(supplier.Place);
            json.WriteString("name", supplier.Name);
            json.WriteString("component", supplier.Component);
            facts.Number("share_fraction", supplier.Share);
            json.WriteBoolean("asAlkali", supplier.IsAlkali);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Point(FactsJson facts, string key, CrystalPoint? point)
    {
        if (point is null)
        {
            facts.Json.WriteNull(key);
            return;
        }

        facts.Json.WriteStartObject(key);
        facts.Number("temperature_degC", point.At.Celsius);
        facts.Json.WriteString("solid", point.Solid.Name);
        facts.Json.WriteEndObject();
    }

    private static void Names(FactsJson facts, string key, IEnumerable<string> names)
    {
        facts.Json.WriteStartArray(key);
        foreach (var name in names)
        {
            facts.Json.WriteStringValue(name);
        }

        facts.Json.WriteEndArray();
    }
}
