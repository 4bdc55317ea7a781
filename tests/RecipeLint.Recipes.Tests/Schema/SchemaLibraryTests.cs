using System.Reflection;
using Json.Schema;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Recipes.Tests.Schema;

public sealed class SchemaLibraryTests
{
    private const BindingFlags Everything = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    /// <summary>A version of the library that starts in another way has to be seen before the native program is built with it.</summary>
    [Fact]
    public void TheLibraryStartsWithTheTwoStepsThatTheNativeProgramMakesUpFor()
    {
        var type = typeof(JsonSchema).Assembly.GetType("Json.Schema.__ModuleInitialization")!;
        var initialize = type.GetMethod("Initialize", Everything, [])!;
        Assert.Equal(typeof(void), initialize.ReturnType);
        var called = Calls(initialize).Where(m => m.DeclaringType == type).Select(m => m.Name);
        Assert.Equal(["LoadDialects", "LoadMetaSchemas"], called);
        Assert.All(called, name => Assert.Empty(type.GetMethod(name, Everything)!.GetParameters()));
    }

    [Fact]
    public void OnceReadyTheSchemasOfSchemasAreThere()
    {
        SchemaLibrary.MakeReady();
        SchemaLibrary.MakeReady();
        Assert.NotNull(MetaSchemas.Draft202012);
    }

    /// <summary>The methods that a short method without branches over tables calls, in their order.</summary>
    private static IEnumerable<MethodBase> Calls(MethodInfo method)
    {
        const byte call = 0x28;
        var code = method.GetMethodBody()!.GetILAsByteArray()!;
        for (var i = 0; i + 4 < code.Length; i++)
        {
            if (code[i] != call)
            {
                continue;
            }

            yield return method.Module.ResolveMethod(BitConverter.ToInt32(code, i + 1))!;
            i += 4;
        }
    }
}
