// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/steps_form.h"

#include "app/fields/labelled.h"
#include "app/fields/refusal_label.h"
#include "app/pictures/reading_words.h"
#include "app/size/size_steps.h"
#include "app/size/sizes_model.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace borewright {
namespace {

QPushButton* addButton(QHBoxLayout& row, const QString& text, QWidget* parent) {
    auto* button = new QPushButton(text, parent);
    button->setAccessibleName(text);
    auto* column = new QVBoxLayout;
    column->addWidget(new QLabel(parent)); // stands beside the fields, not beside their names
    column->setSpacing(3);
    column->addWidget(button);
    column->addStretch();
    row.addLayout(column);
    return button;
}

QString notNegative(Length value) {
    return value < Length() ? StepsForm::tr("type it without a sign") : QString();
}

} // namespace

StepsForm::StepsForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_from(new LengthField(tr("Steps from"), Unit::inch, this))
    , m_to(new LengthField(tr("Steps to"), Unit::inch, this))
    , m_step(new LengthField(tr("Step"), Unit::inch, this))
    , m_below(new LengthField(tr("Limit below each size"), Unit::inch, this))
    , m_above(new LengthField(tr("Limit above each size"), Unit::inch, this))
    , m_said(makeRefusalLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(buildSteps());
    column->addWidget(buildLimits());
    column->addWidget(m_said);
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::doubts) return;
        say({});
        followUnits();
    });
    followUnits();
}

QWidget* StepsForm::buildSteps() {
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(labelled(tr("From"), m_from), 1);
    row->addWidget(labelled(tr("To"), m_to), 1);
    row->addWidget(labelled(tr("Step"), m_step), 1);
    connect(addButton(*row, tr("Fill in"), box), &QPushButton::clicked, this, &StepsForm::fillIn);
    return box;
}

QWidget* StepsForm::buildLimits() {
    for (LengthField* field : {m_below, m_above})
        field->setCheck(notNegative);
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(labelled(tr("Finished from −"), m_below), 1);
    row->addWidget(labelled(tr("to +"), m_above), 1);
    connect(addButton(*row, tr("Set for all"), box), &QPushButton::clicked, this,
            &StepsForm::setLimits);
    return box;
}

// Steps in the large unit, as pistons are listed; deviations too, as the manual has them.
void StepsForm::followUnits() {
    const Unit unit = m_document.units().size;
    const bool inch = isInchFamily(unit);
    for (LengthField* field : {m_from, m_to, m_step, m_below, m_above})
        field->setUnit(unit);
    m_from->setPlaceholder(inch ? QStringLiteral("0") : QStringLiteral("0"));
    m_to->setPlaceholder(inch ? QStringLiteral("0.040") : QStringLiteral("1.00"));
    m_step->setPlaceholder(inch ? QStringLiteral("0.010") : QStringLiteral("0.25"));
    m_below->setPlaceholder(QStringLiteral("0"));
    m_above->setPlaceholder(inch ? QStringLiteral("0.001") : QStringLiteral("0.02"));
}

bool StepsForm::needs(LengthField& field) {
    if (!field.commit()) return false;
    if (!field.value()) field.refuse(tr("this one is missing"));
    return field.value().has_value();
}

void StepsForm::fillIn() {
    say({});
    // From the standard size where nothing is typed.
    if (m_from->commit() && !m_from->value())
        m_from->setValue(*readTyped("0", m_document.units().size));
    const bool to = needs(*m_to);
    if (!needs(*m_step) || !to || !m_from->value()) return;
    for (LengthField* field : {m_from, m_to})
        if (const auto good = checkOversize(*field->value(), m_document.workbook().block); !good)
            return field->refuse(qs(good.error().what));
    const auto plan = withSteps(m_document.workbook().sizing,
                                {*m_from->value(), *m_to->value(), *m_step->value()});
    if (!plan) {
        const std::string& where = plan.error().where;
        LengthField* field = where == "to" ? m_to : where == "from" ? m_from : m_step;
        return field->refuse(qs(plan.error().what));
    }
    const auto done = m_document.edit(SetSizing{*plan}, tr("sizes on offer by steps"));
    if (!done) say(qs(done.error().message()));
}

void StepsForm::setLimits() {
    say({});
    if (!m_below->commit() || !m_above->commit()) return;
    const auto plan = withLimitsAbout(m_document.workbook().sizing, m_below->value(),
                                      m_above->value(), m_document.workbook().block);
    if (!plan) return say(qs(plan.error().message()));
    const auto done = m_document.edit(SetSizing{*plan}, tr("limits of all sizes on offer"));
    if (!done) say(qs(done.error().message()));
}

void StepsForm::say(const QString& sentence) {
    m_said->setText(sentence);
    m_said->setVisible(!sentence.isEmpty());
}

} // namespace borewright
