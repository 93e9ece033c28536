// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/gauge_form.h"

#include "app/fields/fold.h"
#include "app/measure/gear_form.h"
#include "app/measure/warmth_form.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace borewright {
namespace {

QString positiveOnly(Length value) {
    return value > Length() ? QString() : GaugeForm::tr("must be more than zero");
}

// Rows of the preset box; the last is the user's own.
Dial presetDial(int row) {
    switch (row) {
    case 0:
        return tenthDial();
    case 1:
        return halfThouDial();
    case 2:
        return micrometreDial();
    default:
        return hundredthDial();
    }
}
constexpr int ownPreset = 4;

bool sameScale(const Dial& a, const Dial& b) {
    return a.graduation.value() == b.graduation.value() && a.oneTurn.value() == b.oneTurn.value() &&
           a.travel.value() == b.travel.value();
}

} // namespace

GaugeForm::GaugeForm(QWidget* parent)
    : QWidget(parent)
    , m_gauge(new QComboBox(this))
    , m_setOn(new QLineEdit(this))
    , m_setSize(new LengthField(tr("Gauge set to"), Unit::inch, this))
    , m_entry(new QComboBox(this))
    , m_preset(new QComboBox(this))
    , m_graduation(new LengthField(tr("One division of the dial"), Unit::thou, this))
    , m_oneTurn(new LengthField(tr("One turn of the dial"), Unit::thou, this))
    , m_travel(new LengthField(tr("Travel of the dial"), Unit::thou, this))
    , m_face(new QComboBox(this))
    , m_larger(new QComboBox(this))
    , m_picture(new DialPicture(this))
    , m_gear(new GearForm(this))
    , m_warmth(new WarmthForm(this)) {
    build();
    followFields();
}

void GaugeForm::build() {
    auto* columns = new QHBoxLayout;
    columns->setSpacing(32);
    auto* left = new QFormLayout;
    auto* right = new QFormLayout;
    for (QFormLayout* form : {left, right}) {
        form->setVerticalSpacing(8);
        form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    }
    buildMain(left);
    buildDial(right);
    columns->addLayout(left, 3);
    columns->addLayout(right, 3);
    columns->addWidget(m_picture, 2, Qt::AlignTop);
    auto* gear = new Part(tr("What the gear is worth"), {}, this);
    gear->add(m_gear);
    auto* warmth = new Part(tr("Warmth"), {}, this);
    warmth->add(m_warmth);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(18);
    whole->addLayout(columns);
    whole->addWidget(gear);
    whole->addWidget(warmth);
}

void GaugeForm::followFields() {
    connect(m_setSize, &LengthField::edited, this, &GaugeForm::edited);
    for (const LengthField* field : {m_graduation, m_oneTurn, m_travel})
        connect(field, &LengthField::edited, this, &GaugeForm::edited);
    connect(m_entry, &QComboBox::activated, this, &GaugeForm::edited);
    connect(m_gear, &GearForm::edited, this, &GaugeForm::edited);
    connect(m_warmth, &WarmthForm::edited, this, &GaugeForm::edited);
    connect(m_gauge, &QComboBox::activated, this, &GaugeForm::chooseGauge);
    connect(m_preset, &QComboBox::activated, this, &GaugeForm::chooseDial);
    connect(m_larger, &QComboBox::activated, this, &GaugeForm::dialChosen);
    connect(m_face, &QComboBox::activated, this, &GaugeForm::dialChosen);
    for (LengthField* field : {m_graduation, m_oneTurn, m_travel}) {
        field->setCheck(positiveOnly);
        connect(field, &LengthField::committed, this, [this] {
            m_preset->setCurrentIndex(ownPreset);
            dialChosen();
        });
    }
}

void GaugeForm::buildMain(QFormLayout* form) {
    m_gauge->setAccessibleName(tr("Which gauge"));
    m_gauge->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_gauge->setMinimumContentsLength(18);
    m_gauge->setEditable(true);
    m_gauge->setInsertPolicy(QComboBox::NoInsert);
    m_gauge->setCompleter(nullptr);
    m_gauge->lineEdit()->setAccessibleName(tr("Which gauge"));
    m_gauge->lineEdit()->setPlaceholderText(tr("dial bore gauge no. 2"));
    m_gauge->setToolTip(tr("A gauge kept under its name brings its dial and what it is worth"));
    m_setOn->setAccessibleName(tr("Set on what"));
    m_setOn->setPlaceholderText(tr("a ring, a micrometer"));
    m_setSize->setCheck(positiveOnly);
    m_entry->setAccessibleName(tr("What is typed"));
    m_entry->addItems({tr("the dial's reading, from the set size"), tr("the diameter itself")});
    form->addRow(tr("Gauge &set to"), m_setSize);
    form->addRow(tr("Set &on"), m_setOn);
    form->addRow(tr("Which &gauge"), m_gauge);
    form->addRow(tr("What is t&yped"), m_entry);
}

