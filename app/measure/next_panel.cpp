// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/next_panel.h"

#include "app/pictures/picture_style.h"

#include <QGridLayout>
#include <QKeyEvent>

#include <algorithm>

namespace borewright {
namespace {

QString utf8(const std::string& text) {
    return QString::fromStdString(text);
}

// Cap height of about 7 mm on a usual screen: read from two metres. At the bench three times that.
constexpr int placePixels = 34;
constexpr int benchPlacePixels = 92;

} // namespace

NextPanel::NextPanel(const PageContext& context, EntryWalk& walk, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_walk(walk)
    , m_place(new QLabel(this))
    , m_detail(new QLabel(this))
    , m_became(new QLabel(this))
    , m_message(new QLabel(this))
    , m_keys(new QLabel(this))
    , m_entry(new QLineEdit(this))
    , m_angle(new QLineEdit(this))
    , m_unit(new QComboBox(this)) {
    buildPlace();
    buildEntry();
    layOut();
    scaleType();
    connect(&walk, &EntryWalk::changed, this, &NextPanel::show);
    show();
}

void NextPanel::buildPlace() {
    m_place->setAccessibleName(tr("Next reading"));
    m_became->setAccessibleName(tr("What the entry becomes"));
    m_message->setAccessibleName(tr("Message"));
    m_message->setWordWrap(true);
    m_detail->setWordWrap(true);
    m_became->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    // What belongs together is not parted where the line breaks.
    m_keys->setText(tr("<b>Enter</b>&nbsp;keep &nbsp; <b>/</b>&nbsp;back &nbsp; "
                       "<b>Enter</b>&nbsp;alone:&nbsp;skip &nbsp; <b>*</b>&nbsp;repeat &nbsp; "
                       "<b>−</b>&nbsp;<b>Enter</b>&nbsp;no&nbsp;wall &nbsp; <b>F8</b>&nbsp;zero "
                       "&nbsp; <b>F9</b>&nbsp;odd&nbsp;ones &nbsp; <b>F6</b>&nbsp;grid"));
    m_keys->setWordWrap(true); // the page is no wider for its sake
    m_keys->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_keys->setAccessibleName(
        tr("Keys: Enter keeps the reading, Enter alone skips, slash goes "
           "back, star repeats, minus and Enter means no wall here, F8 checks zero, "
           "F9 shows odd readings, F6 goes to the grid and back"));
}

void NextPanel::buildEntry() {
    m_entry->setObjectName(QStringLiteral("entry"));
    m_entry->setAccessibleName(tr("Reading"));
    m_entry->setMaxLength(40);
    m_entry->setAlignment(Qt::AlignRight);
    m_entry->installEventFilter(this);
    connect(m_entry, &QLineEdit::textEdited, this, [this](const QString& text) {
        m_message->clear();
        const QString became = m_walk.wouldBecome(text);
        m_became->setText(became.isEmpty() ? m_walk.lastBecame() : became);
    });

    m_unit->setAccessibleName(tr("Unit of the entry"));
    m_unit->setFocusPolicy(Qt::TabFocus);
    for (const Unit unit : allUnits) {
        const auto text = description(unit);
        m_unit->addItem(QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())),
                        static_cast<int>(unit));
    }
    connect(m_unit, &QComboBox::activated, this, [this](int row) {
        m_walk.setUnit(static_cast<Unit>(m_unit->itemData(row).toInt()));
        focusEntry();
    });

    m_angle->setAccessibleName(tr("Degrees off the axis, for the next reading"));
    m_angle->setPlaceholderText(tr("off axis °"));
    m_angle->setToolTip(tr("Where a port made you turn the gauge: degrees off the axis, for the "
                           "next reading only"));
    connect(m_angle, &QLineEdit::editingFinished, this, [this] {
        const QString text = m_angle->text().trimmed();
        const auto angle = readDecimal(text.toStdString());
        if (text.isEmpty())
            m_walk.setAngle(std::nullopt);
        else if (angle && std::abs(toDouble(*angle)) <= 90)
            m_walk.setAngle(toDouble(*angle));
        else
            tell(tr("'%1' is no angle off the axis; it lies between −90 and 90 degrees").arg(text),
                 true);
    });
}

