// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says, made from the core's results; nothing is measured here. Page one is the
// customer's, the rest is the shop's record.
#pragma once

#include "app/context/preferences.h"
#include "app/pictures/block_sections.h"
#include "app/pictures/budget_bars.h"
#include "app/pictures/plan.h"
#include "app/pictures/size_bars.h"
#include "core/results/results.h"

#include <QCoreApplication>
#include <QImage>
#include <QStringList>

#include <array>
#include <optional>
#include <vector>

namespace borewright {

// Texts of the sheet for the translator.
class SheetWords {
    Q_DECLARE_TR_FUNCTIONS(Sheet)
};

// A name and what stands behind it.
struct SheetFact {
    QString name;
    QString value;
};

// A figure with its verdict; empty text where there is none.
struct SheetFigure {
    QString text;
    QString doubt; // "±0.3"; empty where it is not known
    Verdict verdict = Verdict::notJudged;
};

// One side of a bore's row: as found, or now.
struct SheetSide {
    bool there = false;
    // By Quality: largest size, smallest size, out-of-round, taper.
    std::array<SheetFigure, 4> figures;
    SheetFigure straight; // largest less smallest along an axis
    QString aim;          // "met", "not yet", "unsure"; empty without an aim
    QString verdictText;
    Verdict verdict = Verdict::notJudged;
};

struct SheetBoreRow {
    QString bore;
    SheetSide was;
    SheetSide now;
};

// What is allowed, for the bores named; empty = for all.
struct SheetAllowed {
    QString bores;
    std::array<QString, 4> was;
    std::array<QString, 4> now;
    QString aim;
};

struct SheetBoreTable {
    QString sizeUnit;
    QString smallUnit;
    QString wasHead; // "As found"
    QString nowHead; // "Final"
    bool hasWas = false;
    bool hasNow = false;
    bool hasStraight = false;
    bool hasDoubt = false;
    // The largest doubt of each column, for a table too long to give one to each figure.
    SheetSide wasAtMost;
    SheetSide nowAtMost;
    std::vector<SheetAllowed> allowed;
    std::vector<SheetBoreRow> rows;
};

// The budget of surveys that were measured with one gear in one way.
struct SheetBudget {
    QString title; // "Final, as found"
    QString trust; // "One diameter ± 0.26 thou, …"
    BudgetBarsData bars;
    QStringList heads;
    std::vector<QStringList> rows;
    QStringList sums;
    QStringList sentences; // what the gauge alone would show, warmth, the rule
};

// What was read at a station: as typed, and the diameter that it means.
struct SheetCell {
    QString typed; // repeats behind one another; "–" where there is no wall
    QString diameter;
};

// The readings of a bore, a row a depth.
struct SheetCard {
    QString title;
    QStringList axes;
    std::vector<std::pair<QString, std::vector<SheetCell>>> rows; // depth, cells by axis
};

struct SheetSurvey {
    QString title; // "final"
    QString when;
    std::vector<SheetFact> facts;
    QString typedUnit;
    std::vector<SheetCard> cards;
    QStringList remarks; // odd readings, strikes with reasons, notes
};

// A table of the record: words at the left of their column, figures at the right of theirs.
struct SheetGridColumn {
    QString head; // may be of several lines
    QString unit;
    bool words = false;
};
struct SheetGridCell {
    QString text;
    std::optional<Verdict> verdict{}; // its mark stands before the text
    bool bold = false;
};
struct SheetGrid {
    QString title;
    std::vector<SheetGridColumn> columns;
    std::vector<std::vector<SheetGridCell>> rows; // a cell for each column
};

// Which size cleans up the block; no headline where no sizes on offer are recorded or no bore was
// read as found.
struct SheetSizing {
    QString headline;
    QStringList sentences; // what it would take, how it was reckoned
    QStringList how;
    QStringList cautions;
    SheetGrid bores;
    SizeBarsData bars;
    [[nodiscard]] bool there() const { return !headline.isEmpty(); }
};

// What goes in a bore, as the customer reads it.
struct SheetPair {
    QString bore;
    QString piston;
    QString clearance;
    QString doubt; // "±0.3"
    QString verdictText;
    Verdict verdict = Verdict::notJudged;
};
struct SheetPairs {
    QString head;                 // what the figures are, what is allowed, decided or proposed
    QString doubtAtMost;          // "±0.4", for a table too long to give one to each figure
    std::vector<SheetPair> pairs; // empty where no piston has a clearance in any bore
};

// Which piston and which rings in which bore; nothing there without pistons and rings.
struct SheetFit {
    bool there = false;
    QString headline;
    QStringList sentences;
    QString ringHeadline;
    QStringList ringSentences;
    QStringList cautions;
    std::vector<SheetFact> facts; // what is allowed, which surveys, what is decided
    SheetGrid pistons;
    std::vector<SheetGrid> across; // clearance by depth, some bores each
    std::vector<SheetGrid> rings;  // one a groove
    SheetPairs pairs;
};

// What was done with the hone; nothing there where no pass is logged.
struct SheetHone {
    bool there = false;
    QStringList front;    // what the customer reads of it
    QStringList warnings; // what is not yet done, or not ticked as done
    QString headline;
    std::vector<SheetFact> facts; // how the hone was driven
    SheetGrid bores;              // before and after, a row a bore
    SheetGrid passes;             // in the order of the work, bore by bore
    QStringList remarks;          // crosshatch, oddities of the log, cautions
};

struct SheetData {
    QString title; // of the document
    QString shopName;
    QStringList shopAddress;
    QImage shopPicture;
    bool invented = false;
    std::vector<SheetFact> facts;
    QStringList sentences;
    PlanData plan;
    SheetBoreTable table;
    BlockSectionsData sections;
    std::vector<SheetFact> means; // measured with, set on, temperature …
    QStringList shapes;           // "Bores 1 and 2: straight as far as …"
    QStringList cautions;
    std::vector<SheetBudget> budgets; // empty where no doubt is known
    SheetSizing sizing;
    SheetHone hone;
    SheetFit fit;
    QString signer;
    QString printed;
    QString code; // of all that is shown of the job (check_code.h)

