// SPDX-License-Identifier: GPL-3.0-or-later
// What is done to each bore at the end. The sheet warns until it is ticked.
#pragma once

#include "app/document/document.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QWidget>

#include <vector>

namespace borewright {

class TicksTab : public QWidget {
    Q_OBJECT
public:
    explicit TicksTab(Document& document, QWidget* parent = nullptr);
    void refresh();

private:
    void build(const std::vector<int>& bores);
    QCheckBox* addBox(int bore, const QString& what, bool BoreTicks::*tick);

    struct Box {
        QCheckBox* box;
        int bore;
        bool BoreTicks::*tick;
    };
    Document& m_document;
    QWidget* m_grid = nullptr;
    std::vector<int> m_bores;
    std::vector<Box> m_boxes;
};

} // namespace borewright
