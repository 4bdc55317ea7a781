using System.IO.Compression;
using System.Text.Json.Nodes;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Importing;

/// <summary>Workbooks: values as they were shown, and nothing else.</summary>
public sealed class WorkbookTests
{
    private static readonly string[] _heading = ["part", "substance", "amount (g)", "assay"];

    [Fact]
    public void NumbersPercentagesFormulasAndMergedCellsAreReadAsShown()
    {
        using var scratch = new Scratch();
        var book = new WorkbookMaker().Sheet(
            "Mixing",
            [
                _heading,
                ["Part A", "KNO3", "7.4999999999999997E-2", "<c s=\"2\"><v>0.985</v></c>"],
                ["", "MgSO4.7H2O", "<c><f>C2*2</f><v>0.15</v></c>", ""],
                ["Part B", "KH2PO4", "<c><f>C9*2</f></c>", ""],
                ["Part B", "K2SO4", "<c s=\"1\"><v>46143</v></c>", ""],
                ["Part B", "NH4NO3", "5", ""],
            ],
            after: "<mergeCells><mergeCell ref=\"A2:A3\"/></mergeCells>",
            hiddenRow: "6");
        var stocks = Import(scratch, book, "--makes", "1 L");

        var (a, b) = (stocks["part-a"], stocks["part-b"]);
        Assert.Equal(("0.075 g", "98.5 %"), ((string?)a["steps"]![0]!["amount"], (string?)a["steps"]![0]!["assay"]));
        Assert.Equal("0.15 g", (string?)a["steps"]![1]!["amount"]);
        Assert.Contains("=C2*2", (string?)a["steps"]![1]!["note"], StringComparison.Ordinal);

        // A formula without a value, a date and a hidden row are no amounts.
        Assert.Equal("=C9*2 g", (string?)b["steps"]![0]!["amount"]);
        Assert.Equal("2026-05-01 g", (string?)b["steps"]![1]!["amount"]);
        Assert.Equal("row 6 (hidden in the table): Part B | NH4NO3 | 5", (string?)b["notUnderstood"]![0]);
        Assert.True(Cli.RunIn(scratch.Path, null, "check", "out/part-b.stock.json").Findings.Count(f => f.Contains(": error")) >= 2);
    }

    [Fact]
    public void HiddenSheetsAreNotReadAndSeveralAreAskedFor()
    {
        using var scratch = new Scratch();
        string[][] rows = [["substance", "amount"], ["KNO3", "1 g"]];
        File.WriteAllBytes(
            Path.Combine(scratch.Path, "t.xlsx"), new WorkbookMaker().Sheet("A", rows).Sheet("B", rows).Sheet("Old", rows, "veryHidden").Pack());
        var open = Cli.RunIn(scratch.Path, null, "import", "t.xlsx");
        var both = Cli.RunIn(scratch.Path, null, "import", "t.xlsx", "--sheet", "A", "--sheet", "B");
        var none = Cli.RunIn(scratch.Path, null, "import", "t.xlsx", "--sheet", "C");

        Assert.Equal(2, open.Code);
        Assert.Contains("'A', 'B'", open.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Old", open.Error, StringComparison.Ordinal);
        Assert.Equal(0, both.Code);
        Assert.Equal(["a.stock.json", "b.stock.json", "t.xlsx"], Directory.GetFiles(scratch.Path).Select(Path.GetFileName).Order());
        Assert.Equal(2, none.Code);
    }

    /// <summary>60 kB that unpack to 65 MB of blanks inside a cell.</summary>
    [Fact]
    public void AFileThatSwellsIsNotReadToItsEnd()
    {
        using var scratch = new Scratch();
        var bomb = new WorkbookMaker().Raw("A", "<worksheet><sheetData>" + new string(' ', 65_000_000) + "</sheetData></worksheet>").Pack();
        Assert.InRange(bomb.Length, 1, 100_000);

        Assert.Contains("60 MB", Refused(scratch, bomb), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<!DOCTYPE a [<!ENTITY x \"xx\">]><worksheet>&x;</worksheet>", "damaged")]
    [InlineData("<worksheet><sheetData><row><c r=\"ZZZ1\"><v>1</v></c></row></sheetData></worksheet>", "nothing")]
    [InlineData("<worksheet><sheetData><row><c r=\"XFD1\"><v>1</v></c></row></sheetData></worksheet>", "columns")]
    [InlineData("<worksheet><sheetData><row r=\"1\"><c", "damaged")]
    [InlineData("<html/>", "nothing")]
    public void SheetsThatMeanHarmAreOneLine(string xml, string hint)
    {
        using var scratch = new Scratch();
        var error = Refused(scratch, new WorkbookMaker().Raw("A", xml).Pack());
        Assert.True(error.Contains(hint, StringComparison.Ordinal) || hint == "nothing", error);
    }

    [Fact]
    public void WhatIsNoWorkbookIsOneLine()
    {
        using var scratch = new Scratch();
        Assert.Contains("damaged", Refused(scratch, [0x50, 0x4B, 3, 4, 9, 9, 9]), StringComparison.Ordinal);
        Assert.Contains("older form", Refused(scratch, [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1]), StringComparison.Ordinal);
        Assert.Contains("null", Refused(scratch, [1, 0, 2, 0]), StringComparison.Ordinal);
        Assert.Contains("UTF-8", Refused(scratch, [0x61, 0xB5, 0x2C, 0x62]), StringComparison.Ordinal);
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            zip.CreateEntry("../../evil.txt");
        }

        Assert.Contains("no workbook", Refused(scratch, memory.ToArray()), StringComparison.Ordinal);
    }

    /// <summary>Whatever bytes of a good workbook are lost or changed: one line or a file, never a fault.</summary>
    [Fact]
    public void DamagedWorkbooksNeverEndInAFault()
    {
        using var scratch = new Scratch();
        var good = new WorkbookMaker().Sheet("A", [["substance", "amount"], ["KNO3", "1 g"]]).Pack();
        var random = new Random(20_261_129);
        for (var i = 0; i < 200; i++)
        {
            var bytes = (byte[])good.Clone();
            for (var n = random.Next(1, 6); n > 0; n--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            }

            if (i % 3 == 0)
            {
                bytes = bytes[..random.Next(bytes.Length)];
            }

            File.WriteAllBytes(Path.Combine(scratch.Path, "t.xlsx"), bytes);
            var answer = Cli.RunIn(scratch.Path, null, "import", "t.xlsx", "--dry-run");
            Assert.True(answer.Code is 0 or 2, $"{i}: {answer.Error}");
        }
    }

    private static Dictionary<string, JsonNode> Import(Scratch scratch, WorkbookMaker book, params string[] options)
    {
        File.WriteAllBytes(Path.Combine(scratch.Path, "t.xlsx"), book.Pack());
        var answer = Cli.RunIn(scratch.Path, null, ["import", "t.xlsx", "--into", "out", .. options]);
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        return Directory.GetFiles(Path.Combine(scratch.Path, "out")).ToDictionary(
            f => Path.GetFileName(f).Split('.')[0], f => JsonNode.Parse(File.ReadAllText(f))!);
    }

    private static string Refused(Scratch scratch, byte[] bytes)
    {
        File.WriteAllBytes(Path.Combine(scratch.Path, "t.xlsx"), bytes);
        var answer = Cli.RunIn(scratch.Path, null, "import", "t.xlsx");
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        return answer.Error;
    }
}
