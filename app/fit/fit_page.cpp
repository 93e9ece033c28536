// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/fit_page.h"

#include "app/context/when_shown.h"
#include "app/fit/fit_page_parts.h"
#include "app/fit/fit_words.h"
#include "app/fit/pistons_tab.h"
#include "app/fit/rings_tab.h"

#include <QLabel>
#include <QTabWidget>
#include <QVBoxLayout>

namespace borewright {

FitPage::FitPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_tabs(new QTabWidget(this))
    , m_pistons(new PistonsTab(context, this))
    , m_rings(new RingsTab(context, this))
    , m_cautions(makeQuietLines(tr("Cautions"), this)) {
    m_tabs->setDocumentMode(true);
    m_tabs->setAccessibleName(tr("Pistons or rings"));
    m_tabs->addTab(m_pistons, tr("&Pistons"));
    m_tabs->addTab(m_rings, tr("Rin&gs"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 8, 16, 8);
    column->setSpacing(8);
    column->addWidget(m_tabs, 1);
    column->addWidget(m_cautions);
    auto* whenShown = new WhenShown(this, [this](Change change) { refresh(change); });
    connect(&context.document, &Document::changed, whenShown, &WhenShown::follow);
    refresh(Change::everything);
}

void FitPage::refresh(Change change) {
    m_pistons->refresh(change);
    m_rings->refresh(change);
    sayLines(*m_cautions, fit_words::together(m_context.document.results().fit.cautions));
}

} // namespace borewright
