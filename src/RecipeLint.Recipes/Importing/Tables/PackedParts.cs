using System.IO.Compression;
using System.Xml;

namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>The parts of a packed file, unpacked on demand and never more than a bound of them together.</summary>
internal sealed class PackedParts(ZipArchive archive)
{
    private long _left = TableBounds.Unpacked;

    /// <summary>A part as XML without entities and without anything fetched from elsewhere; null when there is none of that name.</summary>
    /// <exception cref="UnusableTableException">More would be unpacked than any recipe needs.</exception>
    public XmlReader? Open(string name)
    {
        if (archive.GetEntry(name) is not { } entry)
        {
            return null;
        }

        // What the file says of its own size is not believed.
        using var packed = entry.Open();
        using var text = new MemoryStream();
        var buffer = new byte[81_920];
        for (int read; (read = packed.Read(buffer)) > 0;)
        {
            _left -= read;
            if (_left < 0)
            {
                throw new UnusableTableException("unpacks to more than 60 MB; no recipe is that large, so nothing of it is read.");
            }

            text.Write(buffer, 0, read);
        }

        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            CloseInput = true,
        };
        return XmlReader.Create(new MemoryStream(text.ToArray(), writable: false), settings);
    }
}
