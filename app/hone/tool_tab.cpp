// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/tool_tab.h"

#include "app/fields/fold.h"
#include "app/fields/form_grid.h"
#include "app/fields/labelled.h"
#include "app/hone/hone_verbs.h"
#include "app/pictures/reading_words.h"
#include "core/honing/crosshatch.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

constexpr double usualBeat = 60;

QString shownNumber(std::optional<double> number) {
    return number ? QString::number(*number, 'g', 8) : QString();
}

Result<std::optional<double>> readNumber(const QString& text) {
    if (text.trimmed().isEmpty()) return std::nullopt;
    const auto read = readDecimal(text.trimmed().toStdString());
    if (!read) return tl::unexpected(read.error());
    return toDouble(*read);
}

} // namespace

ToolTab::ToolTab(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_angle(makePassingWord({}, this)) {
    m_angle->setAccessibleName(tr("Crosshatch"));
    m_angle->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 4, 0, 4);
    row->setSpacing(32);
    row->addWidget(buildHone(), 1);
    row->addWidget(buildCrosshatch(), 1);
    refresh(true);
}

QWidget* ToolTab::buildHone() {
    Document& document = m_context.document;
    m_speed = new CommittedField(
        tr("Speed of the spindle, 1/min"), [&document](const QString& text) -> Result<void> {
            const auto speed = readNumber(text);
            if (!speed) return tl::unexpected(speed.error());
            return changeHone(document, tr("speed of the hone"),
                              [&](HoneRecord& record) { record.hone.speedRpm = *speed; });
        });
    m_beat = new CommittedField(
        tr("Strokes a minute (the beat)"), [&document](const QString& text) -> Result<void> {
            const auto beat = readNumber(text);
            if (!beat) return tl::unexpected(beat.error());
            return changeHone(document, tr("beat of the hone"), [&](HoneRecord& record) {
                record.hone.beatsPerMinute = beat->value_or(usualBeat);
            });
        });
    m_feed =
        new CommittedField(tr("Spring or feed"), [&document](const QString& text) -> Result<void> {
            return changeHone(document, tr("feed of the hone"), [&](HoneRecord& record) {
                record.hone.feed = text.trimmed().toStdString();
            });
        });
    m_oil = new LabelledChoice(
        tr("Honed"), {tr("not said"), tr("with oil"), tr("dry")}, [&document](int chosen) {
            (void)changeHone(document, tr("oil or dry"), [&](HoneRecord& record) {
                record.hone.oil = chosen == 0 ? std::nullopt : std::optional(chosen == 1);
            });
        });
    m_speed->setHint(tr("not given"));
    m_feed->setHint(tr("in your words"));
    auto* part = new Part(tr("The hone"), {}, this);
    auto* grid = new FormGrid(2, this);
    for (QWidget* field : {static_cast<QWidget*>(m_speed), static_cast<QWidget*>(m_beat),
                           static_cast<QWidget*>(m_feed), static_cast<QWidget*>(m_oil)})
        grid->add(field);
    part->add(grid);
    part->layout()->setAlignment(Qt::AlignTop);
    return part;
}

QWidget* ToolTab::buildCrosshatch() {
    m_travel = new LengthField(tr("Travel of the stone"), m_context.document.units().size, this);
    m_wanted = new NumberField(tr("Wanted angle, degrees"),
                               {1, 179, false, tr("an angle lies between 1° and 179°")}, this);
    m_wanted->setPlaceholder(tr("such as 30"));
    connect(m_travel, &TypedField::edited, this, &ToolTab::reckon);
    connect(m_wanted, &TypedField::edited, this, &ToolTab::reckon);
    auto* part = new Part(tr("Crosshatch"), {}, this);
    auto* grid = new FormGrid(2, this);
    grid->add(labelled(tr("Travel of the stone"), m_travel));
    grid->add(labelled(tr("Wanted angle, degrees"), m_wanted));
    part->add(grid);
    part->add(m_angle);
    part->layout()->setAlignment(Qt::AlignTop);
    return part;
}

// Of the last pass's longest window; else nothing is known of it.
std::optional<double> ToolTab::usualTravel_mm() const {
    const auto& passes = m_context.document.workbook().hone.passes;
    for (auto pass = passes.rbegin(); pass != passes.rend(); ++pass) {
        if (pass->struck) continue;
        double longest = 0;
        for (const StrokeWindow& window : pass->windows)
            longest =
                std::max(longest, (window.to.value() - window.from.value()).in(Unit::millimetre));
        if (longest > 0) return longest;
    }
    return std::nullopt;
}

std::optional<double> ToolTab::boreSize_mm() const {
    const Workbook& workbook = m_context.document.workbook();
    const int number = m_context.selection.bore();
    if (const auto target = workbook.targets.find(number); target != workbook.targets.end())
        return target->second.size.value().in(Unit::millimetre);
    const Bore* bore = findBore(workbook.block, number);
    if (bore == nullptr || !bore->standardSize) return std::nullopt;
    return bore->standardSize->value().in(Unit::millimetre);
}

void ToolTab::reckon() {
    const Hone& hone = m_context.document.workbook().hone.hone;
    const auto travel = m_travel->value()
                            ? std::optional(m_travel->value()->value().in(Unit::millimetre))
                            : usualTravel_mm();
    const auto size = boreSize_mm();
    QStringList said;
    if (!size || !travel)
        said << tr("Give the travel of the stone: from its upper to its lower reversal.");
    const HoneMotion motion{size.value_or(0), hone.speedRpm.value_or(0), travel.value_or(0),
                            hone.beatsPerMinute};
    if (size && travel && !hone.speedRpm) said << tr("Give the speed of the spindle.");
    if (size && travel && hone.speedRpm) {
        const auto angle = crosshatchDegrees(motion);
        said << (angle ? tr("%1° %2.").arg(*angle, 0, 'f', 1).arg(qs(crosshatchConvention()))
                       : qs(angle.error().message()));
    }
    if (size && travel && m_wanted->value()) {
        if (const auto rpm = rpmForCrosshatch(*m_wanted->value(), motion))
            said << tr("For %1°: %2 turns a minute at this beat — only as far as the hone's maker "
                       "allows.")
                        .arg(*m_wanted->value())
                        .arg(*rpm, 0, 'f', 0);
        if (const auto beats = beatsForCrosshatch(*m_wanted->value(), motion);
            beats && hone.speedRpm)
            said << tr("Or %1 strokes a minute at this speed.").arg(*beats, 0, 'f', 0);
    }
    m_angle->setText(said.join(' '));
}

void ToolTab::refresh(bool anew) {
    const Hone& hone = m_context.document.workbook().hone.hone;
    const auto put = [&](CommittedField* field, const QString& text) {
        if (anew) {
            field->lineEdit()->setText(text);
            field->refuse({});
        }
        field->showData(text);
    };
    put(m_speed, shownNumber(hone.speedRpm));
    put(m_beat, shownNumber(hone.beatsPerMinute));
    put(m_feed, qs(hone.feed));
    m_oil->showData(!hone.oil ? 0 : *hone.oil ? 1 : 2);
    const Unit unit = m_context.document.units().size;
    m_travel->setUnit(unit);
    const auto travel = usualTravel_mm();
    m_travel->setPlaceholder(
        travel ? tr("last pass: %1")
                     .arg(qs(depthWithUnit(Length::nearest(*travel, Unit::millimetre),
                                           m_context.document.units())))
               : tr("not given"));
    reckon();
}

} // namespace borewright
