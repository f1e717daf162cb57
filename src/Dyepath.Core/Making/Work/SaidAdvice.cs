using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;

namespace Dyepath.Core.Making.Work;

/// <summary>Advice as the log keeps it, and back.</summary>
public static class SaidAdvice
{
    private static readonly (SaidAct Act, DriftAdviceKind Kind)[] Acts =
    [
        (SaidAct.TightTurn, DriftAdviceKind.TightenTurn), (SaidAct.LooseTurn, DriftAdviceKind.LoosenTurn),
        (SaidAct.Skip, DriftAdviceKind.SkipEdgeStitch), (SaidAct.Add, DriftAdviceKind.AddEdgeStitch),
        (SaidAct.HookDown, DriftAdviceKind.HookDown), (SaidAct.HookUp, DriftAdviceKind.HookUp),
        (SaidAct.Join, DriftAdviceKind.Rejoin), (SaidAct.Rip, DriftAdviceKind.RipBack),
    ];

    /// <summary>What the maker is told by this advice.</summary>
    public static Said Of(DriftAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        int hold = TensionGrades.GradeOf(advice.Hold), work = TensionGrades.GradeOf(advice.After(0));
        return new Said(hold, work == hold ? null : work, advice.Kind == DriftAdviceKind.Correct ? advice.Stitches : null, advice.LookAfter)
        {
            Act = advice.Kind is DriftAdviceKind.CarryOn or DriftAdviceKind.Correct ? null : Acts.First(a => a.Kind == advice.Kind).Act,
            Rip = advice.RipTo + 1,
            // To the hundredth: it is said in centimetres.
            Out = advice.LeftOut == 0 ? null : Math.Round(advice.LeftOut, 2),
        };
    }

    /// <summary>The advice that was given there in these words; missing where it cannot have been given there.</summary>
    public static DriftAdvice? Read(Said said, DriftFilter filter, DriftPlace place)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(filter);
        ArgumentNullException.ThrowIfNull(place);
        var piece = place.Piece;
        int row = piece.RowOf(place.Worked), left = piece.StitchesBefore(row) + piece.RowStitches[row] - place.Worked;
        if (Math.Max(said.For ?? 0, said.Look + 1 ?? 0) > left || said.Rip - 1 >= row || (said.Act == SaidAct.Rip) != (said.Rip is not null)
            || (said.Act == SaidAct.Join) != (said.Out is not null) || (said.Act is not null && said.For is not null)
            || Grade(said.Hold) is not { } hold || Grade(said.Work ?? said.Hold) is not { } work)
            return null;
        return new DriftAdvice
        {
            Kind = said.Act is { } act ? Acts.First(a => a.Act == act).Kind
                : said.For is null ? DriftAdviceKind.CarryOn : DriftAdviceKind.Correct,
            Phase = filter.Off,
            Correction = work,
            // Without a mark, what differs from the hold is for this row.
            Stitches = said.For ?? (said.Work is null ? 0 : left),
            Hold = hold,
            ToRowEnd = said.For is { } stitches ? stitches == left : said.Work is not null,
            LookAfter = said.Look,
            LeftOut = said.Out ?? 0,
            RipTo = said.Rip - 1,
        };
    }

    private static double? Grade(int grade) => Math.Abs(grade) <= TensionGrades.Levels.Length ? TensionGrades.LevelOf(grade) : null;
}
