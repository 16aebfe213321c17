using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>The checks in code order. A new check is one file and one line here.</summary>
public static class CheckList
{
    /// <summary>Every check.</summary>
    public static ImmutableArray<PatternCheck> All { get; } =
    [
        new ShapingBlockEmpty(),
        new ProseRowNotFound(),
        new ProseChartNotFound(),
        new ProseSectionNotFound(),
        new ProseSizeNotFound(),
        new ProsePictureNotFound(),
        new TermsMixed(),
        new MossStitchUnclear(),
        new OtherSidesWord(),
        new StyleOfHouse(),
        new StyleMixed(),
        new UnitsByHandDisagree(),
        new SecondUnitMissing(),
        new AbbreviationNotListed(),
        new AbbreviationNotUsed(),
        new AbbreviationTwice(),
        new MeaningNotTheTrades(),
        new MeaningInOtherTerms(),
        new StitchNotDefined(),
        new AbbreviationOfTwoMeanings(),
        new CorrectionIncomplete(),
        new CorrectionsOutOfOrder(),
        new CorrectionNewerThanPattern(),
        new CorrectionOfUnknownSize(),
        new VersionWithoutCorrection(),
        new GaugeMissing(),
        new GaugeWithoutStitch(),
        new GaugeWithoutTool(),
        new GaugeWithoutSize(),
        new GaugeWithoutState(),
        new SizesMissing(),
        new SizeWithoutMeasurement(),
        new MeasurementOutOfRun(),
        new MeasuredNotThere(),
        new WidthDiffers(),
        new LengthDiffers(),
        new EaseDiffers(),
        new MeasurementOutsideTable(),
        new SizeNameDiffers(),
        new GaugeFarFromClass(),
        new GaugeUnusualForClass(),
        new FlatRoundRuffles(),
        new FlatRoundCups(),
        new BallHalvesDiffer(),
        new YarnMissing(),
        new NeedsWithoutPutUp(),
        new YarnByWeightAlone(),
        new YarnWithoutAmount(),
        new YarnLabelTwice(),
        new ToolSizesDisagree(),
        new ToolSizeNotMade(),
        new ToolSizeAmbiguous(),
        new GristUnusual(),
        new GristFarFromClass(),
        new AlternativeDiffers(),
        new NeedsLessThanSample(),
        new FibreNotWhole(),
        new YarnNotDescribed(),
        new NeedsBelowStitches(),
        new NeedsAboveStitches(),
        new NeedsNotEstimated(),
        new SampleYarnNotListed(),
        new WashAgainstFibre(),
        new DryAgainstFibre(),
        new BleachAgainstFibre(),
        new IronAgainstFibre(),
        new TitleMissing(),
        new LevelWithoutReason(),
        new ToolsMissing(),
        new InstructionsMissing(),
        new PartsNotSaid(),
        new LevelTooLow(),
        new LevelBesideRows(),
        new TechniqueNotNamed(),
        new CareWordUnknown(),
        new CareTemperature(),
        new CareContradiction(),
        new CautionAdded(),
        new CautionLeftOut(),
        new MeltsNearHeat(),
        new LinkLeadsNowhere(),
        new LinkGone(),
        new LinkUnanswered(),
        new PhotoNotThere(),
        new PhotoTooSmall(),
        new PhotoWithoutWords(),
        new PhotoWithLocation(),
        new TextPictureTooSmall(),
    ];

    /// <summary>The rules of the checks.</summary>
    public static IEnumerable<Rule> Rules => All.Select(c => c.Rule);

    /// <summary>Runs every check.</summary>
    /// <param name="context">The pattern.</param>
    /// <param name="only">The severity of the checks to run; null for all.</param>
    public static void Run(CheckContext context, Severity? only = null)
    {
        foreach (var check in only is null ? All : All.Where(c => c.Rule.Severity == only))
        {
            check.Run(context);
        }
    }
}
