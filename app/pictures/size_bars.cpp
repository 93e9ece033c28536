// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/size_bars.h"

#include "app/pictures/picture_key.h"
#include "app/pictures/picture_text.h"
#include "app/pictures/size_bars_layout.h"
#include "app/pictures/size_bars_marks.h"
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("SizeBars", text);
}

class Painter {
public:
    Painter(QPainter& painter, const QRectF& rect, const SizeBarsData& data,
            const PictureStyle& style)
        : m_painter(painter)
        , m_rect(rect)
        , m_data(data)
        , m_style(style)
        , m_layout(layOutSizeBars(rect, data, style))
        , m_u(style.unit())
        , m_marks(painter, style) {}

    void paint() {
        paintRows();
        paintAxis();
        for (std::size_t b = 0; b < m_data.bores.size(); ++b)
            paintBeyond(b);
        for (const bool chosen : {false, true})
            for (std::size_t i = 0; i < m_data.lines.size(); ++i)
                if (m_data.lines[i].chosen == chosen) paintLine(i);
        for (const SizeBarsLabel& label : m_layout.labels)
            paintLabel(label);
        for (std::size_t b = 0; b < m_data.bores.size(); ++b) {
            paintBar(b);
            paintWords(b);
        }
        paintKey();
    }

private:
    [[nodiscard]] QRectF rowOf(std::size_t b) const { return m_layout.rowRect(b, m_rect); }

    // A wash behind the chosen bore, a hair between rows.
    void paintRows() {
        for (std::size_t b = 0; b < m_data.bores.size(); ++b) {
            const QRectF row = rowOf(b);
            if (m_data.bores[b].number == m_data.chosen && !m_style.paper)
                m_painter.fillRect(row, blended(m_style.accent, m_style.background, 0.08));
            m_painter.setPen(QPen(blended(m_style.grid, m_style.background, 0.6), 0.8 * m_u));
            m_painter.drawLine(row.topLeft(), row.topRight());
        }
        const QRectF last = rowOf(m_data.bores.size() - 1);
        m_painter.drawLine(last.bottomLeft(), last.bottomRight());
    }

    void paintAxis() {
        const QFont font = m_style.sized(0.76);
        const double span = m_layout.high - m_layout.low;
        const double needed = textWidth(QStringLiteral("00.0000 in"), font) + 10 * m_u;
        const double step = sizeBarsStep(span * needed / std::max(1.0, m_layout.plot.width()));
        const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
        const QRectF& axis = m_layout.axis;
        bool first = true;
        for (double k = std::ceil(m_layout.low / step); k * step <= m_layout.high; ++k) {
            const double x = m_layout.x(k * step);
            m_painter.setPen(QPen(m_style.grid, m_u));
            m_painter.drawLine(QPointF(x, axis.top()), QPointF(x, axis.top() + 4 * m_u));
            QString text = QString::number(k * step, 'f', decimals);
            if (std::exchange(first, false)) text += QLatin1Char(' ') + m_data.unit;
            const double width = textWidth(text, font) + 1;
            drawText(m_painter, m_style,
                     QRectF(x - width / 2, axis.top() + 4 * m_u, width, lineHeight(font)),
                     Qt::AlignHCenter, text, font, m_style.faintInk);
        }
    }

    void paintBeyond(std::size_t b) {
        std::optional<double> from = m_data.bores[b].greatest;
        if (!from || std::ranges::none_of(m_data.lines, &SizeBarsLine::beyond)) return;
        for (const SizeBarsLine& line : m_data.lines)
            if (!line.beyond && line.at[b]) from = std::max(*from, *line.at[b]);
        // Begins just beyond the last size that is allowed.
        const double x = m_layout.x(*from) + 3 * m_u;
        const QRectF row = rowOf(b);
        m_marks.beyond(QRectF(x, row.top(), m_layout.plot.right() - x, row.height()));
    }

    [[nodiscard]] QPen linePen(const SizeBarsLine& line, bool strong) const {
        if (strong) return {m_style.accent, 2.8 * m_u, Qt::SolidLine, Qt::FlatCap};
        QPen pen(line.beyond ? m_style.faintInk : m_style.ink, 1.0 * m_u, Qt::SolidLine,
                 Qt::FlatCap);
        if (line.beyond) pen.setDashPattern({3, 3});
        return pen;
    }

