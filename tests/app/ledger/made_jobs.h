// SPDX-License-Identifier: GPL-3.0-or-later
// Jobs as the ledger takes them in, invented.
#pragma once

#include "core/results/job_entry.h"

namespace borewright::test {

// A job with something in every field; `number` makes it another.
JobEntry madeJob(int number, const std::string& customer, const std::string& engine,
                 const std::string& serial);

// The n-th of many: customer, engine, serial, two surveys, bores and stones are all drawn.
JobEntry manyJobs(int number);

} // namespace borewright::test
