// SPDX-License-Identifier: GPL-3.0-or-later
// The walk round the stations of a survey: where the next reading belongs, and what an entry there
// becomes. No widgets: the panel shows it, the number pad drives it.
#pragma once

#include "app/context/page_context.h"

#include <QObject>
#include <QString>

#include <optional>
#include <set>
#include <vector>

namespace borewright {

class EntryWalk : public QObject {
    Q_OBJECT
public:
    enum class Mode {
        reading,   // the first at a station, or one that replaces what is there
        repeat,    // one more at a station that has readings
        zeroCheck, // the gauge back on its master
    };
    // What an entry came to. `refusal` is empty where it was kept.
    struct Outcome {
        bool kept = false;
        QString refusal;
        QString odd; // why it looks odd though kept
    };

    EntryWalk(const PageContext& context, QObject* parent = nullptr);

    // The station that waits; nothing where there is no survey, or all is read and none chosen.
    [[nodiscard]] std::optional<Station> current() const;
    [[nodiscard]] Mode mode() const { return m_mode; }
    [[nodiscard]] Unit unit() const { return m_unit; }
    void setUnit(Unit unit);
    // Degrees off the axis for the next reading only, where a port made him turn the gauge.
    void setAngle(std::optional<double> degrees) { m_angle = degrees; }
    [[nodiscard]] std::optional<double> angle() const { return m_angle; }

    // The survey's stations with wall, in the order of the hand.
    [[nodiscard]] const std::vector<Station>& route() const;
    // How many of them are read.
    [[nodiscard]] std::size_t read() const;

    // Keeps `text` at the current station and goes on to the next that waits. A reading at a
    // station that has some replaces them (struck out); in repeat mode it joins them.
    Outcome keep(const QString& text);
    // On without a reading; back to the station before, in the order of the hand.
    void skip();
    void back();
    // One more reading at the current station if it has one, else at the station kept last.
    Outcome repeat();
    Outcome repeatLast(); // at the station kept last, wherever the walk has gone

    // There is no wall here for the gauge to touch: marks the bore and goes on. Refused where a
    // reading was kept.
    Outcome noWall();
    void startZeroCheck();
    void cancelMode();

    // What the entry kept last became: "−1.5 → 3.5015 in"; empty at the start.
    [[nodiscard]] QString lastBecame() const { return m_lastBecame; }
    [[nodiscard]] const std::optional<Station>& lastKept() const { return m_lastKept; }
    // What `text` would become at the current station, while it is being typed; empty if nothing.
    [[nodiscard]] QString wouldBecome(const QString& text) const;

signals:
    void changed();

private:
    [[nodiscard]] const Survey* survey() const;
    [[nodiscard]] bool isRead(const Station& station) const;
    void lookAround() const;
    [[nodiscard]] QString became(const TypedLength& typed) const;
    void moveOn(const Station& from);
    Outcome repeatAt(const std::optional<Station>& station);
    void chooseUnit();
    [[nodiscard]] QString oddAt(const Station& station) const;
    Outcome keepReading(const TypedLength& typed);
    Outcome keepZeroCheck(const TypedLength& typed);

    // What route() and isRead() answer, made once for a revision, a survey and an order.
    struct Seen {
        std::uint64_t revision = 0;
        std::string survey;
        Order order = Order::downAndUp;
        std::vector<Station> route;
        std::set<Station> read;
        std::size_t readOnRoute = 0;
    };

    PageContext m_context;
    mutable std::optional<Seen> m_seen;
    Mode m_mode = Mode::reading;
    Unit m_unit = Unit::thou;
    std::string m_unitSurvey; // the survey that m_unit was chosen for
    std::optional<double> m_angle;
    QString m_lastBecame;
    std::optional<Station> m_lastKept;
};

} // namespace borewright
