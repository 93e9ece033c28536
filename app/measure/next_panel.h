// SPDX-License-Identifier: GPL-3.0-or-later
// The next reading in large type, the field it is typed into, and what the last one became. The
// number pad alone drives it: the keys are shown.
#pragma once

#include "app/measure/entry_walk.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QWidget>

namespace borewright {

class NextPanel : public QWidget {
    Q_OBJECT
public:
    NextPanel(const PageContext& context, EntryWalk& walk, QWidget* parent = nullptr);

    // Large type for the bench: legible across the shop.
    void setBench(bool bench);
    void focusEntry();
    // A sentence under the entry: a refusal or what was done.
    void tell(const QString& sentence, bool refusal);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void buildPlace();
    void buildEntry();
    void layOut();
    void scaleType();
    void show();
    void showPlace(const std::optional<Station>& station);
    void keep();
    bool driveByKey(int key);
    void answer(const EntryWalk::Outcome& outcome);
    [[nodiscard]] QString axisWords(const std::string& axis) const;

    PageContext m_context;
    EntryWalk& m_walk;
    bool m_bench = false;
    QLabel* m_place;  // "Bore 1   1.75 in   B"
    QLabel* m_detail; // axis in words, what stands there, progress
    QLabel* m_became; // "−1.5 → 3.5015 in"
    QLabel* m_message;
    QLabel* m_keys;
    QLineEdit* m_entry;
    QLineEdit* m_angle;
    QComboBox* m_unit;
};

} // namespace borewright
