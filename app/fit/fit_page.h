// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: which piston in which bore, with what clearance and ring gap? Pistons and
// rings are entered here; what goes where is shown, fixed by hand, and handed on.
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

namespace borewright {

class FitPage : public QWidget {
    Q_OBJECT
public:
    explicit FitPage(const PageContext& context, QWidget* parent = nullptr);

private:
    PageContext m_context;
};

} // namespace borewright
