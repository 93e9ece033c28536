// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/pistons_tab.h"

#include "app/fields/fold.h"
#include "app/fields/refusal_label.h"
#include "app/fit/finish_form.h"
#include "app/fit/fit_page_parts.h"
#include "app/fit/fit_verbs.h"
#include "app/fit/fit_words.h"
#include "app/fit/hot_form.h"
#include "app/fit/limits_form.h"
#include "app/fit/match_table.h"
#include "app/fit/pair_panel.h"
#include "app/fit/piston_model.h"
#include "app/fit/record_form.h"
#include "app/fit/skirt_form.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace borewright {

PistonsTab::PistonsTab(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_matches(new MatchModel(context.document, this))
    , m_pistons(new PistonModel(context.document, this))
    , m_headline(makeHeadline(tr("Which piston in which bore"), this))
    , m_sentences(new Sentences(tr("More about the pistons"), this))
    , m_legend(makePassingWord({}, this))
    , m_refusal(makeRefusalLabel(this))
    , m_table(new MatchView(*m_matches, this))
    , m_pair(new PairPanel(context.document, *m_matches, this))
    , m_fix(new QPushButton(tr("Fi&x this pair"), this))
    , m_take(new QPushButton(tr("&Take this matching"), this))
    , m_free(new QPushButton(tr("F&ree all pairs"), this))
    , m_form(new RecordForm(*m_pistons, tr("Pistons as measured"), tr("piston"), this))
    , m_limits(new FitLimitsForm(context.document, &FitRecord::clearance, tr("clearance"), this))
    , m_skirt(new SkirtForm(context.document, this))
    , m_finish(new FinishForm(context.document, this))
    , m_hot(new HotForm(context.document, this)) {
    buildScrolledTab(this, {m_headline, m_sentences, m_refusal}, buildContent());
    connectParts();
    refresh(Change::everything);
}

QWidget* PistonsTab::buildContent() {
    m_skirtFold = new Fold(tr("Material, skirt and notes"), m_skirt);
    m_finishFold = new Fold(tr("Bores still to be honed"), m_finish);
    auto* hot = new Fold(tr("At working temperature: a model"), m_hot);
    auto* content = new QWidget(this);
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(0, 4, 8, 12);
    column->setSpacing(22);
    m_matching = buildMatching();
    column->addWidget(m_matching);
    column->addWidget(buildPistons());
    for (Fold* fold : {m_skirtFold, m_finishFold, hot})
        column->addWidget(fold);
    column->addStretch(1);
    return content;
}

QWidget* PistonsTab::buildMatching() {
    m_fix->setToolTip(tr("This piston stays in this bore, whatever is best for the rest (Enter)"));
    m_take->setToolTip(tr("Fixes every chosen pair; Undo takes it back"));
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
    column->addWidget(m_legend);
    column->addWidget(m_table);
    column->addLayout(verbs);
    column->addStretch(1);
    return besideEachOther(left, m_pair, this);
}

QWidget* PistonsTab::buildPistons() {
    auto* pistons = new Part(tr("Pistons"), {});
    pistons->add(m_form);
    auto* limits = new Part(tr("Clearance allowed"), {});
    limits->add(m_limits);
    return besideEachOther(pistons, limits, this);
}

void PistonsTab::connectParts() {
    connect(m_table, &MatchView::fixWanted, this, &PistonsTab::turnPair);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& now) {
                if (now.isValid()) m_context.selection.setBore(m_matches->boreAt(now.row()));
                m_pair->show(now);
                refreshVerbs();
            });
    connect(m_fix, &QPushButton::clicked, this, [this] { turnPair(m_table->currentIndex()); });
    connect(m_take, &QPushButton::clicked, this, &PistonsTab::takeMatching);
    connect(m_free, &QPushButton::clicked, this, &PistonsTab::freePairs);
    connect(m_form, &RecordForm::rowChosen, this, &PistonsTab::choosePiston);
}

// Heads, verbs and the sentence stay in view with the table, however many bores there are.
void PistonsTab::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    constexpr int around = 220;
    m_table->setRoom(height() - around);
}

