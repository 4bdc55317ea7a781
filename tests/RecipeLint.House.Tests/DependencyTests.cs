using System.Text.Json;
using System.Text.RegularExpressions;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests;

/// <summary>No package enters unseen: each has a row with its licence in Tables/dependencies.md, and each row is of a package that is there.</summary>
public sealed partial class DependencyTests
{
    /// <summary>Holds a list of platforms and no code; the build of the generator asks for it.</summary>
    private const string WithoutCode = "Microsoft.NETCore.Platforms";

    private static readonly string[] _licences = ["MIT", "Apache-2.0"];

    /// <summary>A check of pages in a browser that only tests run; nothing of it is handed on (MPL-2.0).</summary>
    private const string ForTestsAlone = "Deque.AxeCore.Commons";

    [Fact]
    public void EveryPackageStandsInTheTableWithAPermissiveLicence()
    {
        var rows = File.ReadAllLines(Path.Combine(Checkout.Here.Root, "tests", "RecipeLint.House.Tests", "Tables", "dependencies.md"))
            .Select(l => Row().Match(l)).Where(m => m.Success)
            .ToDictionary(m => m.Groups[1].Value, m => (Licence: m.Groups[2].Value, Reach: m.Groups[3].Value), StringComparer.OrdinalIgnoreCase);
        var used = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var path in Directory.EnumerateFiles(Checkout.Here.Root, "packages.lock.json", SearchOption.AllDirectories).Where(IsSource))
        {
            using var locks = JsonDocument.Parse(File.ReadAllText(path));
            var reach = Path.GetRelativePath(Checkout.Here.Root, path).StartsWith("src", StringComparison.Ordinal) ? "product" : "tests";
            foreach (var package in locks.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(f => f.Value.EnumerateObject()))
            {
                if (package.Value.GetProperty("type").GetString() != "Project" && used.GetValueOrDefault(package.Name) != "product")
                {
                    used[package.Name] = reach;
                }
            }
        }

        Assert.NotEmpty(used);
        Assert.Equal([], used.Keys.Where(p => !rows.ContainsKey(p)).Select(p => p + " has no row in dependencies.md"));
        Assert.Equal([], rows.Keys.Where(p => !used.ContainsKey(p)).Select(p => p + " is in no lock file any more"));
        Assert.Equal([], used.Where(p => rows[p.Key].Reach != p.Value).Select(p => $"{p.Key} reaches the {p.Value}"));
        Assert.All(rows.Where(r => r.Key is not (WithoutCode or ForTestsAlone)), r => Assert.Contains(r.Value.Licence, _licences));
    }

    [Fact]
    public void EveryActionIsPinnedByItsHash()
    {
        var workflows = Directory.GetFiles(Path.Combine(Checkout.Here.Root, ".github", "workflows"));
        Assert.NotEmpty(workflows);
        foreach (var workflow in workflows)
        {
            var uses = File.ReadAllLines(workflow).Where(l => l.Contains("uses:", StringComparison.Ordinal)).ToList();
            Assert.All(uses, u => Assert.Matches("uses: [a-z-]+/[a-z-]+@[0-9a-f]{40} # v[0-9.]+$", u));
        }
    }

    private static bool IsSource(string path) => !path.Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj");

    [GeneratedRegex("""^\| ([A-Za-z0-9.]+) \| ([A-Za-z0-9.-]+) \| (product|tests) \|""")]
    private static partial Regex Row();
}
