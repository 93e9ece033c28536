// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/own_windows.h"

#include <QGridLayout>
#include <QLabel>

namespace borewright {
namespace {

constexpr double mostStrokes = 10'000, mostHeld = 3600;
enum Kind { seconds, strokes };

} // namespace

OwnWindows::OwnWindows(Unit unit, QWidget* parent)
    : QWidget(parent)
    , m_unit(unit) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(4);
    const std::array heads{tr("Window"), tr("Lower end from"),     tr("to"), tr("For"),
                           QString(),    tr("Held at the stop, s")};
    for (std::size_t column = 0; column < heads.size(); ++column)
        grid->addWidget(new QLabel(heads[column], this), 0, static_cast<int>(column));
    for (const int column : {1, 2, 3, 5})
        grid->setColumnStretch(column, 1);
    for (std::size_t i = 0; i < most; ++i) {
        m_rows[i] = makeRow(i + 1);
        const Row& row = m_rows[i];
        const int line = static_cast<int>(i) + 1;
        grid->addWidget(new QLabel(QString::number(i + 1), this), line, 0);
        int column = 1;
        for (QWidget* field : {static_cast<QWidget*>(row.from), static_cast<QWidget*>(row.to),
                               static_cast<QWidget*>(row.amount), static_cast<QWidget*>(row.kind),
                               static_cast<QWidget*>(row.hold)})
            grid->addWidget(field, line, column++, Qt::AlignTop);
    }
}

OwnWindows::Row OwnWindows::makeRow(std::size_t number) {
    const QString of = tr(" of window %1").arg(number);
    Row row;
    row.from = new LengthField(tr("Lower end from") + of, m_unit, this);
    row.to = new LengthField(tr("Lower end to") + of, m_unit, this);
    row.amount = new NumberField(
        tr("How long") + of,
        {0, mostStrokes, false, tr("seconds or strokes lie between 0 and 10 000")}, this);
    row.kind = new QComboBox(this);
    row.kind->addItems({tr("seconds"), tr("strokes")});
    row.kind->setAccessibleName(tr("Seconds or strokes") + of);
    row.hold =
        new NumberField(tr("Held at the stop") + of,
                        {0, mostHeld, false, tr("a hold lies between 0 and 3600 seconds")}, this);
    row.hold->setPlaceholder(tr("none"));
    for (TypedField* field :
         {static_cast<TypedField*>(row.from), static_cast<TypedField*>(row.to),
          static_cast<TypedField*>(row.amount), static_cast<TypedField*>(row.hold)}) {
        connect(field, &TypedField::edited, this, &OwnWindows::edited);
        // What does not read well changes no value, yet what stood there counts no more.
        connect(field->edit(), &QLineEdit::textEdited, this, [this, field] {
            if (!field->readsWell()) emit edited();
        });
    }
    connect(row.kind, &QComboBox::activated, this, &OwnWindows::edited);
    return row;
}

void OwnWindows::setUnit(Unit unit) {
    m_unit = unit;
    for (const Row& row : m_rows)
        for (LengthField* field : {row.from, row.to})
            field->setUnit(unit);
}

void OwnWindows::show(const std::vector<StrokeWindow>& windows) {
    for (std::size_t i = 0; i < most; ++i) {
        const Row& row = m_rows[i];
        const bool any = i < windows.size();
        row.from->setValue(any ? std::optional(windows[i].from) : std::nullopt);
        row.to->setValue(any ? std::optional(windows[i].to) : std::nullopt);
        const bool counted = any && windows[i].strokes;
        row.kind->setCurrentIndex(counted ? strokes : seconds);
        row.amount->setValue(!any      ? std::nullopt
                             : counted ? windows[i].strokes
                                       : windows[i].seconds);
        row.hold->setValue(any && windows[i].holdSeconds > 0 ? std::optional(windows[i].holdSeconds)
                                                             : std::nullopt);
    }
}

void OwnWindows::move(std::size_t window, Length from, Length to) {
    if (window >= most) return;
    m_rows[window].from->setValue(typedFrom(from, m_unit));
    m_rows[window].to->setValue(typedFrom(to, m_unit));
    emit edited();
}

Result<std::optional<StrokeWindow>> OwnWindows::windowOf(const Row& row) const {
    for (const TypedField* field :
         {static_cast<const TypedField*>(row.from), static_cast<const TypedField*>(row.to),
          static_cast<const TypedField*>(row.amount), static_cast<const TypedField*>(row.hold)})
        if (!field->readsWell()) return refuse(field->why().toStdString());
    if (!row.from->value() && !row.to->value() && !row.amount->value() && !row.hold->value())
        return std::nullopt;
    if (!row.from->value()) return refuse("from where? Give the upper end of the stroke");
    if (!row.to->value()) return refuse("to where? Give the lower end of the stroke");
    if (!row.amount->value() && !row.hold->value())
        return refuse("for how long? Give seconds or strokes");
    StrokeWindow window;
    window.from = *row.from->value();
    window.to = *row.to->value();
    (row.kind->currentIndex() == strokes ? window.strokes : window.seconds) =
        row.amount->value().value_or(0);
    window.holdSeconds = row.hold->value().value_or(0);
    return window;
}

Result<std::vector<StrokeWindow>> OwnWindows::windows() const {
    std::vector<StrokeWindow> windows;
    for (std::size_t i = 0; i < most; ++i) {
        auto window = windowOf(m_rows[i]);
        if (!window)
            return tl::unexpected(window.error().within("window " + std::to_string(i + 1)));
        if (*window) windows.push_back(std::move(**window));
    }
    return windows;
}

bool OwnWindows::commit() {
    for (const Row& row : m_rows)
        for (TypedField* field :
             {static_cast<TypedField*>(row.from), static_cast<TypedField*>(row.to),
              static_cast<TypedField*>(row.amount), static_cast<TypedField*>(row.hold)})
            if (!field->commit()) {
                field->edit()->setFocus();
                return false;
            }
    return true;
}

void OwnWindows::focusFirst() {
    m_rows.front().from->edit()->setFocus();
    m_rows.front().from->edit()->selectAll();
}

} // namespace borewright
