// SPDX-License-Identifier: GPL-3.0-or-later
// A table of the record. Columns are as wide as their longest text; where the page is too narrow,
// words are wrapped, then the type is made smaller.
#include "app/pictures/picture_text.h"
#include "app/pictures/verdict_mark.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>
#include <numeric>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double usualPoints = 7.5;
constexpr double leastPoints = 5.5;
constexpr double pad = 26;         // between columns
constexpr double mostStretch = 50; // what a column gets beyond its longest text
constexpr double leastWords = 275; // of a column of words that is wrapped
constexpr double markRoom = 34;
constexpr double below = 30;

class GridComposer {
public:
    GridComposer(SheetComposer& sheet, const SheetGrid& grid)
        : m_sheet(sheet)
        , m_grid(grid) {
        for (m_points = usualPoints; m_points > leastPoints; m_points -= 0.5)
            if (fits()) break;
        if (m_points <= leastPoints) squeeze();
    }

    [[nodiscard]] double height() const {
        double rows = 0;
        for (const auto& row : m_grid.rows)
            rows += rowHeight(row);
        return titleHeight() + headHeight() + rows + below;
    }

    void compose() {
        const double title = titleHeight();
        const double all = height();
        m_sheet.need(all < m_sheet.whole() / 2
                         ? all
                         : title + headHeight() + 3 * rowHeight(m_grid.rows.front()));
        if (title > 0) {
            m_sheet.text({m_sheet.left(), m_sheet.y(), m_sheet.width(), title}, Qt::AlignLeft,
                         m_grid.title, sheetFont(8.5, true));
            m_sheet.down(title);
        }
        head();
        for (const auto& row : m_grid.rows) {
            if (!m_sheet.need(rowHeight(row))) head();
            compose(row);
        }
        m_sheet.down(below);
    }

private:
    [[nodiscard]] double titleHeight() const {
        return m_grid.title.isEmpty() ? 0 : lineHeight(sheetFont(8.5, true)) + 6;
    }
    [[nodiscard]] QFont font(bool bold = false) const { return sheetFont(m_points, bold); }
    [[nodiscard]] double line() const { return lineHeight(font()) + 2; }

    // The longest text of a column; of words that may be wrapped the longest word at least.
    [[nodiscard]] double longest(std::size_t c) const {
        const SheetGridColumn& column = m_grid.columns[c];
        double width = textWidth(column.unit, font());
        for (const QString& part : column.head.split('\n'))
            width = std::max(width, textWidth(part, font()));
        for (const auto& row : m_grid.rows)
            width = std::max(width, textWidth(row[c].text, font(row[c].bold)) +
                                        (row[c].verdict ? markRoom : 0));
        return width + 1 + pad;
    }

    // Sets the widths; true where nothing has to be elided.
    bool fits() {
        m_widths.clear();
        for (std::size_t c = 0; c < m_grid.columns.size(); ++c)
            m_widths.push_back(longest(c));
        const double over = sum() - m_sheet.width();
        if (over <= 0) {
            const double more = std::min(mostStretch, -over / static_cast<double>(m_widths.size()));
            for (double& width : m_widths)
                width += more;
            return true;
        }
        return wrap(over);
    }

    // Takes `over` from the columns of words, most from the widest.
    bool wrap(double over) {
        double spare = 0;
        const auto spareOf = [&](std::size_t c) {
            return m_grid.columns[c].words ? std::max(0.0, m_widths[c] - leastWords) : 0.0;
        };
        for (std::size_t c = 0; c < m_widths.size(); ++c)
            spare += spareOf(c);
        if (spare < over) return false;
        for (std::size_t c = 0; c < m_widths.size(); ++c)
            m_widths[c] -= spareOf(c) * over / spare;
        return true;
    }

    void squeeze() {
        const double factor = std::min(1.0, m_sheet.width() / sum());
        for (double& width : m_widths)
            width *= factor;
    }

    [[nodiscard]] double sum() const {
        return std::accumulate(m_widths.begin(), m_widths.end(), 0.0);
    }