void NextPanel::layOut() {
    auto* layout = new QGridLayout(this);
    layout->setContentsMargins(16, 10, 16, 10);
    layout->setHorizontalSpacing(16);
    layout->setVerticalSpacing(2);
    layout->addWidget(m_place, 0, 0, 1, 2);
    layout->addWidget(m_entry, 0, 2);
    layout->addWidget(m_became, 0, 3, 1, 2);
    layout->addWidget(m_detail, 1, 0, 1, 2);
    auto* side = new QHBoxLayout;
    side->addWidget(m_unit);
    side->addWidget(m_angle);
    layout->addLayout(side, 1, 2);
    layout->addWidget(m_message, 2, 0, 1, 3);
    layout->addWidget(m_keys, 2, 3, 1, 2);
    layout->setColumnStretch(0, 3);
    layout->setColumnStretch(3, 2);
    m_angle->setMaximumWidth(90);
    // Room for a message is kept free, so that the page does not jump when one appears.
    m_message->setMinimumHeight(fontMetrics().height() + 4);
}

void NextPanel::scaleType() {
    const auto pixels = [](QWidget* widget, int size, bool bold) {
        QFont font = widget->font();
        font.setPixelSize(size);
        font.setBold(bold);
        widget->setFont(font);
    };
    const int large = m_bench ? benchPlacePixels : placePixels;
    pixels(m_place, large, true);
    pixels(m_entry, large, true);
    pixels(m_became, m_bench ? 44 : 26, false);
    pixels(m_detail, m_bench ? 26 : 15, false);
    pixels(m_message, m_bench ? 26 : 15, false);
    pixels(m_keys, m_bench ? 18 : 13, false);
    m_entry->setFixedWidth(
        QFontMetrics(m_entry->font()).horizontalAdvance(QStringLiteral("−00.000")) + 24);
    m_message->setMinimumHeight(QFontMetrics(m_message->font()).height() + 4);
}

// At the bench the place has a line of its own, and what belongs below it has the whole width.
void NextPanel::setBench(bool bench) {
    m_bench = bench;
    auto* grid = static_cast<QGridLayout*>(layout());
    for (QWidget* widget :
         std::initializer_list<QWidget*>{m_place, m_entry, m_became, m_detail, m_message, m_keys})
        grid->removeWidget(widget);
    if (bench) {
        grid->addWidget(m_place, 0, 0, 1, 5);
        grid->addWidget(m_detail, 3, 0, 1, 5);
        grid->addWidget(m_entry, 4, 0, 1, 2, Qt::AlignLeft);
        grid->addWidget(m_became, 4, 2, 1, 3);
        grid->addWidget(m_message, 5, 0, 1, 5);
        grid->addWidget(m_keys, 6, 0, 1, 5);
    } else {
        grid->addWidget(m_place, 0, 0, 1, 2);
        grid->addWidget(m_entry, 0, 2);
        grid->addWidget(m_became, 0, 3, 1, 2);
        grid->addWidget(m_detail, 1, 0, 1, 2);
        grid->addWidget(m_message, 2, 0, 1, 3);
        grid->addWidget(m_keys, 2, 3, 1, 2);
    }
    m_unit->setVisible(!bench);
    m_angle->setVisible(!bench);
    scaleType();
    show();
}

void NextPanel::focusEntry() {
    m_entry->setFocus();
    m_entry->selectAll();
}

QString NextPanel::axisWords(const std::string& axis) const {
    const Axis* found = findAxis(m_context.document.workbook().block, axis);
    return found == nullptr ? utf8(axis) : utf8(found->label);
}

