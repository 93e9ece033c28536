// SPDX-License-Identifier: GPL-3.0-or-later
// The stop-watch on the page: large figures to be read across the bench, one key to turn it.
#pragma once

#include "app/context/page_context.h"
#include "app/hone/stroke_watch.h"

#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class WatchPanel : public QWidget {
    Q_OBJECT
public:
    explicit WatchPanel(const PageContext& context, QWidget* parent = nullptr);
    // The set-up to be timed; left alone where it is the one that is being timed.
    void setUp(const std::optional<PlannedSetUp>& planned);
    [[nodiscard]] StrokeWatch& watch() { return m_watch; }
    void turn();

private:
    void refresh();
    [[nodiscard]] QString windowWords(const PlannedWindow& window) const;

    Document& m_document;
    StrokeWatch m_watch;
    std::optional<PlannedSetUp> m_planned;
    QLabel* m_figures;
    QLabel* m_words;
    QPushButton* m_turn;
    QPushButton* m_reset;
};

} // namespace borewright
