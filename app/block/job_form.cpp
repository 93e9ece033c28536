// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/job_form.h"

#include "app/fields/form_grid.h"

#include <QEvent>

namespace borewright {

JobForm::JobForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document) {
    auto* grid = new FormGrid(3, this);
    addField(*grid, tr("Customer"), &Job::customer);
    addField(*grid, tr("Engine"), &Job::engine);
    addField(*grid, tr("Serial number"), &Job::serial);
    addField(*grid, tr("Why it came"), &Job::reason);
    addField(*grid, tr("Measured by"), &Job::measuredBy);
    grid->nextRow();
    addNotes(*grid);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(grid);
    connect(&document, &Document::changed, this, &JobForm::refresh);
    refresh();
}

void JobForm::addField(FormGrid& grid, const QString& label, Member member) {
    auto* field = new CommittedField(label, [this, member, label](const QString& text) {
        Job job = m_document.workbook().job;
        job.*member = text.trimmed().toStdString();
        return m_document.edit(SetJob{std::move(job)}, label.toLower());
    });
    m_fields.emplace_back(field, member);
    grid.add(field);
}

void JobForm::addNotes(FormGrid& grid) {
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    auto* label = new QLabel(tr("Notes"), box);
    m_notes = new QPlainTextEdit(box);
    m_notes->setAccessibleName(tr("Notes"));
    m_notes->setTabChangesFocus(true);
    m_notes->setFixedHeight(m_notes->fontMetrics().lineSpacing() * 3 + 14);
    m_notes->installEventFilter(this);
    label->setBuddy(m_notes);
    column->addWidget(label);
    column->addWidget(m_notes);
    grid.add(box, 3);
}

bool JobForm::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_notes && event->type() == QEvent::FocusOut) {
        Job job = m_document.workbook().job;
        job.notes = m_notes->toPlainText().toStdString();
        (void)m_document.edit(SetJob{std::move(job)}, tr("notes"));
    }
    return QWidget::eventFilter(watched, event);
}

void JobForm::refresh() {
    const Job& job = m_document.workbook().job;
    for (const auto& [field, member] : m_fields)
        field->showData(QString::fromStdString(job.*member));
    const QString notes = QString::fromStdString(job.notes);
    if (!m_notes->hasFocus() && m_notes->toPlainText() != notes) m_notes->setPlainText(notes);
}

} // namespace borewright
