// SPDX-License-Identifier: GPL-3.0-or-later
// The port bands of a bore: from which depth to which, and on which axes they leave no wall.
#pragma once

#include "app/block/bore_scope.h"
#include "app/fields/committed_field.h"

#include <QCheckBox>
#include <QPushButton>
#include <QVBoxLayout>

#include <vector>

namespace borewright {

class PortsForm : public QWidget {
    Q_OBJECT
public:
    explicit PortsForm(BoreScope& scope, QWidget* parent = nullptr);
    void addBand();

private:
    struct Row {
        QWidget* box;
        CommittedField* from;
        CommittedField* to;
        std::vector<QCheckBox*> axes;
    };
    // A band that is being typed, until both depths are known, is not in the data yet.
    void rebuild(std::size_t bands);
    Row makeRow(std::size_t index);
    CommittedField* makeDepth(std::size_t index, bool upper);
    void addAxes(Row& row, std::size_t index, QLayout& layout);
    Result<void> commitDepth(std::size_t index, bool upper, const QString& text);
    Result<void> commitBand(std::size_t index, const PortBand& band);
    void setAxis(std::size_t index, const std::string& axis, bool cut);
    void remove(std::size_t index);
    void refresh();

    BoreScope& m_scope;
    QVBoxLayout* m_column;
    std::vector<Row> m_rows;
    std::vector<std::string> m_axes; // that the rows were made for
    bool m_typing = false;           // the last row is a band being typed
    std::optional<TypedLength> m_from, m_to;
};

} // namespace borewright
