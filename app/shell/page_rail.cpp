// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/page_rail.h"

#include "app/shell/theme.h"

#include <QAbstractButton>
#include <QButtonGroup>
#include <QCoreApplication>
#include <QPainter>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr int iconPixels = 22;
constexpr int margin = 14;

// A page's button: drawing and name side by side, a bar of accent where it is the one shown.
class RailButton final : public QAbstractButton {
public:
    RailButton(Page page, QWidget* parent)
        : QAbstractButton(parent)
        , m_icon(keyOf(page)) {
        setText(titleOf(page));
        setCheckable(true);
        setFocusPolicy(Qt::TabFocus);
        setAttribute(Qt::WA_Hover);
        const int number = static_cast<int>(page) + 1;
        setAccessibleName(QCoreApplication::translate("PageRail", "%1 page").arg(titleOf(page)));
        setToolTip(
            QCoreApplication::translate("PageRail", "%1 (Ctrl+%2)").arg(titleOf(page)).arg(number));
    }

    [[nodiscard]] QSize sizeHint() const override {
        const QFontMetrics metrics(font());
        return {margin + iconPixels + 12 + metrics.horizontalAdvance("Measure") + 2 * margin,
                metrics.height() + 24};
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QColor accent = palette().color(QPalette::Highlight);
        const QRectF plate = QRectF(rect()).adjusted(6, 2, -6, -2);
        if (isChecked() || underMouse()) {
            QColor wash = isChecked() ? accent : palette().color(QPalette::WindowText);
            wash.setAlphaF(isChecked() ? 0.13F : 0.05F);
            painter.setPen(Qt::NoPen);
            painter.setBrush(wash);
            painter.drawRoundedRect(plate, 6, 6);
        }
        if (hasFocus()) {
            painter.setPen(QPen(accent, 1.4));
            painter.setBrush(Qt::NoBrush);
            painter.drawRoundedRect(plate.adjusted(1, 1, -1, -1), 5, 5);
        }
        drawLabel(painter, accent);
    }

private:
    void drawLabel(QPainter& painter, const QColor& accent) {
        const bool dark = isDark(palette());
        const QColor chosen = dark ? accent : accent.darker(115);
        const QColor ink = !isEnabled()  ? faintInk(palette())
                           : isChecked() ? chosen
                                         : palette().color(QPalette::WindowText);
        const int top = (height() - iconPixels) / 2;
        painter.drawPixmap(margin + 4, top,
                           inkedDrawing(m_icon, ink, iconPixels, devicePixelRatioF()));
        QFont face = font();
        face.setWeight(isChecked() ? QFont::DemiBold : QFont::Normal);
        painter.setFont(face);
        painter.setPen(ink);
        painter.drawText(rect().adjusted(margin + 4 + iconPixels + 12, 0, -4, 0),
                         Qt::AlignVCenter | Qt::AlignLeft, text());
    }

    QString m_icon;
};

} // namespace

QString titleOf(Page page) {
    switch (page) {
    case Page::block:
        return QCoreApplication::translate("PageRail", "Block");
    case Page::measure:
        return QCoreApplication::translate("PageRail", "Measure");
    case Page::judge:
        return QCoreApplication::translate("PageRail", "Judge");
    case Page::size:
        return QCoreApplication::translate("PageRail", "Size");
    case Page::hone:
        return QCoreApplication::translate("PageRail", "Hone");
    case Page::fit:
        return QCoreApplication::translate("PageRail", "Fit");
    case Page::sheet:
        return QCoreApplication::translate("PageRail", "Sheet");
    }
    return {};
}

QString keyOf(Page page) {
    constexpr std::array keys{"block", "measure", "judge", "size", "hone", "fit", "sheet"};
    return QString::fromLatin1(keys.at(static_cast<std::size_t>(page)));
}

PageRail::PageRail(QWidget* parent)
    : QWidget(parent)
    , m_buttons(new QButtonGroup(this)) {
    setAccessibleName(tr("Pages"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 10, 1, 10);
    column->setSpacing(0);
    for (int i = 0; i < pageCount; ++i) {
        auto* button = new RailButton(static_cast<Page>(i), this);
        m_buttons->addButton(button, i);
        column->addWidget(button);
    }
    column->addStretch();
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
    connect(m_buttons, &QButtonGroup::idClicked, this,
            [this](int id) { emit chosen(static_cast<Page>(id)); });
}

void PageRail::setCurrent(Page page) {
    m_buttons->button(static_cast<int>(page))->setChecked(true);
}

void PageRail::clearCurrent() {
    m_buttons->setExclusive(false);
    for (QAbstractButton* button : m_buttons->buttons())
        button->setChecked(false);
    m_buttons->setExclusive(true);
}

void PageRail::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(hairline(palette()));
    painter.drawLine(width() - 1, 0, width() - 1, height());
}

} // namespace borewright
