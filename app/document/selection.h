// SPDX-License-Identifier: GPL-3.0-or-later
// What the user is looking at, shared by all pages: choosing a bore or a station in one picture
// chooses it in all.
#pragma once

#include "app/document/document.h"

#include <QObject>

#include <optional>

namespace borewright {

class Selection : public QObject {
    Q_OBJECT
public:
    explicit Selection(Document& document, QObject* parent = nullptr);

    // Id of the survey looked at; empty where the workbook has none.
    [[nodiscard]] const std::string& survey() const { return m_survey; }
    // Engine number of the bore looked at; 0 where the block has none.
    [[nodiscard]] int bore() const { return m_bore; }
    [[nodiscard]] const std::optional<Station>& station() const { return m_station; }

    void setSurvey(const std::string& survey);
    void setBore(int bore);               // leaves the station if it is of another bore
    void setStation(const Station& station); // chooses its bore too

signals:
    void changed();

private:
    void keepValid();

    Document& m_document;
    std::string m_survey;
    int m_bore = 0;
    std::optional<Station> m_station;
};

} // namespace borewright