void NextPanel::show() {
    const auto row = m_unit->findData(static_cast<int>(m_walk.unit()));
    m_unit->setCurrentIndex(row);
    m_angle->setText(m_walk.angle() ? QString::number(*m_walk.angle()) : QString());
    m_became->setText(m_walk.lastBecame());
    const bool survey = !m_context.selection.survey().empty();
    m_entry->setEnabled(survey);
    if (m_walk.mode() == EntryWalk::Mode::zeroCheck) {
        m_place->setText(tr("Zero check"));
        m_detail->setText(tr("Put the gauge back on its master and type what it shows. "
                             "Enter alone goes back."));
        return;
    }
    const auto station = m_walk.current();
    if (!survey || !station) {
        m_place->setText(survey ? tr("All read") : tr("No survey yet"));
        m_detail->setText(survey
                              ? tr("Every station of this survey is read. See Judge, or choose a "
                                   "cell to read it again.")
                              : tr("Choose New survey to begin."));
        return;
    }
    showPlace(station);
}

void NextPanel::showPlace(const std::optional<Station>& station) {
    const DisplayUnits& units = m_context.document.units();
    m_place->setText(tr("Bore %1 · %2 · %3")
                         .arg(station->bore)
                         .arg(utf8(depthWithUnit(station->depth, units)), utf8(station->axis)));
    const auto route = m_walk.route();
    QString detail = axisWords(station->axis);
    const SurveyResult* survey =
        findResult(m_context.document.surveyResults(), m_context.selection.survey());
    const BoreResult* bore = survey == nullptr ? nullptr : findBoreResult(*survey, station->bore);
    const StationResult* here =
        bore == nullptr ? nullptr : findStation(*bore, station->depth, station->axis);
    if (here != nullptr && here->diameter) {
        const QString size = utf8(sizeWithUnit(*here->diameter, units));
        detail += m_walk.mode() == EntryWalk::Mode::repeat
                      ? tr(" · repeat %1 (now %2)").arg(here->repeats + 1).arg(size)
                      : tr(" · now %1; a new reading replaces it").arg(size);
        for (const std::string& why : here->odd)
            detail += tr(" · odd: %1").arg(utf8(why));
    } else if (here != nullptr && !here->judged) {
        detail += tr(" · witness, not judged");
    }
    detail += tr(" · %1 of %2 read").arg(m_walk.read()).arg(route.size());
    m_detail->setText(detail);
}

void NextPanel::tell(const QString& sentence, bool refusal) {
    const PictureStyle style = PictureStyle::forPalette(palette(), font());
    QPalette colours = palette();
    if (refusal) colours.setColor(QPalette::WindowText, style.outside);
    m_message->setPalette(colours);
    m_message->setText(sentence);
}

void NextPanel::answer(const EntryWalk::Outcome& outcome) {
    if (!outcome.refusal.isEmpty()) {
        tell(outcome.refusal, true);
        m_entry->selectAll();
        return;
    }
    m_entry->clear();
    if (!outcome.odd.isEmpty())
        tell(tr("Kept, but odd: %1.").arg(outcome.odd), false);
    else
        m_message->clear();
}

void NextPanel::keep() {
    const QString text = m_entry->text().trimmed();
    const bool onlyMinus = text == QStringLiteral("-") || text == QString(QChar(0x2212));
    m_message->clear();
    if (text.isEmpty())
        m_walk.skip();
    else if (onlyMinus && m_walk.mode() == EntryWalk::Mode::reading)
        answer(m_walk.noWall());
    else
        answer(m_walk.keep(text));
}

bool NextPanel::driveByKey(int key) {
    switch (key) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        keep();
        return true;
    case Qt::Key_Slash:
    case Qt::Key_Up:
        m_entry->clear();
        m_message->clear();
        m_walk.back();
        return true;
    case Qt::Key_Down:
        m_entry->clear();
        m_message->clear();
        m_walk.skip();
        return true;
    case Qt::Key_Asterisk:
        // Typed after a number: keep it, and stay for one more.
        if (m_entry->text().trimmed().isEmpty()) {
            answer(m_walk.repeat());
        } else {
            keep();
            if (m_entry->text().isEmpty()) answer(m_walk.repeatLast());
        }
        return true;
    case Qt::Key_Escape:
        m_entry->clear();
        m_message->clear();
        m_walk.cancelMode();
        return true;
    default:
        break;
    }
    return false;
}

bool NextPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_entry && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (!(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && driveByKey(key->key()))
            return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace borewright
