using PatternForge.Exam;

const string Usage = """
    PatternForge.Exam [options] FILE...
      no option        one JSON line a case
      --score          a table by craft and form instead
      --list-bad       the cases that do not agree (knitting alone unless --craft is given)
      --craft CRAFT    only cases of this craft: knit, crochet, tunisian or all
      --show ID        the source made of one case, and what was made of it
      --raise FILE     write the score there, if it is nowhere lower than the one kept
    """;

var files = new List<string>();
bool score = false, listBad = false;
string? craft = null, show = null, raise = null;
for (var i = 0; i < args.Length; i++)
{
    switch (args[i])
    {
        case "--score":
            score = true;
            break;
        case "--list-bad":
            listBad = true;
            break;
        case "--craft" or "--show" or "--raise" when i + 1 < args.Length:
            var value = args[i + 1];
            (craft, show, raise) = args[i] switch
            {
                "--craft" => (value, show, raise),
                "--show" => (craft, value, raise),
                _ => (craft, show, value),
            };
            i++;
            break;
        case var file when !file.StartsWith('-'):
            files.Add(file);
            break;
        default:
            Console.Error.WriteLine(Usage);
            return 2;
    }
}

if (files.Count == 0 || files.Find(f => !File.Exists(f)) is not null)
{
    Console.Error.WriteLine(files.Count == 0 ? Usage : $"no such file: {files.Find(f => !File.Exists(f))}");
    return 2;
}

var cases = CaseReader.ReadFiles(files);
if (show is not null)
{
    cases = new CaseSet([.. cases.Rows.Where(r => r.Question.Id == show)], [.. cases.Patterns.Where(p => p.Question.Id == show)]);
}

if (craft is not null and not "all")
{
    cases = new CaseSet([.. cases.Rows.Where(r => r.Question.Craft == craft)], [.. cases.Patterns.Where(p => p.Question.Craft == craft)]);
}

var sitting = Sitting.Of(cases);
if (show is not null)
{
    foreach (var source in cases.Rows.Select(r => SourceBuilder.Of(r.Question)).Concat(cases.Patterns.Select(p => SourceBuilder.Of(p.Question))))
    {
        Console.WriteLine(source.Source.Text);
    }
}

if (listBad)
{
    var all = craft is null
        ? new Sitting([.. sitting.Rows.Where(r => r.Case.Question.Craft == "knit")], [.. sitting.Patterns.Where(p => p.Case.Question.Craft == "knit")])
        : sitting;
    Console.WriteLine(BadList.Write(all));
}

if (score)
{
    Console.Write(ScoreTable.Write(sitting.Judged));
}

if (!score && !listBad && raise is null)
{
    foreach (var row in sitting.Rows)
    {
        Console.WriteLine(OutcomeWriter.Line(row.Case.Question, row.Outcome));
    }

    foreach (var pattern in sitting.Patterns)
    {
        Console.WriteLine(OutcomeWriter.Line(pattern.Case.Question, pattern.Outcome));
    }
}

if (raise is not null)
{
    var now = ScoreFile.Of(sitting.Judged);
    var lower = now.LowerThan(ScoreFile.Read(raise)).ToArray();
    if (lower.Length > 0)
    {
        Console.Error.WriteLine("The score has fallen: " + string.Join("; ", lower));
        return 1;
    }

    now.Write(raise);
}

return 0;
