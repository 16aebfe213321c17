using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>A sock on its side, laid flat and to scale: the heel to the left, the toe to the right.</summary>
internal static class SockLayout
{
    private const double MostWide = 216;
    private const double MostHigh = 300;
    private const double Left = 44;
    private const double Top = 32;
    private const int Corner = 8;

    // How much of a heel of short rows is rounded off, and of the width of the leg the bend in front of the ankle.
    private const double RoundHeel = 0.6;
    private const double Bend = 0.15;

    /// <summary>Lays a sock out.</summary>
    /// <param name="piece">The sock.</param>
    /// <param name="sock">Its parts in the size that is drawn.</param>
    public static SchematicLayout Of(PieceOutline piece, SockShape sock)
    {
        var (foot, ankle, leg) = ((double)sock.FootCm, (double)sock.AnkleCm, (double)sock.LegCm);
        var around = (double)sock.LegPlaces[^1].HalfCm;
        var most = (double)sock.LegPlaces.Max(p => p.HalfCm);
        var back = Math.Max(0, (most - around) / 2); // a leg that is wider above stands out behind the heel
        var scale = Math.Min(MostWide / (Math.Max(foot, most) + back), MostHigh / (ankle + leg));
        double X(double cm) => Left + ((back + cm) * scale);
        double Y(double cm) => Top + ((ankle + leg - cm) * scale);
        var corners = new List<(double X, double Y)>();
        var middle = around / 2;
        var half = (double)sock.FootPlaces[0].HalfCm;
        var (cup, turn) = ((double)sock.CupCm, (double)sock.TurnCm);

        // Down the front of the leg, along the instep to the tip, back along the sole, round the heel, and up the back.
        // A heel of short rows is lower than the foot is high: the leg's front goes down to the instep and turns there.
        var bend = around * Bend;
        var isBent = sock.MiddleHalfCm is not null && ankle + leg > half + (2 * bend) && ankle < half + bend;
        var fronts = sock.LegPlaces.Select(p => (X: middle + ((double)p.HalfCm / 2), Y: ankle + leg - (double)p.AlongCm)).ToArray();
        corners.AddRange(fronts.Where((p, i) => i == 0 || (isBent ? p.Y > half + bend : sock.MiddleHalfCm is null || ankle + leg > half + bend)).Select(p => (X(p.X), Y(p.Y))));
        if (isBent)
        {
            corners.AddRange(Enumerable.Range(0, Corner + 1).Select(i => Math.PI / 2 * i / Corner).Select(a => (X(around + (bend * (1 - Math.Cos(a)))), Y(half + (bend * (1 - Math.Sin(a)))))));
        }

        var instep = isBent ? around + bend : Math.Min((double)sock.ToeFromCm, Math.Max((double)sock.GussetEndCm, around + (1.5 * Math.Abs(ankle - half))));
        var foots = sock.FootPlaces.Select(p => ((double)p.AlongCm, (double)p.HalfCm)).Where(p => p.Item1 > instep).Prepend((instep, half)).ToArray();
        corners.AddRange(SchematicLayout.Smooth([.. foots.Select(p => (X(p.Item1), Y((half + p.Item2) / 2)))]));
        corners.AddRange(SchematicLayout.Smooth([.. foots.Reverse().Select(p => (X(p.Item1), Y((half - p.Item2) / 2)))]));
        var round = sock.MiddleHalfCm is null ? 1 : RoundHeel;
        for (var i = 0; i <= Corner; i++)
        {
            var angle = Math.PI / 2 * i / Corner;
            corners.Add((X(round * turn * (1 - Math.Sin(angle))), Y(round * cup * (1 - Math.Cos(angle)))));
        }

        corners.AddRange(sock.LegPlaces.Reverse().Select(p => (X(middle - ((double)p.HalfCm / 2)), Y(ankle + leg - (double)p.AlongCm))));
        var side = (double)sock.FlapHalfCm;
        var (left, right, bottom) = (Left, X(Math.Max(foot, most)), Y(0));
        ImmutableArray<(double X, double Y)> toeSeam = [(X((double)sock.ToeFromCm), Y(0)), (X((double)sock.ToeFromCm), Y(half))];
        ImmutableArray<ImmutableArray<(double X, double Y)>> seams = sock.MiddleHalfCm is { } narrow ? [.. Slants((double)narrow), toeSeam] :
        [
            [(X(0), Y(ankle)), (X(side), Y(ankle)), (X(side), Y(cup)), (X(0), Y(cup))],
            [(X(side), Y(ankle)), (X((double)sock.GussetEndCm), Y(half / 2)), (X(side), Y(cup))],
            toeSeam,
        ];
        return new SchematicLayout
        {
            Width = right + 40,
            Height = bottom + 60,
            Scale = scale,
            Outline = [.. corners.Where((c, i) => i == 0 || Math.Abs(c.X - corners[i - 1].X) > 0.005 || Math.Abs(c.Y - corners[i - 1].Y) > 0.005)],
            Seams = seams,
            Lines = [.. piece.Measures.Select((m, i) => Line(m.Name, SchematicLayout.LetterOf(i)))],
        };

        // The ends of leg and foot, and the slant between them where the two halves of the heel meet.
        ImmutableArray<ImmutableArray<(double X, double Y)>> Slants(double narrow)
        {
            var (x, y) = ((turn + side) / 2, (cup + side) / 2);
            var rest = narrow / side;
            return [[(X(0), Y(cup)), (X(x), Y(y)), (X(turn), Y(0))], [(X(x), Y(y)), (X(x * rest), Y(y * rest))]];
        }

        DimensionLine Line(string name, string letter)
        {
            var toe = X((double)sock.ToeFromCm);
            var upper = (double)sock.LegPlaces[0].HalfCm;
            var inFoot = X(((double)sock.GussetEndCm + (double)sock.ToeFromCm) / 2);
            return name switch
            {
                SockShape.AroundLeg => Across(X(middle - (upper / 2)), X(middle + (upper / 2)), Top - 10, -5),
                SockShape.AroundFoot => Along(Y(half) + 6, bottom - 6, inFoot, 10),
                SockShape.Leg or SockShape.LegToHeel => Along(Top, Y(ankle), left - 16, -12),
                SockShape.BackOfHeel => Along(Y(ankle), bottom, left - 16, -12),
                SockShape.Flap => Along(Y(ankle), Y(cup), left - 16, -12),
                SockShape.Foot => Across(X(0), toe - 3, bottom + 10, 14),
                SockShape.Toe => Across(toe + 3, X(foot), bottom + 10, 14),
                _ => Across(X(0), X(foot), bottom + 36, 14),
            };

            DimensionLine Across(double from, double to, double y, double down) => new(letter, from, y, to, y, (from + to) / 2, y + down);
            DimensionLine Along(double from, double to, double x, double beside) => new(letter, x, from, x, to, x + beside, ((from + to) / 2) + 4.5);
        }
    }
}
