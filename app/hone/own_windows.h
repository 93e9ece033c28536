// SPDX-License-Identifier: GPL-3.0-or-later
// Up to three windows of a stroke as typed, a row each: from, to, how long, held at the stop.
#pragma once

#include "app/fields/length_field.h"
#include "app/fields/number_field.h"
#include "core/results/hone_outlook.h"

#include <QComboBox>
#include <QWidget>

#include <array>

namespace borewright {

class OwnWindows : public QWidget {
    Q_OBJECT
public:
    static constexpr std::size_t most = 3;
    explicit OwnWindows(Unit unit, QWidget* parent = nullptr);

    void setUnit(Unit unit);
    void show(const std::vector<StrokeWindow>& windows);
    using QWidget::show;
    // A window moved by hand in the drawing.
    void move(std::size_t window, Length from, Length to);
    // Rows with anything in them; refuses a row that is not whole, naming what it lacks.
    [[nodiscard]] Result<std::vector<StrokeWindow>> windows() const;
    // Commits every field; false, with the field in focus, where one is refused.
    bool commit();
    void focusFirst();

signals:
    void edited();

private:
    struct Row {
        LengthField* from;
        LengthField* to;
        NumberField* amount;
        QComboBox* kind; // seconds, strokes
        NumberField* hold;
    };
    Row makeRow(std::size_t number);
    [[nodiscard]] Result<std::optional<StrokeWindow>> windowOf(const Row& row) const;

    Unit m_unit;
    std::array<Row, most> m_rows{};
};

} // namespace borewright
