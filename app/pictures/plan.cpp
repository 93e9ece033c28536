// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/plan.h"

#include "app/pictures/picture_key.h"
#include "app/pictures/picture_text.h"
#include "app/pictures/reading_words.h"
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Plan", text);
}

struct PlanLayout {
    bool flat = false; // front at the left
    bool beside = false;
    double diameter = 0;
    double wordWidth = 0;
    std::vector<QRectF> cells; // in the order of the bores
    std::vector<QPointF> centres;
    std::vector<QRectF> banks;
    QRectF front;
    QRectF hint;
};

QFont wordFont(const PictureStyle& style) {
    return style.sized(0.84);
}

double widestWord(const PlanData& data, const PictureStyle& style) {
    double width = 0;
    for (const PlanBore& bore : data.bores)
        width = std::max(width, textWidth(bore.word, wordFont(style)));
    return width > 0 ? width + 14 * style.unit() : 0;
}

std::vector<KeyItem> axisHint(const PlanData& data, bool flat) {
    using Sign = KeyItem::Sign;
    std::vector<KeyItem> items;
    if (!data.axisA.isEmpty()) items.push_back({flat ? Sign::leftRight : Sign::upDown, data.axisA});
    if (!data.axisB.isEmpty()) items.push_back({flat ? Sign::upDown : Sign::leftRight, data.axisB});
    return items;
}

// How large the circle may be with the word beside it or below it.
void chooseShape(PlanLayout& l, const PlanData& data, const PictureStyle& style, double w,
                 double h) {
    const double u = style.unit();
    const double word = data.numbersOnly ? 0 : widestWord(data, style);
    const double most = 64 * u;
    const double below =
        std::min({w * 0.8, h - 8 * u - (word > 0 ? lineHeight(wordFont(style)) : 0), most});
    const double beside = std::min({h * 0.84, w - word - 10 * u, most});
    const bool belowFits = word <= w;
    l.beside = word > 0 && (beside >= below || (!belowFits && beside >= 18 * u));
    l.diameter = std::max(8 * u, l.beside ? beside : below);
    l.wordWidth = l.beside ? std::min(word, w - l.diameter - 8 * u) : std::min(word, w);
    if (word <= 0 || l.diameter >= 14 * u) return;
    // Many bores in little room: the mark alone, beside the number.
    l.beside = true;
    l.diameter = std::max(8 * u, std::min(h * 0.9, w - 16 * u));
    l.wordWidth = 10 * u;
}

void placeBores(PlanLayout& l, const QRectF& area, const PlanData& data,
                const PictureStyle& style) {
    int rows = 1;
    int columns = 1;
    for (const PlanBore& bore : data.bores) {
        rows = std::max(rows, bore.place.row + 1);
        columns = std::max(columns, bore.place.column + 1);
    }
    if (l.flat) std::swap(rows, columns);
    const double u = style.unit();
    const double gap = 8 * u; // between banks
    double w = (area.width() - (l.flat ? 0 : gap * (columns - 1))) / columns;
    double h = (area.height() - (l.flat ? gap * (rows - 1) : 0)) / rows;
    chooseShape(l, data, style, w - 8 * u, h);
    // No wider apart than a block is.
    const double word = l.beside || data.numbersOnly ? 0 : lineHeight(wordFont(style));
    if (l.flat)
        w = std::min(w, std::max(l.diameter * 1.7, l.wordWidth + 14 * u));
    else
        h = std::min(h, l.diameter * 1.25 + word + 6 * u);
    const double left = area.center().x() - (w * columns + (l.flat ? 0 : gap * (columns - 1))) / 2;
    const double top = area.center().y() - (h * rows + (l.flat ? gap * (rows - 1) : 0)) / 2;
    for (const PlanBore& bore : data.bores) {
        const int row = l.flat ? bore.place.column : bore.place.row;
        const int column = l.flat ? bore.place.row : bore.place.column;
        const QRectF cell(left + column * (w + (l.flat ? 0 : gap)),
                          top + row * (h + (l.flat ? gap : 0)), w, h);
        l.cells.push_back(cell);
        const double shift = l.beside ? -(l.wordWidth + 6 * u) / 2 : 0;
        l.centres.emplace_back(cell.center().x() + shift, cell.center().y() - word / 2);
    }
}

// The castings behind the bores: one a bank.
void addBanks(PlanLayout& l, const PlanData& data) {
    std::vector<QRectF> banks(2);
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const int column = std::clamp(data.bores[i].place.column, 0, 1);
        auto& bank = banks[static_cast<std::size_t>(column)];
        bank = bank.united(l.cells[i]);
    }
    for (const QRectF& bank : banks)
        if (!bank.isEmpty()) l.banks.push_back(bank);
}

