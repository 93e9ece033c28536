// SPDX-License-Identifier: GPL-3.0-or-later
// What the Hone page says of its own where there is nothing to plan from yet, and what several of
// its parts say alike.
#pragma once

#include "core/results/hone_outlook.h"

#include <QString>
#include <QStringList>

namespace borewright::hone_words {

// What is missing before anything can be planned in a bore, with what to do about it; empty where
// nothing is.
QString missing(const Workbook& workbook, int bore);
// Whether a stone is missing and nothing else comes first.
bool wantsStones(const Workbook& workbook, int bore);
// "short rough", or its id where it has gone.
QString nameOf(const HoneRecord& record, const std::string& stone);
// Texts of the core, one paragraph each, for a label of rich text.
QString paragraphs(const QString& heading, const std::vector<std::string>& sentences);
// The cautions of the work itself, always shown: common practice, below the makers' rules.
QStringList cautions();

} // namespace borewright::hone_words
