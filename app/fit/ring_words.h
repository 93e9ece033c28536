// SPDX-License-Identifier: GPL-3.0-or-later
// Ring gaps as tables and sentences.
#pragma once

#include "app/document/document.h"
#include "app/fit/text_table.h"

namespace borewright::ring_words {

// A bore with one of its rings: the rows of the table, in its order.
struct Row {
    int bore = 1;
    BoreFit::RingHere here;
};
std::vector<Row> rows(const FitResult& fit);

TextModel::Content table(const std::vector<Row>& rows, const FitRecord& record,
                         const DisplayUnits& units);
// What is to be done with one ring in its bore: where to measure, what to file.
QString instruction(const Row& row, const FitRecord& record, const DisplayUnits& units);
// Its gap at each depth.
TextModel::Content byDepth(const RingGap& gap, const DisplayUnits& units);

} // namespace borewright::ring_words
