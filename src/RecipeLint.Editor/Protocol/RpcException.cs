namespace RecipeLint.Editor.Protocol;

/// <summary>A request that is answered with an error.</summary>
/// <param name="code">One of <see cref="RpcCodes"/>.</param>
internal sealed class RpcException(int code, string message) : Exception(message)
{
    public int Code { get; } = code;

    /// <summary>What is said of a fault of the program itself.</summary>
    public static string Words(Exception fault) =>
        $"internal fault ({fault.GetType().Name}: {fault.Message}). This is a defect of RecipeLint, not of your files.";

    public static RpcException Invalid(string message) => new(RpcCodes.InvalidParams, message);
}

/// <summary>Error codes of JSON-RPC 2.0 (section 5.1) and of the Language Server Protocol 3.17 (ErrorCodes).</summary>
internal static class RpcCodes
{
    public const int ParseError = -32700;
    public const int InvalidRequest = -32600;
    public const int MethodNotFound = -32601;
    public const int InvalidParams = -32602;
    public const int InternalError = -32603;
    public const int ServerNotInitialized = -32002;
    public const int RequestFailed = -32803;
    public const int RequestCancelled = -32800;
}
