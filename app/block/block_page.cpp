// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/block_page.h"

namespace borewright {

BlockPage::BlockPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context) {}

} // namespace borewright
