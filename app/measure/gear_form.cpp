// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/gear_form.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"

#include <QHBoxLayout>

namespace borewright {
namespace {

QString positive(Length value) {
    return value > Length() ? QString() : GearForm::tr("must be more than zero");
}
QString notNegative(Length value) {
    return value < Length() ? GearForm::tr("a doubt is never below zero") : QString();
}

constexpr double mostReadings = 10'000;

} // namespace

GearForm::GearForm(QWidget* parent)
    : QWidget(parent)
    , m_choice(new QComboBox(this))
    , m_worth(new QLabel(this))
    , m_repeatability(new LengthField(tr("Repeatability of one reading"), Unit::thou, this))
    , m_readings(new NumberField(tr("Known from how many readings"),
                                 {2, mostReadings, true,
                                  tr("a whole number; two readings are the fewest that scatter "
                                     "can be told from")},
                                 this))
    , m_step(new LengthField(tr("The finest you read off"), Unit::thou, this))
    , m_nearError(new LengthField(tr("Dial ±, between near readings"), Unit::thou, this))
    , m_dialError(new LengthField(tr("Dial ±, over its range"), Unit::thou, this))
    , m_master(new LengthField(tr("Master ±"), Unit::thou, this))
    , m_meant(new QComboBox(this))
    , m_scatter(new LengthField(tr("Scatter of setting"), Unit::thou, this))
    , m_drift(new LengthField(tr("Drift of zero ±"), Unit::thou, this))
    , m_driftLimit(new LengthField(tr("Set again beyond a drift of"), Unit::thou, this))
    , m_rocking(new LengthField(tr("Left after rocking"), Unit::thou, this))
    , m_checked(new QLineEdit(this)) {
    m_choice->setAccessibleName(tr("What the gear is worth"));
    m_worth->setWordWrap(true);
    m_worth->setAccessibleName(tr("What the gear comes to"));
    auto* grid = new FormGrid(4, this);
    buildFigures(grid);
    m_fold = new Fold(tr("Figures…"), grid, this);
    auto* line = new QHBoxLayout;
    line->setSpacing(16);
    line->addWidget(m_choice);
    line->addWidget(m_worth, 1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addLayout(line);
    column->addWidget(m_fold);
    connect(m_choice, &QComboBox::activated, this,
            [this](int row) { choose(static_cast<GearChoice>(row)); });
    connect(m_meant, &QComboBox::activated, this, &GearForm::followFields);
    for (LengthField* field : findChildren<LengthField*>())
        connect(field, &LengthField::edited, this, &GearForm::followFields);
    connect(m_readings, &NumberField::edited, this, &GearForm::followFields);
}

void GearForm::buildFigures(FormGrid* grid) {
    for (LengthField* field : {m_repeatability, m_step, m_driftLimit})
        field->setCheck(positive);
    for (LengthField* field : {m_nearError, m_dialError, m_master, m_scatter, m_drift, m_rocking})
        field->setCheck(notNegative);
    m_meant->setAccessibleName(tr("How the master's ± is meant"));
    m_meant->addItems(
        {tr("limits: never beyond"), tr("certificate, k = 2"), tr("standard uncertainty")});
    m_meant->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_checked->setAccessibleName(tr("Gauge last checked"));
    m_checked->setPlaceholderText(tr("when, by which certificate"));
    m_readings->setPlaceholder(tr("taken as known"));
    m_step->setPlaceholder(tr("one division"));
    m_driftLimit->setPlaceholder(tr("the usual limit"));
    grid->add(labelled(tr("Repeatability, standard deviation"), m_repeatability));
    grid->add(labelled(tr("… from how many readings"), m_readings));
    grid->add(labelled(tr("Dial ±, between near readings"), m_nearError));
    grid->add(labelled(tr("Dial ±, over its range"), m_dialError));
    grid->add(labelled(tr("Master ±"), m_master));
    grid->add(labelled(tr("… meant as"), m_meant));
    grid->add(labelled(tr("Scatter of setting, standard deviation"), m_scatter));
    grid->add(labelled(tr("Read off to"), m_step));
    grid->add(labelled(tr("Drift of zero ±"), m_drift));
    grid->add(labelled(tr("Set again beyond a drift of"), m_driftLimit));
    grid->add(labelled(tr("Left after rocking"), m_rocking));
    grid->add(labelled(tr("Last checked"), m_checked));
    grid->add(makePassingWord(
                  tr("Rocking: in the plane of the bore's axis, rock for the smallest reading; "
                     "across the bore, the centraliser finds the largest. Tilt only ever reads "
                     "large, and off the centre only ever small, so half of what is left counts "
                     "as a shift. An empty field counts as nothing."),
                  grid),
              4);
}

void GearForm::setValue(const Gear& gear, Unit small, bool proposed) {
    m_gear = gear;
    m_small = small;
    m_proposed = proposed;
    m_choice->clear();
    m_choice->addItems(gearChoices(small));
    for (LengthField* field : findChildren<LengthField*>())
        field->setUnit(small);
    const auto unit = symbol(small);
    m_fold->setTitle(tr("Figures, in %1…")
                         .arg(QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()))));
    showGear();
}