PlanLayout layOut(const QRectF& rect, const PlanData& data, const PictureStyle& style) {
    PlanLayout l;
    const double u = style.unit();
    l.flat = rect.width() > rect.height() * 1.35;
    QRectF area = rect;
    const double label = lineHeight(style.sized(0.8));
    if (rect.height() >= 110 * u) {
        const double hint =
            data.numbersOnly ? 0 : keyHeight(axisHint(data, l.flat), rect.width(), 2, style);
        l.hint = QRectF(rect.left(), rect.bottom() - hint, rect.width(), hint);
        area.setBottom(l.hint.top() - (hint > 0 ? 6 * u : 0));
    }
    const double front = textWidth(tr("front"), style.sized(0.8)) + 16 * u;
    if (l.flat) {
        l.front = QRectF(rect.left(), area.top(), front, area.height());
        area.setLeft(l.front.right() + 4 * u);
    } else {
        l.front = QRectF(area.left(), area.top(), area.width(), label);
        area.setTop(l.front.bottom() + 4 * u);
    }
    placeBores(l, area, data, style);
    addBanks(l, data);
    if (l.banks.empty()) return l;
    // The front's name stands next to the block, not at the far edge.
    if (l.flat)
        l.front.moveRight(l.banks.front().left() - 4 * u);
    else
        l.front.moveBottom(l.banks.front().top() - 4 * u);
    return l;
}

void paintFront(QPainter& painter, const PlanLayout& l, const PictureStyle& style) {
    const double u = style.unit();
    const QFont font = style.sized(0.8);
    const double width = textWidth(tr("front"), font);
    const QPointF c = l.front.center();
    const QPointF tip(c.x() - (width + 14 * u) / 2 + 4 * u, c.y());
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.faintInk);
    const double r = 4 * u;
    const QPointF up[] = {
        {tip.x(), tip.y() - r}, {tip.x() + r, tip.y() + r}, {tip.x() - r, tip.y() + r}};
    const QPointF side[] = {
        {tip.x() - r, tip.y()}, {tip.x() + r, tip.y() - r}, {tip.x() + r, tip.y() + r}};
    painter.drawPolygon(l.flat ? side : up, 3);
    drawText(painter, style,
             QRectF(tip.x() + 8 * u, c.y() - lineHeight(font) / 2, width + 0.4, lineHeight(font)),
             Qt::AlignLeft, tr("front"), font, style.faintInk);
}

void paintWord(QPainter& painter, const PlanLayout& l, std::size_t i, const PlanBore& bore,
               const PictureStyle& style) {
    const double u = style.unit();
    const double mark = 14 * u;
    const QFont font = fittingFont(bore.word, l.wordWidth - mark, style);
    const double height = lineHeight(font);
    const bool fits = mark + textWidth(bore.word, font) <= l.wordWidth + 0.5;
    const double width = fits ? mark + textWidth(bore.word, font) : 10 * u;
    if (bore.word.isEmpty() || l.wordWidth < 10 * u) return;
    const QPointF c = l.centres[i];
    const QRectF room =
        l.beside ? QRectF(c.x() + l.diameter / 2 + 6 * u, c.y() - height / 2, width, height)
                 : QRectF(c.x() - width / 2, c.y() + l.diameter / 2 + 2 * u, width, height);
    paintVerdictMark(painter, QRectF(room.left(), room.center().y() - 5 * u, 10 * u, 10 * u),
                     bore.verdict, style);
    if (!fits) return; // the mark alone, rather than half a word
    drawText(painter, style, room.adjusted(mark, 0, 0.4, 0), Qt::AlignLeft, bore.word, font,
             verdictColour(bore.verdict, style));
}

void paintBore(QPainter& painter, const PlanLayout& l, std::size_t i, const PlanData& data,
               const PictureStyle& style) {
    const PlanBore& bore = data.bores[i];
    const double u = style.unit();
    const double r = l.diameter / 2;
    const bool chosen = bore.number == data.chosen;
    painter.setBrush(style.background);
    painter.setPen(chosen ? QPen(style.accent, 3 * u) : QPen(style.faintInk, 1.3 * u));
    painter.drawEllipse(l.centres[i], r - u, r - u);
    QFont font = style.sized(std::clamp(l.diameter / (30 * u), 0.7, 1.5), true);
    const QRectF room(l.centres[i].x() - r, l.centres[i].y() - r, 2 * r, 2 * r);
    drawText(painter, style, room, Qt::AlignCenter, QString::number(bore.number), font,
             chosen ? style.accent : style.ink);
    if (!data.numbersOnly) paintWord(painter, l, i, bore, style);
}

} // namespace

