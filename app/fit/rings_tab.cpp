// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/rings_tab.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"
#include "app/fields/length_field.h"
#include "app/fields/refusal_label.h"
#include "app/fit/fit_page_parts.h"
#include "app/fit/fit_verbs.h"
#include "app/fit/fit_words.h"
#include "app/fit/limits_form.h"
#include "app/fit/record_form.h"
#include "app/fit/ring_model.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace borewright {

RingsTab::RingsTab(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_rings(new RingModel(context.document, this))
    , m_headline(makeHeadline(tr("Which ring in which bore"), this))
    , m_sentences(new Sentences(tr("More about the rings"), this))
    , m_refusal(makeRefusalLabel(this))
    , m_table(new TextTable(tr("Ring gaps, a row a bore and groove"), this))
    , m_title(new QLabel(this))
    , m_instruction(new QLabel(this))
    , m_depths(new TextTable(tr("Gap by depth of the chosen ring"), this))
    , m_fix(new QPushButton(tr("Fi&x this ring here"), this))
    , m_take(new QPushButton(tr("&Take these rings"), this))
    , m_free(new QPushButton(tr("F&ree all rings"), this))
    , m_form(new RecordForm(*m_rings, tr("Rings as measured"), tr("ring"), this))
    , m_limits(new FitLimitsForm(context.document, &FitRecord::ringGap, tr("ring gap"), this))
    , m_fileStep(new LengthField(tr("File in steps of"), context.document.units().small, this)) {
    auto* content = new QWidget(this);
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(0, 4, 8, 12);
    column->setSpacing(22);
    m_gaps = buildGaps();
    column->addWidget(m_gaps);
    column->addWidget(buildRings());
    column->addStretch(1);
    buildScrolledTab(this, {m_headline, m_sentences, m_refusal}, content);
    connectParts();
    refresh(Change::everything);
}

QWidget* RingsTab::buildGaps() {
    m_table->setChoosable();
    m_depths->setMostRows(14);
    QFont bold = font();
    bold.setBold(true);
    m_title->setFont(bold);
    m_title->setAccessibleName(tr("The chosen ring"));
    m_instruction->setWordWrap(true);
    m_instruction->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_instruction->setAccessibleName(tr("What to do with the chosen ring"));
    m_fix->setToolTip(tr("This ring stays in this bore (Enter)"));
    m_take->setToolTip(tr("Fixes every ring as dealt; Undo takes it back"));
    auto* verbs = new QHBoxLayout;
    for (QPushButton* button : {m_take, m_fix, m_free}) {
        button->setAccessibleName(button->text().remove('&'));
        verbs->addWidget(button);
    }
    verbs->addStretch();
    auto* left = new QWidget(this);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_table);
    column->addLayout(verbs);
    column->addStretch(1);
    auto* right = new QWidget(this);
    auto* side = new QVBoxLayout(right);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(6);
    for (QWidget* part : std::initializer_list<QWidget*>{m_title, m_instruction, m_depths})
        side->addWidget(part);
    side->addStretch(1);
    return besideEachOther(left, right, this);
}

QWidget* RingsTab::buildRings() {
    auto* rings = new Part(tr("Rings"), tr("One gap of each, measured square in a bore whose size "
                                           "is known at that depth."));
    rings->add(m_form);
    auto* limits = new Part(tr("Gap allowed"), {});
    m_fileStep->setCheck(
        [](Length step) { return step > Length() ? QString() : tr("must be more than zero"); });
    m_limits->grid()->nextRow();
    m_limits->grid()->add(labelled(tr("File in steps of"), m_fileStep), 2);
    limits->add(m_limits);
    return besideEachOther(rings, limits, this);
}

void RingsTab::connectParts() {
    connect(m_table, &TextTable::rowChosen, this, &RingsTab::chooseRow);
    connect(m_table, &TextTable::rowTaken, this, &RingsTab::turnRow);
    connect(m_fix, &QPushButton::clicked, this, [this] { turnRow(m_table->currentIndex().row()); });
    connect(m_take, &QPushButton::clicked, this, [this] {
        const Document& document = m_context.document;
        change(withDeals(document.workbook().fit, document.results().fit.deals),
               tr("taking these rings"));
    });
    connect(m_free, &QPushButton::clicked, this, [this] {
        change(withRingsFreed(m_context.document.workbook().fit), tr("freeing all rings"));
    });
    connect(m_fileStep, &LengthField::committed, this, &RingsTab::keepFileStep);
}

