// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/size_page.h"

namespace borewright {

SizePage::SizePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context) {}

} // namespace borewright
