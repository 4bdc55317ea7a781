using System.Globalization;
using System.Text.RegularExpressions;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace RecipeLint.Reports.Pictures;

/// <summary>
/// The one class that knows the plotting library. It draws in colours that stand for an <see cref="Ink"/>; these become classes, so that
/// the page decides what they look like by day, at night and on paper, and no picture carries a style of its own.
/// </summary>
internal static partial class PictureSvg
{
    private const double WidestLetter = 9;

    private const byte PaleOf255 = 64;

    private const double RowHeight = 26, FrameHeight = 110, CurveHeight = 330;

    /// <summary>Dashes of the curves in their order, so that they are told apart without colour; empty for a whole stroke.</summary>
    public static readonly double[][] Dashes = [[], [8, 4], [2, 3], [12, 3, 2, 3], [5, 5], [14, 4]];

    private static readonly MarkerType[] Signs =
        [MarkerType.Circle, MarkerType.Square, MarkerType.Triangle, MarkerType.Diamond, MarkerType.Circle, MarkerType.Square];

    /// <summary>The drawing as markup of an svg element without its title.</summary>
    /// <param name="width">Units across; a phone gets a narrower drawing, not a smaller one.</param>
    /// <param name="id">Unique on the page.</param>
    public static (string Inside, int Width, int Height) Draw(Picture picture, int width, string id)
    {
        var rows = picture.Up.Labels?.Count;
        var height = (int)(rows is { } count ? (count * RowHeight) + FrameHeight : CurveHeight);
        var model = new PlotModel
        {
            // Numbers on the axes are written alike whatever the machine's language.
            Culture = CultureInfo.InvariantCulture,
            TextColor = Colour(Ink.Text),
            PlotAreaBorderColor = Colour(Ink.Grid),
            PlotAreaBorderThickness = new OxyThickness(1, 0, 0, 1),
            DefaultFontSize = 13,
            Padding = new OxyThickness(4, 8, 12, 4),
        };
        if (picture.Up.Labels is { } names)
        {
            // The library guesses widths for a narrow typeface; ours may be wide, and a name must not lose its first letters.
            model.PlotMargins = new OxyThickness(14 + (WidestLetter * names.Max(DisplayWidth.Of)), double.NaN, double.NaN, double.NaN);
        }

        model.Axes.Add(AxisOf(picture.Up, AxisPosition.Left));
        model.Axes.Add(AxisOf(picture.Across, AxisPosition.Bottom));
        Surfaces(model, picture);
        Bands(model, picture);
        Lines(model, picture);
        var svg = new SvgExporter
        {
            Width = width,
            Height = height,
            IsDocument = false,
            UseVerticalTextAlignmentWorkaround = true,
        }.ExportToString(model);
        return (Clean(svg, id), width, height);
    }

    private static OxyPlot.Axes.Axis AxisOf(Axis axis, AxisPosition position)
    {
        OxyPlot.Axes.Axis made = axis switch
        {
            { Labels: { } labels } => Categories(labels, position),
            { IsLog: true } =>
                new LogarithmicAxis { Minimum = axis.Least, Maximum = axis.Most, MinorTickSize = 0, UseSuperExponentialFormat = false },
            _ => new LinearAxis { Minimum = axis.Least, Maximum = axis.Most, MinorTickSize = 0 },
        };
        made.Position = position;
        made.Title = axis.Title;
        made.AxislineColor = Colour(Ink.Text);
        made.TicklineColor = Colour(Ink.Grid);
        made.MajorGridlineStyle = axis.Labels is null ? LineStyle.Solid : LineStyle.None;
        made.MajorGridlineColor = Colour(Ink.Grid);
        // The library guesses widths for a narrow typeface: beside the numbers of an upright axis its title needs more room.
        made.AxisTitleDistance = position == AxisPosition.Left ? 20 : 6;
        made.StringFormat = axis.Labels is null ? "0.####" : null;
        return made;
    }

    private static CategoryAxis Categories(IReadOnlyList<string> labels, AxisPosition position)
    {
        var axis = new CategoryAxis { MajorTickSize = 0, GapWidth = 0 };
        axis.Labels.AddRange(labels.Select(Printable.Show));
        if (position == AxisPosition.Left)
        {
            // The first row stands at the top, as in its table.
            (axis.StartPosition, axis.EndPosition) = (1, 0);
        }

        return axis;
    }

    private static void Surfaces(PlotModel model, Picture picture)
    {
        foreach (var box in picture.Boxes)
        {
            model.Annotations.Add(new RectangleAnnotation
            {
                MinimumX = box.Left,
                MaximumX = box.Right,
                MinimumY = box.Bottom,
                MaximumY = box.Top,
                Fill = Colour(box.Ink),
                Stroke = Colour(Ink.Text),
                StrokeThickness = box.Ink == Ink.Usual ? 0 : 0.75,
                Text = Printable.Show(box.Text),
                TextColor = Colour(Ink.Text),
                FontSize = 12,
                Layer = AnnotationLayer.BelowSeries,
            });
        }

        foreach (var mark in picture.Marks)
        {
            model.Annotations.Add(new LineAnnotation
            {
                Type = mark.IsVertical ? LineAnnotationType.Vertical : LineAnnotationType.Horizontal,
                X = mark.At,
                Y = mark.At,
                Color = Colour(Ink.Limit),
                StrokeThickness = 1.5,
                LineStyle = LineStyle.LongDash,
                Text = Printable.Show(mark.Text),
                TextColor = Colour(Ink.Text),
                FontSize = 12,
                TextOrientation = mark.IsVertical ? AnnotationTextOrientation.AlongLine : AnnotationTextOrientation.Horizontal,
                // Above its line, which else strikes it through.
                TextVerticalAlignment = mark.IsVertical ? VerticalAlignment.Top : VerticalAlignment.Bottom,
            });
        }
    }