void GearForm::showGear() {
    m_choice->setCurrentIndex(static_cast<int>(choiceOf(m_gear, m_small)));
    m_repeatability->setValue(m_gear.repeatability);
    m_readings->setValue(m_gear.repeatabilityFreedom
                             ? std::optional<double>(*m_gear.repeatabilityFreedom + 1)
                             : std::nullopt);
    m_step->setValue(m_gear.step);
    m_nearError->setValue(m_gear.dialLocalError);
    m_dialError->setValue(m_gear.dialError);
    m_master->setValue(m_gear.master);
    m_meant->setCurrentIndex(static_cast<int>(m_gear.masterMeant));
    m_scatter->setValue(m_gear.settingScatter);
    m_drift->setValue(m_gear.drift);
    m_driftLimit->setValue(m_gear.driftLimit);
    m_rocking->setValue(m_gear.rocking);
    m_checked->setText(QString::fromStdString(m_gear.lastChecked));
}

void GearForm::choose(GearChoice choice) {
    m_proposed = false;
    if (choice == GearChoice::own) {
        m_fold->setOpen(true);
        m_repeatability->setFocus();
    } else {
        const std::string checked = value().lastChecked;
        m_gear = gearFor(choice, m_small);
        m_gear.lastChecked = checked;
        showGear();
    }
    emit edited();
}

void GearForm::followDial(const Dial& dial) {
    if (!m_proposed) return;
    m_gear = gearFor(fittingChoice(dial), m_small);
    showGear();
    emit edited();
}

void GearForm::followFields() {
    m_proposed = false;
    m_choice->setCurrentIndex(static_cast<int>(choiceOf(value(), m_small)));
    emit edited();
}

void GearForm::tell(const Budget& budget, const DisplayUnits& units) {
    QString words = worthWords(budget, units);
    words[0] = words[0].toUpper();
    switch (choiceOf(value(), m_small)) {
    case GearChoice::unknown:
        words = tr("Readings are compared with the limits as if nothing were in doubt.");
        break;
    case GearChoice::fine:
    case GearChoice::coarse:
        words += tr(" – usual figures, not yours");
        break;
    case GearChoice::own:
        break;
    }
    m_worth->setText(words);
}

Gear GearForm::value() const {
    Gear gear = m_gear;
    gear.repeatability = m_repeatability->value();
    gear.repeatabilityFreedom.reset();
    if (m_readings->value()) gear.repeatabilityFreedom = static_cast<int>(*m_readings->value()) - 1;
    gear.step = m_step->value();
    gear.dialLocalError = m_nearError->value();
    gear.dialError = m_dialError->value();
    gear.master = m_master->value();
    gear.masterMeant = static_cast<Meant>(m_meant->currentIndex());
    gear.settingScatter = m_scatter->value();
    gear.drift = m_drift->value();
    gear.driftLimit = m_driftLimit->value();
    gear.rocking = m_rocking->value();
    gear.lastChecked = m_checked->text().trimmed().toStdString();
    return gear;
}

bool GearForm::commit() {
    bool good = m_readings->commit();
    for (LengthField* field : findChildren<LengthField*>())
        good = field->commit() && good;
    if (!good) m_fold->setOpen(true);
    return good;
}

} // namespace borewright
