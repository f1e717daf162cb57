using System.CommandLine;
using System.Globalization;
using Dyepath.Core.Pricing;

namespace Dyepath.Cli.Commands;

/// <summary><c>dyepath price</c>: hours, costs, kits and the copies to sell.</summary>
internal static class PriceCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new ProjectFile();
        var options = new PriceOptions();
        var size = new Option<string?>("--size") { Description = "One size alone; without it, all." };
        var command = new Command("price", """
            Says how long each size takes, what it costs, what a kit for a group needs, and how many copies of the pattern bring the fixed
            costs in. For the designer alone: prices are in no document and in no file that a buyer gets. Amounts are in one currency; a
            figure that lacks a price is left out, and what it lacks is said.

            Example: dyepath price project.json --ball 9.50 --companion-ball 6 --wage 15 --currency EUR
                     dyepath price --demo --fixed 400 --copy 7 --fee 10% --people 8 --json
            """)
        {
            size,
        };
        options.AddTo(command);
        file.AddTo(command);
        command.SetAction((parsed, stop) =>
        {
            var project = file.Read(terminal, parsed);
            var inputs = options.Read(parsed);
            var json = parsed.GetValue(file.Json);
            if (ProjectFile.TryPlan(terminal, project, json, stop) is not { } plan)
                return Task.FromResult(ExitCode.NoFeasibleDesign);
            var sheet = PriceSheet.Of(plan, inputs);
            if (parsed.GetValue(size) is { } only)
            {
                ProjectFile.CheckSize("--size", plan, only);
                sheet = sheet with { Sizes = [.. sheet.Sizes.Where(s => s.Name == only)] };
            }
            if (json)
                terminal.WriteJson(writer => PriceJson.Write(writer, sheet));
            else
                terminal.Output.Write(new PriceWords(sheet).Text(options.PaceWords(parsed, inputs.Pace)));
            return Task.FromResult(ExitCode.Success);
        });
        return command;
    }
}

/// <summary>What the designer types, as options; each checked against the range that the sheet allows.</summary>
internal sealed class PriceOptions
{
    private readonly Option<string?> _pace = new("--pace")
    {
        Description = "Single crochet in a minute, slow..fast, such as 12..20, which is the usual one; each 1 to 100.",
        HelpName = "SLOW..FAST",
    };

    private readonly Option<decimal?> _ball = Money("--ball", "Price of a ball of the variegated yarn.");
    private readonly Option<decimal?> _companion = Money("--companion-ball", "Price of a ball of the companion yarn.");
    private readonly Option<decimal?> _wage = Money("--wage", "What an hour of work is paid.");
    private readonly Option<decimal?> _fixed = Money("--fixed", "What the pattern costs before the first copy is sold: sample, test round, editing, photos.");
    private readonly Option<decimal?> _copy = Money("--copy", "Price of a copy of the pattern.");
    private readonly Option<decimal?> _feePerCopy = Money("--copy-fee", "What each sale costs beside the share; without it, nothing.");

    private readonly Option<string?> _fee = new("--fee") { Description = "Share of the price of a copy that goes to whoever sells it, such as 10%; 0% to 99%.", HelpName = "PERCENT" };

    private readonly Option<int?> _people = new("--people")
    {
        CustomParser = result => NumberText.Read<int>(result),
        Description = "Adds a kit for so many people in each size, 1 to 1,000.",
    };

    private readonly Option<string?> _currency = new("--currency") { Description = "Sign written behind amounts, such as EUR; at most 8 letters.", HelpName = "SIGN" };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _pace, _ball, _companion, _wage, _fixed, _copy, _fee, _feePerCopy, _people, _currency })
            command.Options.Add(option);
    }

    /// <exception cref="BadInputException">A value that is out of its range.</exception>
    public PriceInputs Read(ParseResult parsed) => new()
    {
        Pace = ReadPace(parsed.GetValue(_pace)),
        Ball = Amount(parsed, _ball),
        CompanionBall = Amount(parsed, _companion),
        Wage = Amount(parsed, _wage),
        Fixed = Amount(parsed, _fixed),
        Copy = Amount(parsed, _copy),
        FeePerCopy = Amount(parsed, _feePerCopy),
        Fee = ReadFee(parsed.GetValue(_fee)),
        People = parsed.GetValue(_people) switch
        {
            null => null,
            var people and >= 1 and <= PriceInputs.MostPeople => people,
            var other => throw new BadInputException("--people", $"{other} was given; it must lie from 1 to {PriceInputs.MostPeople.ToString("N0", CultureInfo.InvariantCulture)}."),
        },
        Currency = parsed.GetValue(_currency) switch
        {
            null => "",
            var sign when PriceInputs.CanBeCurrency(sign) => sign,
            var other => throw new BadInputException("--currency", $"“{other}” is no sign of a currency; write at most {PriceInputs.LongestCurrency} letters, or its sign."),
        },
    };

    /// <summary>Where the pace comes from, within a sentence.</summary>
    public string PaceWords(ParseResult parsed, Pace pace) =>
        PriceWords.Words(pace) + (parsed.GetValue(_pace) is null ? " (common practice, no source)" : ", as you said");

    private static Option<decimal?> Money(string name, string description) => new(name)
    {
        CustomParser = result => NumberText.Read<decimal>(result),
        Description = description,
        HelpName = "AMOUNT",
    };

    private static decimal? Amount(ParseResult parsed, Option<decimal?> option) => parsed.GetValue(option) switch
    {
        null => null,
        var amount and >= 0 and <= PriceInputs.MostMoney => amount,
        var other => throw new BadInputException(option.Name, string.Create(CultureInfo.InvariantCulture, $"{other} was given; an amount lies from 0 to {PriceInputs.MostMoney:N0}.")),
    };

    private static Pace ReadPace(string? text)
    {
        if (text is null)
            return Pace.Usual;
        var ends = text.Split("..");
        if (ends.Length == 2 && TryNumber(ends[0], out var low) && TryNumber(ends[1], out var high)
            && Pace.Allowed.Holds((double)low) && Pace.Allowed.Holds((double)high) && low <= high)
        {
            return Pace.Between((double)low, (double)high);
        }
        throw new BadInputException("--pace", $"“{text}” was given; write single crochet in a minute as slow..fast, such as 12..20, each from 1 to 100.");
    }

    private static decimal? ReadFee(string? text)
    {
        if (text is null)
            return null;
        if (text.EndsWith('%') && TryNumber(text[..^1], out var percent) && percent / 100 is >= 0 and <= PriceInputs.MostFee)
            return percent / 100;
        throw new BadInputException("--fee", $"“{text}” was given; write a share with its percent sign, such as 10%, from 0% to 99%.");
    }

    private static bool TryNumber(string text, out decimal number) =>
        decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);
}