    void paintLine(std::size_t i) {
        const SizeBarsLine& line = m_data.lines[i];
        for (std::size_t b = 0; b < line.at.size() && b < m_data.bores.size(); ++b) {
            if (!line.at[b]) continue;
            const QRectF row = rowOf(b);
            const double x = m_layout.x(*line.at[b]);
            m_painter.setPen(linePen(line, line.chosen || m_data.bores[b].own == i));
            m_painter.drawLine(QPointF(x, row.top()), QPointF(x, row.bottom()));
        }
    }

    void paintLabel(const SizeBarsLabel& label) {
        const SizeBarsLine& line = m_data.lines[label.line];
        const double top = m_layout.plot.top();
        m_painter.setPen(linePen(line, line.chosen));
        const double knee = label.room.bottom() + 5 * m_u;
        const QPointF corners[] = {{label.room.center().x(), label.room.bottom()},
                                   {label.room.center().x(), label.room.bottom() + m_u},
                                   {label.foot, knee + 3 * m_u},
                                   {label.foot, top}};
        m_painter.drawPolyline(corners, 4);
        if (line.chosen) {
            m_painter.setPen(Qt::NoPen);
            m_painter.setBrush(m_style.accent);
            m_painter.drawRoundedRect(label.room, 4 * m_u, 4 * m_u);
        }
        const QFont font = m_style.sized(0.86, line.chosen);
        const QColor ink = line.chosen   ? m_style.background
                           : line.beyond ? m_style.faintInk
                                         : m_style.ink;
        const QRectF inner = label.room.adjusted(2 * m_u, m_u, -2 * m_u, -m_u);
        drawText(m_painter, m_style, inner, Qt::AlignHCenter | Qt::AlignTop, line.name, font, ink);
        if (m_layout.sizesShown)
            drawText(m_painter, m_style, inner, Qt::AlignHCenter | Qt::AlignBottom, line.size,
                     m_style.sized(0.76), line.chosen ? ink : m_style.faintInk);
    }

    // From the size as found a thin line leads to where the bore cleans up.
    void paintBar(std::size_t b) {
        const SizeBarsBore& bore = m_data.bores[b];
        if (!bore.smallest) return;
        const QRectF row = rowOf(b);
        const double y = row.center().y();
        const double half = std::clamp(row.height() * 0.2, 3 * m_u, 7 * m_u);
        if (bore.cleanUp) {
            m_painter.setPen(QPen(m_style.ink, 1.0 * m_u, Qt::DotLine, Qt::FlatCap));
            const double to = std::max(bore.cleanUp->size, bore.otherWay.value_or(0));
            m_painter.drawLine(QPointF(m_layout.x(bore.largest), y), QPointF(m_layout.x(to), y));
        }
        const double left = m_layout.x(*bore.smallest);
        const double right = std::max(m_layout.x(bore.largest), left + 2 * m_u);
        m_marks.found(QRectF(left, y - half, right - left, 2 * half));
        if (bore.otherWay && *bore.otherWay <= m_layout.high)
            m_marks.otherWay(m_layout.x(*bore.otherWay), y, half);
        if (bore.cleanUp) paintCleanUp(bore, y, half);
    }

    void paintCleanUp(const SizeBarsBore& bore, double y, double half) {
        const QColor colour =
            bore.verdict == Verdict::notJudged ? m_style.ink : verdictColour(bore.verdict, m_style);
        const double scale = m_layout.plot.width() / (m_layout.high - m_layout.low);
        if (bore.cleanUp->size <= m_layout.high)
            return m_marks.cleansUp(m_layout.x(bore.cleanUp->size), y, half,
                                    bore.cleanUp->around * scale, colour);
        // Far beyond what is shown: an arrow at the edge.
        const double x = m_layout.plot.right();
        const QPointF tip[] = {
            {x, y}, {x - 9 * m_u, y - half * 1.3}, {x - 9 * m_u, y + half * 1.3}};
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(colour);
        m_painter.drawPolygon(tip, 3);
    }

