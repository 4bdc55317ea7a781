using System.Runtime.CompilerServices;
using Json.Schema;

namespace RecipeLint.Recipes.Schema;

/// <summary>
/// The schema library makes its dialects and the schemas of schemas when it is loaded. The native program is loaded whole, and paid for
/// them at every start, also where no file is read: there the library's initializer is left empty (<c>RecipeLint/Native</c>) and is made
/// up for here, before the first schema is built.
/// </summary>
internal static class SchemaLibrary
{
    private const string Initializer = "Json.Schema.__ModuleInitialization, JsonSchema.Net";

    private static readonly Lazy<bool> _ready = new(Prepare);

    /// <summary>To be called before anything else is asked of the library.</summary>
    public static void MakeReady() => _ = _ready.Value;

    private static bool Prepare()
    {
        // Where its initializer has run, this is there.
        if ((JsonSchema?)MetaSchemas.Draft202012 is null)
        {
            LoadDialects(null);
            LoadMetaSchemas(null);
        }

        return true;
    }

    [UnsafeAccessor(UnsafeAccessorKind.StaticMethod, Name = nameof(LoadDialects))]
    private static extern void LoadDialects([UnsafeAccessorType(Initializer)] object? initializer);

    [UnsafeAccessor(UnsafeAccessorKind.StaticMethod, Name = nameof(LoadMetaSchemas))]
    private static extern void LoadMetaSchemas([UnsafeAccessorType(Initializer)] object? initializer);
}
