// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/warmth_form.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"
#include "app/measure/cooling_form.h"
#include "core/gauging/warmth.h"

#include <QHBoxLayout>

namespace borewright {
namespace {

constexpr double mostMinutes = 31 * 24 * 60;
constexpr double mostCelsius = 50;
constexpr double askedCelsius = 5;
constexpr double perMillion = 1e6;

// "grey iron: 11.4 ± 1 ×10⁻⁶ per °C".
QString materialWords(const QString& name, Expansion material) {
    return WarmthForm::tr("%1: %2 ± %3 ×10⁻⁶ per °C")
        .arg(name)
        .arg(expansionPerCelsius(material) * perMillion)
        .arg(expansionDoubt(material) * perMillion);
}

NumberField::Range doubtRange() {
    return {0, mostCelsius, false, WarmthForm::tr("a doubt lies between 0 and 50 °C")};
}

std::optional<int> whole(const std::optional<double>& number) {
    return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

} // namespace

WarmthForm::WarmthForm(QWidget* parent)
    : QWidget(parent)
    , m_together(new QCheckBox(tr("Block, &master and gauge stood together overnight"), this))
    , m_openEnd(new TemperatureField(tr("Temperature of the block at its open end"), this))
    , m_closedEnd(new TemperatureField(tr("Temperature of the block at its closed end"), this))
    , m_master(new TemperatureField(tr("Temperature of the master"), this))
    , m_gauge(new NumberField(tr("Gauge warmed since it was set, °C"),
                              {-mostCelsius, mostCelsius, false, tr("lies between −50 and 50 °C")},
                              this))
    , m_minutes(new NumberField(tr("Minutes since the last pass or wash"),
                                {0, mostMinutes, true, tr("whole minutes, between 0 and a month")},
                                this))
    , m_expansion(new QComboBox(this))
    , m_differenceDoubt(new NumberField(tr("Block against master ± °C"), doubtRange(), this))
    , m_temperatureDoubt(new NumberField(tr("Both together ± °C"), doubtRange(), this))
    , m_cooling(new CoolingForm(this))
    , m_question(buildQuestion()) {
    build();
    connect(m_together, &QCheckBox::toggled, this, [this] {
        rest();
        emit edited();
    });
    connect(m_expansion, &QComboBox::activated, this, &WarmthForm::edited);
    for (TypedField* field : findChildren<TypedField*>())
        connect(field, &TypedField::edited, this, &WarmthForm::edited);
}

void WarmthForm::build() {
    m_openEnd->setPlaceholder(tr("not known: no correction"));
    m_master->setPlaceholder(tr("not known: no correction"));
    m_closedEnd->setPlaceholder(tr("as the open end"));
    m_gauge->setPlaceholder(tr("not known"));
    m_minutes->setPlaceholder(tr("not said"));
    m_differenceDoubt->setPlaceholder(tr("the usual: 1, or 3 where not taken"));
    m_temperatureDoubt->setPlaceholder(tr("the usual: 1, or 3 where not taken"));
    m_expansion->setAccessibleName(tr("The bore expands like"));
    m_expansion->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_expansion->addItems(
        {materialWords(tr("grey iron"), Expansion::greyIron),
         materialWords(tr("an iron sleeve in aluminium"), Expansion::sleeveInAluminium),
         materialWords(tr("aluminium"), Expansion::aluminium)});
    auto* grid = new FormGrid(4, this);
    grid->add(labelled(tr("&Block at, open end, °C"), m_openEnd));
    grid->add(labelled(tr("… at its closed end, °C"), m_closedEnd));
    grid->add(labelled(tr("Master at, °C"), m_master));
    grid->add(labelled(tr("Gauge warmed since set, °C"), m_gauge));
    grid->add(labelled(tr("Minutes since last pass or wash"), m_minutes));
    grid->add(labelled(tr("Bore e&xpands like"), m_expansion), 2);
    grid->nextRow();
    grid->add(m_question, 4);
    auto* doubts = new FormGrid(4, this);
    doubts->add(labelled(tr("Block against master ± °C"), m_differenceDoubt));
    doubts->add(labelled(tr("Both together ± °C"), m_temperatureDoubt));
    m_doubts = new Fold(tr("How well the temperatures are known…"), doubts, this);
    m_coolingFold = new Fold(tr("How long to let it cool…"), m_cooling, this);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_together);
    column->addWidget(grid);
    column->addWidget(m_doubts);
    column->addWidget(m_coolingFold);
}

QWidget* WarmthForm::buildQuestion() {
    auto* question = new QWidget(this);
    m_asked = new QLabel(question);
    m_asked->setWordWrap(true);
    m_asked->setAccessibleName(tr("Is the block still warm?"));
    auto* take = new QPushButton(tr("Take temperatures"), question);
    auto* wait = new QPushButton(tr("How long to wait"), question);
    connect(take, &QPushButton::clicked, this, [this] {
        m_together->setChecked(false);
        m_openEnd->setFocus();
    });
    connect(wait, &QPushButton::clicked, this, [this] {
        m_coolingFold->setOpen(true);
        m_cooling->focusFirst();
    });
    auto* row = new QHBoxLayout(question);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_asked, 1);
    row->addWidget(take, 0, Qt::AlignTop);
    row->addWidget(wait, 0, Qt::AlignTop);
    question->hide();
    return question;
}