    void paintWords(std::size_t b) {
        const SizeBarsBore& bore = m_data.bores[b];
        const QRectF row = rowOf(b);
        paintName(bore, row);
        const double left = m_layout.plot.right() + 14 * m_u;
        const QFont wordFont = m_style.sized(0.86, bore.deciding);
        const QFont whyFont = m_style.sized(0.8);
        const double textLeft = left + 18 * m_u;
        const double width = std::max(0.0, m_rect.right() - textLeft);
        const bool both = m_layout.twoLines && !bore.word.isEmpty() && !bore.why.isEmpty();
        const double tall = lineHeight(m_style.sized(0.86));
        double y = row.center().y() - (both ? tall + lineHeight(whyFont) : tall) / 2;
        if (!bore.word.isEmpty()) {
            const double side = 12 * m_u;
            paintVerdictMark(m_painter, QRectF(left, y + (tall - side) / 2, side, side),
                             bore.verdict, m_style);
            drawText(m_painter, m_style, QRectF(textLeft, y, width, tall), Qt::AlignLeft, bore.word,
                     wordFont, verdictColour(bore.verdict, m_style));
            y += tall;
        }
        if (both || bore.word.isEmpty())
            drawText(m_painter, m_style, QRectF(textLeft, y, width, lineHeight(whyFont)),
                     Qt::AlignLeft, bore.why, whyFont, m_style.faintInk);
    }

    void paintName(const SizeBarsBore& bore, const QRectF& row) {
        const QFont font = m_style.sized(0.92, bore.deciding);
        const QFont small = m_style.sized(0.8);
        const double tall = lineHeight(font);
        const bool below = m_layout.twoLines && bore.deciding;
        const double y = row.center().y() - (below ? tall + lineHeight(small) : tall) / 2;
        const QRectF name(row.left() + 2 * m_u, y, m_layout.names, tall);
        const QRectF ink =
            drawText(m_painter, m_style, name, Qt::AlignLeft, bore.name, font, m_style.ink);
        if (!bore.deciding) return;
        // A triangle and the word, so that neither colour nor weight is needed.
        const double left = below ? name.left() : ink.right() + 6 * m_u;
        const QRectF room(left + 12 * m_u, below ? y + tall : y + (tall - lineHeight(small)) / 2,
                          m_layout.names, lineHeight(small));
        const double c = room.center().y();
        const QPointF flag[] = {{left, c - 4.5 * m_u}, {left + 8 * m_u, c}, {left, c + 4.5 * m_u}};
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(m_style.accent);
        m_painter.drawPolygon(flag, 3);
        drawText(m_painter, m_style, room, Qt::AlignLeft, tr("decides"), small, m_style.accent);
    }

    void paintKey() {
        const QFont font = m_style.sized(0.8);
        const double line = lineHeight(font) + m_u;
        double x = m_layout.key.left();
        double y = m_layout.key.top();
        for (const auto& [sign, text] : sizeBarsKey(m_data)) {
            const double width = textWidth(text, font) + 1;
            if (x > m_layout.key.left() && x + 28 * m_u + width > m_layout.key.right()) {
                x = m_layout.key.left();
                y += line;
            }
            if (y + line > m_layout.key.bottom() + m_u) return;
            m_marks.sign(sign, QRectF(x + 2 * m_u, y, 20 * m_u, line));
            drawText(m_painter, m_style, QRectF(x + 28 * m_u, y, width, line), Qt::AlignLeft, text,
                     font, m_style.faintInk);
            x += 44 * m_u + width;
        }
    }

    QPainter& m_painter;
    QRectF m_rect;
    const SizeBarsData& m_data;
    const PictureStyle& m_style;
    SizeBarsLayout m_layout;
    double m_u;
    SizeBarsMarks m_marks;
};

} // namespace

void paintSizeBars(QPainter& painter, const QRectF& rect, const SizeBarsData& data,
                   const PictureStyle& style) {
    if (!data.friendly.isEmpty()) {
        drawParagraph(painter, style, rect, data.friendly, style.sized(0.92), style.faintInk);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Painter(painter, rect, data, style).paint();
    painter.restore();
}

QImage renderSizeBars(const QSize& size, const SizeBarsData& data, const PictureStyle& style,
                      double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintSizeBars(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
