// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/finish_form.h"

#include "app/fields/fold.h"
#include "app/fit/fit_words.h"
#include "app/fit/text_table.h"
#include "app/pictures/reading_words.h"

#include <QVBoxLayout>

namespace borewright {

FinishForm::FinishForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_said(makePassingWord({}, this))
    , m_table(new TextTable(tr("Finish sizes for these pistons"), this))
    , m_hone(new QPushButton(tr("&Hone the bores to these pistons"), this)) {
    m_said->setAccessibleName(tr("Bores still to be honed"));
    m_hone->setAccessibleName(tr("Hone the bores to these pistons"));
    m_hone->setToolTip(tr("Makes each size what the hone aims at; Undo takes it back"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_said);
    column->addWidget(m_table);
    column->addWidget(m_hone, 0, Qt::AlignLeft);
    connect(m_hone, &QPushButton::clicked, this, &FinishForm::handOver);
    refresh();
}

// Other bores keep what the hone aims at there.
FinishTargets FinishForm::wanted() const {
    const Workbook& workbook = m_document.workbook();
    FinishTargets targets = workbook.targets;
    for (auto& [bore, target] :
         pistonTargets(m_document.results().fit, workbook.fit, m_document.units()))
        targets[bore] = target;
    return targets;
}

void FinishForm::handOver() {
    const auto done =
        m_document.edit(SetTargets{wanted()}, tr("honing the bores to these pistons"));
    if (!done) m_said->setText(qs(done.error().message()));
}

void FinishForm::refresh() {
    const Workbook& workbook = m_document.workbook();
    const FitResult& fit = m_document.results().fit;
    const DisplayUnits& units = m_document.units();
    const bool any = !fit.finish.empty();
    TextModel::Content content;
    const QString unit = QStringLiteral(", ") + unitSymbol(units.size);
    content.heads = {tr("Bore"), tr("Piston"), tr("Finish") + unit, tr("from") + unit,
                     tr("to") + unit};
    for (const FinishForPiston& one : fit.finish) {
        const auto shown = [&](const std::optional<Length>& size) {
            return TextModel::Cell{size ? qs(formatSize(*size, units)) : QString()};
        };
        content.rows.push_back({{QString::number(one.bore)},
                                {fit_words::shortPiston(workbook.fit, one.piston)},
                                {qs(formatSize(one.finish, units)), {}, true},
                                shown(one.lower),
                                shown(one.upper)});
    }
    m_table->show(std::move(content));
    m_table->setVisible(any);
    const bool aimed = any && wanted() == workbook.targets;
    m_hone->setVisible(any);
    m_hone->setEnabled(any && !aimed);
    if (aimed)
        m_said->setText(tr("The hone aims at these sizes already."));
    else if (any)
        m_said->setText(tr("Piston and aimed clearance, at 20 °C."));
    else if (!fit.finishRefused.empty())
        m_said->setText(tr("Not yet: %1.").arg(qs(fit.finishRefused)));
    else
        m_said->setText(tr("No bore is left to be honed."));
}

} // namespace borewright
