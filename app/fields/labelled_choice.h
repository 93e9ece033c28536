// SPDX-License-Identifier: GPL-3.0-or-later
// A labelled list to choose one of. Only a choice by the user is told, never one by the program.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>

#include <functional>

namespace borewright {

class LabelledChoice : public QWidget {
    Q_OBJECT
public:
    LabelledChoice(const QString& label, const QStringList& choices,
                   std::function<void(int)> chosen, QWidget* parent = nullptr);
    void showData(int index); // −1 = the bores differ
    void setChoices(const QStringList& choices, int index);
    [[nodiscard]] QComboBox* comboBox() const { return m_box; }

private:
    QComboBox* m_box;
};

} // namespace borewright
