using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace RecipeLint.Shell;

/// <summary>
/// The name that git gives to the content of a file: the digest of the word "blob", its length and its bytes. Computed here, because
/// whatever of git compares a file on the disk with one of a revision first sends it through the filters that the repository names, and
/// those are programs of anybody's.
/// </summary>
internal static class BlobDigest
{
    /// <summary>Digits of a name in a repository of the newer sort.</summary>
    private const int Sha256Digits = 64;

    /// <summary>
    /// Whether what stands at a path is what a revision holds there. Line ends do not count, since git may have changed them when it put
    /// the file there. A file that a filter changes when it is stored is never the same.
    /// </summary>
    /// <param name="full">Full path.</param>
    /// <param name="id">Of the object that git holds, in hexadecimal digits.</param>
    /// <param name="isLink">A link, whose content is where it leads.</param>
    public static bool IsOf(string full, string id, bool isLink)
    {
        try
        {
            var link = new FileInfo(full).LinkTarget;
            if (link is not null)
            {
                return isLink && Of(Encoding.UTF8.GetBytes(link.Replace('\\', '/')), id.Length) == id;
            }

            if (!File.Exists(full) || WholeFiles.IsSpecial(full))
            {
                return false;
            }

            var bytes = File.ReadAllBytes(full);
            return Of(bytes, id.Length) == id || (bytes.AsSpan().IndexOf("\r\n"u8) >= 0 && Of(WithoutReturns(bytes), id.Length) == id);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What cannot be read is judged anew, and says then why.
            return false;
        }
    }

    private static string Of(byte[] content, int digits)
    {
        byte[] whole = [.. Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"blob {content.Length}\0")), .. content];
        // The name of an object as git makes it, and no proof of anything.
#pragma warning disable CA5350
        return Convert.ToHexStringLower(digits == Sha256Digits ? SHA256.HashData(whole) : SHA1.HashData(whole));
#pragma warning restore CA5350
    }

    private static byte[] WithoutReturns(byte[] bytes)
    {
        var left = new List<byte>(bytes.Length);
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] != '\r' || i + 1 == bytes.Length || bytes[i + 1] != '\n')
            {
                left.Add(bytes[i]);
            }
        }

        return [.. left];
    }
}
