// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps a page that nobody sees from reckoning after every reading typed: what only new figures
// change waits until the page is shown; all else follows at once.
#pragma once

#include "app/document/document.h"

#include <QObject>

#include <functional>
#include <optional>

namespace borewright {

class WhenShown : public QObject {
    Q_OBJECT
public:
    // Watches `page`, which owns it.
    WhenShown(QWidget* page, std::function<void(Change)> refresh);
    void follow(Change change);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* m_page;
    std::function<void(Change)> m_refresh;
    std::optional<Change> m_waiting;
};

} // namespace borewright
