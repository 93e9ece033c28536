// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/text_checks.h"

#include "core/workbook/edit_checks.h"

namespace borewright {
namespace {

// Walks through the texts of each part; keeps the first that is too long.
class TextCheck {
public:
    void operator()(const SetJob& edit) {
        text("customer", edit.job.customer);
        text("engine", edit.job.engine);
        text("serial number", edit.job.serial);
        text("reason", edit.job.reason);
        text("measured by", edit.job.measuredBy);
        text("notes", edit.job.notes);
    }
    void operator()(const SetBlock& edit) {
        for (const Axis& axis : edit.block.axes) {
            text("axis", axis.id);
            text("label of the axis", axis.label);
        }
        for (const Bore& bore : edit.block.bores)
            text("open end", bore.openEnd);
    }
    void operator()(const SetLimitSets& edit) {
        for (const LimitSet& set : edit.sets)
            text("name of the limits", set.name);
    }
    void operator()(const SetSheetText& edit) { text("", edit.text.summary.value_or("")); }
    void operator()(const InsertSurvey& edit) {
        header(edit.survey.header);
        for (const Reading& one : edit.survey.readings)
            reading(one);
    }
    void operator()(const SetSurveyHeader& edit) { header(edit.header); }
    void operator()(const InsertReading& edit) { reading(edit.reading); }
    void operator()(const SetStrike& edit) {
        if (edit.strike) strike(*edit.strike);
    }
    void operator()(const SetStudies& edit) {
        for (const RepeatStudy& study : edit.studies) {
            text("gauge", study.gauge);
            text("when", study.when);
            for (const RepeatRun& run : study.runs) {
                text("person", run.person);
                text("spot", run.spot);
            }
        }
    }
    void operator()(const SetSizing& edit) {
        for (const auto& [number, wear] : edit.plan.bores)
            for (const Damage& damage : wear.damages)
                text("damage", damage.what);
    }
    void operator()(const SetTargets& edit) {
        for (const auto& [number, target] : edit.targets)
            text("target", target.from);
    }
    void operator()(const SetFit& edit) {
        for (const Piston& piston : edit.fit.pistons) {
            text("label of the piston", piston.label);
            text("measured with", piston.measuredWith);
            text("notes", piston.notes);
        }
        for (const Ring& ring : edit.fit.rings)
            text("label of the ring", ring.label);
    }
    void operator()(const SetHone& edit) {
        text("feed", edit.hone.hone.feed);
        for (const Stone& stone : edit.hone.stones) {
            text("name of the stone", stone.name);
            text("grit", stone.grit);
        }
        for (const Pass& pass : edit.hone.passes) {
            text("notes", pass.notes);
            text("reason", pass.struck.value_or(""));
        }
        for (const StoneCare& care : edit.hone.care)
            text("reason", care.struck.value_or(""));
    }
    // Have no texts of the user's own.
    void operator()(const Renumber&) {}
    void operator()(const MoveLevel&) {}
    void operator()(const SetStraightAim&) {}
    void operator()(const EraseSurvey&) {}
    void operator()(const EraseReading&) {}
    void operator()(const SetKept&) {}
    void operator()(const EditGroup&) {} // each of its edits is checked by itself

    [[nodiscard]] Result<void> result() const { return m_result; }

private:
    void text(const char* name, const std::string& value) {
        if (value.size() > longestText && m_result)
            m_result = refuse(name, "the text is longer than " +
                                        std::to_string(longestText / 1024) + " KB");
    }
    void header(const SurveyHeader& header) {
        text("name of the survey", header.name);
        text("notes", header.notes);
        text("gauge", header.gauge.gauge);
        text("set on", header.gauge.setOn);
        text("last checked", header.gauge.gear.lastChecked);
    }
    void strike(const Strike& strike) {
        text("reason", strike.reason);
        text("who", strike.who);
    }
    void reading(const Reading& reading) {
        text("story", reading.accepted.value_or(""));
        if (reading.struck) strike(*reading.struck);
    }

    Result<void> m_result;
};

} // namespace

Result<void> checkTexts(const Edit& edit) {
    TextCheck check;
    std::visit(check, edit);
    return check.result();
}

} // namespace borewright
