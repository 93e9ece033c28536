// SPDX-License-Identifier: GPL-3.0-or-later
// Changes of the sizing plan, each one undo step.
#pragma once

#include "app/fields/committed_field.h"
#include "app/document/document.h"

namespace borewright {

template<class Make>
Result<void> changeSizing(Document& document, const QString& step, Make make) {
    SizingPlan plan = document.workbook().sizing;
    make(plan);
    return document.edit(SetSizing{std::move(plan)}, step);
}

// Shows what the plan holds where that has changed (`shown`: what was shown last), or `anew`. A
// refused text stays in its field to be mended while others change.
inline void showChanged(CommittedField& field, QString& shown, const QString& text, bool anew) {
    if (!anew && text == shown) return;
    shown = text;
    field.showData(text);
    if (!anew) return;
    // What is still being typed was meant for another bore or workbook.
    field.lineEdit()->setText(text);
    field.refuse({});
}

} // namespace borewright
