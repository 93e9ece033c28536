// SPDX-License-Identifier: GPL-3.0-or-later
// The page that answers: which piston in which bore, with what clearance and ring gap? Pistons and
// rings are entered here; what goes where is shown, fixed by hand, and handed on.
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

class QLabel;
class QTabWidget;

namespace borewright {

class PistonsTab;
class RingsTab;

class FitPage : public QWidget {
    Q_OBJECT
public:
    explicit FitPage(const PageContext& context, QWidget* parent = nullptr);

private:
    void refresh(Change change);

    PageContext m_context;
    QTabWidget* m_tabs;
    PistonsTab* m_pistons;
    RingsTab* m_rings;
    QLabel* m_cautions;
};

} // namespace borewright
