using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>A piece, or several alike, that takes part in a measurement.</summary>
/// <param name="Piece">Its heading.</param>
/// <param name="Times">How many of it.</param>
/// <param name="After">The label of the row after which its stitches are counted ("Rnd 6"); null for its widest place.</param>
public sealed record PieceShare(string Piece, int Times, string? After);

/// <summary>What the header says a finished measurement is measured over: <c>bust: Back + Front</c>, <c>length: rows of Body</c>.</summary>
/// <param name="Name">The measurement, as it is called under `finished`.</param>
/// <param name="Pieces">The pieces whose widths, or lengths, make it together.</param>
/// <param name="ByRows">True when it is a length, told by the rows; false for a width, told by the stitches.</param>
/// <param name="Gauge">The name of the gauge that holds there; null for the one that the pattern says.</param>
/// <param name="Said">As it was written.</param>
/// <param name="Origin">Where it stands.</param>
public sealed record MeasuredPieces(string Name, ImmutableArray<PieceShare> Pieces, bool ByRows, string? Gauge, string Said, TextSpan Origin);
