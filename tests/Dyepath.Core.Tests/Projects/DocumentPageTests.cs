namespace Dyepath.Core.Tests.Projects;

public sealed class DocumentPageTests
{
    [Fact]
    public void The_page_about_the_document_is_up_to_date() => RepositoryFile.IsUpToDate("docs/project-document.md", DocumentPage.Write());
}
