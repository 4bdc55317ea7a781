using System.Diagnostics.CodeAnalysis;

namespace RecipeLint.Recipes.Quantities;

/// <summary>
/// Reads quantities as the bench writes them: "24 g", "1:100", "4..30 °C", "150 mg/L ± 10 %", "82 mg/L as CaCO3".
/// Never throws and never decides between two readings; what it cannot read it explains.
/// </summary>
public static class QuantityReader
{
    /// <summary>Longer texts are refused unread.</summary>
    public const int MaxLength = 200;

    /// <summary>Reads one quantity of the kind that is due.</summary>
    public static bool TryRead(
        string text,
        Due due,
        [NotNullWhen(true)] out Quantity? quantity,
        [NotNullWhen(false)] out QuantityFault? fault)
    {
        quantity = null;
        var cursor = new QuantityCursor(text, due);
        if (text.Length > MaxLength)
        {
            fault = QuantityMessages.TooLong(due, text);
            return false;
        }

        quantity = cursor.Read();
        fault = cursor.Fault;
        return quantity is not null;
    }

    /// <summary>Reads a tolerance that stands alone: "± 0.5 %" or "± 0.1 mL"; absolute ones in the base unit of the dimension.</summary>
    public static bool TryReadTolerance(
        string text,
        Dimension dimension,
        [NotNullWhen(true)] out Tolerance? tolerance,
        [NotNullWhen(false)] out QuantityFault? fault)
    {
        var example = dimension switch
        {
            Dimension.Mass => "± 0.1 g",
            Dimension.Number => "± 0.1",
            Dimension.Conductivity => "± 0.02 mS/cm",
            _ => "± 0.1 mL",
        };
        var due = new Due([dimension], [example, "± 0.5 %"])
        {
            UsualUnits = dimension == Dimension.Number ? [] : [example.Split(' ')[2], "%"],
        };
        if (text.Length > MaxLength)
        {
            tolerance = null;
            fault = QuantityMessages.TooLong(due, text);
            return false;
        }

        var cursor = new QuantityCursor(text, due);
        tolerance = cursor.ReadLoneTolerance();
        fault = cursor.Fault;
        return tolerance is not null;
    }
}
