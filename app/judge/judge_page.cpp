// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/judge_page.h"

namespace borewright {

JudgePage::JudgePage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context) {}

} // namespace borewright
