// SPDX-License-Identifier: GPL-3.0-or-later
// Bores still to be honed: the finish size that each one's piston asks for, and the one verb that
// hands them to the honing.
#pragma once

#include "app/document/document.h"

#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class TextTable;

class FinishForm : public QWidget {
    Q_OBJECT
public:
    explicit FinishForm(Document& document, QWidget* parent = nullptr);
    void refresh();

private:
    void handOver();
    [[nodiscard]] FinishTargets wanted() const;

    Document& m_document;
    QLabel* m_said;
    TextTable* m_table;
    QPushButton* m_hone;
};

} // namespace borewright
