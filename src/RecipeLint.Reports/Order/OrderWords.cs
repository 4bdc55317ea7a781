using RecipeLint.Advice.Order;
using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Order;

/// <summary>The sentences of a mixing order.</summary>
internal static class OrderWords
{
    /// <summary>"4 g", "20 mL".</summary>
    public static string Amount(OrderUnit unit, StockFacts stock)
    {
        if (stock.Adjustments.FirstOrDefault(a => a.Place == unit.Step.Place && !a.ThroughAliquot) is { } adjustment)
        {
            return adjustment.Volume is { } poured
                ? Say.Litres(poured.Litres)
                : adjustment.Amount is { } amount ? Say.Grams(amount.Grams) : "";
        }

        if (stock.Aliquots.FirstOrDefault(a => a.Place == unit.Step.Place) is { } aliquot)
        {
            return Say.Litres(aliquot.Volume.Litres);
        }

        return unit.Additions[0].Volume is { } volume ? Say.Litres(volume.Litres) : Say.Grams(unit.Additions[0].Mass.Grams);
    }

    /// <summary>"0.8 g/L of gypsum falls out when Epsom salt goes in and does not dissolve again in time".</summary>
    public static string Happens(OrderSolid solid, OrderUnit at)
    {
        var amount = $"{Say.Grams(solid.Concentration.GramsPerLitre)}/L of {Called(solid)}";
        var name = Printable.Show(at.Name);
        var stays = solid.Permanent ? " and does not dissolve again in time" : "";
        var ph = solid.Ph is { } value ? $" (pH {Say.Ph(Math.Round(value, 1))})" : "";
        return solid.Origin switch
        {
            SolidOrigin.Undissolved => $"{amount} is still undissolved once {name} is in",
            SolidOrigin.WhereTheyMeet =>
                $"{Called(solid)} forms where {name} meets the vessel{ph}: {Say.Grams(solid.Concentration.GramsPerLitre)}/L there, though "
                    + "the stirred vessel holds it"
                + (solid.Permanent ? ", and it dissolves again only slowly" : ""),
            SolidOrigin.Rust => $"iron stands unprotected once {name} is in{ph}, and the air turns it to {amount} by the next step",
            _ => $"{amount} falls out when {name} goes in{ph}{stays}",
        };
    }

    /// <summary>Why an addition stands where it does.</summary>
    public static string Why(OrderReason reason)
    {
        var other = reason.Other is { } unit ? Printable.Show(unit.Name) : "";
        return reason.Kind switch
        {
            OrderReasonKind.NotBefore => $"after {other}: the other way round {What(reason)}",
            OrderReasonKind.NotAfter => $"before {other}: the other way round {What(reason)}",
            OrderReasonKind.Slow =>
                $"early: it dissolves slowly, and it takes {Say.Percent(reason.Share ?? 0)} of what the water to start with holds",
            OrderReasonKind.Habit => Habit(reason.Other!, other),
            OrderReasonKind.Fixed => "not moved: how much it takes depends on what is in by then",
            _ => "anywhere: another place is no better",
        };
    }

    private static string Habit(OrderUnit unit, string other) => unit switch
    {
        { BringsMetal: true } =>
            $"before {other} by habit: acid and chelate ahead of the metals they hold; the other way round is no better",
        { IsAcid: true } or { BringsAgent: true } =>
            $"after {other} by habit: acid and chelate ahead of the metals they hold; the other way round is no better",
        { BringsCalcium: true } =>
            $"after {other} by habit: what can settle with calcium goes in after it; the other way round is no better",
        _ => $"before {other} by habit: calcium, or what dissolves slowly, goes in ahead of it; the other way round is no better",
    };

    private static string What(OrderReason reason) =>
        reason is { Solid: { } solid, At: { } at } ? Happens(solid, at) : "the step cannot be computed";

    private static string Called(OrderSolid solid) => solid.Solid is { } known ? SolidWords.Called(known) : solid.Salt?.Name ?? "rust";
}
