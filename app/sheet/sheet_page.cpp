// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet/sheet_page.h"

namespace borewright {

SheetPage::SheetPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context) {}

} // namespace borewright