    /// <summary>Bands lie under all curves, pale enough to see one through another.</summary>
    private static void Bands(PlotModel model, Picture picture)
    {
        foreach (var curve in picture.Curves.Where(c => c.Band.Any(b => b.High > b.Low)))
        {
            var band = new AreaSeries
            {
                Color = OxyColors.Transparent,
                Color2 = OxyColors.Transparent,
                Fill = OxyColor.FromAColor(PaleOf255, Colour(curve.Ink)),
                StrokeThickness = 0,
                RenderInLegend = false,
            };
            band.Points.AddRange(curve.Band.Select(b => new DataPoint(b.X, b.Low)));
            band.Points2.AddRange(curve.Band.Select(b => new DataPoint(b.X, b.High)));
            model.Series.Add(band);
        }
    }

    private static void Lines(PlotModel model, Picture picture)
    {
        foreach (var (curve, index) in picture.Curves.Select((c, i) => (c, i)))
        {
            foreach (var dot in curve.Dots.Where(d => d.Doubt > 0))
            {
                Whisker(model, Math.Max(dot.X - dot.Doubt, picture.Across.Least), dot.Y, dot.X + dot.Doubt, dot.Y);
            }

            foreach (var dot in curve.Dots.Where(d => d.DoubtUp > 0))
            {
                Whisker(
                    model, dot.X, Math.Max(dot.Y - dot.DoubtUp, picture.Up.Least), dot.X, Math.Min(dot.Y + dot.DoubtUp, picture.Up.Most));
            }

            var series = new LineSeries
            {
                Title = curve.Name.Length == 0 ? null : Printable.Show(curve.Name),
                Color = Colour(curve.Ink),
                StrokeThickness = 2,
                LineStyle = curve.IsJoined ? LineStyle.Solid : LineStyle.None,
                Dashes = Dashes[index % Dashes.Length] is { Length: > 0 } dashes ? dashes : null,
                MarkerType = Signs[index % Signs.Length],
                MarkerSize = curve.IsJoined ? 3.5 : 5,
                MarkerFill = Colour(curve.Ink),
                MarkerStroke = Colour(Ink.Text),
                MarkerStrokeThickness = curve.IsJoined ? 0 : 1,
            };
            series.Points.AddRange(curve.Dots.Select(d => new DataPoint(d.X, d.Y)));
            model.Series.Add(series);
        }
    }

    private static void Whisker(PlotModel model, double fromX, double fromY, double toX, double toY)
    {
        var whisker = new LineSeries { Color = Colour(Ink.Text), StrokeThickness = 2, RenderInLegend = false };
        whisker.Points.Add(new DataPoint(fromX, fromY));
        whisker.Points.Add(new DataPoint(toX, toY));
        model.Series.Add(whisker);
    }

    /// <summary>A colour that no theme has and that only stands for its ink.</summary>
    private static OxyColor Colour(Ink ink) => OxyColor.FromRgb((byte)(1 + (int)ink), 2, 3);

    /// <summary>Leaves the drawing itself: no prologue, no fonts, no colours; ids of its own.</summary>
    private static string Clean(string svg, string id)
    {
        var start = svg.IndexOf('>', svg.IndexOf("<svg", StringComparison.Ordinal)) + 1;
        var inside = svg[start..svg.LastIndexOf("</svg>", StringComparison.Ordinal)];
        inside = Style().Replace(
            inside, m => string.Join(' ', m.Groups[1].Value.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(Attribute)));
        inside = FontFamily().Replace(inside, "");
        inside = inside.Replace("shape-rendering=\"crispEdges\"", "", StringComparison.Ordinal);
        inside = Painted().Replace(inside, Painting);
        inside = inside.Replace("clipPath1", $"{id}-clip1", StringComparison.Ordinal);
        return ClipNumber().Replace(inside, $"{id}-clip$1").Trim() + "\n";
    }

    private static string Attribute(string declaration)
    {
        var colon = declaration.IndexOf(':', StringComparison.Ordinal);
        return $"{declaration[..colon].Trim()}=\"{declaration[(colon + 1)..].Trim()}\"";
    }

    /// <summary>One element with its paints as classes.</summary>
    private static string Painting(Match element)
    {
        var classes = new List<string>();
        var text = Paint().Replace(element.Value, m =>
        {
            if (m.Groups["paint"].Value == "none")
            {
                return m.Value;
            }

            var ink = m.Groups["ink"].Success ? (Ink)(int.Parse(m.Groups["ink"].Value, CultureInfo.InvariantCulture) - 1) : Ink.Text;
            classes.Add($"{(m.Groups["what"].Value == "fill" ? "f" : "s")}-{ink.ToString().ToLowerInvariant()}");
            return "";
        });
        return classes.Count == 0 ? text : text.Insert(
            text.IndexOf(' ', StringComparison.Ordinal), $" class=\"{string.Join(' ', classes.Distinct(StringComparer.Ordinal))}\"");
    }

    [GeneratedRegex("style=\"([^\"]*)\"")]
    private static partial Regex Style();

    [GeneratedRegex(" ?font-family=\"[^\"]*\"")]
    private static partial Regex FontFamily();

    [GeneratedRegex("<(?:polyline|polygon|path|rect|ellipse|line|text) [^>]*>")]
    private static partial Regex Painted();

    [GeneratedRegex("\\b(?<what>fill|stroke)=\"(?<paint>none|black|white|rgb\\((?<ink>[0-9]+),2,3\\))\"")]
    private static partial Regex Paint();

    [GeneratedRegex("clipPath([0-9]+)")]
    private static partial Regex ClipNumber();
}