    [[nodiscard]] qsizetype headLines() const {
        qsizetype lines = 1;
        for (const SheetGridColumn& column : m_grid.columns)
            lines = std::max(lines, column.head.count('\n') + 1);
        return lines;
    }
    [[nodiscard]] bool hasUnits() const {
        return std::ranges::any_of(
            m_grid.columns, [](const SheetGridColumn& column) { return !column.unit.isEmpty(); });
    }
    [[nodiscard]] double headHeight() const {
        return line() * static_cast<double>(headLines() + (hasUnits() ? 1 : 0)) + 10;
    }

    [[nodiscard]] QRectF room(std::size_t c, double x, double y) const {
        return {x, y, m_widths[c] - pad, line()};
    }
    [[nodiscard]] Qt::Alignment alignOf(std::size_t c) const {
        return m_grid.columns[c].words ? Qt::AlignLeft : Qt::AlignRight;
    }

    // Heads stand on one foot line, whatever number of lines they have.
    void head() {
        const qsizetype lines = headLines();
        double x = m_sheet.left();
        for (std::size_t c = 0; c < m_grid.columns.size(); ++c) {
            const QStringList parts = m_grid.columns[c].head.split('\n');
            for (qsizetype i = 0; i < parts.size(); ++i) {
                const double y =
                    m_sheet.y() + line() * static_cast<double>(lines - parts.size() + i);
                m_sheet.text(room(c, x, y), alignOf(c), parts[i], font(), Ink::faint);
            }
            m_sheet.text(room(c, x, m_sheet.y() + line() * static_cast<double>(lines)), alignOf(c),
                         m_grid.columns[c].unit, font(), Ink::faint);
            x += m_widths[c];
        }
        m_sheet.down(headHeight() - 6);
        m_sheet.rule(m_sheet.y(), m_sheet.left(), m_sheet.left() + sum() - pad);
        m_sheet.down(6);
    }

    [[nodiscard]] QStringList linesOf(const SheetGridCell& cell, std::size_t c) const {
        if (!m_grid.columns[c].words) return {cell.text};
        const double width = m_widths[c] - pad - (cell.verdict ? markRoom : 0);
        return sheetLines(cell.text, font(cell.bold), width);
    }

    [[nodiscard]] double rowHeight(const std::vector<SheetGridCell>& row) const {
        qsizetype lines = 1;
        for (std::size_t c = 0; c < row.size(); ++c)
            lines = std::max(lines, linesOf(row[c], c).size());
        return line() * static_cast<double>(lines) + 3;
    }

    void compose(const std::vector<SheetGridCell>& row) {
        double x = m_sheet.left();
        for (std::size_t c = 0; c < row.size(); ++c) {
            const SheetGridCell& cell = row[c];
            QRectF at = room(c, x, m_sheet.y());
            if (cell.verdict) {
                mark(at, *cell.verdict);
                at.adjust(markRoom, 0, 0, 0);
            }
            for (const QString& text : linesOf(cell, c)) {
                m_sheet.text(at, alignOf(c), text, font(cell.bold));
                at.translate(0, line());
            }
            x += m_widths[c];
        }
        m_sheet.down(rowHeight(row));
    }

    void mark(const QRectF& at, Verdict verdict) {
        const QRectF rect(at.left(), at.center().y() - 11, 22, 22);
        m_sheet.draw([rect, verdict](QPainter& painter, const PictureStyle& style) {
            paintVerdictMark(painter, rect, verdict, style);
        });
    }

    SheetComposer& m_sheet;
    const SheetGrid& m_grid;
    double m_points = usualPoints;
    std::vector<double> m_widths;
};

} // namespace

double sheetGridHeight(SheetComposer& sheet, const SheetGrid& grid) {
    return grid.rows.empty() || grid.columns.empty() ? 0 : GridComposer(sheet, grid).height();
}

void composeGrid(SheetComposer& sheet, const SheetGrid& grid) {
    if (grid.rows.empty() || grid.columns.empty()) return;
    GridComposer(sheet, grid).compose();
}

} // namespace borewright
