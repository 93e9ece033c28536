// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/hone_section_view.h"

#include "app/pictures/hone_section_layout.h"

#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double snapMetric_mm = 0.5;
constexpr double snapInch_mm = 0.508; // 0.02 in
constexpr double reach = 9;           // of a hand round an end, at a type of 14 pixels
constexpr double across = 12;         // beside a bar
constexpr double bigStep = 5;         // of Page Up and Page Down, in steps
constexpr double same = 1e-9;

} // namespace

HoneSectionView::HoneSectionView(Document& document, Selection& selection, QWidget* parent)
    : PictureView(document, selection, tr("Set-up of the hone in the chosen bore"), parent) {}

void HoneSectionView::setOutlook(std::optional<BoreOutlook> outlook) {
    m_outlook = std::move(outlook);
    m_held.reset();
    markOld();
}

// Handed over while a window is in the hand, it tells what is expected of where the hand is.
void HoneSectionView::setOwn(std::optional<HoneOwnDraft> own) {
    m_own = std::move(own);
    markOld();
}

void HoneSectionView::setWaiting(const QString& words) {
    m_waiting = words;
    markOld();
}

const HoneSectionData& HoneSectionView::data() {
    freshen();
    return m_data;
}

void HoneSectionView::rebuild() {
    const Workbook& workbook = m_document.workbook();
    if (m_outlook && m_outlook->bore == m_selection.bore())
        m_data = honeSectionData(workbook, *m_outlook, m_document.units(), m_own);
    else
        m_data = honeSectionRefused(workbook, m_selection.bore(), m_waiting);
    if (m_held && m_held->window >= m_data.windows.size()) m_held.reset();
    if (m_chosen && m_chosen->window >= m_data.windows.size()) m_chosen.reset();
    if (!m_held) return;
    HoneBar& bar = m_data.windows[m_held->window];
    bar.from_mm = m_held->nowFrom_mm;
    bar.to_mm = m_held->nowTo_mm;
    nameHoneBar(bar, m_data.units);
    if (m_data.stone)
        m_data.stone->lower_mm =
            std::ranges::max_element(m_data.windows, {}, &HoneBar::to_mm)->to_mm;
}

QString HoneSectionView::describe() const {
    QString text = describeHoneSection(m_data);
    if (!m_chosen || m_chosen->window >= m_data.windows.size()) return text;
    const HoneBar& bar = m_data.windows[m_chosen->window];
    const Length at =
        Length::nearest(m_chosen->end == 0 ? bar.from_mm : bar.to_mm, Unit::millimetre);
    return tr("Window %1, %2 end at %3; arrow keys move it, Escape takes it back. ")
               .arg(m_chosen->window + 1)
               .arg(m_chosen->end == 0 ? tr("upper") : tr("lower"),
                    QString::fromStdString(depthWithUnit(at, m_data.units))) +
           text;
}

void HoneSectionView::paint(QPainter& painter, const QRectF& rect) {
    paintHoneSection(painter, rect, m_data, style());
    paintChosen(painter, rect);
}

void HoneSectionView::paintChosen(QPainter& painter, const QRectF& rect) {
    if (!m_chosen || !hasFocus() || m_chosen->window >= m_data.windows.size()) return;
    const HoneSectionLayout layout = layOutHoneSection(rect, m_data, style());
    const HoneBar& bar = m_data.windows[m_chosen->window];
    const double u = layout.unit;
    painter.setPen(QPen(style().ink, 1.6 * u));
    painter.setBrush(style().accent);
    painter.drawEllipse(QPointF(layout.barX(m_chosen->window),
                                layout.y(m_chosen->end == 0 ? bar.from_mm : bar.to_mm)),
                        6 * u, 6 * u);
}

// A short bar is taken by its nearer end; between the ends the whole window is.
std::optional<HoneSectionView::Held> HoneSectionView::heldAt(const QPointF& position) {
    freshen();
    if (!m_data.stone) return std::nullopt;
    const HoneSectionLayout layout = layOutHoneSection(pictureRect(), m_data, style());
    for (std::size_t i = 0; i < m_data.windows.size(); ++i) {
        if (std::abs(position.x() - layout.barX(i)) > across * layout.unit) continue;
        const HoneBar& bar = m_data.windows[i];
        const double fromAway = position.y() - layout.y(bar.from_mm);
        const double toAway = position.y() - layout.y(bar.to_mm);
        const double hand = reach * layout.unit;
        if (fromAway < -hand || toAway > hand) continue;
        Held held;
        held.window = i;
        held.lower = std::abs(toAway) <= hand && std::abs(toAway) <= std::abs(fromAway);
        held.upper = !held.lower && std::abs(fromAway) <= hand;
        if (!held.upper && !held.lower) held.upper = held.lower = true;
        held.grip_mm = layout.depthOf(position.y());
        held.from_mm = held.nowFrom_mm = bar.from_mm;
        held.to_mm = held.nowTo_mm = bar.to_mm;
        return held;
    }
    return std::nullopt;
}

double HoneSectionView::depthAt(double y) {
    return layOutHoneSection(pictureRect(), m_data, style()).depthOf(y);
}

