// SPDX-License-Identifier: GPL-3.0-or-later
// What a sheet shows, as one text: a line each, its name, its length in bytes and itself.
#include "app/sheet/check_code.h"
#include "app/sheet/sheet_data.h"

namespace borewright {
namespace {

class Canon {
public:
    void add(const char* name, const QString& text) {
        const QByteArray bytes = text.toUtf8();
        m_text += name;
        m_text += ' ';
        m_text += QByteArray::number(bytes.size());
        m_text += ' ';
        m_text += bytes;
        m_text += '\n';
    }
    void add(const char* name, const std::string& text) { add(name, QString::fromStdString(text)); }
    void add(const char* name, const QStringList& texts) {
        count(name, static_cast<std::size_t>(texts.size()));
        for (const QString& text : texts)
            add(name, text);
    }
    void add(const char* name, bool yes) { add(name, QString::fromLatin1(yes ? "yes" : "no")); }
    void add(const char* name, Verdict verdict) { add(name, std::string(nameOf(verdict))); }
    // Of a picture: in thousandths, far below what can be drawn.
    void add(const char* name, double figure) { add(name, QString::number(figure, 'f', 3)); }
    void add(const char* name, const std::optional<double>& figure) {
        figure ? add(name, *figure) : add(name, QString());
    }
    void add(const char* name, const std::vector<SheetFact>& facts) {
        count(name, facts.size());
        for (const SheetFact& fact : facts) {
            add(name, fact.name);
            add(name, fact.value);
        }
    }
    void add(const char* name, const SheetGrid& grid) {
        add(name, grid.title);
        count(name, grid.columns.size());
        for (const SheetGridColumn& column : grid.columns) {
            add(name, column.head);
            add(name, column.unit);
        }
        count(name, grid.rows.size());
        for (const auto& row : grid.rows)
            for (const SheetGridCell& cell : row) {
                add(name, cell.text);
                if (cell.verdict) add(name, *cell.verdict);
            }
    }
    void add(const char* name, const std::vector<SheetGrid>& grids) {
        count(name, grids.size());
        for (const SheetGrid& grid : grids)
            add(name, grid);
    }
    void count(const char* name, std::size_t count) { add(name, QString::number(count)); }
    QByteArray take() { return std::move(m_text); }

private:
    QByteArray m_text;
};

void add(Canon& canon, const SheetSide& side) {
    canon.add("there", side.there);
    if (!side.there) return;
    for (const SheetFigure& figure : side.figures) {
        canon.add("figure", figure.text);
        canon.add("doubt", figure.doubt);
        canon.add("verdict", figure.verdict);
    }
    canon.add("straight", side.straight.text);
    canon.add("doubt", side.straight.doubt);
    canon.add("aim", side.aim);
    canon.add("verdict", side.verdictText);
}

void add(Canon& canon, const SheetBoreTable& table) {
    for (const QString& text : {table.sizeUnit, table.smallUnit, table.wasHead, table.nowHead})
        canon.add("table", text);
    for (const SheetAllowed& allowed : table.allowed) {
        canon.add("allowed", allowed.bores);
        for (const auto* side : {&allowed.was, &allowed.now})
            for (const QString& limit : *side)
                canon.add("limit", limit);
        canon.add("aim", allowed.aim);
    }
    canon.count("rows", table.rows.size());
    for (const SheetBoreRow& row : table.rows) {
        canon.add("bore", row.bore);
        add(canon, row.was);
        add(canon, row.now);
    }
}

void add(Canon& canon, const std::vector<SectionProfile>& profiles) {
    canon.count("profiles", profiles.size());
    for (const SectionProfile& profile : profiles) {
        canon.add("axis", profile.axis);
        canon.add("survey", profile.survey);
        for (const SectionReading& point : profile.points) {
            canon.add("point", point.text);
            canon.add("depth", point.depth_mm);
            canon.add("deviation", point.deviation_um);
            canon.add("odd", point.odd);
            canon.add("judged", point.judged);
        }
    }
}

void add(Canon& canon, const SectionData& section) {
    canon.add("bore", section.title);
    canon.add("depth", section.depth_mm);
    canon.add("openEnd", section.openEnd);
    canon.add("closedEnd", section.closedEnd);
    add(canon, section.now);
    add(canon, section.earlier);
    for (const auto& limit : {section.lower_um, section.upper_um, section.finish_um})
        canon.add("limit", limit);
    for (const SectionPorts& ports : section.ports) {
        canon.add("ports", ports.from_mm);
        canon.add("ports", ports.to_mm);
        for (const int axis : ports.axes)
            canon.count("axis", static_cast<std::size_t>(axis));
    }
    for (const SectionZone& zone : section.zones) {
        canon.add("zone", zone.name);
        canon.add("zone", zone.from_mm);
        canon.add("zone", zone.to_mm);
    }
    for (const SectionNoWall& none : section.noWall) {
        canon.add("noWall", none.depth_mm);
        canon.count("noWall", static_cast<std::size_t>(none.axisIndex));
    }
}

void add(Canon& canon, const SheetBudget& budget) {
    canon.add("budget", budget.title);
    canon.add("trust", budget.trust);
    canon.add("heads", budget.heads);
    for (const QStringList& row : budget.rows)
        canon.add("row", row);
    canon.add("sums", budget.sums);
    canon.add("sentences", budget.sentences);
}

void add(Canon& canon, const SizeBarsData& bars) {
    for (const SizeBarsBore& bore : bars.bores) {
        canon.add("bar", bore.name);
        canon.add("word", bore.word);
        canon.add("why", bore.why);
        canon.add("verdict", bore.verdict);
    }
    for (const SizeBarsLine& line : bars.lines) {
        canon.add("line", line.name);
        canon.add("size", line.size);
        canon.add("chosen", line.chosen);
        canon.add("beyond", line.beyond);
    }
}

void add(Canon& canon, const SheetSizing& sizing) {
    canon.add("sizing", sizing.headline);
    canon.add("sentences", sizing.sentences);
    canon.add("how", sizing.how);
    canon.add("cautions", sizing.cautions);
    canon.add("bores", sizing.bores);
    add(canon, sizing.bars);
}

void add(Canon& canon, const SheetHone& hone) {
    canon.add("honed", hone.there);
    canon.add("front", hone.front);
    canon.add("warnings", hone.warnings);
    canon.add("hone", hone.headline);
    canon.add("facts", hone.facts);
    canon.add("bores", hone.bores);
    canon.add("passes", hone.passes);
    canon.add("remarks", hone.remarks);
}

void add(Canon& canon, const SheetFit& fit) {
    canon.add("fit", fit.headline);
    canon.add("sentences", fit.sentences);
    canon.add("rings", fit.ringHeadline);
    canon.add("sentences", fit.ringSentences);
    canon.add("cautions", fit.cautions);
    canon.add("facts", fit.facts);
    canon.add("pistons", fit.pistons);
    canon.add("across", fit.across);
    canon.add("rings", fit.rings);
    canon.add("pairs", fit.pairs.head);
    for (const SheetPair& pair : fit.pairs.pairs)
        for (const QString& text :
             {pair.bore, pair.piston, pair.clearance, pair.doubt, pair.verdictText})
            canon.add("pair", text);
}

void add(Canon& canon, const SheetSurvey& survey) {
    canon.add("survey", survey.title);
    canon.add("when", survey.when);
    canon.add("facts", survey.facts);
    canon.add("unit", survey.typedUnit);
    canon.count("cards", survey.cards.size());
    for (const SheetCard& card : survey.cards) {
        canon.add("card", card.title);
        canon.add("axes", card.axes);
        for (const auto& [depth, cells] : card.rows) {
            canon.add("depth", depth);
            for (const SheetCell& cell : cells) {
                canon.add("typed", cell.typed);
                canon.add("diameter", cell.diameter);
            }
        }
    }
    canon.add("remarks", survey.remarks);
}

} // namespace

QByteArray shownOnSheet(const SheetData& data) {
    Canon canon;
    canon.add("title", data.title);
    canon.add("invented", data.invented);
    canon.add("facts", data.facts);
    canon.add("sentences", data.sentences);
    canon.count("plan", data.plan.bores.size());
    canon.count("arrangement", static_cast<std::size_t>(data.plan.arrangement));
    for (const PlanBore& bore : data.plan.bores) {
        canon.count("bore", static_cast<std::size_t>(bore.number));
        canon.add("word", bore.word);
        canon.add("verdict", bore.verdict);
    }
    canon.add("axis", data.plan.axisA);
    canon.add("axis", data.plan.axisB);
    add(canon, data.table);
    canon.count("sections", data.sections.bores.size());
    for (const SectionData& section : data.sections.bores)
        add(canon, section);
    canon.add("means", data.means);
    canon.add("shapes", data.shapes);
    canon.add("cautions", data.cautions);
    for (const SheetBudget& budget : data.budgets)
        add(canon, budget);
    add(canon, data.sizing);
    add(canon, data.hone);
    add(canon, data.fit);
    canon.add("record", data.record);
    canon.add("limits", data.limits);
    canon.add("axes", data.axesKey);
    canon.add("unit", data.sizeUnit);
    canon.count("surveys", data.surveys.size());
    for (const SheetSurvey& survey : data.surveys)
        add(canon, survey);
    return canon.take();
}

} // namespace borewright
