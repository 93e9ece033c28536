// SPDX-License-Identifier: GPL-3.0-or-later
// What a survey asks for: the whole block, or chosen bores at chosen stations.
#pragma once

#include "core/workbook/workbook.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QRadioButton>
#include <QTableWidget>
#include <QWidget>

#include <optional>
#include <vector>

namespace borewright {

class ScopePicker : public QWidget {
    Q_OBJECT
public:
    explicit ScopePicker(QWidget* parent = nullptr);
    void setValue(const Workbook& workbook, const std::optional<std::vector<Station>>& asked,
                  const DisplayUnits& units);
    // Nothing for the whole block. An empty list where "only these" has nothing ticked.
    [[nodiscard]] std::optional<std::vector<Station>> value() const;

private:
    void fillBores(const Workbook& workbook, const std::vector<Station>& asked);
    void fillStations(const Workbook& workbook, const std::vector<Station>& asked,
                      const DisplayUnits& units);

    QRadioButton* m_whole;
    QRadioButton* m_some;
    QWidget* m_choice;
    QWidget* m_boreRow;
    std::vector<QCheckBox*> m_bores;
    QTableWidget* m_stations; // depths down, axes across
    std::vector<Length> m_depths;
    std::vector<std::string> m_axes;
    Workbook m_workbook; // for where there is wall; a copy while the form is open
};

} // namespace borewright
