// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/edit_checks.h"

#include <map>

namespace borewright {
namespace {

bool sameShape(const Stone& a, const Stone& b) {
    return a.begins == b.begins && a.ends == b.ends && a.outOfOpenEnd == b.outOfOpenEnd &&
           a.outOfClosedEnd == b.outOfClosedEnd;
}

} // namespace

Result<void> keepsStations(const Workbook& workbook, const Block& block) {
    const auto check = [&](const Survey& survey, const Station& station) -> Result<void> {
        const std::string used = " is in the survey '" + survey.header.name + "', so it stays";
        if (findBore(block, station.bore) == nullptr)
            return refuse("bore " + std::to_string(station.bore) + used);
        if (findAxis(block, station.axis) == nullptr) return refuse("axis " + station.axis + used);
        return {};
    };
    for (const Survey& survey : workbook.surveys) {
        for (const Reading& reading : survey.readings)
            if (auto good = check(survey, reading.station); !good) return good;
        if (survey.header.asked)
            for (const Station& station : *survey.header.asked)
                if (auto good = check(survey, station); !good) return good;
    }
    for (const Pass& pass : workbook.hone.passes)
        if (findBore(block, pass.bore) == nullptr)
            return refuse("bore " + std::to_string(pass.bore) + " has been honed (at " +
                          clockTime(pass.time) + " on " + dateInWords(pass.time) +
                          "), so it stays");
    return {};
}

Result<void> checkPasses(const Workbook& workbook, const HoneRecord& hone) {
    std::map<std::string, const Pass*> before;
    for (const Pass& pass : workbook.hone.passes)
        before[pass.id] = &pass;
    const auto stood = [&](const Pass& pass) {
        const auto found = before.find(pass.id);
        if (found == before.end() || found->second->struck) return false;
        const Pass& old = *found->second;
        if (old.bore != pass.bore || old.stone != pass.stone || old.windows != pass.windows)
            return false;
        const Stone* stone = findStone(workbook.hone, pass.stone);
        return stone != nullptr && sameShape(*stone, *findStone(hone, pass.stone));
    };
    for (const Pass& pass : hone.passes) {
        if (!pass.after.empty() && findSurvey(workbook, pass.after) == nullptr)
            return refuse("pass " + pass.id, "there is no survey '" + pass.after + "'");
        if (pass.struck || stood(pass)) continue;
        if (auto good = checkPass(pass, hone, workbook.block); !good) return good;
    }
    return {};
}

} // namespace borewright
