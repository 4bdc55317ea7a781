using System.Security.Cryptography;
using System.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// What makes a finding the same finding tomorrow: rule, file and the path of ids inside it. Values and lines stay out,
/// so that a moved line or a slightly different number does not open a new one.
/// </summary>
public static class Fingerprint
{
    /// <summary>32 lower-case hexadecimal digits.</summary>
    public static string Of(Finding finding) => Of(finding.Rule.Id, finding.Place.File, finding.IdPath);

    public static string Of(string ruleId, string file, string idPath)
    {
        var bytes = Encoding.UTF8.GetBytes(ruleId + "\n" + file + "\n" + idPath);
        return Convert.ToHexStringLower(SHA256.HashData(bytes))[..32];
    }
}
