// SPDX-License-Identifier: GPL-3.0-or-later
// Fields side by side in columns of one width, filled row by row.
#pragma once

#include <QGridLayout>
#include <QWidget>

namespace borewright {

class FormGrid : public QWidget {
public:
    explicit FormGrid(int columns, QWidget* parent = nullptr)
        : QWidget(parent)
        , m_columns(columns)
        , m_grid(new QGridLayout(this)) {
        m_grid->setContentsMargins(0, 0, 0, 0);
        m_grid->setHorizontalSpacing(16);
        m_grid->setVerticalSpacing(10);
        for (int i = 0; i < columns; ++i)
            m_grid->setColumnStretch(i, 1);
    }
    // Puts `field` into the next free place, `span` columns wide.
    void add(QWidget* field, int span = 1) {
        if (m_column + span > m_columns) nextRow();
        m_grid->addWidget(field, m_row, m_column, 1, span, Qt::AlignTop);
        m_column += span;
    }
    void nextRow() {
        ++m_row;
        m_column = 0;
    }

private:
    int m_columns;
    QGridLayout* m_grid;
    int m_row = 0;
    int m_column = 0;
};

} // namespace borewright
