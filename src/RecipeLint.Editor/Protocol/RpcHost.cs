using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RecipeLint.Editor.Protocol;

/// <summary>What answers messages.</summary>
internal interface IRpcTarget
{
    /// <summary>True once the process is to end.</summary>
    bool HasEnded { get; }

    /// <exception cref="RpcException">It is answered with this error.</exception>
    JsonNode? Answer(string method, JsonElement parameters, CancellationToken cancelled);

    void Hear(string method, JsonElement parameters);

    /// <summary>Work that waits until nothing else does; called again after the next message.</summary>
    /// <param name="interrupted">Set as soon as a message has come in.</param>
    void Rest(CancellationToken interrupted);

    /// <summary>A fault of the server's own while it heard a notification or rested: there is nobody to answer.</summary>
    void Report(Exception fault);
}

/// <summary>
/// Takes messages in their order, one at a time. A second thread reads ahead, so that a request can be cancelled while it waits or is
/// worked on. No message ends the host; a closed stream and the target do.
/// </summary>
#pragma warning disable CA1001 // The reading thread outlives the host until its stream ends; what it waits on stays.
internal sealed class RpcHost(Stream input, FrameWriter output, IRpcTarget target)
#pragma warning restore CA1001
{
    private readonly BlockingCollection<Work> _queue = new(new ConcurrentQueue<Work>());
    private readonly ConcurrentDictionary<string, CancellationTokenSource> _open = new(StringComparer.Ordinal);
    private readonly Lock _gate = new();
    private CancellationTokenSource _rest = new();

    /// <summary>Works until the target has ended or the other side is gone.</summary>
    public void Run()
    {
        var reading = new Thread(Read) { IsBackground = true, Name = "messages" };
        reading.Start();
        while (!target.HasEnded)
        {
            if (!_queue.TryTake(out var work))
            {
                Rest();
                work = _queue.Take();
            }

            if (work.IsEnd)
            {
                return;
            }

            Do(work);
        }
    }

    private void Read()
    {
        var frames = new FrameReader(input);
        while (true)
        {
            Frame frame;
            try
            {
                frame = frames.Next();
            }
            catch (Exception e) when (e is IOException or ObjectDisposedException)
            {
                frame = default;
            }

            var work = frame.IsEnd ? new Work(null, null)
                : frame.Body is { } body ? Understand(body)
                : new Work(null, new RpcException(RpcCodes.ParseError, frame.Fault!));
            if (work is { Message.Method: "$/cancelRequest" })
            {
                Cancel(work.Message.Params);
                continue;
            }

            if (work.Message is { Id: { } id, Method: not null })
            {
                _open[id] = new CancellationTokenSource();
            }

            _queue.Add(work);
            lock (_gate)
            {
                _rest.Cancel();
            }

            if (work.IsEnd)
            {
                return;
            }
        }
    }

    private static Work Understand(byte[] body)
    {
        try
        {
            return new Work(RpcMessage.Read(body), null);
        }
        catch (RpcException e)
        {
            return new Work(null, e);
        }
    }

    private void Cancel(JsonElement parameters)
    {
        if (parameters.Maybe("id") is { } id && _open.TryGetValue(id.GetRawText(), out var request))
        {
            request.Cancel();
        }
    }

    private void Rest()
    {
        CancellationTokenSource rest;
        lock (_gate)
        {
            _rest = rest = new CancellationTokenSource();
            if (_queue.Count > 0)
            {
                return;
            }
        }

        Guarded(() => target.Rest(rest.Token));
    }

    private void Do(Work work)
    {
        if (work.Fault is { } fault)
        {
            output.Error(null, fault.Code, fault.Message);
            return;
        }

        if (work.Message is not { Method: { } method } message)
        {
            return;
        }

        if (message.Id is not { } id)
        {
            Guarded(() => target.Hear(method, message.Params));
            return;
        }

        Answer(id, method, message.Params);
    }

    private void Answer(string id, string method, JsonElement parameters)
    {
        var cancelled = _open.TryGetValue(id, out var request) ? request.Token : CancellationToken.None;
        try
        {
            cancelled.ThrowIfCancellationRequested();
            output.Result(id, target.Answer(method, parameters, cancelled));
        }
        catch (RpcException e)
        {
            output.Error(id, e.Code, e.Message);
        }
        catch (OperationCanceledException)
        {
            output.Error(id, RpcCodes.RequestCancelled, "The request was cancelled.");
        }
#pragma warning disable CA1031 // A fault in one answer must not end the session: the client is told and may ask again.
        catch (Exception e) when (e is not IOException)
#pragma warning restore CA1031
        {
            output.Error(id, RpcCodes.InternalError, RpcException.Words(e));
        }
        finally
        {
            if (_open.TryRemove(id, out var done))
            {
                done.Dispose();
            }
        }
    }

    private void Guarded(Action action)
    {
        try
        {
            action();
        }
        catch (OperationCanceledException)
        {
            // Interrupted by a message: it is taken up again once nothing waits.
        }
#pragma warning disable CA1031 // A fault in one notification must not end the session; it is reported.
        catch (Exception e) when (e is not IOException)
#pragma warning restore CA1031
        {
            target.Report(e);
        }
    }

    private sealed record Work(RpcMessage? Message, RpcException? Fault)
    {
        public bool IsEnd => Message is null && Fault is null;
    }
}
