// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/steps_form.h"

#include "app/fields/labelled.h"
#include "app/fields/length_text.h"
#include "app/fields/refusal_label.h"
#include "app/pictures/reading_words.h"
#include "app/size/size_steps.h"
#include "app/size/sizes_model.h"

#include <QHBoxLayout>
#include <QKeyEvent>
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

} // namespace

StepsForm::StepsForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_from(new StepBox(tr("Steps from"), Unit::inch, this))
    , m_to(new StepBox(tr("Steps to"), Unit::inch, this))
    , m_step(new StepBox(tr("Step"), Unit::inch, this))
    , m_below(new StepBox(tr("Limit below each size"), Unit::inch, this))
    , m_above(new StepBox(tr("Limit above each size"), Unit::inch, this))
    , m_said(makeRefusalLabel(this)) {
    m_said->setAccessibleName(tr("Why it was not filled in"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(buildRow({{tr("From"), m_from}, {tr("To"), m_to}, {tr("Step"), m_step}},
                               tr("Fill in"), [this] { fillIn(); }));
    column->addWidget(buildRow({{tr("Finished from −"), m_below}, {tr("to +"), m_above}},
                               tr("Set for all"), [this] { setLimits(); }));
    column->addWidget(m_said);
    connect(&document, &Document::changed, this, &StepsForm::follow);
    followUnits();
}

QWidget* StepsForm::buildRow(const std::vector<std::pair<QString, StepBox*>>& boxes,
                             const QString& verb, const std::function<void()>& act) {
    auto* whole = new QWidget(this);
    auto* row = new QHBoxLayout(whole);
    row->setContentsMargins(0, 0, 0, 0);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        StepBox* box = boxes[i].second;
        StepBox* next = i + 1 < boxes.size() ? boxes[i + 1].second : nullptr;
        row->addWidget(labelled(boxes[i].first, box), 1);
        connect(box, &QLineEdit::textEdited, this, [this] { say({}); });
        connect(box, &QLineEdit::editingFinished, this, [this, box] { left(*box); });
        connect(box, &QLineEdit::returnPressed, this, [this, box, next, act] {
            if (next == nullptr) return act();
            StepBox* to = whyNot(*box).isEmpty() ? next : box;
            to->setFocus();
            to->selectAll();
        });
    }
    connect(addButton(*row, verb, whole), &QPushButton::clicked, this, act);
    return whole;
}

void StepsForm::follow(Change change) {
    if (change == Change::doubts) return;
    say({});
    if (change == Change::everything)
        for (StepBox* box : {m_from, m_to, m_step, m_below, m_above})
            box->clear();
    followUnits();
}

// Steps in the large unit, as pistons are listed; deviations too, as the manual has them.
void StepsForm::followUnits() {
    const Unit unit = m_document.units().size;
    const bool inch = isInchFamily(unit);
    for (StepBox* box : {m_from, m_to, m_step, m_below, m_above})
        box->setUnit(unit);
    m_from->setPlaceholderText(QStringLiteral("0"));
    m_to->setPlaceholderText(inch ? QStringLiteral("0.040") : QStringLiteral("1.00"));
    m_step->setPlaceholderText(inch ? QStringLiteral("0.010") : QStringLiteral("0.25"));
    m_below->setPlaceholderText(QStringLiteral("0"));
    m_above->setPlaceholderText(inch ? QStringLiteral("0.001") : QStringLiteral("0.02"));
}

QString StepsForm::whyNot(const StepBox& box) const {
    const auto read = box.read();
    if (!read) return qs(read.error().message());
    const bool deviation = &box == m_below || &box == m_above;
    return deviation && *read && (*read)->value() < Length() ? tr("type it without a sign")
                                                             : QString();
}

// What cannot be read is said at once; what leads nowhere, once it is filled in.
void StepsForm::left(StepBox& box) {
    const QString why = whyNot(box);
    if (!why.isEmpty()) refuseAt(box, why);
}

std::optional<TypedLength> StepsForm::need(StepBox& box) {
    QString why = whyNot(box);
    if (why.isEmpty()) {
        const auto read = box.read();
        if (*read) return *read;
        why = tr("this one is missing");
    }
    goBackTo(box, why);
    return std::nullopt;
}

void StepsForm::fillIn() {
    say({});
    // From the standard size where nothing is typed.
    if (m_from->text().trimmed().isEmpty()) m_from->write(*readTyped("0", m_document.units().size));
    const auto from = need(*m_from);
    const auto to = from ? need(*m_to) : std::nullopt;
    const auto step = to ? need(*m_step) : std::nullopt;
    if (!step) return;
    for (const auto& [box, oversize] : {std::pair(m_from, *from), std::pair(m_to, *to)})
        if (const auto good = mustBeOversize(oversize, m_document.workbook().block); !good)
            return goBackTo(*box, qs(good.error().what));
    const SizingPlan& now = m_document.workbook().sizing;
    const auto plan = withSteps(now, {*from, *to, *step});
    if (!plan) {
        const std::string& where = plan.error().where;
        StepBox* box = where == "to" ? m_to : where == "from" ? m_from : m_step;
        return goBackTo(*box, qs(plan.error().what));
    }
    if (*plan == now) return say(tr("All of these sizes are on offer already."));
    const auto done = m_document.edit(SetSizing{*plan}, tr("sizes on offer by steps"));
    if (!done) say(qs(done.error().message()));
}

void StepsForm::setLimits() {
    say({});
    for (StepBox* box : {m_below, m_above})
        if (const QString why = whyNot(*box); !why.isEmpty()) return goBackTo(*box, why);
    const auto plan = withLimitsAbout(m_document.workbook().sizing, *m_below->read(),
                                      *m_above->read(), m_document.workbook().block);
    if (!plan) return say(qs(plan.error().message()));
    const auto done = m_document.edit(SetSizing{*plan}, tr("limits of all sizes on offer"));
    if (!done) say(qs(done.error().message()));
}

void StepsForm::refuseAt(StepBox& box, const QString& why) {
    say(tr("%1: %2.").arg(box.accessibleName(), why));
    box.setAccessibleDescription(why);
}

void StepsForm::goBackTo(StepBox& box, const QString& why) {
    refuseAt(box, why);
    box.setFocus();
    box.selectAll();
}

void StepsForm::say(const QString& sentence) {
    for (StepBox* box : {m_from, m_to, m_step, m_below, m_above})
        box->setAccessibleDescription({});
    m_said->setText(sentence);
    m_said->setVisible(!sentence.isEmpty());
}

void StepsForm::giveUpRefused() {
    for (StepBox* box : {m_from, m_to, m_step, m_below, m_above})
        if (!box->accessibleDescription().isEmpty()) box->clear();
    say({});
}

// Only Escape is not the boxes' own.
void StepsForm::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        giveUpRefused();
    else
        QWidget::keyPressEvent(event);
}

// Another page was looked at in between.
void StepsForm::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (!event->spontaneous()) giveUpRefused();
}

} // namespace borewright
