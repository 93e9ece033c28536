// SPDX-License-Identifier: GPL-3.0-or-later
// The very pages as they will be printed, one below the other. Paper is white in the dark too.
#pragma once

#include "app/sheet/sheet_composer.h"

#include <QWidget>

namespace borewright {

class SheetPaper : public QWidget {
    Q_OBJECT
public:
    explicit SheetPaper(QWidget* parent = nullptr);

    void setPages(std::vector<SheetPageContent> pages, Preferences::Paper paper);
    [[nodiscard]] int pageCount() const { return static_cast<int>(m_pages.size()); }
    // Width of a page in pixels; the height follows.
    void setPageWidth(int width);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QRectF pageRect(int page) const;
    void resizeToPages();

    std::vector<SheetPageContent> m_pages;
    Preferences::Paper m_paper = Preferences::Paper::a4;
    int m_pageWidth = 600;
};

} // namespace borewright
