// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/gauge_form.h"

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

QString warmthText(const std::optional<TypedTemperature>& temperature) {
    if (!temperature) return {};
    return QString::fromStdString(temperature->text()) +
           (temperature->scale() == Scale::celsius ? QStringLiteral(" °C") : QStringLiteral(" °F"));
}

} // namespace

GaugeForm::GaugeForm(QWidget* parent)
    : QWidget(parent)
    , m_gauge(new QLineEdit(this))
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
    , m_masterTemperature(new QLineEdit(this))
    , m_blockTemperature(new QLineEdit(this))
    , m_blockExpansion(new QComboBox(this))
    , m_warmthRefusal(new QLabel(this)) {
    auto* columns = new QHBoxLayout(this);
    columns->setContentsMargins(0, 0, 0, 0);
    columns->setSpacing(32);
    auto* left = new QFormLayout;
    auto* right = new QFormLayout;
    for (QFormLayout* form : {left, right}) {
        form->setVerticalSpacing(8);
        form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    }
    buildMain(left);
    buildWarmth(left);
    buildDial(right);
    columns->addLayout(left, 3);
    columns->addLayout(right, 3);
    columns->addWidget(m_picture, 2, Qt::AlignTop);
}

void GaugeForm::buildMain(QFormLayout* form) {
    m_gauge->setAccessibleName(tr("Which gauge"));
    m_gauge->setPlaceholderText(tr("dial bore gauge no. 2"));
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
    connect(m_preset, &QComboBox::activated, this, &GaugeForm::chooseDial);
    connect(m_larger, &QComboBox::activated, this, &GaugeForm::showDial);
    connect(m_face, &QComboBox::activated, this, &GaugeForm::showDial);
    for (LengthField* field : {m_graduation, m_oneTurn, m_travel}) {
        field->setCheck(positiveOnly);
        connect(field, &LengthField::committed, this, [this] {
            m_preset->setCurrentIndex(ownPreset);
            showDial();
        });
    }
}

void GaugeForm::buildWarmth(QFormLayout* form) {
    m_masterTemperature->setAccessibleName(tr("Temperature of the master"));
    m_masterTemperature->setPlaceholderText(tr("not known: no correction"));
    m_blockTemperature->setAccessibleName(tr("Temperature of the block"));
    m_blockTemperature->setPlaceholderText(tr("not known: no correction"));
    m_blockExpansion->setAccessibleName(tr("The bore expands like"));
    m_blockExpansion->addItems(
        {tr("grey iron"), tr("an iron sleeve in aluminium"), tr("aluminium")});
    m_warmthRefusal->setWordWrap(true);
    m_warmthRefusal->setObjectName(QStringLiteral("refusal"));
    m_warmthRefusal->hide();
    form->addRow(tr("&Master at"), m_masterTemperature);
    form->addRow(tr("&Block at"), m_blockTemperature);
    form->addRow(tr("Bore e&xpands like"), m_blockExpansion);
    form->addRow(m_warmthRefusal);
    connect(m_masterTemperature, &QLineEdit::editingFinished, this, &GaugeForm::commitTemperatures);
    connect(m_blockTemperature, &QLineEdit::editingFinished, this, &GaugeForm::commitTemperatures);
}

void GaugeForm::chooseDial(int preset) {
    if (preset == ownPreset) return m_graduation->setFocus();
    const Dial dial = presetDial(preset);
    m_graduation->setValue(dial.graduation);
    m_oneTurn->setValue(dial.oneTurn);
    m_travel->setValue(dial.travel);
    showDial();
}

Dial GaugeForm::dialValue() const {
    Dial dial = m_setting.dial;
    if (m_graduation->value()) dial.graduation = *m_graduation->value();
    if (m_oneTurn->value()) dial.oneTurn = *m_oneTurn->value();
    if (m_travel->value()) dial.travel = *m_travel->value();
    dial.face = static_cast<Dial::Face>(m_face->currentIndex());
    dial.larger = static_cast<Dial::Larger>(m_larger->currentIndex());
    return dial;
}

void GaugeForm::showDial() {
    m_picture->setDial(dialValue());
}

void GaugeForm::setValue(const GaugeSetting& setting, Unit sizeUnit) {
    m_setting = setting;
    m_gauge->setText(QString::fromStdString(setting.gauge));
    m_setOn->setText(QString::fromStdString(setting.setOn));
    m_setSize->setUnit(sizeUnit);
    m_setSize->setValue(setting.setSize);
    m_entry->setCurrentIndex(static_cast<int>(setting.entry));
    m_graduation->setValue(setting.dial.graduation);
    m_oneTurn->setValue(setting.dial.oneTurn);
    m_travel->setValue(setting.dial.travel);
    m_face->setCurrentIndex(static_cast<int>(setting.dial.face));
    m_larger->setCurrentIndex(static_cast<int>(setting.dial.larger));
    int preset = 0;
    while (preset < ownPreset && !sameScale(presetDial(preset), setting.dial))
        ++preset;
    m_preset->setCurrentIndex(preset);
    m_masterWarmth = setting.masterTemperature;
    m_blockWarmth = setting.blockTemperature;
    m_masterTemperature->setText(warmthText(m_masterWarmth));
    m_blockTemperature->setText(warmthText(m_blockWarmth));
    m_blockExpansion->setCurrentIndex(static_cast<int>(setting.blockExpansion));
    showDial();
}

bool GaugeForm::commitTemperatures() {
    struct Field {
        QLineEdit* edit;
        std::optional<TypedTemperature>& value;
    };
    for (const Field& field :
         {Field{m_masterTemperature, m_masterWarmth}, Field{m_blockTemperature, m_blockWarmth}}) {
        const QString text = field.edit->text().trimmed();
        if (text.isEmpty()) {
            field.value.reset();
            continue;
        }
        const auto read = readTemperature(text.toStdString(), Scale::celsius);
        m_warmthRefusal->setVisible(!read);
        if (!read) {
            m_warmthRefusal->setText(QString::fromStdString(read.error().message()));
            return false;
        }
        field.value = *read;
        field.edit->setText(warmthText(field.value));
    }
    m_warmthRefusal->hide();
    return true;
}

bool GaugeForm::commit() {
    bool good = commitTemperatures();
    for (LengthField* field : {m_setSize, m_graduation, m_oneTurn, m_travel})
        good = field->commit() && good;
    for (LengthField* field : {m_graduation, m_oneTurn, m_travel}) {
        if (field->value()) continue;
        field->refuse(tr("a dial needs this"));
        good = false;
    }
    if (good && m_oneTurn->value()->value() < m_graduation->value()->value()) {
        m_oneTurn->refuse(tr("one turn is at least one division"));
        good = false;
    }
    if (m_entry->currentIndex() == static_cast<int>(Entry::deviation) && !m_setSize->value()) {
        m_setSize->refuse(tr("without the set size a dial's reading is no diameter"));
        good = false;
    }
    return good;
}

GaugeSetting GaugeForm::value() const {
    GaugeSetting setting = m_setting;
    setting.gauge = m_gauge->text().trimmed().toStdString();
    setting.setOn = m_setOn->text().trimmed().toStdString();
    setting.setSize = m_setSize->value();
    setting.entry = static_cast<Entry>(m_entry->currentIndex());
    setting.dial = dialValue();
    setting.masterTemperature = m_masterWarmth;
    setting.blockTemperature = m_blockWarmth;
    setting.blockExpansion = static_cast<Expansion>(m_blockExpansion->currentIndex());
    return setting;
}

} // namespace borewright
