// SPDX-License-Identifier: GPL-3.0-or-later
// The casting as a whole: how its bores stand and how many there are, and the axes across a bore.
#pragma once

#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"
#include "app/document/document.h"

#include <vector>

namespace borewright {

class BlockForm : public QWidget {
    Q_OBJECT
public:
    explicit BlockForm(Document& document, QWidget* parent = nullptr);

private:
    Result<void> commitCount(const QString& text);
    void refresh();

    Document& m_document;
    LabelledChoice* m_arrangement;
    CommittedField* m_count;
};

// "in line", "V, two banks", "opposed": in the order of the enumeration.
QStringList arrangementNames();

// The labels of the axes and their angles; more axes than two where a block needs them.
class AxesForm : public QWidget {
    Q_OBJECT
public:
    explicit AxesForm(Document& document, QWidget* parent = nullptr);

private:
    void rebuild();
    void refresh();
    void addAxis();
    void addRow(std::size_t index);
    Result<void> commitLabel(std::size_t index, const QString& text);
    Result<void> commitAngle(std::size_t index, const QString& text);

    Document& m_document;
    QWidget* m_rows = nullptr;
    std::vector<std::pair<CommittedField*, CommittedField*>> m_fields;
};

} // namespace borewright
