// SPDX-License-Identifier: GPL-3.0-or-later
// Composes pages: what is added from the top down flows onto a new page where the room ends. The
// pages are kept as lists of things to draw, so that PDF, printer and preview are one drawing.
//
// Unit of the sheet: a tenth of a millimetre.
#pragma once

#include "app/context/preferences.h"
#include "app/pictures/picture_style.h"

#include <QPainter>

#include <functional>
#include <vector>

namespace borewright {

inline constexpr double sheetUnitsPerMm = 10;
// Dots per inch at which a device pixel is a unit of the sheet.
inline constexpr int sheetDotsPerInch = 254;

// Whole size of a paper, in sheet units.
QSizeF sheetSize(Preferences::Paper paper);

// Noto Sans in points of the paper.
QFont sheetFont(double points, bool bold = false);
// The style of the pictures on the sheet, their type in points.
PictureStyle sheetStyle(double points);

using SheetDraw = std::function<void(QPainter&, const PictureStyle&)>;
using SheetPageContent = std::vector<SheetDraw>;

class SheetComposer {
public:
    enum class Ink { full, faint, accent };

    explicit SheetComposer(Preferences::Paper paper);

    [[nodiscard]] double left() const { return m_body.left(); }
    [[nodiscard]] double right() const { return m_body.right(); }
    [[nodiscard]] double width() const { return m_body.width(); }
    // Where the next thing goes, and what is left of the page below it.
    [[nodiscard]] double y() const { return m_y; }
    [[nodiscard]] double rest() const { return m_body.bottom() - m_y; }
    // What an empty page holds.
    [[nodiscard]] double whole() const { return m_body.height(); }
    void down(double height) { m_y += height; }

    // Begins a new page unless `height` still fits; true where it did.
    bool need(double height);
    void newPage();
    // What stands at the head of every page begun from now on.
    void onNewPage(std::function<void(SheetComposer&)> head) { m_head = std::move(head); }

    void draw(SheetDraw draw);
    // One line, elided where it is too wide.
    void text(const QRectF& room, Qt::Alignment align, const QString& text, const QFont& font,
              Ink ink = Ink::full);
    void rule(double y, double from, double to, double width = 2);
    // A paragraph over the given width; goes down and over pages. `least` lines stay together.
    void paragraph(double x, double width, const QString& text, const QFont& font,
                   Ink ink = Ink::full);

    // The pages, each with its foot: `foot` at the left, "check code … · page x of y" at the right.
    std::vector<SheetPageContent> take(const QString& foot, const QString& code = {});

private:
    QRectF m_body;
    double m_y = 0;
    std::vector<SheetPageContent> m_pages;
    std::function<void(SheetComposer&)> m_head;
};

// Text broken into lines no wider than `width`.
QStringList sheetLines(const QString& text, const QFont& font, double width);

// The pages of a sheet.
struct SheetData;
std::vector<SheetPageContent> composeSheet(const SheetData& data, Preferences::Paper paper);
// Draws a page at the painter's origin, in sheet units. Texts are noted in `log` if there is one.
void drawSheetPage(QPainter& painter, const SheetPageContent& page, TextLog* log = nullptr);
// Its parts: the customer's page, the table on it, the shop's pages.
// The customer's page; false where it has not the room for the sections of the bores.
bool composeFront(SheetComposer& sheet, const SheetData& data);
// The sections, which leave `below` free on their page, and what they take at least.
void composeSections(SheetComposer& sheet, const SheetData& data, double below);
double sheetSectionsLeast(const SheetData& data);
struct SheetBoreTable;
void composeTable(SheetComposer& sheet, const SheetBoreTable& table);
// A short table, which has room for the doubt below each figure and the shapes below the table.
bool doubtsStandAtEachFigure(const SheetBoreTable& table);
// How far the figures can be trusted; nothing where no doubt is known.
void composeDoubt(SheetComposer& sheet, const SheetData& data);
void composeRecord(SheetComposer& sheet, const SheetData& data, bool withSections);
struct SheetGrid;
void composeGrid(SheetComposer& sheet, const SheetGrid& grid);
double sheetGridHeight(SheetComposer& sheet, const SheetGrid& grid);
// A part of the record: its title and the sentence that says it all; `least` of it stays together.
void composeSectionHead(SheetComposer& sheet, const QString& title, const QString& headline,
                        double least);
void composeSentences(SheetComposer& sheet, const QStringList& sentences, double points);
struct SheetSizing;
void composeSizing(SheetComposer& sheet, const SheetSizing& sizing);
struct SheetHone;
void composeHone(SheetComposer& sheet, const SheetHone& hone);
// The customer's sentences of it, and what is not yet done.
void composeHoneFront(SheetComposer& sheet, const SheetHone& hone);
struct SheetFit;
void composeFit(SheetComposer& sheet, const SheetFit& fit);
// The customer's short table of clearances where `room` is enough for it, else where it stands.
struct SheetPairs;
double sheetPairsHeight(SheetComposer& sheet, const SheetPairs& pairs);
void composePairs(SheetComposer& sheet, const SheetPairs& pairs, double room);
struct SheetFact;
// Names at the left, values behind them, wrapped; `nameWidth` in sheet units.
void composeFacts(SheetComposer& sheet, const std::vector<SheetFact>& facts, double x, double width,
                  double nameWidth, double points);
double sheetFactsHeight(const std::vector<SheetFact>& facts, double width, double nameWidth,
                        double points);

} // namespace borewright
