// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/refusal_label.h"

#include "app/fields/ink.h"

#include <QEvent>
#include <QLabel>

namespace borewright {
namespace {

// A label in the vermillion of Okabe and Ito, following the palette.
class RefusalLabel final : public QLabel {
public:
    explicit RefusalLabel(QWidget* parent)
        : QLabel(parent) {
        setWordWrap(true);
        setTextFormat(Qt::PlainText);
        colour();
        hide();
    }

protected:
    void changeEvent(QEvent* event) override {
        QLabel::changeEvent(event);
        if (event->type() == QEvent::ParentChange || event->type() == QEvent::PaletteChange)
            colour();
    }

private:
    void colour() {
        const QPalette around = parentWidget() != nullptr ? parentWidget()->palette() : palette();
        const QColor ink = warningColour(around);
        if (palette().color(QPalette::WindowText) == ink) return;
        QPalette own = palette();
        own.setColor(QPalette::WindowText, ink);
        setPalette(own);
    }
};

} // namespace

QLabel* makeRefusalLabel(QWidget* parent) {
    return new RefusalLabel(parent);
}

} // namespace borewright
