namespace PatternForge.Core.Model;

/// <summary>Whom the piece is for: the body that it is measured against, and the cautions that it needs.</summary>
public enum Audience
{
    /// <summary>Babies, up to about two years.</summary>
    Babies,

    /// <summary>Children, from two years to about ten.</summary>
    Children,

    /// <summary>Youths, between children and the grown.</summary>
    Youths,

    /// <summary>Women.</summary>
    Women,

    /// <summary>Men.</summary>
    Men,

    /// <summary>The grown, women and men alike.</summary>
    Adults,

    /// <summary>Whoever likes it.</summary>
    Anyone,
}
