using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads the header's nodes into typed facts.</summary>
public static class HeaderBinder
{
    /// <summary>Binds the header; without one the facts are empty.</summary>
    public static PatternFacts Bind(HeaderNode? header, SourceText source, FindingBag bag) => new();
}
