using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>A substance put in, as a step of a stock or a dose of a recipe writes it.</summary>
/// <param name="Id">Of the step or dose.</param>
/// <param name="IsComplete">False when the substance or its amount could not be read (reported).</param>
internal sealed record WrittenAddition(
    string Id,
    Located<string> What,
    Substance? Substance,
    Located<Portion>? Amount,
    Tolerance? Tolerance,
    Located<MassFraction>? Assay,
    Located<string>? With,
    bool IsComplete)
{
    /// <param name="batch">What it goes into, to hold the amount against; null when that could not be read.</param>
    public static WrittenAddition Read(
        JsonItem entry, JsonItem add, IdSet ids, Located<Volume>? batch, Resolution resolution, FieldReader fields)
    {
        var what = new Located<string>(add.Text, fields.At(add));
        var substance = entry["strength"] is { } strength
            ? StatedStrength.Read(what, add, strength, resolution, fields)
            : resolution.FindSubstance(what, add, fields);
        var (amount, tolerance) = PortionReader.Read(entry["amount"], Due.Portion, fields);
        if (amount is not null && substance is not null && !PortionReader.Fits(amount.Value, substance, entry["amount"]!, fields))
        {
            amount = null;
        }

        if (amount is not null && batch is not null)
        {
            Plausibility.AgainstBatch(amount.Value, substance, batch, entry["amount"]!, fields);
        }

        return new WrittenAddition(
            ids.For(entry, substance?.Id ?? add.Text),
            what,
            substance,
            amount,
            amount is null ? null : tolerance,
            Plausibility.Share(fields.Located(entry["assay"], Due.Assay, q => q.MassFraction), entry["assay"], fields, "An assay"),
            resolution.FindTool(entry["with"], fields),
            substance is not null && amount is not null);
    }
}