void GaugeForm::buildDial(QFormLayout* form) {
    m_preset->setAccessibleName(tr("Dial"));
    m_preset->addItems({tr("0.0001 in, one turn 0.010"), tr("0.0005 in, one turn 0.050"),
                        tr("0.001 mm, one turn 0.2"), tr("0.01 mm, one turn 1"), tr("another")});
    m_face->setAccessibleName(tr("Face of the dial"));
    m_face->addItems({tr("figures rise both ways"), tr("figures run once round")});
    m_larger->setAccessibleName(tr("A larger bore reads"));
    m_larger->addItems({tr("plus"), tr("minus")});
    form->addRow(tr("&Dial"), m_preset);
    form->addRow(tr("A larger bore &reads"), m_larger);
    form->addRow(tr("&Face"), m_face);
    form->addRow(tr("One di&vision"), m_graduation);
    form->addRow(tr("One &turn"), m_oneTurn);
    form->addRow(tr("Tra&vel either way"), m_travel);
}

void GaugeForm::offer(const std::vector<GaugeSetting>& kept) {
    m_kept = kept;
    const QString now = m_gauge->currentText();
    m_gauge->clear();
    for (const GaugeSetting& gauge : kept)
        m_gauge->addItem(QString::fromStdString(gauge.gauge));
    m_gauge->setEditText(now);
}

void GaugeForm::chooseGauge(int row) {
    if (row < 0 || row >= static_cast<int>(m_kept.size())) return;
    const GaugeSetting& gauge = m_kept[static_cast<std::size_t>(row)];
    if (!gauge.setOn.empty()) m_setOn->setText(QString::fromStdString(gauge.setOn));
    m_entry->setCurrentIndex(static_cast<int>(gauge.entry));
    showDial(gauge.dial);
    m_gear->setValue(gauge.gear, m_small, false);
    emit edited();
}

void GaugeForm::chooseDial(int preset) {
    if (preset == ownPreset) return m_graduation->setFocus();
    const Dial dial = presetDial(preset);
    m_graduation->setValue(dial.graduation);
    m_oneTurn->setValue(dial.oneTurn);
    m_travel->setValue(dial.travel);
    dialChosen();
}

Dial GaugeForm::dialValue() const {
    Dial dial = m_dial;
    if (m_graduation->value()) dial.graduation = *m_graduation->value();
    if (m_oneTurn->value()) dial.oneTurn = *m_oneTurn->value();
    if (m_travel->value()) dial.travel = *m_travel->value();
    dial.face = static_cast<Dial::Face>(m_face->currentIndex());
    dial.larger = static_cast<Dial::Larger>(m_larger->currentIndex());
    return dial;
}

// What no field shows stays as it was.
void GaugeForm::showDial(const Dial& dial) {
    m_dial = dial;
    m_graduation->setValue(dial.graduation);
    m_oneTurn->setValue(dial.oneTurn);
    m_travel->setValue(dial.travel);
    m_face->setCurrentIndex(static_cast<int>(dial.face));
    m_larger->setCurrentIndex(static_cast<int>(dial.larger));
    int preset = 0;
    while (preset < ownPreset && !sameScale(presetDial(preset), dial))
        ++preset;
    m_preset->setCurrentIndex(preset);
    m_picture->setDial(dial);
}

void GaugeForm::dialChosen() {
    const Dial dial = dialValue();
    m_picture->setDial(dial);
    m_gear->followDial(dial);
    emit edited();
}

void GaugeForm::setValue(const SurveyHeader& header, const DisplayUnits& units, bool proposedGear) {
    const GaugeSetting& setting = header.gauge;
    m_small = units.small;
    m_gauge->setEditText(QString::fromStdString(setting.gauge));
    m_gauge->lineEdit()->setCursorPosition(0);
    m_setOn->setText(QString::fromStdString(setting.setOn));
    m_setSize->setUnit(units.size);
    m_setSize->setValue(setting.setSize);
    m_entry->setCurrentIndex(static_cast<int>(setting.entry));
    showDial(setting.dial);
    m_gear->setValue(setting.gear, units.small, proposedGear);
    m_warmth->setValue(header);
}

void GaugeForm::tell(const SurveyHeader& header, std::optional<Length> size,
                     const DisplayUnits& units) {
    Budget unknown;
    unknown.missing.emplace_back("the set size");
    m_gear->tell(size ? budgetOf(header, *size) : unknown, units);
    m_warmth->tell(header, size, units);
}

bool GaugeForm::commitDial() {
    bool good = true;
    for (LengthField* field : {m_graduation, m_oneTurn, m_travel}) {
        good = field->commit() && good;
        if (field->value()) continue;
        field->refuse(tr("a dial needs this"));
        good = false;
    }
    if (!good || m_oneTurn->value()->value() >= m_graduation->value()->value()) return good;
    m_oneTurn->refuse(tr("one turn is at least one division"));
    return false;
}

bool GaugeForm::commit() {
    bool good = m_setSize->commit();
    good = commitDial() && good;
    good = m_gear->commit() && good;
    good = m_warmth->commit() && good;
    if (m_entry->currentIndex() == static_cast<int>(Entry::deviation) && !m_setSize->value()) {
        m_setSize->refuse(tr("without the set size a dial's reading is no diameter"));
        good = false;
    }
    return good;
}

void GaugeForm::put(SurveyHeader& header) const {
    GaugeSetting& setting = header.gauge;
    setting.gauge = m_gauge->currentText().trimmed().toStdString();
    setting.setOn = m_setOn->text().trimmed().toStdString();
    setting.setSize = m_setSize->value();
    setting.entry = static_cast<Entry>(m_entry->currentIndex());
    setting.dial = dialValue();
    setting.gear = m_gear->value();
    m_warmth->put(header);
}

} // namespace borewright