void RingsTab::keepFileStep() {
    FitRecord fit = m_context.document.workbook().fit;
    fit.fileStep = m_fileStep->value();
    const auto done = m_context.document.edit(SetFit{std::move(fit)}, tr("step of filing"));
    if (!done) m_fileStep->refuse(qs(done.error().what));
}

void RingsTab::change(FitRecord fit, const QString& step) {
    const auto done = m_context.document.edit(SetFit{std::move(fit)}, step);
    m_refusal->setText(done ? QString() : qs(done.error().message()));
    m_refusal->setVisible(!done);
}

void RingsTab::turnRow(int row) {
    if (row < 0 || static_cast<std::size_t>(row) >= m_rows.size()) return;
    const ring_words::Row here = m_rows[static_cast<std::size_t>(row)];
    if (!here.here.ring) return;
    const FitRecord& fit = m_context.document.workbook().fit;
    const QString name = RingModel::called(fit, *here.here.ring);
    if (here.here.decided)
        change(withRingFreed(fit, *here.here.ring), tr("freeing %1").arg(name));
    else
        change(withRingFixed(fit, *here.here.ring, here.bore),
               tr("fixing %1 in bore %2").arg(name).arg(here.bore));
}

void RingsTab::chooseRow(int row) {
    const bool any = row >= 0 && static_cast<std::size_t>(row) < m_rows.size();
    const DisplayUnits& units = m_context.document.units();
    m_title->setVisible(any);
    m_instruction->setVisible(any);
    const ring_words::Row* here = any ? &m_rows[static_cast<std::size_t>(row)] : nullptr;
    m_depths->setVisible(any && here->here.gap);
    if (any) {
        m_title->setText(tr("Bore %1, groove %2").arg(here->bore).arg(here->here.groove));
        m_instruction->setText(
            ring_words::instruction(*here, m_context.document.workbook().fit, units));
        if (here->here.gap) m_depths->show(ring_words::byDepth(*here->here.gap, units));
    }
    refreshVerbs();
}

void RingsTab::refreshVerbs() {
    const FitRecord& fit = m_context.document.workbook().fit;
    const int row = m_table->currentIndex().row();
    const bool any = row >= 0 && static_cast<std::size_t>(row) < m_rows.size() &&
                     m_rows[static_cast<std::size_t>(row)].here.ring;
    m_fix->setEnabled(any);
    m_fix->setText(any && m_rows[static_cast<std::size_t>(row)].here.decided
                       ? tr("F&ree this ring")
                       : tr("Fi&x this ring here"));
    m_take->setEnabled(withDeals(fit, m_context.document.results().fit.deals) != fit);
    m_free->setEnabled(withRingsFreed(fit) != fit);
}

void RingsTab::refresh(Change change) {
    const Workbook& workbook = m_context.document.workbook();
    const FitResult& fit = m_context.document.results().fit;
    const DisplayUnits& units = m_context.document.units();
    const bool anew = change == Change::everything;
    m_headline->setText(qs(fit.ringHeadline));
    m_sentences->say(fit.ringSentences);
    m_rows = ring_words::rows(fit);
    m_table->show(ring_words::table(m_rows, workbook.fit, units));
    m_gaps->setVisible(!m_rows.empty());
    if (!m_rows.empty() && !m_table->currentIndex().isValid())
        m_table->setCurrentIndex(m_table->model()->index(0, 0));
    if (anew) m_rings->forget();
    if (anew || change == Change::record || change == Change::units) {
        m_rings->refresh();
        m_limits->refresh(anew);
        m_fileStep->setUnit(units.small);
        if (anew || !m_fileStep->edit()->isModified()) m_fileStep->setValue(workbook.fit.fileStep);
        m_fileStep->setPlaceholder(
            tr("usual: %1").arg(qs(formatSmall(fileStepOf({}, isInchFamily(units.size)), units))));
    }
    m_form->table()->viewport()->update();
    chooseRow(m_table->currentIndex().row());
}

} // namespace borewright
