using System.Security.Cryptography;
using System.Text;

namespace RecipeLint.Install;

/// <summary>
/// A name for everything a verdict rests on beside the files: constants, substances, profiles and the levels and options of the rules. Two
/// builds with one name have the same data. The build lists a hash of each data file; the name is made of the list.
/// </summary>
internal static class DataVersion
{
    private const int Length = 12;

    private static readonly Lazy<string> _text = new(Read);

    /// <summary>Twelve hexadecimal digits.</summary>
    public static string Text => _text.Value;

    private static string Read()
    {
        using var stream = typeof(DataVersion).Assembly.GetManifestResourceStream("data-version")
            ?? throw new InvalidOperationException("The list of data files is not part of this build.");
        using var reader = new StreamReader(stream, Encoding.ASCII);
        var hashes = reader.ReadToEnd().Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join('\n', hashes))))[..Length];
    }
}
