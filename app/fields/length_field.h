// SPDX-License-Identifier: GPL-3.0-or-later
// A field for one length as typed, with its refusal beside it in words. Opening and leaving it
// changes nothing; an empty field means "not given".
#pragma once

#include "core/length/number_text.h"

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

#include <functional>
#include <optional>

namespace borewright {

class LengthField : public QWidget {
    Q_OBJECT
public:
    // `name` is what a screen reader calls the field. A number without a unit is taken in `unit`.
    LengthField(const QString& name, Unit unit, QWidget* parent = nullptr);

    [[nodiscard]] const std::optional<TypedLength>& value() const { return m_value; }
    void setValue(const std::optional<TypedLength>& value);
    void setUnit(Unit unit);
    [[nodiscard]] Unit unit() const { return m_unit; }
    // What is refused beyond not being a number: returns why, or an empty text.
    void setCheck(std::function<QString(Length)> check) { m_check = std::move(check); }
    void setPlaceholder(const QString& text) { m_edit->setPlaceholderText(text); }
    // Reads what is typed now; false, with the refusal shown, where it cannot be kept.
    bool commit();
    void refuse(const QString& why);
    [[nodiscard]] QLineEdit* edit() const { return m_edit; }

signals:
    void committed(); // the value changed by the user's hand

private:
    [[nodiscard]] QString shown() const;

    QLineEdit* m_edit;
    QLabel* m_refusal;
    Unit m_unit;
    std::optional<TypedLength> m_value;
    std::function<QString(Length)> m_check;
};

} // namespace borewright
