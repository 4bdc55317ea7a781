using RecipeLint.Analysis;

namespace RecipeLint.Commands;

/// <summary>The single stock that a command is about.</summary>
internal sealed record OneStock(Session Session, StockFacts Stock)
{
    /// <exception cref="UsageException">The path is no stock, several, or one whose volume cannot be read.</exception>
    public static OneStock Open(Surroundings world, string command, string path, string? config, bool noConfig)
    {
        var session = Session.Open(world, [path], null, config, noConfig);
        if (session.Workspace.Asked.Count != 1)
        {
            throw new UsageException($"'{command}' takes one stock file.");
        }

        var file = session.Workspace.Asked.Single();
        return session.Facts.FindStock(file) is { } stock
            ? new OneStock(session, stock)
            : throw new UsageException($"'{file}' is no stock, or the volume it makes cannot be read. 'recipelint check' says why.");
    }
}
