using Dyepath.Faults.Sources;

namespace Dyepath.Faults.Tests;

/// <summary>Which faults are found, and that each does what it says when it is chosen, and nothing when it is not.</summary>
public sealed class FaultTests
{
    [Theory]
    [InlineData("each colour begins earlier", "each colour begins later")]
    [InlineData("Right sides in", "Left sides in")]
    [InlineData("join, turn.", "join.")]
    [InlineData("do not join", "do join")]
    [InlineData("ch 3", "ch 4")]
    [InlineData("Front and back", "Back and back")]
    public void A_word_is_exchanged_for_its_opposite_or_lost(string right, string wrong) =>
        Assert.Contains(Opposites.Of(right), slip => slip.Text == wrong);

    [Fact]
    public void Other_words_are_left_alone() => Assert.Empty(Opposites.Of("sand and kelp, deep water"));

    /// <summary>One program, each of its faults chosen in turn; numbers follow the order in which they are found.</summary>
    [Theory]
    [InlineData("public static object Say() => 7 - 2;", "5", "9 6 4 4 6")]
    [InlineData("public static object Say() => 1.5 * 2;", "3", "0.75 4.5 1.5 1.5")]
    [InlineData("public static object Say() => Math.Max(3, 8);", "8", "3 8 8 9 7")]
    [InlineData("public static object Say() { var a = 1; a += 4; return a; }", "5", "1 6 4 6 4")]
    [InlineData("public static object Say() => 3 < 3 ? 4 : 9;", "9", "4 4 9 4 4 9 9 9 10 8")]
    [InlineData("const int Rows = 4; public static object Say() => Rows;", "4", "5 3")]
    [InlineData("static int Less(int a, int b) => a - b; public static object Say() { int two = 2, five = 5; return Less(five, two); }", "3", null)]
    public void Each_fault_does_what_it_says(string members, string good, string? faulty)
    {
        var garment = Garment.Of(members);
        var sown = Planter.Plant(garment.Compilation, garment.Faults(), 100);
        Assert.Equal(good, Text(Garment.Say(sown.Compilation, -1)));
        if (faulty is not null)
            Assert.Equal(faulty.Split(' ').Order(), sown.Faults.Select(f => Text(Garment.Say(sown.Compilation, f.Number))).Order());
    }

    [Fact]
    public void Words_in_an_interpolated_string_are_changed_without_touching_what_is_said_between_them()
    {
        var garment = Garment.Of("""public static object Say() { var n = "x"; return string.Create(CultureInfo.InvariantCulture, $"{n} earlier than {n} the row, turn"); }""");
        var sown = Planter.Plant(garment.Compilation, garment.Faults().Where(f => f.Kind == "word").ToList(), 10);
        Assert.Equal("x earlier than x the row, turn", Garment.Say(sown.Compilation, -1));
        Assert.Equal(
            ["x earlier than x the round, turn", "x earlier than x the row", "x later than x the row, turn"],
            sown.Faults.Select(f => (string)Garment.Say(sown.Compilation, f.Number)).Order(StringComparer.Ordinal));
    }

    /// <summary>What follows <c>?.</c> is no expression by itself: faults within it are passed over, and those of all of it stay.</summary>
    [Fact]
    public void What_follows_a_question_mark_is_no_place_for_a_fault()
    {
        var garment = Garment.Of("""public static object Say() { var s = "abc".Length > 2 ? "abc" : null; return s?.Substring(1, 2).First().ToString() == "b"; }""");
        var sown = Planter.Plant(garment.Compilation, garment.Faults(), 100);
        Assert.Equal("True", Text(Garment.Say(sown.Compilation, -1)));
        Assert.Contains(sown.Faults, f => f.What.Contains("==", StringComparison.Ordinal));
        Assert.DoesNotContain(sown.Faults, f => f.What.StartsWith(".Substring(1, 2)", StringComparison.Ordinal));
    }

    [Fact]
    public void Neighbouring_arguments_of_one_type_are_exchanged()
    {
        var changes = Garment.Of("static int Less(int a, int b, string c) => a - b; public static object Say() { int a = 5, b = 3; return Less(a, b, \"\"); }").Changes();
        Assert.Contains("Less(a, b, \"\") → Less(b, a, \"\")", changes);
        Assert.Single(changes, c => c.StartsWith("Less(", StringComparison.Ordinal));
    }

    /// <summary>A programmer's mistake, hash codes, attributes and what must be constant are left alone.</summary>
    [Theory]
    [InlineData("""public static void Say() { throw new ArgumentException("more rows"); }""")]
    [InlineData("public static void Say(string? s) { ArgumentNullException.ThrowIfNull(s); }")]
    [InlineData("""[Obsolete("the first row")] public static void Say() { }""")]
    [InlineData("public static void Say(int rows = 4) { }")]
    [InlineData("public static object Say(object o) => o is 3;")]
    public void What_nobody_is_promised_is_left_alone(string members) => Assert.Empty(Garment.Of(members).Changes());

    /// <summary>Where one fault cannot be compiled, the next of the seed's order takes its place.</summary>
    [Fact]
    public void What_does_not_compile_is_passed_over()
    {
        var garment = Garment.Of("public static object Say() { return (DateTime.UnixEpoch - DateTime.UnixEpoch) == TimeSpan.Zero; }");
        Assert.Contains("DateTime.UnixEpoch - DateTime.UnixEpoch → DateTime.UnixEpoch + DateTime.UnixEpoch", garment.Changes());
        var sown = Planter.Plant(garment.Compilation, garment.Faults(), 100);
        Assert.Equal(["operator"], sown.Faults.Select(f => f.Kind));
        Assert.Equal(true, Garment.Say(sown.Compilation, -1));
        Assert.Equal(false, Garment.Say(sown.Compilation, sown.Faults[0].Number));
    }

    [Fact]
    public void A_seed_means_one_order() => Assert.Equal(Seeded.Shuffled(Enumerable.Range(0, 50), 7), Seeded.Shuffled(Enumerable.Range(0, 50), 7));

    [Fact]
    public void The_command_line_says_which_test_classes_run()
    {
        var options = Options.Read(["--class", "*Words*", "--class", "A.B", "--without", "*SlowWordsTests", "--folder", "Edgings", "--fault", "3"], out _)!;
        Assert.True(options.Runs("X.RowWordsTests") && options.Runs("A.B"));
        Assert.False(options.Runs("X.SlowWordsTests") || options.Runs("A.BC") || options.Runs("X.Limits.StopTests"));
        Assert.True(options.Asks("Edgings") && !options.Asks("Planning"));
        Assert.Equal([3], options.Only);
        Assert.Null(Options.Read(["--count", "0"], out var wrong));
        Assert.Equal("“--count 0” is not understood.", wrong);
    }

    private static string Text(object said) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{said}");
}
