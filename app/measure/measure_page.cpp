// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/measure_page.h"

namespace borewright {

MeasurePage::MeasurePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context) {}

} // namespace borewright
