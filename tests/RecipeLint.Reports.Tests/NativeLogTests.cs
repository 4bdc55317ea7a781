using System.Runtime.Serialization;
using System.Xml.Linq;
using Microsoft.CodeAnalysis.Sarif;
using Newtonsoft.Json;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Reports.Tests;

/// <summary>
/// A native program holds of the SARIF library only what src/RecipeLint/Native/SarifLog.xml names. Objects of a log that a newer library
/// brings must be named there too: left out, they would be written as nothing.
/// </summary>
public class NativeLogTests
{
    private static readonly HashSet<string> Kept =
    [
        .. XDocument.Load(Path.Combine(Repository.Root, "src", "RecipeLint", "Native", "SarifLog.xml"))
            .Descendants("type").Select(t => (string)t.Attribute("fullname")!),
    ];

    [Fact]
    public void EveryObjectOfALogIsKept()
    {
        var objects = typeof(SarifLog).Assembly.GetTypes()
            .Where(t => t.Namespace == typeof(SarifLog).Namespace && t.IsDefined(typeof(DataContractAttribute), false))
            .Select(t => t.FullName!)
            .ToList();

        Assert.True(objects.Count > 50, "The library has far fewer objects than the standard.");
        Assert.All(objects, t => Assert.Contains(t, Kept));
    }

    [Fact]
    public void EveryConverterOfAnObjectIsKept()
    {
        var converters = typeof(SarifLog).Assembly.GetTypes()
            .Where(t => Kept.Contains(t.FullName!))
            .SelectMany(t => t.GetProperties().Cast<System.Reflection.MemberInfo>().Append(t))
            .SelectMany(m => m.GetCustomAttributes(typeof(JsonConverterAttribute), true).Cast<JsonConverterAttribute>())
            .Select(a => a.ConverterType)
            .Where(t => t.Assembly == typeof(SarifLog).Assembly)
            .Select(t => t.FullName!)
            .Distinct()
            .ToList();

        Assert.NotEmpty(converters);
        Assert.All(converters, t => Assert.Contains(t, Kept));
    }
}
