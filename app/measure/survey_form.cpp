// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/survey_form.h"

#include "app/fields/scaled_font.h"

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

// A new survey's name: its kind, with a number where the name is taken.
QString freeName(const Workbook& workbook, SurveyKind kind) {
    const auto text = nameOf(kind);
    const QString base = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
    const auto taken = [&](const QString& name) {
        return std::ranges::any_of(workbook.surveys, [&](const Survey& survey) {
            return survey.header.name == name.toStdString();
        });
    };
    QString name = base;
    for (int n = 2; taken(name); ++n)
        name = base + QStringLiteral(" %1").arg(n);
    return name;
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
    , m_refusal(new QLabel(this))
    , m_keep(new QPushButton(this)) {
    m_kind->setAccessibleName(tr("Kind of survey"));
    for (const SurveyKind kind :
         {SurveyKind::asFound, SurveyKind::beforeBoring, SurveyKind::check, SurveyKind::final})
        m_kind->addItem(kindName(kind));
    m_name->setAccessibleName(tr("Name of the survey"));
    m_plate->setAccessibleName(tr("Torque plate"));
    m_plate->addItems({tr("not said"), tr("on"), tr("off")});
    m_limits->setAccessibleName(tr("Judged by"));
    m_notes->setAccessibleName(tr("Notes on the survey"));
    m_refusal->setObjectName(QStringLiteral("refusal"));
    m_refusal->setWordWrap(true);
    m_keep->setDefault(true);
    build();
    connect(m_kind, &QComboBox::activated, this, [this] {
        m_header.kind = static_cast<SurveyKind>(m_kind->currentIndex());
        if (m_new) {
            proposeSetSize(m_header);
            m_gauge->setSize()->setValue(m_header.gauge.setSize);
        }
        offerLimits(m_header);
        proposeName();
    });
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
    outer->addWidget(m_refusal);
    auto* buttons = new QHBoxLayout;
    auto* leave = new QPushButton(tr("Leave as it was"), this);
    connect(leave, &QPushButton::clicked, this, &SurveyForm::closed);
    auto* escape = new QShortcut(Qt::Key_Escape, this, this, &SurveyForm::closed);
    escape->setContext(Qt::WidgetWithChildrenShortcut);
    for (const int key : {Qt::Key_Return, Qt::Key_Enter}) {
        auto* enter = new QShortcut(key, this, this, &SurveyForm::keep);
        enter->setContext(Qt::WidgetWithChildrenShortcut);
    }
    buttons->addWidget(m_keep);
    buttons->addWidget(leave);
    buttons->addStretch();
    outer->addLayout(buttons);
    outer->addStretch();
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(content);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll);
}

// The kind that usually comes next, the gauge last used, the set size the bores suggest.
SurveyHeader SurveyForm::proposal() const {
    const Workbook& workbook = m_context.document.workbook();
    SurveyHeader header;
    header.id = freshSurveyId(workbook);
    if (workbook.surveys.empty()) {
        header.gauge = m_context.preferences.value().gauge;
        proposeForFirst(header);
    } else {
        header.kind = SurveyKind::check;
        header.gauge = workbook.surveys.back().header.gauge;
        header.plate = workbook.surveys.back().header.plate;
    }
    proposeSetSize(header);
    return header;
}

void SurveyForm::proposeForFirst(SurveyHeader& header) const {
    const Workbook& workbook = m_context.document.workbook();
    if (workbook.block.bores.empty()) return;
    const Bore& bore = workbook.block.bores.front();
    // A dial of the other system is nobody's for this block.
    if (bore.standardSize && isInchFamily(bore.standardSize->unit()) !=
                                 isInchFamily(header.gauge.dial.graduation.unit())) {
        const auto larger = header.gauge.dial.larger;
        header.gauge.dial =
            isInchFamily(bore.standardSize->unit()) ? tenthDial() : micrometreDial();
        header.gauge.dial.larger = larger;
    }
    if (bore.surface == Surface::ironSleeveInAluminium)
        header.gauge.blockExpansion = Expansion::sleeveInAluminium;
    if (bore.surface == Surface::bareAluminium || bore.surface == Surface::plated)
        header.gauge.blockExpansion = Expansion::aluminium;
}

// A worn block is measured from standard, a honed one from its finish size; a setting made for the
// same purpose before is proposed again.
void SurveyForm::proposeSetSize(SurveyHeader& header) const {
    const Workbook& workbook = m_context.document.workbook();
    const LimitPurpose purpose = purposeOf(header.kind);
    for (auto survey = workbook.surveys.rbegin(); survey != workbook.surveys.rend(); ++survey)
        if (purposeOf(survey->header.kind) == purpose) {
            header.gauge.setSize = survey->header.gauge.setSize;
            header.limitSet = survey->header.limitSet;
            return;
        }
    header.gauge.setSize.reset();
    header.limitSet.reset();
    if (workbook.block.bores.empty()) return;
    const Bore& bore = workbook.block.bores.front();
    if (purpose == LimitPurpose::worn) header.gauge.setSize = bore.standardSize;
    const auto set = judgingSet(workbook, header);
    if (purpose == LimitPurpose::finish && set && bore.standardSize)
        if (const auto size = finishSizeFor(**set, bore))
            header.gauge.setSize = typedFrom(*size, bore.standardSize->unit());
}

void SurveyForm::openNew() {
    m_new = true;
    m_title->setText(tr("A new survey: what are you about to measure?"));
    m_keep->setText(tr("Start measuring"));
    fill(proposal());
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
    fill(found->header);
    m_gauge->setSize()->setFocus();
}

void SurveyForm::fill(const SurveyHeader& header) {
    m_header = header;
    m_proposedName.clear();
    m_refusal->clear();
    m_kind->setCurrentIndex(static_cast<int>(header.kind));
    m_name->setText(QString::fromStdString(header.name));
    m_plate->setCurrentIndex(!header.plate ? 0 : *header.plate ? 1 : 2);
    m_notes->setText(QString::fromStdString(header.notes));
    offerLimits(header);
    const Document& document = m_context.document;
    m_scope->setValue(document.workbook(), header.asked, document.units());
    m_gauge->setValue(header.gauge, document.units().size);
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
    m_proposedName = freeName(m_context.document.workbook(), m_header.kind);
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
    header.gauge = m_gauge->value();
    return header;
}

void SurveyForm::keep() {
    if (!m_gauge->commit()) return;
    SurveyHeader header = value();
    if (header.asked && header.asked->empty()) {
        m_refusal->setText(
            tr("Tick at least one bore and one station, or choose the whole block."));
        return;
    }
    if (header.name.empty()) {
        m_refusal->setText(tr("Give the survey a name, so that you find it again."));
        return;
    }
    Document& document = m_context.document;
    if (m_new) header.time = document.now();
    const QString name = tr("survey “%1”").arg(QString::fromStdString(header.name));
    const Edit edit = m_new ? Edit(InsertSurvey{document.workbook().surveys.size(), {header, {}}})
                            : Edit(SetSurveyHeader{header.id, header});
    if (const auto done = document.edit(edit, name); !done) {
        m_refusal->setText(QString::fromStdString(done.error().message()));
        return;
    }
    rememberGauge(header.gauge);
    m_context.selection.setSurvey(header.id);
    emit closed();
}

void SurveyForm::rememberGauge(const GaugeSetting& gauge) {
    Preferences preferences = m_context.preferences.value();
    preferences.gauge = gauge;
    preferences.gauge.setSize.reset();
    preferences.gauge.masterTemperature.reset();
    preferences.gauge.blockTemperature.reset();
    m_context.preferences.set(preferences);
}

} // namespace borewright