void PistonsTab::change(FitRecord fit, const QString& step) {
    const auto done = m_context.document.edit(SetFit{std::move(fit)}, step);
    m_refusal->setText(done ? QString() : qs(done.error().message()));
    m_refusal->setVisible(!done);
}

void PistonsTab::turnPair(const QModelIndex& index) {
    if (m_matches->cellAt(index) == nullptr) return;
    const FitRecord& fit = m_context.document.workbook().fit;
    const std::size_t piston = m_matches->pistonAt(index.column());
    const int bore = m_matches->boreAt(index.row());
    const QString name = PistonModel::called(fit, piston);
    if (m_matches->isFixed(index))
        change(withPistonFreed(fit, piston), tr("freeing %1").arg(name));
    else
        change(withPistonFixed(fit, piston, bore), tr("fixing %1 in bore %2").arg(name).arg(bore));
}

void PistonsTab::takeMatching() {
    const Document& document = m_context.document;
    change(withMatching(document.workbook().fit, document.results().fit.matching),
           tr("taking this matching"));
}

void PistonsTab::freePairs() {
    change(withPistonsFreed(m_context.document.workbook().fit), tr("freeing all pairs"));
}

void PistonsTab::choosePiston(int row) {
    m_skirt->setPiston(row);
    const FitRecord& fit = m_context.document.workbook().fit;
    const bool any = row >= 0 && static_cast<std::size_t>(row) < fit.pistons.size();
    m_skirtFold->setSummary(any ? PistonModel::called(fit, static_cast<std::size_t>(row))
                                : tr("choose a piston"));
}

// The cell looked at: where none is, what was chosen for the bore looked at.
void PistonsTab::chooseCell() {
    if (!m_table->currentIndex().isValid()) {
        const QModelIndex chosen = m_matches->chosenFor(m_context.selection.bore());
        m_table->setCurrentIndex(chosen.isValid() ? chosen : m_matches->index(0, 0));
    }
    m_pair->show(m_table->currentIndex());
}

void PistonsTab::refreshVerbs() {
    const Workbook& workbook = m_context.document.workbook();
    const Matching& matching = m_matches->matching();
    const QModelIndex current = m_table->currentIndex();
    const bool here = m_matches->cellAt(current) != nullptr;
    m_fix->setEnabled(here);
    m_fix->setText(here && m_matches->isFixed(current) ? tr("Free this pai&r")
                                                       : tr("Fi&x this pair"));
    m_take->setEnabled(withMatching(workbook.fit, matching) != workbook.fit);
    m_free->setEnabled(withPistonsFreed(workbook.fit) != workbook.fit);
}

void PistonsTab::refresh(Change change) {
    const FitResult& fit = m_context.document.results().fit;
    const bool anew = change == Change::everything;
    const bool record = anew || change == Change::record || change == Change::units;
    m_headline->setText(qs(fit.headline));
    // What the table beneath leaves empty comes before what it says.
    std::vector<std::string> sentences = fit.sentences;
    const QString heightless = fit_words::withoutHeight(m_context.document.workbook().fit);
    if (!heightless.isEmpty()) sentences.insert(sentences.begin(), heightless.toStdString());
    m_sentences->say(sentences);
    m_matches->refresh();
    m_matching->setVisible(m_matches->rowCount() > 0 && m_matches->columnCount() > 0);
    m_legend->setText(tr("Least clearance in %1, and in small how far it misses the aim. Framed: "
                         "chosen; with a pin: fixed by you.")
                          .arg(fit_words::smallUnit(m_context.document)));
    if (anew) m_pistons->forget();
    if (record) {
        m_pistons->refresh();
        m_limits->refresh(anew);
        m_skirt->refresh(anew);
        choosePiston(m_form->currentRow());
    }
    m_form->table()->viewport()->update();
    m_finish->refresh();
    // Pistons first: their finish sizes are then what the page has to say.
    const bool first = m_matching->isHidden() && !fit.finish.empty();
    if (first && !m_pistonsFirst) m_finishFold->setOpen(true);
    m_pistonsFirst = first;
    m_finishFold->setSummary(fit.finish.empty() ? QString() : tr("%1").arg(fit.finish.size()));
    m_hot->refresh();
    chooseCell();
    refreshVerbs();
}

} // namespace borewright
