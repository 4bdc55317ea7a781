using System.Globalization;
using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis.Sarif;
using Newtonsoft.Json;
using Newtonsoft.Json.Linq;
using Newtonsoft.Json.Serialization;
using RecipeLint.Reports.Tests.Support;

namespace RecipeLint.Reports.Tests;

/// <summary>
/// Logs are written by a table that stands in code. It is made here from what the library's attributes say (RECIPELINT_UPDATE=1), and held to
/// them: a newer library that writes an object otherwise fails here first.
/// </summary>
public class SarifContractTests
{
    private static readonly Type[] _objects =
    [
        typeof(SarifLog), typeof(Run), typeof(Tool), typeof(ToolComponent), typeof(ReportingDescriptor), typeof(MultiformatMessageString),
        typeof(ReportingConfiguration), typeof(Invocation), typeof(Notification), typeof(ReportingDescriptorReference), typeof(RunAutomationDetails),
        typeof(ArtifactLocation), typeof(Message), typeof(Result), typeof(Location), typeof(PhysicalLocation), typeof(Region), typeof(ArtifactContent),
        typeof(Suppression), typeof(Fix), typeof(ArtifactChange), typeof(Replacement),
    ];

    private static readonly AsTheLibrarySays _library = new();
    private static readonly string _table = Path.Combine(Repository.Root, "src", "RecipeLint.Reports", "Sarif", "SarifContracts.generated.cs");

    public static TheoryData<Type> Objects => [.. _objects];

    [Fact]
    public void TheTableIsWhatTheLibrarySays()
    {
        var text = Table();
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(_table, text, new UTF8Encoding(false));
        }

