// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/context/when_shown.h"

#include <QEvent>
#include <QWidget>

#include <algorithm>
#include <utility>

namespace borewright {
namespace {

// Also of a window that is not on the screen yet, as where it is rendered to a picture.
bool wouldBeSeen(const QWidget& page) {
    return page.isWindow() || page.isVisibleTo(page.window());
}

} // namespace

WhenShown::WhenShown(QWidget* page, std::function<void(Change)> refresh)
    : QObject(page)
    , m_page(page)
    , m_refresh(std::move(refresh)) {
    page->installEventFilter(this);
}

void WhenShown::follow(Change change) {
    const bool figuresOnly = change == Change::readings || change == Change::doubts;
    if (figuresOnly && !wouldBeSeen(*m_page)) {
        m_waiting = std::min(m_waiting.value_or(change), change); // readings before doubts
        return;
    }
    m_waiting.reset();
    m_refresh(change);
}

bool WhenShown::eventFilter(QObject* watched, QEvent* event) {
    const bool shown = event->type() == QEvent::Show || event->type() == QEvent::ShowToParent;
    if (watched == m_page && shown && m_waiting) m_refresh(*std::exchange(m_waiting, {}));
    return QObject::eventFilter(watched, event);
}

} // namespace borewright