// The nearest step, or the end of the stone's reach where that is nearer.
double HoneSectionView::snapped(double depth_mm) const {
    const double step = isInchFamily(m_data.units.size) ? snapInch_mm : snapMetric_mm;
    const double highest = m_data.stone->highest_mm;
    const double lowest = std::max(highest, m_data.stone->lowest_mm);
    if (depth_mm >= lowest) return lowest;
    if (depth_mm <= highest) return highest;
    double best = std::round(depth_mm / step) * step;
    for (const double edge : {highest, lowest})
        if (std::abs(depth_mm - edge) < std::abs(depth_mm - best)) best = edge;
    return std::clamp(best, highest, lowest);
}

// Moves what is held by so much from where it was taken; the ends never pass each other.
void HoneSectionView::move(double by_mm) {
    if (!m_held || !m_data.stone) return;
    Held& held = *m_held;
    double from = held.upper ? snapped(held.from_mm + by_mm) : held.from_mm;
    double to = held.lower ? snapped(held.to_mm + by_mm) : held.to_mm;
    if (held.upper && held.lower) { // whole: as long as it was
        const double length = held.to_mm - held.from_mm;
        from = std::clamp(from, m_data.stone->highest_mm,
                          std::max(m_data.stone->highest_mm, m_data.stone->lowest_mm - length));
        to = from + length;
    } else if (held.upper) {
        from = std::min(from, to);
    } else {
        to = std::max(from, to);
    }
    if (std::abs(from - held.nowFrom_mm) < same && std::abs(to - held.nowTo_mm) < same) return;
    held.nowFrom_mm = from;
    held.nowTo_mm = to;
    tell();
}

void HoneSectionView::tell() {
    markOld();
    emit windowDragged(static_cast<int>(m_held->window),
                       Length::nearest(m_held->nowFrom_mm, Unit::millimetre),
                       Length::nearest(m_held->nowTo_mm, Unit::millimetre));
}

void HoneSectionView::letGo() {
    if (!m_held) return;
    const Held held = *m_held;
    m_held.reset();
    m_byKey = false;
    markOld();
    if (held.moved())
        emit windowCommitted(static_cast<int>(held.window),
                             Length::nearest(held.nowFrom_mm, Unit::millimetre),
                             Length::nearest(held.nowTo_mm, Unit::millimetre));
}

void HoneSectionView::takeBack() {
    if (!m_held) return;
    m_held->nowFrom_mm = m_held->from_mm;
    m_held->nowTo_mm = m_held->to_mm;
    tell();
    m_held.reset();
    m_byKey = false;
    markOld();
}

bool HoneSectionView::event(QEvent* event) {
    // Tab is the focus chain's; the override is asked first.
    if (event->type() == QEvent::ShortcutOverride && m_held &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return PictureView::event(event);
}

void HoneSectionView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return PictureView::mousePressEvent(event);
    letGo();
    m_held = heldAt(event->position());
    if (!m_held) return;
    m_chosen = Chosen{m_held->window, m_held->upper && !m_held->lower ? 0 : 1};
    markOld();
}

void HoneSectionView::mouseMoveEvent(QMouseEvent* event) {
    if (!m_held || m_byKey) return PictureView::mouseMoveEvent(event);
    move(depthAt(event->position().y()) - m_held->grip_mm);
}

void HoneSectionView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && !m_byKey) letGo();
}

void HoneSectionView::keyPressEvent(QKeyEvent* event) {
    freshen();
    if (event->key() == Qt::Key_Escape && m_held) return takeBack();
    const double step = isInchFamily(m_data.units.size) ? snapInch_mm : snapMetric_mm;
    double by = 0;
    if (event->key() == Qt::Key_Up || event->key() == Qt::Key_Left) by = -step;
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Right) by = step;
    if (event->key() == Qt::Key_PageUp) by = -bigStep * step;
    if (event->key() == Qt::Key_PageDown) by = bigStep * step;
    if (by == 0 || !m_chosen || !m_data.stone) return PictureView::keyPressEvent(event);
    if (!m_held) {
        const HoneBar& bar = m_data.windows[m_chosen->window];
        m_held = Held{m_chosen->window, m_chosen->end == 0, m_chosen->end == 1, 0,
                      bar.from_mm,      bar.to_mm,          bar.from_mm,        bar.to_mm};
        m_byKey = true;
    }
    const bool upper = m_chosen->end == 0;
    move((upper ? m_held->nowFrom_mm - m_held->from_mm : m_held->nowTo_mm - m_held->to_mm) + by);
}

void HoneSectionView::keyReleaseEvent(QKeyEvent* event) {
    if (m_byKey && !event->isAutoRepeat()) letGo();
    PictureView::keyReleaseEvent(event);
}

void HoneSectionView::focusOutEvent(QFocusEvent* event) {
    letGo();
    PictureView::focusOutEvent(event);
    markOld();
}

// Tab goes through the ends of the windows before it leaves.
bool HoneSectionView::focusNextPrevChild(bool next) {
    freshen();
    const auto count = m_data.stone ? static_cast<int>(m_data.windows.size()) * 2 : 0;
    const int at =
        m_chosen ? static_cast<int>(m_chosen->window) * 2 + m_chosen->end : (next ? -1 : count);
    const int to = next ? at + 1 : at - 1;
    if (to < 0 || to >= count) {
        m_chosen.reset();
        markOld();
        return PictureView::focusNextPrevChild(next);
    }
    letGo();
    m_chosen = Chosen{static_cast<std::size_t>(to / 2), to % 2};
    markOld();
    freshen();
    return true;
}

} // namespace borewright
