// SPDX-License-Identifier: GPL-3.0-or-later
// How the list of all jobs looks: a row a job, its columns as wide as what they usually hold.
#pragma once

#include "app/jobs/jobs_model.h"

#include <QTableView>

namespace borewright {

class JobsTable final : public QTableView {
    Q_OBJECT
public:
    explicit JobsTable(JobsModel& model, QWidget* parent = nullptr);
};

} // namespace borewright
