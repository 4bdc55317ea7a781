using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace RecipeLint.Tests.Reliability;

/// <summary>What the program is made of cannot open a connection: no assembly of ours names a type of the network.</summary>
public sealed class NoNetworkTests
{
    private static readonly string[] _forbidden = ["System.Net.Http", "System.Net.Sockets", "System.Net.WebSockets", "System.Net.Security", "System.Net.NetworkInformation", "System.Net.Quic", "System.Net.Mail"];

    [Fact]
    public void NoAssemblyOfOursNamesATypeOfTheNetwork()
    {
        var ours = Directory.GetFiles(AppContext.BaseDirectory, "*.dll")
            .Where(f => Path.GetFileName(f) is var n && !n.Contains(".Tests", StringComparison.Ordinal) && (n.StartsWith("RecipeLint.", StringComparison.Ordinal) || n == "recipelint.dll"))
            .ToList();
        Assert.True(ours.Count >= 7, $"only {ours.Count} assemblies are here");
        Assert.All(ours, f => Assert.Empty(NetworkTypes(f)));
    }

    /// <summary>A process would be a way round.</summary>
    [Fact]
    public void NoAssemblyOfOursStartsAProcessOrLoadsCode()
    {
        string[] banned = ["System.Diagnostics.Process", "System.Runtime.Loader.AssemblyLoadContext", "System.Reflection.Emit.AssemblyBuilder"];
        foreach (var file in Directory.GetFiles(AppContext.BaseDirectory, "RecipeLint.*.dll").Append(Path.Combine(AppContext.BaseDirectory, "recipelint.dll")))
        {
            if (!file.Contains(".Tests", StringComparison.Ordinal))
            {
                Assert.DoesNotContain(TypesOf(file), banned.Contains);
            }
        }
    }

    private static IEnumerable<string> NetworkTypes(string file) =>
        TypesOf(file).Where(t => _forbidden.Any(n => t.StartsWith(n + ".", StringComparison.Ordinal)) || t is "System.Net.Dns" or "System.Net.WebClient" or "System.Net.WebRequest");

    private static List<string> TypesOf(string file)
    {
        using var stream = File.OpenRead(file);
        using var image = new PEReader(stream);
        var data = image.GetMetadataReader();
        return [.. data.TypeReferences.Select(data.GetTypeReference).Select(t => $"{data.GetString(t.Namespace)}.{data.GetString(t.Name)}")];
    }
}
