// SPDX-License-Identifier: GPL-3.0-or-later
// A list of what differs between two states of the workbook, by survey, bore and station, with what
// can be done about it. It stands beside the window and stops nothing.
#pragma once

#include "app/shell/banner.h"
#include "core/storage/differences.h"

#include <QDialog>

class QTableWidget;

namespace borewright {

// What the two states are called: "in the file" and "here".
struct Sides {
    QString was;
    QString is;
};

// Fills a table with the differences, a row each; two columns are headed by the sides.
void fillDifferences(QTableWidget& table, const std::vector<Difference>& list, const Sides& sides);
// An empty table for them, with a name for screen readers.
QTableWidget* differencesTable(QWidget* parent);

class DifferencesView : public QDialog {
    Q_OBJECT
public:
    // Each way out is a button, which closes this first.
    DifferencesView(const QString& sentence, const std::vector<Difference>& list,
                    const Sides& sides, const std::vector<BannerAction>& ways, QWidget* parent);
};

} // namespace borewright
