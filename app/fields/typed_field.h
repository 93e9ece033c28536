// SPDX-License-Identifier: GPL-3.0-or-later
// A field for one typed value, with its refusal beside it in words. Opening and leaving it changes
// nothing; an empty field means "not given". What reads well counts at once, so that whoever
// follows edited() sees it while it is typed; a refusal waits until the field is left.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

namespace borewright {

class TypedField : public QWidget {
    Q_OBJECT
public:
    // `name` is what a screen reader calls the field.
    explicit TypedField(const QString& name, QWidget* parent = nullptr);

    void setPlaceholder(const QString& text) { m_edit->setPlaceholderText(text); }
    // Reads what is typed now; false, with the refusal shown, where it cannot be kept.
    bool commit();
    void refuse(const QString& why);
    // Whether what stands there now is the value, and why not where it cannot be; said to nobody
    // until the field is left.
    [[nodiscard]] bool readsWell() const { return m_why.isEmpty(); }
    [[nodiscard]] const QString& why() const { return m_why; }
    [[nodiscard]] QString refusal() const { return m_refusal->text(); }
    [[nodiscard]] QLineEdit* edit() const { return m_edit; }

signals:
    void edited();    // what stands there reads well and is the value now
    void committed(); // the field was left with another value, by the user's hand

protected:
    // The value as the field shows it.
    [[nodiscard]] virtual QString shown() const = 0;
    // Makes a trimmed text the value; an empty one means "not given". Else why it cannot be.
    virtual QString take(const QString& text) = 0;
    // To be called when the value was set by the program.
    void showValue();

private:
    QLineEdit* m_edit;
    QLabel* m_refusal;
    QString m_why;     // of what was typed last
    QString m_settled; // as shown when the field was last left or set
};

} // namespace borewright
