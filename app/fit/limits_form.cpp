// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/limits_form.h"

#include "app/fields/decision_form.h"
#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"
#include "app/fit/fit_words.h"
#include "app/pictures/reading_words.h"
#include "core/results/doubt_words.h"

#include <QVBoxLayout>

namespace borewright {

FitLimitsForm::FitLimitsForm(Document& document, Part part, const QString& name, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_part(part)
    , m_name(name)
    , m_unit(makePassingWord({}, this))
    , m_grid(new FormGrid(3, this))
    , m_rule(new DecisionForm([this](const DecisionRule& rule) {
        return change(tr("rule of verdicts"), [&](FitLimits& limits) { limits.decision = rule; });
    })) {
    addField(tr("Least"), &FitLimits::lower);
    addField(tr("Most"), &FitLimits::upper);
    addField(tr("Aim"), &FitLimits::aim);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_unit);
    column->addWidget(m_grid);
    column->addWidget(new Fold(tr("How sure a verdict has to be"), m_rule, this));
    refresh();
}

LengthField* FitLimitsForm::addField(const QString& label, Given given) {
    auto* field = new LengthField(tr("%1 %2").arg(label, m_name), m_document.units().small);
    m_grid->add(labelled(label, field));
    m_fields.push_back({field, given});
    field->setCheck([this, given, field](Length) {
        const auto typed = readAmount(field->edit()->text().toStdString(), field->unit());
        return typed ? whyNot(given, *typed) : qs(typed.error().message());
    });
    connect(field, &LengthField::committed, this, [this, field, given, label] {
        const auto done =
            change(label.toLower(), [&](FitLimits& limits) { limits.*given = field->value(); });
        if (!done) field->refuse(qs(done.error().what));
    });
    return field;
}

QString FitLimitsForm::whyNot(Given given, const std::optional<TypedLength>& value) const {
    FitRecord trial = m_document.workbook().fit;
    trial.*m_part.*given = value;
    const auto good = checkFit(trial);
    return good ? QString() : qs(good.error().what);
}

Result<void> FitLimitsForm::change(const QString& what,
                                   const std::function<void(FitLimits&)>& make) {
    FitRecord fit = m_document.workbook().fit;
    make(fit.*m_part);
    return m_document.edit(SetFit{std::move(fit)}, tr("%1, %2").arg(what, m_name));
}

void FitLimitsForm::refresh(bool anew) {
    const FitLimits& limits = m_document.workbook().fit.*m_part;
    const DisplayUnits& units = m_document.units();
    m_unit->setText(tr("From the engine maker's manual, in %1.").arg(unitSymbol(units.small)));
    for (const Field& field : m_fields) {
        field.field->setUnit(units.small);
        // What he is typing, or what stands refused, is left alone.
        if (anew || !field.field->edit()->isModified()) field.field->setValue(limits.*field.given);
        field.field->setPlaceholder(tr("not given"));
    }
    const auto aim = aimOf(limits);
    m_fields.back().field->setPlaceholder(aim ? tr("half-way: %1").arg(qs(formatSmall(*aim, units)))
                                              : tr("half-way"));
    m_rule->showData(limits.decision);
}

} // namespace borewright
