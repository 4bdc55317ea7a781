namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>The right substance in the wrong amount: decimal points, units, neighbours mixed up.</summary>
internal static class AmountSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        foreach (var line in shop.Lines)
        {
            var (number, rest) = Slips.Split(line.Amount);
            var solid = rest == " g";
            (string Slip, string Text)[] slips =
            [
                ("ten times the amount", Slips.Times(line.Amount, 10)),
                ("a tenth of the amount", Slips.Times(line.Amount, 0.1)),
                ("half the amount", Slips.Times(line.Amount, 0.5)),
                ("a thousandth by the unit", Slips.Number(number) + (solid ? " mg" : " µL")),
                ("a thousand times by the unit", Slips.Number(number) + (solid ? " kg" : " L")),
                ("ounces for the metric unit", Slips.Number(number) + (solid ? " oz" : " US fl oz")),
                ("unit left out", Slips.Number(number)),
                ("decimal comma", (number % 1 == 0 ? Slips.Number(number) + ",0" : Slips.Number(number).Replace('.', ',')) + rest),
            ];
            foreach (var (slip, text) in slips)
            {
                yield return Slips.Value(shop, slip, line, "amount", text);
            }
        }

        foreach (var (first, second) in shop.Lines.Zip(shop.Lines.Skip(1)).Where(p => p.First.File == p.Second.File && p.First.Amount != p.Second.Amount))
        {
            yield return new Mutant(
                "amounts of neighbours swapped",
                $"{Short.Of(first.File)}: {first.Step.Id} {first.Amount} and {second.Step.Id} {second.Amount}",
                [shop.Edit(first.File, (first.Item["amount"]!.Span, Slips.Quoted(second.Amount)), (second.Item["amount"]!.Span, Slips.Quoted(first.Amount)))],
                [first.Place, second.Place],
                [.. Naming.WordsOf(first.Additions.Concat(second.Additions))])
            {
                Shop = shop,
            };
        }
    }
}
