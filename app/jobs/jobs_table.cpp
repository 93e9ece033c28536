// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/jobs_table.h"

#include "app/fit/quiet_header.h"
#include "app/fit/text_table.h"

#include <QHeaderView>

namespace borewright {
namespace {

// What each column has room for; the file has what is left.
const QStringList samples{QStringLiteral("First survey v"),
                          QStringLiteral("Wethermarsh & Son"),
                          QStringLiteral("Wethermarsh 123"),
                          QStringLiteral("00-0000000"),
                          QStringLiteral("Bores "),
                          QStringLiteral("00.000 – 00.000 mm "),
                          QStringLiteral("00.000 – 00.000 mm "),
                          QStringLiteral("00.0000 in"),
                          QStringLiteral("too close to call xx"),
                          QStringLiteral("0000-00-00"),
                          QStringLiteral("00000000")};

} // namespace

JobsTable::JobsTable(JobsModel& model, QWidget* parent)
    : QTableView(parent) {
    setModel(&model);
    setAccessibleName(tr("All jobs"));
    setItemDelegate(new QuietDelegate(this));
    setSelectionMode(QAbstractItemView::SingleSelection);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(false);
    setFrameShape(QFrame::NoFrame);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    horizontalHeader()->setSortIndicatorShown(true);
    horizontalHeader()->setSectionsClickable(true);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setStretchLastSection(true);
    for (int i = 0; i < samples.size(); ++i)
        setColumnWidth(i, fontMetrics().horizontalAdvance(samples[i]) + 3 * cellAir);
}

} // namespace borewright
