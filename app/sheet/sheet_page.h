// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

namespace borewright {

class SheetPage : public QWidget {
    Q_OBJECT
public:
    explicit SheetPage(const PageContext& context, QWidget* parent = nullptr);

private:
    PageContext m_context;
};

} // namespace borewright
