using System.Reflection;
using Newtonsoft.Json;
using Newtonsoft.Json.Serialization;
using Sarif = Microsoft.CodeAnalysis.Sarif;

namespace RecipeLint.Reports;

/// <summary>
/// How the objects of a log are written, as the library's own attributes say: read once by a test that writes them down as code. Reading
/// the attributes in every run took longer than all the rest of a small log.
/// </summary>
internal sealed partial class SarifContracts : DefaultContractResolver
{
    private static readonly BagConverter _bags = new();

    /// <summary>
    /// The library leaves "warning" out as the default; but a result without a level takes its rule's (SARIF 2.1.0 section 3.27.10), which
    /// the shop may have changed for this run.
    /// </summary>
    internal static JsonProperty WithLevelWrittenOut(JsonProperty property)
    {
        if (property.PropertyType == typeof(Sarif.FailureLevel))
        {
            property.DefaultValueHandling = DefaultValueHandling.Include;
            property.ShouldSerialize = _ => true;
        }

        return property;
    }

    protected override JsonContract CreateContract(Type objectType)
    {
        if (Rows(objectType) is { } rows)
        {
            var contract = new JsonObjectContract(objectType);
            foreach (var row in rows)
            {
                contract.Properties.AddProperty(WithLevelWrittenOut(row));
            }

            return contract;
        }

        return objectType == typeof(string) || objectType == typeof(int) ? new JsonPrimitiveContract(objectType)
            : objectType == typeof(Properties) ? new JsonObjectContract(objectType)
            : IsList(objectType) ? new JsonArrayContract(objectType)
            : base.CreateContract(objectType);
    }

    /// <summary>Of an object that no log of ours has: a merged one may.</summary>
    protected override JsonProperty CreateProperty(MemberInfo member, MemberSerialization memberSerialization) =>
        WithLevelWrittenOut(base.CreateProperty(member, memberSerialization));

    private static bool IsList(Type type) =>
        type.IsGenericType && type.GetGenericTypeDefinition() is var open && (open == typeof(List<>) || open == typeof(IList<>));

    private static JsonProperty Row<T>(
        string name, Type type, Func<T, object?> value, DefaultValueHandling? handling = null, object? byDefault = null,
        JsonConverter? converter = null, JsonConverter? ofItems = null, Predicate<T>? when = null)
    {
        var property = new JsonProperty
        {
            PropertyName = name,
            DeclaringType = typeof(T),
            PropertyType = type,
            ValueProvider = new Value<T>(value),
            Readable = true,
            DefaultValueHandling = handling,
            Converter = converter,
            ItemConverter = ofItems,
            ShouldSerialize = when is null ? null : o => when((T)o),
        };
        if (byDefault is not null)
        {
            // Null would be taken for a default that was stated, in place of the one of the type.
            property.DefaultValue = byDefault;
        }

        return property;
    }

    /// <summary>The property bag of an object, which the library shows only by name.</summary>
    private static JsonProperty Bag<T>()
        where T : Sarif.PropertyBagHolder => Row<T>(
            "properties", typeof(Properties), static o => new Properties(o), converter: _bags, when: static o => o.PropertyNames.Count > 0);

    private sealed record Properties(Sarif.PropertyBagHolder Of);

    private sealed class BagConverter : JsonConverter
    {
        public override bool CanConvert(Type objectType) => objectType == typeof(Properties);

        public override void WriteJson(JsonWriter writer, object? value, JsonSerializer serializer)
        {
            writer.WriteStartObject();
            var holder = ((Properties)value!).Of;
            foreach (var name in holder.PropertyNames)
            {
                writer.WritePropertyName(name);
                writer.WriteRawValue(holder.TryGetSerializedPropertyValue(name, out var json) && json is not null ? json : "null");
            }

            writer.WriteEndObject();
        }

        public override object? ReadJson(JsonReader reader, Type objectType, object? existingValue, JsonSerializer serializer) =>
            throw new InvalidOperationException("Logs are read by the library's own contracts.");
    }

    private sealed class Value<T>(Func<T, object?> of) : IValueProvider
    {
        public object? GetValue(object target) => of((T)target);

        public void SetValue(object target, object? value) =>
            throw new InvalidOperationException("Logs are read by the library's own contracts.");
    }
}
