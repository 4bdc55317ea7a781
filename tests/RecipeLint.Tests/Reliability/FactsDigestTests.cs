using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>
/// The facts of every example, digit for digit: a change of any figure shows as a changed line of Tables/facts.linux-x64.txt. Other machines may
/// differ in the last digit of a logarithm, so only that one is held.
/// </summary>
public sealed class FactsDigestTests
{
    [Fact]
    public void TheFactsOfEveryExampleAreThoseOfTheTable()
    {
        if (!OperatingSystem.IsLinux() || RuntimeInformation.ProcessArchitecture != Architecture.X64)
        {
            return;
        }

        var lines = new StringBuilder();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            if (!file.EndsWith(".stock.json", StringComparison.Ordinal) && !file.EndsWith(".recipe.json", StringComparison.Ordinal))
            {
                continue;
            }

            var path = Path.GetRelativePath(Repository.Root, file);
            var answer = Cli.Run("facts", path, "--full");
            Assert.True(answer.Code == 0, path + ": " + answer.Error);
            lines.Append(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(answer.Out)))).Append("  ").Append(path).Append('\n');
        }

        var table = Path.Combine(Repository.Root, "tests", "RecipeLint.Tests", "Tables", "facts.linux-x64.txt");
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(table, lines.ToString());
        }

        Assert.Equal(File.ReadAllText(table), lines.ToString());
    }
}