PlanData planOfNumbers(const Block& block, int chosen) {
    PlanData data;
    data.arrangement = block.arrangement;
    data.chosen = chosen;
    data.numbersOnly = true;
    for (std::size_t i = 0; i < block.bores.size(); ++i)
        data.bores.push_back({block.bores[i].number,
                              planPlace(block.arrangement, static_cast<int>(i)),
                              {},
                              {},
                              Verdict::notJudged});
    const auto label = [&](std::size_t i) {
        return i < block.axes.size() ? qs(block.axes[i].id + " " + block.axes[i].label) : QString();
    };
    data.axisA = label(0);
    data.axisB = label(1);
    return data;
}

PlanData planData(const Workbook& workbook, const Results& results, const std::string& survey,
                  int chosen) {
    PlanData data = planOfNumbers(workbook.block, chosen);
    data.numbersOnly = false;
    const SurveyResult* result = findResult(results, survey);
    if (result == nullptr) return data;
    for (PlanBore& bore : data.bores) {
        const BoreResult* found = findBoreResult(*result, bore.number);
        if (found == nullptr) continue;
        bore.word = qs(found->word);
        bore.why = qs(found->why);
        bore.verdict = found->verdict;
    }
    return data;
}

void paintPlan(QPainter& painter, const QRectF& rect, const PlanData& data,
               const PictureStyle& style) {
    if (data.bores.empty()) {
        drawParagraph(painter, style, rect, tr("The block has no bores yet."), wordFont(style),
                      style.faintInk, Qt::AlignHCenter);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const PlanLayout l = layOut(rect, data, style);
    painter.setPen(QPen(style.grid, style.unit()));
    painter.setBrush(style.metal);
    for (const QRectF& bank : l.banks)
        painter.drawRoundedRect(bank, 10 * style.unit(), 10 * style.unit());
    paintFront(painter, l, style);
    for (std::size_t i = 0; i < data.bores.size(); ++i)
        paintBore(painter, l, i, data, style);
    if (!l.hint.isNull()) paintKey(painter, l.hint, axisHint(data, l.flat), style);
    painter.restore();
}

int planHit(const QRectF& rect, const PlanData& data, const PictureStyle& style,
            const QPointF& position) {
    if (data.bores.empty()) return 0;
    const PlanLayout l = layOut(rect, data, style);
    for (std::size_t i = 0; i < data.bores.size(); ++i)
        if (l.cells[i].contains(position)) return data.bores[i].number;
    return 0;
}

int planNeighbour(const QRectF& rect, const PlanData& data, const PictureStyle& style, int number,
                  Qt::Key key) {
    const auto from = std::ranges::find(data.bores, number, &PlanBore::number);
    if (from == data.bores.end()) return data.bores.empty() ? 0 : data.bores.front().number;
    const PlanLayout l = layOut(rect, data, style);
    const QPointF start = l.cells[static_cast<std::size_t>(from - data.bores.begin())].center();
    const QPointF way = key == Qt::Key_Left    ? QPointF(-1, 0)
                        : key == Qt::Key_Right ? QPointF(1, 0)
                        : key == Qt::Key_Up    ? QPointF(0, -1)
                                               : QPointF(0, 1);
    int nearest = number;
    double least = 1e300;
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const QPointF to = l.cells[i].center() - start;
        const double ahead = QPointF::dotProduct(to, way);
        const double aside = std::abs(to.x() * way.y() - to.y() * way.x());
        if (ahead < 1 || aside > ahead || ahead + 2 * aside >= least) continue;
        least = ahead + 2 * aside;
        nearest = data.bores[i].number;
    }
    return nearest;
}

QString describePlan(const PlanData& data) {
    if (data.bores.empty()) return tr("The block has no bores yet.");
    QStringList parts;
    for (const PlanBore& bore : data.bores) {
        QString part =
            data.numbersOnly ? QString::number(bore.number) : tr("bore %1").arg(bore.number);
        if (!bore.word.isEmpty()) part += QStringLiteral(": ") + bore.word;
        if (!bore.why.isEmpty()) part += QStringLiteral(" (") + bore.why + QStringLiteral(")");
        if (bore.number == data.chosen) part += tr(", chosen");
        parts << part;
    }
    return tr("The block from above, from the front: %1.").arg(parts.join(QStringLiteral("; ")));
}

QImage renderPlan(const QSize& size, const PlanData& data, const PictureStyle& style,
                  double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintPlan(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
