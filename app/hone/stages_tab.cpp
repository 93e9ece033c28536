// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/stages_tab.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/length_text.h"
#include "app/hone/hone_verbs.h"
#include "app/pictures/reading_words.h"
#include "core/honing/stages.h"

#include <QVBoxLayout>

namespace borewright {

StagesTab::StagesTab(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document) {
    auto* grid = new FormGrid(4, this);
    const auto add = [&](const QString& label, Given given, Length (*inForce)(const HoneStages&)) {
        auto* field = new CommittedField(label, [this, label, given](const QString& text) {
            return commit(text, label.toLower(), given);
        });
        grid->add(field);
        m_fields.push_back({field, given, inForce});
    };
    add(tr("Rough stones stop with to go"), &HoneStages::roughStopsAt,
        [](const HoneStages& stages) { return stagesOf(stages).roughStopsAt; });
    add(tr("Closed end brought to lead by"), &HoneStages::closedEndLead,
        [](const HoneStages& stages) { return stagesOf(stages).closedEndLead; });
    add(tr("Finish stones take the last"), &HoneStages::nextStopsAt,
        [](const HoneStages& stages) { return stagesOf(stages).nextStopsAt; });
    add(tr("Only on a cool bore below"), &HoneStages::coolBelow,
        [](const HoneStages& stages) { return stagesOf(stages).coolBelow; });
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 8);
    column->setSpacing(8);
    column->addWidget(makePassingWord(
        tr("On the diameter. What stands greyed is common practice; empty a field to go back to "
           "it. At every stage the closed end stays below the finish size less what later stones "
           "still take."),
        this));
    column->addWidget(grid);
    column->addStretch(1);
    refresh(true);
}

Result<void> StagesTab::commit(const QString& text, const QString& what, Given given) {
    HoneRecord record = m_document.workbook().hone;
    std::optional<TypedLength> length;
    if (!text.trimmed().isEmpty()) {
        auto read = readAmount(text.trimmed().toStdString(), m_document.units().small);
        if (!read) return tl::unexpected(read.error());
        length = std::move(*read);
    }
    record.stages.*given = length;
    return m_document.edit(SetHone{std::move(record)}, what);
}

void StagesTab::refresh(bool anew) {
    const HoneStages& stages = m_document.workbook().hone.stages;
    for (const Field& field : m_fields) {
        const QString text = shownLength(stages.*field.given);
        if (anew) {
            field.field->lineEdit()->setText(text);
            field.field->refuse({});
        }
        field.field->showData(text);
        field.field->setHint(
            tr("usual: %1").arg(qs(smallWithUnit(field.inForce(stages), m_document.units()))));
    }
}

} // namespace borewright
