// SPDX-License-Identifier: GPL-3.0-or-later
// The one window: pages along the left in the order of the work, a sentence across the top where
// something has to be said, the file and its state along the bottom.
#pragma once

#include "app/shell/page_rail.h"
#include "app/shell/workshop.h"

#include <QImage>
#include <QMainWindow>

#include <array>

class QStackedWidget;

namespace borewright {

class Banner;
class StatusLine;

class Window : public QMainWindow {
    Q_OBJECT
public:
    explicit Window(Workshop& workshop, QWidget* parent = nullptr);

    // Shows a page; it is built when it is first shown.
    void showPage(Page page);
    // Shows the form that begins a workbook.
    void showStart();
    // The page as built; for tests and pictures.
    QWidget* page(Page page);
    // The whole window with a page shown, as a picture of `size` device-independent pixels.
    QImage picture(Page page, const QSize& size, qreal pixelRatio = 1.0);
    // The sentence across the top; empty where there is none.
    [[nodiscard]] QString notice() const;
    void say(const QString& sentence);

private:
    void build();
    QWidget* makePage(Page page);

    Workshop& m_workshop;
    PageContext m_context;
    PageRail* m_rail;
    Banner* m_banner;
    QStackedWidget* m_stack;
    QWidget* m_start = nullptr;
    std::array<QWidget*, pageCount> m_pages{};
};

} // namespace borewright
