namespace PatternForge.Core.Model;

/// <summary>What became of an address that was asked for over the network.</summary>
public enum LinkState
{
    /// <summary>It answers, or keeps strangers out politely.</summary>
    Alive,

    /// <summary>There is nothing: no such page, no such host, nobody who answers there.</summary>
    Gone,

    /// <summary>It cannot be said: no answer in time, or a server in trouble.</summary>
    Unanswered,
}

/// <summary>The answer to one address.</summary>
/// <param name="State">What became of it.</param>
/// <param name="Words">The same in words that follow the address: "answers 404, not found".</param>
public sealed record LinkAnswer(LinkState State, string Words);
