// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/block_page.h"

#include "app/block/block_form.h"
#include "app/block/bore_details.h"
#include "app/block/job_form.h"
#include "app/block/levels_form.h"
#include "app/block/limits_editor.h"
#include "app/block/plan_form.h"
#include "app/fields/committed_field.h"
#include "app/fields/fold.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QVBoxLayout>

namespace borewright {
namespace {

// Lines longer than this are hard to read; a wide screen keeps its air.
constexpr int widest = 1240;

} // namespace

BlockPage::BlockPage(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_scope(context.document)
    , m_next(new QLabel(this)) {
    m_next->setWordWrap(true);
    m_next->setAccessibleName(tr("What to do next"));
    // Before the forms follow: what was refused in them was typed for the workbook of before.
    connect(&context.document, &Document::changed, this, [this](Change change) {
        if (change != Change::everything) return;
        for (CommittedField* field : findChildren<CommittedField*>())
            field->drop();
    });
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(buildContent());
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll);
    connect(&context.document, &Document::changed, this, &BlockPage::sayNext);
    sayNext();
}

QWidget* BlockPage::buildContent() {
    auto* content = new QWidget(this);
    auto* centred = new QHBoxLayout(content);
    centred->setContentsMargins(24, 20, 24, 24);
    auto* page = new QWidget(content);
    page->setMaximumWidth(widest);
    centred->addWidget(page);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(28);
    column->addWidget(m_next);
    column->addWidget(buildBlockAndPlan());
    auto* job = new Part(tr("Job"), {});
    job->add(new JobForm(m_context.document));
    column->addWidget(job);
    auto* levels =
        new Part(tr("Levels"), tr("Depths from the open end at which each bore is read."));
    levels->add(new LevelsForm(m_scope));
    column->addWidget(levels);
    column->addWidget(new Fold(tr("Axes"), new AxesForm(m_context.document)));
    column->addStretch();
    return content;
}

// What most people need at the left, the plan beside it.
QWidget* BlockPage::buildBlockAndPlan() {
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(32);
    auto* block = new Part(tr("Block"), {});
    block->add(new BlockForm(m_context.document));
    block->add(new BoreDetails(m_scope));
    auto* limits = new Part(tr("Limits"),
                            tr("From the engine maker's manual, which rules over this program."));
    limits->add(new LimitsEditor(m_context.document));
    auto* left = new QVBoxLayout;
    left->setSpacing(28);
    left->addWidget(block);
    left->addWidget(limits);
    left->addStretch();
    auto* plan = new Part(tr("From above"), {});
    plan->add(new PlanForm(m_context.document, m_context.selection));
    plan->setFixedWidth(230);
    row->addLayout(left, 1);
    row->addWidget(plan, 0, Qt::AlignTop);
    return box;
}

void BlockPage::sayNext() {
    const Workbook& workbook = m_context.document.workbook();
    if (workbook.block.bores.empty())
        m_next->setText(tr("Say how many bores the block has, their size and their depth."));
    else if (workbook.block.bores.front().levels.empty())
        m_next->setText(
            tr("Give the depth of the bores and propose the levels at which they are read."));
    else if (workbook.limitSets.empty())
        m_next->setText(
            tr("Add the limits from the engine maker's manual, so that the bores can be judged."));
    else
        m_next->setText(
            tr("All set to measure. What is changed here is kept at once; Undo takes it back."));
}

} // namespace borewright
