// SPDX-License-Identifier: GPL-3.0-or-later
// What the user prefers, whatever workbook is open: his shop, the look, sounds, the order of his
// hand. Kept in one file in his configuration folder by the shell.
#pragma once

#include "core/workbook/hone_record.h"
#include "core/workbook/survey.h"

#include <QObject>
#include <QString>
#include <QStringList>

#include <vector>

namespace borewright {

struct Preferences {
    enum class Theme { system, light, dark };
    enum class Paper { a4, letter };

    QString shopName;
    QString shopAddress; // several lines
    QString shopPicture; // file name of a picture for the sheet's head; empty = none
    QString measuredBy;  // offered to each new job
    Theme theme = Theme::system;
    Paper paper = Paper::a4;
    bool soundKept = true; // a tick when a reading is kept
    bool soundOdd = true;  // another when it looks odd
    Order order = Order::downAndUp;
    GaugeSetting gauge;               // the last used, offered to each new survey (as keptPart())
    bool gearChosen = false;          // that gauge's gear is his own choice, were it "not known"
    std::vector<GaugeSetting> gauges; // each he has named, as keptPart(), by name
    std::vector<Stone> stones;        // each he keeps in his drawer, by name; no ids
    QString copiesFolder;             // of dated copies; empty = the usual place
    int copiesLatest = 20;            // how many are kept (core/storage/dated_copies.h)
    int copiesDays = 30;
    int copiesMonths = 120;
    QString lastFile;                 // opened again at start
    QStringList recentFiles;          // newest first
    friend bool operator==(const Preferences&, const Preferences&) = default;
};

// `preferences` with this gauge as the last used, and kept under its name where it has one.
Preferences withGauge(Preferences preferences, const GaugeSetting& setting);

// `preferences` with this stone kept under its name, in place of what was kept so.
Preferences withStone(Preferences preferences, Stone stone);

// Holds the preferences while the program runs and tells when they change.
class PreferencesStore : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;
    [[nodiscard]] const Preferences& value() const { return m_value; }
    void set(const Preferences& value) {
        if (value == m_value) return;
        m_value = value;
        emit changed();
    }

signals:
    void changed();

private:
    Preferences m_value;
};

} // namespace borewright
