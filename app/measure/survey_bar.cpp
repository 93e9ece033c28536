// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/survey_bar.h"

#include "app/measure/gear_words.h"
#include "core/gauging/gauging.h"

#include <QGridLayout>
#include <QHBoxLayout>

namespace borewright {
namespace {

QString utf8(const std::string& text) {
    return QString::fromStdString(text);
}

QString typedWithUnit(const TypedLength& typed) {
    const auto unit = symbol(typed.unit());
    return utf8(typed.text()) + QLatin1Char(' ') +
           QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()));
}

} // namespace

SurveyBar::SurveyBar(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_survey(new QComboBox(this))
    , m_new(new QPushButton(tr("&New survey…"), this))
    , m_heading(new QPushButton(tr("&Gauge and survey…"), this))
    , m_zero(new QPushButton(tr("&Zero check"), this))
    , m_repeat(new QPushButton(tr("Re&peatability…"), this))
    , m_showing(new QComboBox(this))
    , m_order(new QComboBox(this))
    , m_gauge(new QLabel(this))
    , m_warnings(new ElidedLabel(this)) {
    build();
    connect(m_survey, &QComboBox::activated, this, [this](int row) {
        m_context.selection.setSurvey(m_survey->itemData(row).toString().toStdString());
    });
    connect(m_new, &QPushButton::clicked, this, &SurveyBar::newSurvey);
    connect(m_heading, &QPushButton::clicked, this, &SurveyBar::editSurvey);
    connect(m_zero, &QPushButton::clicked, this, &SurveyBar::zeroCheck);
    connect(m_repeat, &QPushButton::clicked, this, &SurveyBar::repeatability);
    connect(m_showing, &QComboBox::activated, this,
            [this](int row) { emit showingChosen(static_cast<GridModel::Showing>(row)); });
    connect(m_order, &QComboBox::activated, this, [this](int row) {
        Preferences preferences = m_context.preferences.value();
        preferences.order = static_cast<Order>(row);
        m_context.preferences.set(preferences);
    });
    connect(&context.document, &Document::changed, this, [this](Change change) {
        if (change != Change::readings && change != Change::doubts) show();
    });
    connect(&context.selection, &Selection::changed, this, &SurveyBar::show);
    connect(&context.preferences, &PreferencesStore::changed, this, &SurveyBar::show);
    show();
}

void SurveyBar::build() {
    m_survey->setAccessibleName(tr("Survey"));
    m_survey->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_survey->setMinimumContentsLength(18);
    m_showing->setAccessibleName(tr("What the cells show"));
    m_showing->addItems({tr("show readings"), tr("show sizes"), tr("show to go")});
    m_order->setAccessibleName(tr("Order of the hand"));
    m_order->addItems({tr("down A, up B"), tr("down each axis"), tr("level by level"),
                       tr("each level across the block")});
    m_zero->setToolTip(tr("Put the gauge back on its master and note what it shows (F8)"));
    m_repeat->setToolTip(tr("The same spot ten times: what your hand and this gauge scatter by"));
    m_gauge->setAccessibleName(tr("Gauge setting and limits"));
    m_gauge->setWordWrap(true);
    auto* layout = new QGridLayout(this);
    layout->setContentsMargins(16, 10, 16, 6);
    layout->setVerticalSpacing(4);
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    for (QWidget* widget : {static_cast<QWidget*>(m_survey), static_cast<QWidget*>(m_new),
                            static_cast<QWidget*>(m_heading), static_cast<QWidget*>(m_zero),
                            static_cast<QWidget*>(m_repeat)})
        row->addWidget(widget);
    row->addStretch();
    row->addWidget(m_order);
    row->addWidget(m_showing);
    layout->addLayout(row, 0, 0);
    layout->addWidget(m_gauge, 1, 0);
    layout->addWidget(m_warnings, 2, 0);
}

void SurveyBar::show() {
    const Workbook& workbook = m_context.document.workbook();
    m_survey->clear();
    for (const Survey& survey : workbook.surveys)
        m_survey->addItem(utf8(survey.header.name), utf8(survey.header.id));
    m_survey->setCurrentIndex(m_survey->findData(utf8(m_context.selection.survey())));
    m_order->setCurrentIndex(static_cast<int>(m_context.preferences.value().order));
    const Survey* survey = findSurvey(workbook, m_context.selection.survey());
    for (QWidget* widget : {static_cast<QWidget*>(m_survey), static_cast<QWidget*>(m_heading),
                            static_cast<QWidget*>(m_zero), static_cast<QWidget*>(m_repeat)})
        widget->setEnabled(survey != nullptr);
    if (survey == nullptr) {
        showWarnings(nullptr);
        m_gauge->setText(tr("A survey is a set of readings that belong together: as found, a check "
                            "while honing, the final one."));
        return;
    }
    const SurveyResult* result = findResult(m_context.document.surveyResults(), survey->header.id);
    const QString limits = result != nullptr && result->hasLimits
                               ? tr("judged by %1").arg(utf8(result->judgedBy))
                           : result != nullptr ? utf8(result->judgedBy)
                                               : QString();
    QStringList line{gaugeLine(survey->header)};
    if (result != nullptr)
        line << readingDoubtWords(result->doubts.budget, m_context.document.units());
    line << zeroLine(survey->header) << limits;
    m_gauge->setText(line.join(QStringLiteral(" · ")));
    showWarnings(result);
}

// One line, whatever the width; the whole of it where the pointer rests.
void SurveyBar::showWarnings(const SurveyResult* result) {
    QStringList warnings;
    if (result != nullptr)
        for (const std::string& warning : result->doubts.warnings)
            warnings << utf8(warning);
    m_warnings->setVisible(!warnings.isEmpty());
    m_warnings->setText(warnings.size() < 2
                            ? warnings.join(QString())
                            : tr("%1 (and %2 more)").arg(warnings[0]).arg(warnings.size() - 1),
                        warnings.join(QStringLiteral("\n")));
}

QString SurveyBar::gaugeLine(const SurveyHeader& header) const {
    const GaugeSetting& gauge = header.gauge;
    QStringList parts;
    if (gauge.setSize) {
        QString set = tr("gauge set to %1").arg(typedWithUnit(*gauge.setSize));
        if (!gauge.setOn.empty()) set += tr(" on %1").arg(utf8(gauge.setOn));
        parts << set;
    }
    parts << tr("dial %1").arg(typedWithUnit(gauge.dial.graduation));
    if (gauge.entry == Entry::diameter)
        parts << tr("diameters are typed");
    else
        parts << (gauge.dial.larger == Dial::Larger::plus ? tr("a larger bore reads plus")
                                                          : tr("a larger bore reads minus"));
    if (correctsTemperature(gauge))
        parts << tr("block at %1 °C, brought to 20 °C")
                     .arg(gauge.blockTemperature->celsius(), 0, 'f', 1);
    if (header.plate) parts << (*header.plate ? tr("torque plate on") : tr("torque plate off"));
    return parts.join(QStringLiteral(" · "));
}

QString SurveyBar::zeroLine(const SurveyHeader& header) const {
    const auto drift = zeroDrift(header);
    if (!drift) return tr("zero not checked");
    const DisplayUnits& units = m_context.document.units();
    return tr("zero last read %1 at %2")
        .arg(utf8(smallWithUnit(drift->last, units, Sign::always)),
             utf8(clockTime(header.zeroChecks.back().time)));
}

} // namespace borewright
