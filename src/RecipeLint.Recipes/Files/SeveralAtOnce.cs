namespace RecipeLint.Recipes.Files;

/// <summary>Many alike things looked at by several threads; the answers come in the order of the things.</summary>
internal static class SeveralAtOnce
{
    /// <summary>Things that one thread takes at a time: fewer are not worth another thread.</summary>
    private const int Taken = 64;

    /// <param name="look">Asks nothing that threads may not share.</param>
    public static TAnswer[] Of<TThing, TAnswer>(IReadOnlyList<TThing> things, int threads, Func<TThing, TAnswer> look)
    {
        var answers = new TAnswer[things.Count];
        void LookFrom(int first)
        {
            for (var i = first; i < Math.Min(first + Taken, things.Count); i++)
            {
                answers[i] = look(things[i]);
            }
        }

        var parts = (things.Count + Taken - 1) / Taken;
        if (parts > 1 && threads > 1)
        {
            Parallel.For(0, parts, new ParallelOptions { MaxDegreeOfParallelism = threads }, part => LookFrom(part * Taken));
        }
        else
        {
            for (var part = 0; part < parts; part++)
            {
                LookFrom(part * Taken);
            }
        }

        return answers;
    }
}