        Assert.Equal(text, File.ReadAllText(_table));
    }

    /// <summary>An object of each kind with something in every member, and one with nothing, by the table and by the library: the same text.</summary>
    [Theory]
    [MemberData(nameof(Objects))]
    public void AnObjectIsWrittenAsTheLibraryWritesIt(Type type)
    {
        foreach (var full in new[] { true, false })
        {
            var written = Activator.CreateInstance(type)!;
            if (full)
            {
                Fill(written);
            }

            Assert.Equal(Written(written, _library), Written(written, new SarifContracts()));
        }
    }

    private static string Written(object value, IContractResolver by) =>
        JsonConvert.SerializeObject(value, Formatting.Indented, new JsonSerializerSettings { ContractResolver = by, Culture = CultureInfo.InvariantCulture });

    /// <summary>Something in every member that can be set; objects inside stay empty.</summary>
    private static void Fill(object value)
    {
        foreach (var property in value.GetType().GetProperties().Where(p => p is { CanWrite: true, SetMethod.IsPublic: true } && p.GetIndexParameters().Length == 0))
        {
            if (Something(property.PropertyType) is { } something)
            {
                property.SetValue(value, something);
            }
        }

        if (value is PropertyBagHolder holder)
        {
            holder.SetProperty("why", new JArray("a", 1.5));
            holder.SetProperty("because", "text with \"quotes\"");
            holder.SetProperty<string?>("nothing", null);
            holder.SetProperty("also", new JObject { ["of"] = 1 });
        }
    }

    private static object? Something(Type type) =>
        type == typeof(string) ? "text with \"quotes\" and ü"
        : type == typeof(int) ? 7
        : type == typeof(long) ? 7L
        : type == typeof(double) ? 1.5
        : type == typeof(bool) ? true
        : type == typeof(Uri) ? new Uri("a/b%20c.json", UriKind.Relative)
        : type == typeof(DateTime) ? new DateTime(2026, 3, 1, 12, 0, 0, DateTimeKind.Utc)
        : Nullable.GetUnderlyingType(type) is { } inside ? inside == typeof(Guid) ? Guid.Parse("00000000-0000-4000-8000-000000000001") : Something(inside)
        : type.IsEnum ? Enum.GetValues(type).GetValue(Enum.GetValues(type).Length - 1)
        : type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IList<>) ? List(type.GetGenericArguments()[0])
        : type == typeof(IDictionary<string, string>) ? new Dictionary<string, string> { ["key"] = "value" }
        : type == typeof(IDictionary<string, MultiformatMessageString>) ? new Dictionary<string, MultiformatMessageString> { ["key"] = new() { Text = "value" } }
        : type == typeof(IDictionary<string, ArtifactLocation>) ? new Dictionary<string, ArtifactLocation> { ["key"] = new() { Index = 3 } }
        : type.IsInterface || type.IsAbstract || type.GetConstructor(Type.EmptyTypes) is null ? null
        : type.Namespace == typeof(Run).Namespace ? Activator.CreateInstance(type)
        : null;

    private static object? List(Type of)
    {
        var list = (System.Collections.IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(of))!;
        if (Something(of) is { } one)
        {
            list.Add(one);
        }

        return list;
    }

    private static string Table()
    {
        var text = new StringBuilder("""
            // <auto-generated>Written by SarifContractTests with RECIPELINT_UPDATE=1 from the attributes of the SARIF library.</auto-generated>
            #nullable enable
            using Microsoft.CodeAnalysis.Sarif;
            using Microsoft.CodeAnalysis.Sarif.Readers;
            using Newtonsoft.Json;
            using Newtonsoft.Json.Serialization;

            namespace RecipeLint.Reports;

            internal sealed partial class SarifContracts
            {
                private static JsonProperty[]? Rows(System.Type type)
                {

            """);
        foreach (var type in _objects)
        {
            var contract = (JsonObjectContract)_library.ResolveContract(type);
            Assert.True(
                contract is { Converter: null, IsReference: null, ItemIsReference: null, ItemConverter: null, ExtensionDataGetter: null }
                    && contract.OnSerializingCallbacks.Count + contract.OnSerializedCallbacks.Count + contract.OnErrorCallbacks.Count == 0,
                $"{type.Name} is written in a way that the table cannot say.");
            text.Append(CultureInfo.InvariantCulture, $"        if (type == typeof({type.Name}))\n            return\n            [\n");
            foreach (var property in contract.Properties.Where(p => !p.Ignored))
            {
                text.Append("                ").Append(property.Converter?.GetType().Name == "PropertyBagConverter" ? $"Bag<{type.Name}>()" : RowOf(type, property)).Append(",\n");
            }

            text.Append("            ];\n");
        }

        return text.Append("        return null;\n    }\n}\n").ToString();
    }

    private static string RowOf(Type type, JsonProperty property)
    {
        Assert.True(
            property is { NullValueHandling: null, TypeNameHandling: null, ReferenceLoopHandling: null, IsReference: null, ItemIsReference: null, GetIsSpecified: null }
                && property.Required is Required.Default or Required.AllowNull,
            $"{type.Name}.{property.UnderlyingName} is written in a way that the table cannot say.");
        var row = new StringBuilder().Append(CultureInfo.InvariantCulture, $"Row<{type.Name}>(\"{property.PropertyName}\", typeof({Name(property.PropertyType!)}), static o => o.{property.UnderlyingName}");
        if (property.DefaultValueHandling is { } handling && property.PropertyType != typeof(FailureLevel))
        {
            row.Append(CultureInfo.InvariantCulture, $", handling: DefaultValueHandling.{handling}");
        }

        if (property.DefaultValue is { } value)
        {
            row.Append(CultureInfo.InvariantCulture, $", byDefault: {(value is string s ? $"\"{s}\"" : value is bool b ? b ? "true" : "false" : value is double d ? d.ToString("R", CultureInfo.InvariantCulture) + "d" : value is Enum e ? $"{Name(e.GetType())}.{e}" : value)}");
        }

        if (property.Converter is { } converter)
        {
            row.Append(CultureInfo.InvariantCulture, $", converter: new {converter.GetType().Name}()");
        }

        if (property.ItemConverter is { } ofItems)
        {
            row.Append(CultureInfo.InvariantCulture, $", ofItems: new {ofItems.GetType().Name}()");
        }

        if (type.GetMethod("ShouldSerialize" + property.UnderlyingName) is { } when)
        {
            row.Append(CultureInfo.InvariantCulture, $", when: static o => o.{when.Name}()");
        }

        return row.Append(')').ToString();
    }

    private static string Name(Type type) =>
        type == typeof(string) ? "string"
        : type == typeof(int) ? "int"
        : type == typeof(bool) ? "bool"
        : Nullable.GetUnderlyingType(type) is { } inside ? Name(inside) + "?"
        : type.IsGenericType ? $"{type.Namespace}.{type.Name[..type.Name.IndexOf('`', StringComparison.Ordinal)]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>"
        : type.Namespace == typeof(Run).Namespace ? type.Name
        : type.FullName!;

    /// <summary>As the attributes say, with levels written out.</summary>
    private sealed class AsTheLibrarySays : DefaultContractResolver
    {
        protected override JsonProperty CreateProperty(MemberInfo member, MemberSerialization memberSerialization) =>
            SarifContracts.WithLevelWrittenOut(base.CreateProperty(member, memberSerialization));
    }
}
