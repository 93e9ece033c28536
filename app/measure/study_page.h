// SPDX-License-Identifier: GPL-3.0-or-later
// The same spot ten times, guided: what to do in one sentence, the readings by the number pad, and
// what they tell as they come.
#pragma once

#include "app/measure/study_walk.h"

#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QWidget>

namespace borewright {

class StudyPage : public QWidget {
    Q_OBJECT
public:
    explicit StudyPage(const PageContext& context, QWidget* parent = nullptr);
    // For the gauge of the chosen survey.
    void open();

signals:
    // Left; with what was done, where anything was.
    void closed(const QString& sentence);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void build();
    QWidget* buildEntry();
    QWidget* buildReadings();
    void addKeys();
    void showStudy();
    void showReadings(const std::optional<StudyResult>& result);
    void showResult(const std::optional<StudyResult>& result);
    void enter();
    bool driveByKey(int key);
    void strikeChosen();
    void another();
    void use();
    void say(const QString& refusal);

    PageContext m_context;
    StudyWalk m_walk;
    QLabel* m_gauge;
    QLineEdit* m_person;
    QLineEdit* m_spot;
    QLabel* m_count;
    QLineEdit* m_entry;
    QLabel* m_unit;
    QLabel* m_refusal;
    QLabel* m_hint;
    QListWidget* m_list;
    QLabel* m_result;
    QPushButton* m_use;
    QPushButton* m_another;
    QPushButton* m_strike;
};

} // namespace borewright
