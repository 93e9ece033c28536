// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/window.h"

#include "app/block/block_page.h"
#include "app/judge/judge_page.h"
#include "app/measure/measure_page.h"
#include "app/sheet/sheet_page.h"
#include "app/shell/banner.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QShortcut>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace borewright {

Window::Window(Workshop& workshop, QWidget* parent)
    : QMainWindow(parent)
    , m_workshop(workshop)
    , m_context(workshop.context())
    , m_rail(new PageRail)
    , m_banner(new Banner)
    , m_stack(new QStackedWidget) {
    build();
    connect(m_rail, &PageRail::chosen, this, &Window::showPage);
    connect(&workshop, &Workshop::opened, this, [this] { showPage(Page::measure); });
    for (int i = 0; i < pageCount; ++i) {
        auto* shortcut = new QShortcut(QKeySequence(Qt::CTRL | (Qt::Key_1 + i)), this);
        connect(shortcut, &QShortcut::activated, this,
                [this, i] { showPage(static_cast<Page>(i)); });
    }
}

void Window::build() {
    auto* middle = new QWidget;
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_banner);
    column->addWidget(m_stack, 1);
    auto* whole = new QWidget;
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(m_rail);
    row->addWidget(middle, 1);
    setCentralWidget(whole);
    resize(1280, 800);
}

QWidget* Window::makePage(Page page) {
    switch (page) {
    case Page::block:
        return new BlockPage(m_context);
    case Page::measure:
        return new MeasurePage(m_context);
    case Page::judge:
        return new JudgePage(m_context);
    case Page::sheet:
        return new SheetPage(m_context);
    }
    return nullptr;
}

QWidget* Window::page(Page page) {
    QWidget*& slot = m_pages.at(static_cast<std::size_t>(page));
    if (slot == nullptr) {
        slot = makePage(page);
        m_stack->addWidget(slot);
    }
    return slot;
}

void Window::showPage(Page which) {
    m_stack->setCurrentWidget(page(which));
    m_rail->setCurrent(which);
}

void Window::showStart() {
    m_rail->clearCurrent();
}

QImage Window::picture(Page which, const QSize& size, qreal pixelRatio) {
    showPage(which);
    resize(size);
    show();
    QImage image(size * pixelRatio, QImage::Format_RGB32);
    image.setDevicePixelRatio(pixelRatio);
    render(&image);
    return image;
}

QString Window::notice() const {
    return m_banner->sentence();
}

void Window::say(const QString& sentence) {
    if (sentence.isEmpty())
        m_banner->clear();
    else
        m_banner->say(sentence);
}

} // namespace borewright
