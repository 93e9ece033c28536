// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/survey_form.h"

#include "app/fields/fold.h"
#include "app/fields/refusal_label.h"
#include "app/fields/scaled_font.h"
#include "app/measure/survey_proposal.h"
#include "core/verdict/prospect.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

QString kindName(SurveyKind kind) {
    switch (kind) {
    case SurveyKind::asFound:
        return SurveyForm::tr("as found");
    case SurveyKind::beforeBoring:
        return SurveyForm::tr("before boring");
    case SurveyKind::check:
        return SurveyForm::tr("check while honing");
    case SurveyKind::final:
        return SurveyForm::tr("final");
    }
    return {};
}

} // namespace

SurveyForm::SurveyForm(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_title(new QLabel(this))
    , m_kind(new QComboBox(this))
    , m_name(new QLineEdit(this))
    , m_plate(new QComboBox(this))
    , m_limits(new QComboBox(this))
    , m_notes(new QLineEdit(this))
    , m_scope(new ScopePicker(this))
    , m_gauge(new GaugeForm(this))
    , m_prospect(new QLabel(this))
    , m_refusal(makeRefusalLabel(this))
    , m_keep(new QPushButton(this))
    , m_scroll(new QScrollArea(this)) {
    m_kind->setAccessibleName(tr("Kind of survey"));
    for (const SurveyKind kind :
         {SurveyKind::asFound, SurveyKind::beforeBoring, SurveyKind::check, SurveyKind::final})
        m_kind->addItem(kindName(kind));
    m_name->setAccessibleName(tr("Name of the survey"));
    m_plate->setAccessibleName(tr("Torque plate"));
    m_plate->addItems({tr("not said"), tr("on"), tr("off")});
    m_limits->setAccessibleName(tr("Judged by"));
    m_limits->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_limits->setMinimumContentsLength(18);
    m_notes->setAccessibleName(tr("Notes on the survey"));
    m_prospect->setAccessibleName(tr("What this gear can decide"));
    m_prospect->setWordWrap(true);
    m_keep->setDefault(true);
    build();
    connect(m_kind, &QComboBox::activated, this, [this] {
        m_header.kind = static_cast<SurveyKind>(m_kind->currentIndex());
        if (m_new) {
            proposeSetSize(m_context.document.workbook(), m_header);
            m_gauge->setSize()->setValue(m_header.gauge.setSize);
        }
        offerLimits(m_header);
        proposeName();
        followFigures();
    });
    connect(m_limits, &QComboBox::activated, this, &SurveyForm::followFigures);
    connect(m_gauge, &GaugeForm::edited, this, &SurveyForm::followFigures);
    connect(m_keep, &QPushButton::clicked, this, &SurveyForm::keep);
}

void SurveyForm::build() {
    auto* content = new QWidget(this);
    auto* outer = new QVBoxLayout(content);
    outer->setContentsMargins(24, 20, 24, 20);
    outer->setSpacing(14);
    const QFont large = scaledFont(font(), 1.4);
    m_title->setFont(large);
    outer->addWidget(m_title);
    auto* form = new QFormLayout;
    form->setVerticalSpacing(8);
    form->addRow(tr("&Kind"), m_kind);
    form->addRow(tr("&Name"), m_name);
    form->addRow(tr("&Judged by"), m_limits);
    form->addRow(tr("Torque &plate"), m_plate);
    form->addRow(tr("Measure"), m_scope);
    form->addRow(tr("N&otes"), m_notes);
    outer->addLayout(form);
    auto* heading = new QLabel(tr("The gauge"), this);
    heading->setFont(large);
    outer->addWidget(heading);
    outer->addWidget(m_gauge);
    auto* prospects = new Part(tr("What this gear can decide"), {}, this);
    prospects->add(m_prospect);
    outer->addWidget(prospects);
    outer->addStretch();
    // The wheel moves the page; a list under the pointer changes only once it was chosen.
    for (QComboBox* box : content->findChildren<QComboBox*>()) {
        box->setFocusPolicy(Qt::StrongFocus);
        box->installEventFilter(this);
    }
    m_scroll->setWidget(content);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(0);
    whole->addWidget(m_scroll, 1);
    auto* edge = new QFrame(this);
    edge->setFrameShape(QFrame::HLine);
    edge->setForegroundRole(QPalette::Mid);
    edge->setFrameShadow(QFrame::Plain);
    whole->addWidget(edge);
    whole->addWidget(buildFoot());
}

// Stays in sight, however long the form.
QWidget* SurveyForm::buildFoot() {
    auto* leave = new QPushButton(tr("Leave as it was"), this);
    connect(leave, &QPushButton::clicked, this, &SurveyForm::closed);
    auto* escape = new QShortcut(Qt::Key_Escape, this, this, &SurveyForm::closed);
    escape->setContext(Qt::WidgetWithChildrenShortcut);
    for (const int key : {Qt::Key_Return, Qt::Key_Enter}) {
        auto* enter = new QShortcut(key, this, this, &SurveyForm::keep);
        enter->setContext(Qt::WidgetWithChildrenShortcut);
    }
    auto* foot = new QWidget(this);
    auto* row = new QHBoxLayout(foot);
    row->setContentsMargins(24, 10, 24, 12);
    row->addWidget(m_keep);
    row->addWidget(leave);
    row->addWidget(m_refusal, 1);
    row->addStretch();
    return foot;
}

bool SurveyForm::eventFilter(QObject* watched, QEvent* event) {
    const auto* box = qobject_cast<QComboBox*>(watched);
    if (event->type() == QEvent::Wheel && box != nullptr && !box->hasFocus()) {
        event->ignore();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

void SurveyForm::openNew() {
    m_new = true;
    m_title->setText(tr("A new survey: what are you about to measure?"));
    m_keep->setText(tr("Start measuring"));
    const SurveyProposal proposal =
        proposeSurvey(m_context.document.workbook(), m_context.preferences.value(),
                      m_context.document.units().small);
    fill(proposal.header, proposal.usualGear);
    proposeName();
    m_gauge->setSize()->setFocus();
    m_gauge->setSize()->edit()->selectAll();
}

void SurveyForm::openFor(const std::string& survey) {
    const Survey* found = findSurvey(m_context.document.workbook(), survey);
    if (found == nullptr) return;
    m_new = false;
    m_title->setText(tr("Survey “%1”").arg(QString::fromStdString(found->header.name)));
    m_keep->setText(tr("Keep"));
    fill(found->header, false);
    m_gauge->setSize()->setFocus();
}

void SurveyForm::fill(const SurveyHeader& header, bool usualGear) {
    m_header = header;
    m_proposedName.clear();
    say({});
    m_kind->setCurrentIndex(static_cast<int>(header.kind));
    m_name->setText(QString::fromStdString(header.name));
    m_plate->setCurrentIndex(!header.plate ? 0 : *header.plate ? 1 : 2);
    m_notes->setText(QString::fromStdString(header.notes));
    offerLimits(header);
    const Document& document = m_context.document;
    m_scope->setValue(document.workbook(), header.asked, document.units());
    m_gauge->offer(m_context.preferences.value().gauges);
    m_gauge->setValue(header, document.units(), usualGear);
    m_scroll->ensureVisible(0, 0);
    followFigures();
}

// What the figures typed so far come to, said while they are typed.
void SurveyForm::followFigures() {
    const Document& document = m_context.document;
    const Workbook& workbook = document.workbook();
    const SurveyHeader header = value();
    std::optional<TypedLength> size = header.gauge.setSize;
    if (!size && !workbook.block.bores.empty()) size = workbook.block.bores.front().standardSize;
    const auto length = size ? std::optional(size->value()) : std::nullopt;
    m_gauge->tell(header, length, document.units());
    const bool known = length && budgetOf(header, *length).known();
    QStringList sentences;
    for (const std::string& sentence : prospect(workbook, header, document.units()))
        sentences << QString::fromStdString(sentence);
    if (!known)
        sentences = {tr("While nothing is known of the gear, nothing can be said beforehand, and "
                        "each verdict stands as if nothing were in doubt.")};
    else if (sentences.isEmpty())
        sentences = {
            judgingSet(workbook, header)
                ? tr("Nothing stands in the way: this gear can tell what the limits ask.")
                : tr("No limits judge this survey yet; they are given on the Block page.")};
    m_prospect->setText(sentences.join(QStringLiteral("\n")));
}

void SurveyForm::say(const QString& refusal) {
    m_refusal->setText(refusal);
    m_refusal->setVisible(!refusal.isEmpty());
}

// To the first field that could not be kept.
void SurveyForm::showRefused() {
    for (const TypedField* field : m_gauge->findChildren<TypedField*>()) {
        if (field->refusal().isEmpty()) continue;
        field->edit()->setFocus();
        field->edit()->selectAll();
        return m_scroll->ensureWidgetVisible(field->edit(), 50, 90);
    }
}

void SurveyForm::offerLimits(const SurveyHeader& header) {
    m_limits->clear();
    m_limits->addItem(tr("the only set of its kind"), QString());
    const LimitPurpose purpose = purposeOf(header.kind);
    int sets = 0;
    for (const LimitSet& set : m_context.document.workbook().limitSets) {
        if (set.purpose != purpose) continue;
        m_limits->addItem(QString::fromStdString(set.name), QString::fromStdString(set.id));
        ++sets;
    }
    if (header.limitSet)
        m_limits->setCurrentIndex(
            std::max(0, m_limits->findData(QString::fromStdString(*header.limitSet))));
    else if (sets > 1)
        m_limits->setItemText(0, tr("not chosen yet"));
    m_limits->setEnabled(sets > 0);
}

void SurveyForm::proposeName() {
    if (!m_new || (!m_name->text().isEmpty() && m_name->text() != m_proposedName)) return;
    m_proposedName = proposeSurveyName(m_context.document.workbook(), m_header.kind);
    m_name->setText(m_proposedName);
}

SurveyHeader SurveyForm::value() const {
    SurveyHeader header = m_header;
    header.kind = static_cast<SurveyKind>(m_kind->currentIndex());
    header.name = m_name->text().trimmed().toStdString();
    header.plate =
        m_plate->currentIndex() == 0 ? std::nullopt : std::optional(m_plate->currentIndex() == 1);
    const QString limits = m_limits->currentData().toString();
    header.limitSet = limits.isEmpty() ? std::nullopt : std::optional(limits.toStdString());
    header.asked = m_scope->value();
    header.notes = m_notes->text().trimmed().toStdString();
    m_gauge->put(header);
    return header;
}

void SurveyForm::keep() {
    say({});
    if (!m_gauge->commit()) return showRefused();
    SurveyHeader header = value();
    if (header.asked && header.asked->empty()) {
        say(tr("Tick at least one bore and one station, or choose the whole block."));
        return;
    }
    if (header.name.empty()) {
        say(tr("Give the survey a name, so that you find it again."));
        return;
    }
    Document& document = m_context.document;
    if (m_new) header.time = document.now();
    const QString name = tr("survey “%1”").arg(QString::fromStdString(header.name));
    const Edit edit = m_new ? Edit(InsertSurvey{document.workbook().surveys.size(), {header, {}}})
                            : Edit(SetSurveyHeader{header.id, header});
    if (const auto done = document.edit(edit, name); !done) {
        say(QString::fromStdString(done.error().message()));
        return;
    }
    m_context.preferences.set(withGauge(m_context.preferences.value(), header.gauge));
    m_context.selection.setSurvey(header.id);
    emit closed();
}

} // namespace borewright