// Whoever let all stand together needs no thermometer.
void WarmthForm::rest() {
    for (TemperatureField* field : {m_openEnd, m_closedEnd, m_master})
        field->setEnabled(!m_together->isChecked());
}

void WarmthForm::setValue(const SurveyHeader& header) {
    const GaugeSetting& gauge = header.gauge;
    m_together->setChecked(gauge.stoodTogether);
    m_openEnd->setValue(gauge.blockTemperature);
    m_closedEnd->setValue(gauge.closedEndTemperature);
    m_master->setValue(gauge.masterTemperature);
    m_gauge->setValue(gauge.gaugeWarmedBy);
    m_minutes->setValue(header.minutesSinceWarm ? std::optional<double>(*header.minutesSinceWarm)
                                                : std::nullopt);
    m_expansion->setCurrentIndex(static_cast<int>(gauge.blockExpansion));
    m_differenceDoubt->setValue(gauge.differenceDoubt);
    m_temperatureDoubt->setValue(gauge.temperatureDoubt);
    m_doubts->setOpen(gauge.differenceDoubt || gauge.temperatureDoubt);
    m_cooling->setValue(header.cooling);
    m_coolingFold->setOpen(header.cooling.has_value());
    rest();
}

void WarmthForm::put(SurveyHeader& header) const {
    GaugeSetting& gauge = header.gauge;
    gauge.stoodTogether = m_together->isChecked();
    gauge.blockTemperature.reset();
    gauge.closedEndTemperature.reset();
    gauge.masterTemperature.reset();
    if (!gauge.stoodTogether) {
        gauge.blockTemperature = m_openEnd->value();
        gauge.closedEndTemperature = m_closedEnd->value();
        gauge.masterTemperature = m_master->value();
    }
    gauge.gaugeWarmedBy = m_gauge->value();
    gauge.blockExpansion = static_cast<Expansion>(m_expansion->currentIndex());
    gauge.differenceDoubt = m_differenceDoubt->value();
    gauge.temperatureDoubt = m_temperatureDoubt->value();
    header.minutesSinceWarm = whole(m_minutes->value());
    header.cooling = m_cooling->value();
}

void WarmthForm::tell(const SurveyHeader& header, std::optional<Length> size,
                      const DisplayUnits& units) {
    const GaugeSetting& gauge = header.gauge;
    const bool taken = gauge.blockTemperature && gauge.masterTemperature;
    const bool ask =
        header.minutesSinceWarm && *header.minutesSinceWarm < stillWarmMinutes && !taken;
    m_question->setVisible(ask);
    if (!ask) return;
    QString words = tr("The block may still be warm.");
    if (size)
        words += ' ' + tr("Each %1 °C makes this bore read %2 large.")
                           .arg(askedCelsius)
                           .arg(QString::fromStdString(
                               smallWithUnit(growthOf(*size, gauge.blockExpansion, askedCelsius),
                                             units, Sign::negative, 1)));
    words += ' ' + tr("Wait %1 minutes more, or take the temperatures of block and master.")
                       .arg(stillWarmMinutes - *header.minutesSinceWarm);
    m_asked->setText(words);
}

bool WarmthForm::commit() {
    bool good = m_cooling->commit();
    if (!good) m_coolingFold->setOpen(true);
    for (NumberField* field : {m_differenceDoubt, m_temperatureDoubt})
        if (!field->commit()) {
            m_doubts->setOpen(true);
            good = false;
        }
    for (TypedField* field :
         std::initializer_list<TypedField*>{m_openEnd, m_closedEnd, m_master, m_gauge, m_minutes})
        good = field->commit() && good;
    if (!m_closedEnd->value() || m_openEnd->value() || m_together->isChecked()) return good;
    m_openEnd->refuse(tr("the closed end's temperature needs the open end's beside it"));
    return false;
}

} // namespace borewright
