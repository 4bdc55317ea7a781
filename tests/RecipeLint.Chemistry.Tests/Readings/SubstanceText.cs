using System.Text;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>A substance in words, with all that it holds but the texts of its sources, which stand in the data.</summary>
internal static class SubstanceText
{
    public static void Write(StringBuilder text, Substance s)
    {
        text.Append($"\n{s.Id}: {s.Name}\n").Append(Hold.Line(
            ("kind", s.Kind), ("form", s.Form), ("formula", s.Formula?.Text), ("family", s.HydrateFamily), ("strength", s.Strength.Value),
            ("colour", s.Colour), ("behaves as", s.BehavesAs), ("needs assay", s.NeedsAssay), ("feeds microbes", s.FeedsMicrobes),
            ("preservative", s.IsPreservative), ("guessed charge", s.GuessedCharge), ("urea taken", s.IsUreaTaken),
            ("extract", s.Extract?.Key), ("states its strength", s.StatesItsStrength))).Append('\n');
        if (s.Aliases.Count > 0) text.Append($"aliases {string.Join(", ", s.Aliases)}\n");
        text.Append($"holds {string.Join(", ", s.Content.Elements.Select(e => $"{e} {Hold.Number(s.Content[e])}"))}\n");
        var forms = Enum.GetValues<NitrogenForm>().Where(f => s.Content[f] != 0).ToList();
        if (forms.Count > 0) text.Append($"nitrogen {string.Join(", ", forms.Select(f => $"{f} {Hold.Number(s.Content[f])}"))}\n");
        text.Append(Yields(s.Dissolves)).Append('\n');
        if (s.Iron is { } iron)
        {
            text.Append("iron ").Append(Hold.Line(
                ("total", iron.Total.Value), ("chelated", iron.Chelated?.Value), ("ortho-ortho", iron.OrthoOrtho?.Value),
                ("agent", iron.Agent))).Append('\n');
        }

        Stated(text, "CAS", s.CasRecord);
        Stated(text, "assay", s.TypicalAssay);
        Stated(text, "strength", s.StrengthRecord);
        Stated(text, "density", s.Density);
        Stated(text, "note", s.Note);
        foreach (var i in s.Impurities)
            text.Append($"impurity {i.Element} {Hold.Number(i.Content.Value.Value)} [{i.Content.Confidence}]\n");
        if (s.KeepApartFrom is { } apart) text.Append($"apart from {string.Join(", ", apart.Value)} [{apart.Confidence}]\n");
        if (s.Hazards is { } h)
        {
            text.Append($"hazards {string.Join(' ', h.Statements)} + {string.Join(' ', h.SupplierAdds)}");
            text.Append($" [{(h.Harmonised ? "harmonised, " : "")}{h.Confidence}]\n");
        }

        if (s.Solubility is { } table)
        {
            text.Append("dissolves in 100 g ");
            text.AppendJoin(", ", table.Value.Select(p => $"{Hold.Number(p.Temperature.Celsius)} °C {Hold.Number(p.GramsPer100GramsWater)}"));
            text.Append($" [{table.Confidence}]\n");
        }

        if (s.Assumption is { } taken) text.Append(taken).Append('\n');
    }

    public static string Yields(IReadOnlyList<ComponentYield> yields) =>
        $"sets free {string.Join(", ", yields.Select(y => $"{y.Component} {Hold.Number(y.MolesPerGram)}"))}";

    public static string Sourced(Sourced<double>? value) =>
        value is { } v ? $"{Hold.Number(v.Value)} [{v.Source}, {v.Confidence}]" : "none";

    private static void Stated<T>(StringBuilder text, string name, Sourced<T>? value)
    {
        if (value is { } v) text.Append($"{name} {v.Value} [{v.Confidence}]\n");
    }
}