    // The shop's record.
    std::vector<SheetFact> record; // notes of the job, the block
    std::vector<SheetFact> limits;
    QString axesKey;
    QString sizeUnit;
    std::vector<SheetSurvey> surveys;
};

SheetData sheetData(const Workbook& workbook, const Results& results,
                    const Preferences& preferences, const DisplayUnits& units,
                    const Timestamp& printed);

// Parts of it, each in a source file of its own.
SheetBoreTable sheetBoreTable(const Workbook& workbook, const Results& results,
                              const DisplayUnits& units);
// The surveys that page one rests on, in the workbook's order.
std::vector<const SurveyHeader*> toldSurveys(const Workbook& workbook, const Results& results);
// One for each gear among them, finals first.
std::vector<SheetBudget> sheetBudgets(const Workbook& workbook, const Results& results,
                                      const DisplayUnits& units);
// What the doubt, the rule, the lobes and the maker's manual ask the reader to bear in mind.
QStringList sheetCautions(const Workbook& workbook, const Results& results);
// The shapes as they are now, else as found, bores of one shape together.
QStringList sheetShapes(const Results& results);
std::vector<SheetFact> sheetMeans(const Workbook& workbook, const Results& results,
                                  const DisplayUnits& units);
SheetSizing sheetSizing(const Workbook& workbook, const Results& results,
                        const DisplayUnits& units);
SheetHone sheetHone(const Workbook& workbook, const Results& results, const DisplayUnits& units);
SheetFit sheetFit(const Workbook& workbook, const Results& results, const DisplayUnits& units);
// The piston that a bore is to have: as decided, else as proposed.
struct SheetPlaced {
    std::size_t piston = 0; // place in the record
    bool decided = false;
    std::optional<Length> honeTo; // the bore is still to be honed to it: no clearance is told
};
std::optional<SheetPlaced> sheetPlaced(const Workbook& workbook, const FitResult& fit,
                                       const BoreFit& bore);
SheetGrid sheetPistons(const Workbook& workbook, const FitResult& fit, const DisplayUnits& units);
std::vector<SheetGrid> sheetAcross(const Workbook& workbook, const FitResult& fit,
                                   const DisplayUnits& units);
std::vector<SheetGrid> sheetRings(const Workbook& workbook, const FitResult& fit,
                                  const DisplayUnits& units);
// "3.8 thou to 4.8 thou, aim 4.2 thou"; empty where nothing is given.
QString sheetFitLimits(const FitLimits& limits);
// A doubt without ±: "0.3"; empty where it is not known.
QString sheetDoubt(const std::optional<Length>& whole, const DisplayUnits& units);
// "bore 2", "bores 2–6".
QString sheetBores(const std::vector<int>& bores);
QStringList sheetTexts(const std::vector<std::string>& sentences);
// A grid without the columns that have nothing in any row.
SheetGrid withoutEmptyColumns(SheetGrid grid);
SheetSurvey sheetSurvey(const Workbook& workbook, const Survey& survey, const SurveyResult& result,
                        const DisplayUnits& units);
std::vector<SheetFact> sheetLimits(const Workbook& workbook);
// A length as typed, with its unit as people write it.
QString sheetTyped(const TypedLength& typed);
// The customer's sentences as they would stand, the user's own or as suggested.
QStringList sheetSentences(const Workbook& workbook, const Results& results);

} // namespace borewright
