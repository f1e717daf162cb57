using System.Globalization;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;
using PdfSharp.UniversalAccessibility;

namespace Dyepath.Drawing.Pdf;

/// <summary>Writes recorded pages as a tagged PDF (ISO 32000-1, 14.8).</summary>
internal sealed class TaggedPages : IDisposable
{
    private readonly Effort _effort;
    private readonly PdfDocument _document;
    private readonly PageFrame _frame;
    private readonly StructureBuilder _structure;
    private readonly PdfFonts _fonts = PdfFonts.Registered();
    private readonly Dictionary<int, int> _pageOfSection;
    private XGraphics? _graphics;
    private PdfCanvas? _canvas;

    private TaggedPages(PdfDocument document, PageFrame frame, string language, Dictionary<int, int> pageOfSection, Effort effort)
    {
        _effort = effort;
        _document = document;
        _frame = frame;
        _pageOfSection = pageOfSection;
        var access = UAManager.ForDocument(document);
        access.SetDocumentLanguage(language);
        _structure = access.StructureBuilder;
    }

    /// <summary>What it takes to write words or a mark of structure.</summary>
    private const int StepsOfOp = 200;

    private PdfCanvas Canvas => _canvas ?? throw new InvalidOperationException("Pages begin with a new page.");

    private PdfPage Page => _document.Pages[^1];

    public static void Write(PdfDocument document, IReadOnlyList<PageOp> ops, PageFrame frame, string language, Effort effort)
    {
        using var pages = new TaggedPages(document, frame, language, SectionPages(ops), effort);
        foreach (var op in ops)
        {
            effort.Spend(StepsOfOp);
            pages.Write(op);
        }
    }

    public void Dispose()
    {
        _structure.EndMarkedContentsWithId();
        _graphics?.Dispose();
    }

    private static Dictionary<int, int> SectionPages(IReadOnlyList<PageOp> ops)
    {
        var pages = new Dictionary<int, int>();
        var page = 0;
        foreach (var op in ops)
        {
            if (op is NewPage)
                page++;
            else if (op is Landmark landmark)
                pages.Add(landmark.Section, page);
        }
        return pages;
    }

    private void Write(PageOp op)
    {
        switch (op)
        {
            case NewPage:
                StartPage();
                break;
            case Begin begin:
                Start(begin);
                break;
            case End:
                _structure.End();
                break;
            case Words words:
                Canvas.Words(words.X, words.Baseline, words.Text, words.Face, words.Size, words.Colour);
                break;
            case Draw draw:
                Canvas.Sheet(draw.Sheet, draw.X, draw.Y, draw.Scale);
                break;
            case Show show:
                Canvas.Picture(show.Picture, show.Box);
                break;
            case Landmark landmark:
                _document.Outlines.Add(SafeText.OneLine(landmark.Title), Page, true);
                break;
            case BeginLink link:
                var bounds = link.Bounds;
                var area = new PdfRectangle(
                    new XPoint(bounds.X, _frame.Height - bounds.Bottom), new XPoint(bounds.Right, _frame.Height - bounds.Y));
                _structure.BeginElement(
                    PdfLinkAnnotation.CreateDocumentLink(area, _pageOfSection[link.Section]), SafeText.OneLine(link.Alternative));
                break;
            case PageNumber number:
                var text = _pageOfSection[number.Section].ToString(CultureInfo.InvariantCulture);
                Canvas.Words(number.Right - Typeface.Regular.Width(text, number.Size), number.Baseline, text, Typeface.Regular, number.Size,
                    number.Colour);
                break;
            default:
                throw new NotSupportedException($"No PDF for {op.GetType().Name}.");
        }
    }

    private void StartPage()
    {
        _structure.EndMarkedContentsWithId();
        _graphics?.Dispose();
        var page = _document.AddPage();
        page.Width = XUnit.FromPoint(_frame.Width);
        page.Height = XUnit.FromPoint(_frame.Height);
        page.Elements.SetName("/Tabs", "/S");
        _graphics = XGraphics.FromPdfPage(page);
        _canvas = new PdfCanvas(_graphics, _fonts, _effort);
    }

    private void Start(Begin begin)
    {
        switch (begin.Role)
        {
            case Role.Artifact:
                _structure.BeginArtifact();
                break;
            case Role.Figure:
                var bounds = begin.Bounds;
                _structure.BeginElement(
                    PdfIllustrationElementTag.Figure,
                    SafeText.OneLine(begin.Alternative),
                    new XRect(bounds.X, _frame.Height - bounds.Bottom, bounds.Width, bounds.Height));
                break;
            case Role.Section:
                _structure.BeginElement(PdfGroupingElementTag.Section);
                break;
            case Role.TableCaption:
                _structure.BeginElement(PdfGroupingElementTag.Caption);
                break;
            case Role.Contents:
                _structure.BeginElement(PdfGroupingElementTag.TableOfContents);
                break;
            case Role.ContentsEntry:
                _structure.BeginElement(PdfGroupingElementTag.TableOfContentsItem);
                break;
            case Role.ColumnHeader or Role.RowHeader:
                _structure.BeginElement(PdfBlockLevelElementTag.TableHeaderCell);
                _structure.CurrentStructureElement.TableAttributes.Elements.SetName("/Scope", begin.Role == Role.ColumnHeader ? "/Column" : "/Row");
                break;
            default:
                _structure.BeginElement(BlockTag(begin.Role));
                break;
        }
    }

    private static PdfBlockLevelElementTag BlockTag(Role role) => role switch
    {
        Role.Title => PdfBlockLevelElementTag.Heading1,
        Role.Heading => PdfBlockLevelElementTag.Heading2,
        Role.Subheading => PdfBlockLevelElementTag.Heading3,
        Role.Paragraph => PdfBlockLevelElementTag.Paragraph,
        Role.List => PdfBlockLevelElementTag.List,
        Role.Item => PdfBlockLevelElementTag.ListItem,
        Role.ItemLabel => PdfBlockLevelElementTag.Label,
        Role.ItemBody => PdfBlockLevelElementTag.ListBody,
        Role.Table => PdfBlockLevelElementTag.Table,
        Role.Row => PdfBlockLevelElementTag.TableRow,
        Role.Cell => PdfBlockLevelElementTag.TableDataCell,
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Not a block."),
    };
}
