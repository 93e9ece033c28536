// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/fit_page.h"

namespace borewright {

FitPage::FitPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context) {}

} // namespace borewright
