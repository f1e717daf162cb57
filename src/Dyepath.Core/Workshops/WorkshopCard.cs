using System.Collections.Immutable;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Workshops;

/// <summary>A numbered step of a card.</summary>
/// <param name="Heading">Two or three words.</param>
/// <param name="Text">Whole sentences.</param>
public sealed record CardStep(string Heading, string Text);

/// <summary>The fabric of a card, as far as it is drawn.</summary>
/// <param name="Colours">One a section, in the order in which they come off the ball.</param>
/// <param name="Symbols">A letter for each of them.</param>
/// <param name="Rows">Section of every cell of the first rows, each from its right-hand edge and as far as letters can be read.</param>
/// <param name="Whole">The same of whole rows, until a diamond and a half are there.</param>
/// <param name="HeightOverWidth">Of a cell.</param>
/// <param name="IsTurned">Every second row begins at the left-hand edge.</param>
public sealed record CardFabric(
    ImmutableArray<NamedColour> Colours,
    ImmutableArray<string> Symbols,
    ImmutableArray<ImmutableArray<int>> Rows,
    ImmutableArray<ImmutableArray<int>> Whole,
    double HeightOverWidth,
    bool IsTurned);

/// <summary>What one person works from: half a page.</summary>
/// <param name="Title">Who, and what.</param>
/// <param name="Facts">Size, stitch, hook and time: short lines.</param>
/// <param name="Steps">In the order of the work.</param>
/// <param name="Cautions">Only what applies to her.</param>
/// <param name="Fabric">Missing where nothing can be planned.</param>
/// <param name="Caption">What the drawing shows.</param>
public sealed record WorkshopCard(
    string Title, ImmutableArray<string> Facts, ImmutableArray<CardStep> Steps, ImmutableArray<string> Cautions, CardFabric? Fabric,
        string Caption);

/// <summary>All that a workshop prints.</summary>
/// <param name="Title">Of the workshop.</param>
/// <param name="Cards">One a person, in the order of the list.</param>
/// <param name="Kit">What the teacher brings: short lines.</param>
public sealed record WorkshopCards(string Title, ImmutableArray<WorkshopCard> Cards, ImmutableArray<string> Kit);
