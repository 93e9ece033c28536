// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/sheet_composer.h"

#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_data.h"

#include <QTextLayout>

#include <cmath>

namespace borewright {
namespace {

constexpr double unitsPerPoint = sheetUnitsPerMm * 25.4 / 72;
constexpr double marginSide = 160;
constexpr double marginTop = 130;
constexpr double marginBottom = 180;

QColor colourOf(SheetComposer::Ink ink, const PictureStyle& style) {
    switch (ink) {
    case SheetComposer::Ink::full:
        return style.ink;
    case SheetComposer::Ink::faint:
        return style.faintInk;
    case SheetComposer::Ink::accent:
        return style.accent;
    }
    return style.ink;
}

} // namespace

QSizeF sheetSize(Preferences::Paper paper) {
    // ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: A (letter) is 8.5 × 11 in.
    return paper == Preferences::Paper::a4 ? QSizeF(2100, 2970) : QSizeF(2159, 2794);
}

QFont sheetFont(double points, bool bold) {
    QFont font(QStringLiteral("Noto Sans"));
    font.setPixelSize(static_cast<int>(std::lround(points * unitsPerPoint)));
    font.setBold(bold);
    // Widths as on paper, not as a screen's dots would have them.
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setKerning(true);
    return font;
}

PictureStyle sheetStyle(double points) {
    PictureStyle style = PictureStyle::onPaper(sheetFont(points));
    style.line = 3.2;
    return style;
}

QStringList sheetLines(const QString& text, const QFont& font, double width) {
    QStringList lines;
    for (const QString& paragraph : text.split('\n')) {
        QTextLayout layout(paragraph, font);
        QTextOption option;
        option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
        layout.setTextOption(option);
        layout.beginLayout();
        bool any = false;
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(width);
            lines << paragraph.mid(line.textStart(), line.textLength()).trimmed();
            any = true;
        }
        if (!any) lines << QString();
        layout.endLayout();
    }
    return lines;
}

SheetComposer::SheetComposer(Preferences::Paper paper) {
    const QSizeF size = sheetSize(paper);
    m_body = QRectF(marginSide, marginTop, size.width() - 2 * marginSide,
                    size.height() - marginTop - marginBottom);
    newPage();
}

void SheetComposer::newPage() {
    m_pages.emplace_back();
    m_y = m_body.top();
    if (m_head) m_head(*this);
}

bool SheetComposer::need(double height) {
    if (height <= rest() + 0.5) return true;
    newPage();
    return false;
}

void SheetComposer::draw(SheetDraw draw) {
    m_pages.back().push_back(std::move(draw));
}

void SheetComposer::text(const QRectF& room, Qt::Alignment align, const QString& text,
                         const QFont& font, Ink ink) {
    if (text.isEmpty()) return;
    draw([=](QPainter& painter, const PictureStyle& style) {
        drawText(painter, style, room, align, text, font, colourOf(ink, style));
    });
}

void SheetComposer::rule(double y, double from, double to, double width) {
    draw([=](QPainter& painter, const PictureStyle& style) {
        painter.setPen(QPen(style.grid, width, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(from, y), QPointF(to, y));
    });
}

void SheetComposer::paragraph(double x, double width, const QString& words, const QFont& font,
                              Ink ink) {
    const double height = lineHeight(font);
    for (const QString& line : sheetLines(words, font, width)) {
        need(height);
        text(QRectF(x, m_y, width, height), Qt::AlignLeft | Qt::AlignTop, line, font, ink);
        down(height);
    }
}

std::vector<SheetPageContent> SheetComposer::take(const QString& foot, const QString& code) {
    const QFont font = sheetFont(7.5);
    const double top = m_body.bottom() + 50;
    const auto total = m_pages.size();
    for (std::size_t page = 0; page < total; ++page) {
        QString count = SheetWords::tr("page %1 of %2").arg(page + 1).arg(total);
        if (!code.isEmpty())
            count = SheetWords::tr("check code %1").arg(code) + QStringLiteral("  ·  ") + count;
        const double height = lineHeight(font);
        const double countWidth = textWidth(count, font) + 1;
        const QRectF room(m_body.left(), top, m_body.width() - countWidth - 60, height);
        const QRectF countRoom(m_body.right() - countWidth, top, countWidth, height);
        m_pages[page].push_back([=](QPainter& painter, const PictureStyle& style) {
            drawText(painter, style, room, Qt::AlignLeft, foot, font, style.faintInk);
            drawText(painter, style, countRoom, Qt::AlignRight, count, font, style.faintInk);
        });
    }
    return std::move(m_pages);
}

double sheetFactsHeight(const std::vector<SheetFact>& facts, double width, double nameWidth,
                        double points) {
    const QFont font = sheetFont(points);
    double height = 0;
    for (const SheetFact& fact : facts)
        height += static_cast<double>(sheetLines(fact.value, font, width - nameWidth).size()) *
                  lineHeight(font);
    return height;
}

void composeFacts(SheetComposer& sheet, const std::vector<SheetFact>& facts, double x, double width,
                  double nameWidth, double points) {
    const QFont font = sheetFont(points);
    const double height = lineHeight(font);
    for (const SheetFact& fact : facts) {
        sheet.need(height);
        sheet.text(QRectF(x, sheet.y(), nameWidth - 15, height), Qt::AlignLeft, fact.name, font,
                   SheetComposer::Ink::faint);
        sheet.paragraph(x + nameWidth, width - nameWidth, fact.value, font);
    }
}

std::vector<SheetPageContent> composeSheet(const SheetData& data, Preferences::Paper paper) {
    SheetComposer sheet(paper);
    const bool sections = composeFront(sheet, data);
    composeDoubt(sheet, data);
    composeRecord(sheet, data, !sections);
    QStringList foot;
    if (data.invented) foot << SheetWords::tr("Invented demonstration");
    // The title last: where the line is too long it is the one that may be cut off.
    foot << SheetWords::tr("printed %1").arg(data.printed) << data.title;
    return sheet.take(foot.join(QStringLiteral("  ·  ")), data.code);
}

} // namespace borewright
