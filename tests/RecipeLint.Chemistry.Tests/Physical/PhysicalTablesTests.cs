using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace RecipeLint.Chemistry.Tests.Physical;

public sealed class PhysicalTablesTests
{
    private static readonly string[] Confidences = ["read", "derived", "recalled"];

    [Theory]
    [InlineData("volumes.json", "constituents")]
    [InlineData("conductivity.json", "ions")]
    [InlineData("conductivity.json", "analogs")]
    [InlineData("conductivity.json", "sulfatePairs")]
    [InlineData("conductivity.json", "byCharge")]
    [InlineData("heats-of-solution.json", "heats")]
    public void NoValueIsWithoutSourceAndConfidence(string file, string list)
    {
        var data = PhysicalData.Source(file);
        var sources = data.GetProperty("sources");
        foreach (var row in data.GetProperty(list).EnumerateArray())
        {
            var source = row.GetProperty("source").GetString()!;

            // A short word is a key of "sources"; anything with a blank is the source itself.
            Assert.True(source.Contains(' ', StringComparison.Ordinal) || sources.TryGetProperty(source, out _), $"{file}: {row} names no source");
            Assert.Contains(row.GetProperty("confidence").GetString(), Confidences);
        }
    }

    [Fact]
    public void EveryConstantHasASource()
    {
        foreach (var constant in PhysicalData.Source("volumes.json").GetProperty("constants").EnumerateObject())
            AssertSourced(constant.Value);
        var water = PhysicalData.Source("water.json");
        AssertSourced(water);
        AssertSourced(water.GetProperty("molarMass_g_mol"));
        AssertSourced(water.GetProperty("heatCapacity_J_g_K"));
    }

    [Fact]
    public void EveryDensityRowNamesItsSource()
    {
        var data = PhysicalData.Source("acid-and-base-density.json");
        foreach (var substance in data.GetProperty("substances").EnumerateArray())
        {
            foreach (var row in substance.GetProperty("rows").EnumerateArray())
            {
                var source = row[2].GetString()!;
                Assert.True(data.GetProperty("sources").TryGetProperty(source, out _));
                Assert.Contains(data.GetProperty("confidence").GetProperty(source).GetString(), Confidences);
            }
        }
    }

    [Fact]
    public void ComplexesBalanceInChargeAndNameKnownParts()
    {
        var data = PhysicalData.Source("volumes.json");
        var charge = data.GetProperty("constituents").EnumerateArray()
            .ToDictionary(e => e.GetProperty("species").GetString()!, e => e.GetProperty("charge").GetInt32(), StringComparer.Ordinal);
        var complexes = data.GetProperty("complexes").EnumerateArray().ToArray();
        Assert.True(complexes.Length + charge.Count > 450);
        foreach (var complex in complexes)
        {
            var name = complex.GetProperty("species").GetString()!;
            var sum = complex.GetProperty("parts").EnumerateObject().Sum(p => charge[p.Name] * p.Value.GetInt32());
            Assert.True(sum == complex.GetProperty("charge").GetInt32(), $"{name}: the parts carry {sum}");
            Assert.True(sum == ChargeInName(name), $"{name}: the name does not end in the charge {sum}");
            Assert.DoesNotContain(name, charge.Keys);
        }

        foreach (var (name, value) in charge)
            Assert.Equal(value, ChargeInName(name));
    }

    private static int ChargeInName(string name)
    {
        var end = Regex.Match(name, @"([+-])(\d{0,2})$");
        var figure = end.Groups[2].Value is { Length: > 0 } digits ? int.Parse(digits, CultureInfo.InvariantCulture) : 1;
        return !end.Success ? 0 : end.Groups[1].Value == "+" ? figure : -figure;
    }

    private static void AssertSourced(JsonElement e)
    {
        Assert.False(string.IsNullOrWhiteSpace(e.GetProperty("source").GetString()));
        Assert.Contains(e.GetProperty("confidence").GetString(), Confidences);
    }
}
