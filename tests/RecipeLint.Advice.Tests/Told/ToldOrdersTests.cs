using RecipeLint.Advice.Order;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>Orders with every reason, every solid and every cost, and the stock as it would be written.</summary>
public sealed class ToldOrdersTests
{
    public static TheoryData<string> Bottles() => ToldShop.Stocks("soft", "barrel", "tight");

    [Theory]
    [MemberData(nameof(Bottles))]
    public void OrdersAreTheseForTheseReasons(string name)
    {
        var order = MixingOrder.Of(ToldShop.Stock(name));
        var text = new ToldText().Line($"nothing to order: {order.NothingToOrder}; refused {order.Refused?.Hazard.Kind}; only unknown {order.NothingButUnknown?.IsAll}")
            .Line($"start {order.Start.Litres:G4} L (file {order.StartInFile?.Litres:G4}, least {order.SmallestStart?.Litres:G4}) to {order.Mark.Litres:G4} L at {order.At.Celsius} °C")
            .Line($"present {order.IsPresentOrder}, exact {order.IsExact}, mended {order.Mended?.Kind}, dangers {string.Join(", ", order.Hazards.Select(h => $"{h.Kind} {h.Grade}"))}");
        Cost(text, "costs", order.Cost);
        Cost(text, "file costs", order.PresentCost);
        foreach (var place in order.Places)
        {
            text.Line($"{place.Unit.Index} {place.Unit.Name} (stage {place.Unit.Stage}): {place.After.Litres:G5} L, pH {place.State.Ph:0.00}, {place.Heat?.ChangeKelvin:0.0} K");
            foreach (var solid in place.Solids)
            {
                Solid(text, solid, null);
            }

            foreach (var reason in place.Reasons)
            {
                text.Line($"  {reason.Kind} {reason.Other?.Name}, {reason.Solid?.Name} at {reason.At?.Name}, share {reason.Share:0.000}");
            }
        }

        foreach (var (solid, at) in order.PresentSolids)
        {
            Solid(text, solid, at.Name);
        }

        foreach (var step in OrderedStock.Of(order)?.Steps ?? [])
        {
            text.Line($"step {step.Id} {step.GetType().Name}");
        }

        text.Line($"objected {string.Join(", ", order.ObjectedIn(ToldShop.Around($"{name}.stock.json"), new DateOnly(2026, 11, 30)).Select(f => f.Rule.Id))}");
        text.Hold($"order-of-{name}");
    }

    private static void Cost(ToldText text, string of, OrderCost cost) => text.Line(
        $"{of} {cost.Unsolved} unsolved, {cost.PermanentMilligrams} stays, {cost.PassingMilligrams} passes, {cost.PermanentTensOfMicrograms} fine, {cost.Practice} practice, {cost.Inversions} inversions");

    private static void Solid(ToldText text, OrderSolid solid, string? at) => text.Line(
        $"  {(at is null ? "" : $"file at {at}: ")}{solid.Origin} {solid.Name} {solid.Salt?.Name} {solid.Concentration.GramsPerLitre:G3} g/L, {solid.Milligrams:G3} mg/L, stays {solid.Permanent}, pH {solid.Ph:0.0}");
}
