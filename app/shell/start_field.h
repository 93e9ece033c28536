// SPDX-License-Identifier: GPL-3.0-or-later
// A field of the start form: its label above, beneath it what was understood ("3.0 thou") or, in
// words, why it cannot be.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

namespace borewright {

class StartField : public QWidget {
    Q_OBJECT
public:
    StartField(const QString& label, const QString& hint, QWidget* parent = nullptr);

    [[nodiscard]] std::string text() const { return m_edit->text().trimmed().toStdString(); }
    [[nodiscard]] QLineEdit* edit() const { return m_edit; }
    [[nodiscard]] QString note() const { return m_note->text(); }
    // What was understood; in faint ink.
    void tell(const QString& note);
    // Why not; in the colour of a warning.
    void refuse(const QString& why);

private:
    void show(const QString& note, const QColor& ink);

    QLineEdit* m_edit;
    QLabel* m_note;
};

} // namespace borewright
