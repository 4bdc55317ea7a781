using System.Text.Json;
using System.Text.RegularExpressions;
using Json.Schema;
using Json.Schema.Keywords;

namespace RecipeLint.Recipes.Schema;

/// <summary>The keywords that a house rule may use. Patterns are matched without ever going back.</summary>
internal static class HouseDialect
{
    /// <summary>Matching options of a pattern.</summary>
    public const RegexOptions Matching = RegexOptions.NonBacktracking | RegexOptions.CultureInvariant;

    /// <summary>Keywords by what stands under them.</summary>
    public static readonly IReadOnlySet<string> One = new HashSet<string>(StringComparer.Ordinal)
    {
        "items", "additionalProperties", "contains", "not", "if", "then", "else", "propertyNames",
    };

    public static readonly IReadOnlySet<string> List = new HashSet<string>(StringComparer.Ordinal) { "allOf", "anyOf", "oneOf",
        "prefixItems" };

    public static readonly IReadOnlySet<string> Map = new HashSet<string>(StringComparer.Ordinal) { "properties", "$defs",
        "dependentSchemas" };

    public static readonly IReadOnlySet<string> Plain = new HashSet<string>(StringComparer.Ordinal)
    {
        "type", "const", "enum", "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum", "multipleOf", "minLength", "maxLength",
        "pattern",
        "minItems", "maxItems", "uniqueItems", "minContains", "maxContains", "required", "minProperties", "maxProperties",
        "dependentRequired",
        "$ref", "title", "description", "$comment",
    };

    /// <summary>Made once: the library looks up by reflection what its keywords need of each other, longer than a rule takes.</summary>
    public static Dialect Only => _only.Value;

    private static readonly Lazy<Dialect> _only = new(Make);

    private static Dialect Make() => new(
    [
        TypeKeyword.Instance, ConstKeyword.Instance, EnumKeyword.Instance, MinimumKeyword.Instance, MaximumKeyword.Instance,
        ExclusiveMinimumKeyword.Instance, ExclusiveMaximumKeyword.Instance, MultipleOfKeyword.Instance, MinLengthKeyword.Instance,
        MaxLengthKeyword.Instance, new BoundedPattern(), MinItemsKeyword.Instance, MaxItemsKeyword.Instance, UniqueItemsKeyword.Instance,
        ContainsKeyword.Instance, MinContainsKeyword.Instance, MaxContainsKeyword.Instance, ItemsKeyword.Instance,
        PrefixItemsKeyword.Instance,
        PropertiesKeyword.Instance, RequiredKeyword.Instance, AdditionalPropertiesKeyword.Instance, PropertyNamesKeyword.Instance,
        MinPropertiesKeyword.Instance, MaxPropertiesKeyword.Instance, DependentRequiredKeyword.Instance, DependentSchemasKeyword.Instance,
        AllOfKeyword.Instance, AnyOfKeyword.Instance, OneOfKeyword.Instance, NotKeyword.Instance, IfKeyword.Instance, ThenKeyword.Instance,
        // The library asks for this one wherever others of its family stand; the check before it lets no schema use it.
        PatternPropertiesKeyword.Instance,
        ElseKeyword.Instance, RefKeyword.Instance, DefsKeyword.Instance, TitleKeyword.Instance, DescriptionKeyword.Instance,
        CommentKeyword.Instance,
    ])
    {
        Id = new Uri("urn:recipelint:dialect:house-rules"),
    };

    /// <summary>The library's own keyword with an expression that takes time in proportion to the text.</summary>
    private sealed class BoundedPattern : IKeywordHandler
    {
        public string Name => PatternKeyword.Instance.Name;

        public object? ValidateKeywordValue(JsonElement value) => new Regex(value.GetString()!, Matching);

        public void BuildSubschemas(KeywordData keyword, BuildContext context)
        {
            // A pattern holds no schemas.
        }

        public KeywordEvaluation Evaluate(KeywordData keyword, EvaluationContext context) =>
            PatternKeyword.Instance.Evaluate(keyword, context);
    }
}
