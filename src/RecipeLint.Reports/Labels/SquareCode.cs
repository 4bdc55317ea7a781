using System.Globalization;
using System.Text;
using QRCoder;

namespace RecipeLint.Reports.Labels;

/// <summary>A QR code as a path; the one class that knows its library.</summary>
internal static class SquareCode
{
    /// <summary>A path of one unit a module, and how many modules it is wide, the quiet zone of four included.</summary>
    public static (string Path, int Modules) Of(string text)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows[y].Count; x++)
            {
                if (rows[y][x])
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
                }
            }
        }

        return (path.ToString(), rows.Count);
    }
}
