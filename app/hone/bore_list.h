// SPDX-License-Identifier: GPL-3.0-or-later
// The bores of the block and what is next in each. Arrow keys or a click choose the bore.
#pragma once

#include "app/context/page_context.h"
#include "app/hone/hone_search.h"

#include <QListWidget>

namespace borewright {

class BoreList : public QListWidget {
    Q_OBJECT
public:
    BoreList(const PageContext& context, const HoneSearch& search, QWidget* parent = nullptr);
    void refresh();
    [[nodiscard]] QSize sizeHint() const override { return {190, 300}; }

private:
    void follow();

    Document& m_document;
    Selection& m_selection;
    const HoneSearch& m_search;
};

// "next: short rough", "waits", "done": what is next in a bore, in a word or two.
QString nextWord(const Workbook& workbook, const BoreOutlook& outlook);

} // namespace borewright
