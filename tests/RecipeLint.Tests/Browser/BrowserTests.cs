using System.Text.RegularExpressions;
using PuppeteerSharp;
using PuppeteerSharp.Media;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Browser;

/// <summary>Pages as people open them: from the disk, in a real browser, on a phone and at a desk, by day and at night, on paper.</summary>
public sealed partial class BrowserTests(Chromium browser, Pages pages) : IClassFixture<Chromium>, IClassFixture<Pages>
{
    public static TheoryData<string> Kinds =>
    [
        "recipe", "findings", "stock", "trace", "water", "broken", "overview", "bench-sheet", "label", "comparison", "batch",
        "book-index", "book-first-week", "book-day-1", "book-calcium-with-sulfate", "book-files-and-units", "book-reading-a-finding",
        "book-precipitation", "book-documents", "book-weighing",
    ];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task NothingIsAskedForNothingIsCutOffAndAxeIsContent(string kind)
    {
        await using var page = await browser.Open(pages.All[kind], 380, dark: false);
        if (page is null)
        {
            return;
        }

        foreach (var (width, dark) in new[] { (380, false), (380, true), (1280, true), (1280, false) })
        {
            await page.Show(width, dark);
            Assert.Equal(dark, await page.Number("Number(matchMedia('(prefers-color-scheme: dark)').matches)") == 1);
            Assert.Equal(width, await page.Number("window.innerWidth"));
            Assert.Empty(await page.StickingOut());
            Assert.Empty(await page.Violations());
        }

        Assert.All(page.Asked, a => Assert.StartsWith("file:", a, StringComparison.Ordinal));
        if (!kind.StartsWith("book-", StringComparison.Ordinal))
        {
            Assert.Single(page.Asked);
        }
    }

    [Fact]
    public async Task TheOverviewSortsByAnyColumn()
    {
        await using var page = await browser.Open(pages.All["overview"], 1280, dark: false);
        if (page is null)
        {
            return;
        }

        const string Errors = "JSON.stringify([...document.querySelectorAll('.sortable tbody tr')].map(r => Number(r.cells[2].textContent)))";
        var before = Numbers(await page.Text(Errors));
        Assert.Equal(before.OrderDescending(), before);
        Assert.True(before[0] > 0);
        await page.Page.EvaluateExpressionAsync("document.querySelectorAll('.sortable thead button')[2].click()");
        Assert.Equal(before.Order(), Numbers(await page.Text(Errors)));
        Assert.Equal("ascending", await page.Text("document.querySelectorAll('.sortable thead th')[2].getAttribute('aria-sort')"));
        await page.Page.EvaluateExpressionAsync("document.querySelectorAll('.sortable thead button')[2].click()");
        Assert.Equal(before.OrderDescending(), Numbers(await page.Text(Errors)));

        static List<int> Numbers(string json) => [.. json.Trim('[', ']').Split(',').Select(n => int.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];
    }

    [Fact]
    public async Task EveryPictureHasAnAlternativeAndItsFigures()
    {
        await using var page = await browser.Open(pages.All["recipe"], 1280, dark: false);
        if (page is null)
        {
            return;
        }

        var pictures = await page.Number("document.querySelectorAll('figure.picture').length");
        Assert.True(pictures > 10, $"{pictures} pictures");
        Assert.Equal(pictures, await page.Number("document.querySelectorAll('figure.picture svg.wide-picture[role=img] > title').length"));
        Assert.Equal(pictures, await page.Number("document.querySelectorAll('figure.picture details.figures table').length"));

        // Names on the left of a picture keep their first letters.
        Assert.Equal(0, await page.Number(
            "[...document.querySelectorAll('svg.wide-picture text')].filter(t => { const s = t.ownerSVGElement.getBoundingClientRect(), r = t.getBoundingClientRect(); "
            + "return r.left < s.left - 1 || r.right > s.right + 1; }).length"));
    }

    [Fact]
    public async Task OnPaperNothingIsCutOff()
    {
        foreach (var kind in new[] { "recipe", "findings", "overview", "bench-sheet", "label", "comparison", "batch", "book-day-1" })
        {
            await using var page = await browser.Open(pages.All[kind], 1280, dark: false);
            if (page is null)
            {
                return;
            }

            // A4 is 210 mm wide, 15 mm of it margin on either side: 680 px at 96 to the inch. Letter is wider.
            await page.Page.EmulateMediaTypeAsync(MediaType.Print);
            await page.Page.SetViewportAsync(new ViewPortOptions { Width = 680, Height = 1000 });
            Assert.Equal(0, await page.Number(
                "[...document.querySelectorAll('main *')].filter(e => e.checkVisibility({ contentVisibilityAuto: true }) && !e.closest('svg') && "
                + "e.getBoundingClientRect().right > document.documentElement.clientWidth + 1).length"));
            foreach (var paper in new[] { PaperFormat.A4, PaperFormat.Letter })
            {
                var pdf = await page.Page.PdfDataAsync(new PdfOptions { Format = paper });
                var sheets = PaperPages().Count(System.Text.Encoding.Latin1.GetString(pdf));
                Assert.True(sheets >= 1);

                // A bench sheet is one page: nobody turns over with wet gloves.
                Assert.True(kind is not ("label" or "bench-sheet") || sheets == 1, $"{sheets} pages of {kind}");
            }
        }
    }

    /// <summary>Labels lie on a sheet as the sheets are sold: eight of 105 mm, two of 210 mm, none cut off.</summary>
    [Theory]
    [InlineData("105x74", 8, 1)]
    [InlineData("105x74", 9, 2)]
    [InlineData("210x148", 2, 1)]
    [InlineData("199x143", 2, 1)]
    public async Task LabelsFillASheetOfA4(string size, int copies, int sheets)
    {
        using var folder = new Scratch();
        var path = Path.Combine(folder.Path, "label.html");
        Assert.Equal(0, Cli.Run("label", "examples/fennelwick/stocks/a.stock.json", "--format", "html", "--size", size, "--copies", copies.ToString(System.Globalization.CultureInfo.InvariantCulture), "-o", path).Code);
        if (await browser.Open(path, 1280, false) is not { } page)
        {
            return;
        }

        await using (page)
        {
            var pdf = await page.Page.PdfDataAsync(new PdfOptions { Format = PaperFormat.A4 });
            Assert.Equal(sheets, PaperPages().Count(System.Text.Encoding.Latin1.GetString(pdf)));
            await page.Page.EmulateMediaTypeAsync(MediaType.Print);
            await page.Page.SetViewportAsync(new ViewPortOptions { Width = 794, Height = 1123 });
            Assert.Equal(0, await page.Number("[...document.querySelectorAll('.labels svg')].filter(e => e.getBoundingClientRect().right > 795).length"));
        }
    }

    [GeneratedRegex("/Type\\s*/Page\\b")]
    private static partial Regex PaperPages();
}
