// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

namespace borewright {

class MeasurePage : public QWidget {
    Q_OBJECT
public:
    explicit MeasurePage(const PageContext& context, QWidget* parent = nullptr);

private:
    PageContext m_context;
};

} // namespace borewright
