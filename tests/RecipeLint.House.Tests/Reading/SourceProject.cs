using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace RecipeLint.House.Tests.Reading;

/// <summary>One project under src: what its project file declares and its sources, compiled in memory so that names can be followed.</summary>
internal sealed class SourceProject
{
    private const string ImpliedUsings =
        "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq; " +
        "global using System.Net.Http; global using System.Threading; global using System.Threading.Tasks;";

    private static readonly CSharpParseOptions Options = new(LanguageVersion.Latest);

    private SourceProject(string name, IReadOnlyList<string> declared, IReadOnlyList<SourceFile> files, CSharpCompilation compilation)
    {
        Name = name;
        Declared = declared;
        Files = files;
        Compilation = compilation;
    }

    public string Name { get; }

    /// <summary>Projects that the project file names.</summary>
    public IReadOnlyList<string> Declared { get; }

    public IReadOnlyList<SourceFile> Files { get; }

    public CSharpCompilation Compilation { get; }

    /// <summary>All projects under src, each after those it refers to.</summary>
    public static IReadOnlyList<SourceProject> Load(string root)
    {
        var source = Path.Combine(root, "src");
        var waiting = Directory.EnumerateFiles(source, "*.csproj", SearchOption.AllDirectories)
            .ToDictionary(f => Path.GetFileNameWithoutExtension(f), f => (File: f, Xml: XDocument.Load(f)), StringComparer.Ordinal);
        var loaded = new Dictionary<string, SourceProject>(StringComparer.Ordinal);
        while (waiting.Count > 0)
        {
            var next = waiting.OrderBy(w => w.Key, StringComparer.Ordinal).FirstOrDefault(w => References(w.Value.Xml).All(loaded.ContainsKey));
            if (next.Key is null) throw new InvalidOperationException($"Projects refer to each other in a circle: {string.Join(", ", waiting.Keys)}.");
            waiting.Remove(next.Key);
            loaded.Add(next.Key, Read(root, next.Key, next.Value.File, next.Value.Xml, loaded));
        }

        return [.. loaded.Values];
    }

    /// <summary>Names of the projects below this one, the near and the far.</summary>
    public IReadOnlySet<string> Below(IReadOnlyList<SourceProject> all) =>
        Declared.Concat(Declared.SelectMany(d => all.Single(p => p.Name == d).Below(all))).ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<string> References(XDocument project) => project.Descendants("ProjectReference")
        .Where(r => r.Attribute("OutputItemType") is null)
        .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')));

    private static SourceProject Read(string root, string name, string file, XDocument xml, Dictionary<string, SourceProject> loaded)
    {
        var folder = Path.GetDirectoryName(file)!;
        var files = Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/'))
            .Where(f => !f.StartsWith("obj/", StringComparison.Ordinal) && !f.StartsWith("bin/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(f => SourceFile.Read(root, folder, f, Options))
            .ToList();
        var friends = xml.Descendants("InternalsVisibleTo")
            .Select(i => $"[assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"{i.Attribute("Include")!.Value}\")]");
        var extra = CSharpSyntaxTree.ParseText($"{ImpliedUsings}\n{string.Join('\n', friends)}", Options);
        var declared = References(xml).ToList();
        var below = declared.SelectMany(d => loaded[d].Below([.. loaded.Values]).Append(d)).Distinct(StringComparer.Ordinal);
        var compilation = CSharpCompilation.Create(
            xml.Descendants("AssemblyName").FirstOrDefault()?.Value ?? name,
            [.. files.Select(f => f.Tree), extra],
            [.. Platform(), .. below.Select(b => loaded[b].Compilation.ToMetadataReference())],
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));
        return new SourceProject(name, declared, files, compilation);
    }

    private static IEnumerable<MetadataReference> Platform() => ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
        .Split(Path.PathSeparator)
        .Where(f => !Path.GetFileName(f).StartsWith("recipelint", StringComparison.OrdinalIgnoreCase))
        .Select(f => MetadataReference.CreateFromFile(f));
}
