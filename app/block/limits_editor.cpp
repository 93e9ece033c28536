// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/limits_editor.h"

#include "app/fields/decision_form.h"
#include "app/fields/form_grid.h"
#include "app/fields/length_text.h"
#include "app/fields/refusal_label.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>
#include <set>
#include <utility>

namespace borewright {
namespace {

QString purposeName(LimitPurpose purpose) {
    return purpose == LimitPurpose::worn ? LimitsEditor::tr("worn") : LimitsEditor::tr("finish");
}

QString shownName(const LimitSet& set) {
    const QString name = QString::fromStdString(set.name);
    const QString purpose = purposeName(set.purpose);
    return name == purpose ? name : name + QStringLiteral(" (%1)").arg(purpose);
}

// Makers' oversizes go by steps of 0.010 in or 0.25 mm (common practice, no source): farther off
// than half of one, another size is meant.
const Length halfAStep = Length::whole(5, Unit::thou);

std::optional<TypedLength> standardSize(const Block& block) {
    return block.bores.empty() ? std::nullopt : block.bores.front().standardSize;
}

// Where the size to be honed to does not agree with what else the set says; else empty.
QString contradiction(const LimitSet& set, const Limits& limits, const Block& block) {
    if (set.purpose != LimitPurpose::finish) return {};
    const auto standard = standardSize(block);
    std::optional<Length> made; // of standard size and oversize
    if (standard && set.oversize) made = standard->value() + set.oversize->value();
    const auto aim = set.finishSize ? std::optional(set.finishSize->value()) : made;
    if (!aim) return {};
    const QString sum = LimitsEditor::tr("%1 with an oversize of %2")
                            .arg(shownLength(standard), shownLength(set.oversize));
    const QString named =
        set.finishSize ? LimitsEditor::tr("The finish size, %1,").arg(shownLength(set.finishSize))
                       : LimitsEditor::tr("The size to hone to, %1,").arg(sum);
    if (limits.sizeLower && *aim < limits.sizeLower->value())
        return LimitsEditor::tr("%1 is below the smallest size allowed, %2. One of them is wrong.")
            .arg(named, shownLength(limits.sizeLower));
    if (limits.sizeUpper && *aim > limits.sizeUpper->value())
        return LimitsEditor::tr("%1 is over the largest size allowed, %2. One of them is wrong.")
            .arg(named, shownLength(limits.sizeUpper));
    if (set.finishSize && made && (*aim - *made).magnitude() > halfAStep)
        return LimitsEditor::tr("%1 is not %2. One of them is wrong.").arg(named, sum);
    return {};
}

} // namespace

LimitsEditor::LimitsEditor(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_said(makeRefusalLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(12);
    column->addWidget(makeHead());
    column->addWidget(m_said);
    column->addWidget(makeFields());
    column->addWidget(makeAim());
    connect(&document, &Document::changed, this, [this](Change change) {
        if (change == Change::everything) m_set.clear();
        if (change != Change::readings && change != Change::doubts) refresh();
    });
    refresh();
}

QWidget* LimitsEditor::makeHead() {
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(12);
    m_which = new LabelledChoice(tr("Set of limits"), {}, [this](int index) {
        m_set = m_document.workbook().limitSets.at(static_cast<std::size_t>(index)).id;
        m_bore = 0;
        refresh();
    });
    m_for = new LabelledChoice(tr("For"), {}, [this](int index) {
        m_bore = index == 0 ? 0 : m_bores.at(static_cast<std::size_t>(index) - 1);
        refresh();
    });
    row->addWidget(m_which, 3);
    row->addWidget(m_for, 2);
    const auto button = [&](const QString& text, auto action) {
        auto* made = new QPushButton(text, box);
        made->setAccessibleName(text);
        connect(made, &QPushButton::clicked, this, action);
        row->addWidget(made, 0, Qt::AlignBottom);
        return made;
    };
    button(tr("Add worn"), [this] { add(LimitPurpose::worn); });
    button(tr("Add finish"), [this] { add(LimitPurpose::finish); });
    m_same = button(tr("As all bores"), [this] { sameAsAll(); });
    m_remove = button(tr("Remove set"), [this] { removeShown(); });
    return box;
}

QWidget* LimitsEditor::makeFields() {
    m_fields = new QWidget(this);
    auto* column = new QVBoxLayout(m_fields);
    column->setContentsMargins(0, 0, 0, 0);
    auto* grid = new FormGrid(4, m_fields);
    m_name = new CommittedField(tr("Name"), [this](const QString& text) -> Result<void> {
        if (text.trimmed().isEmpty()) return refuse("A set needs a name to be found by.");
        return change(tr("name"), [&](LimitSet& set) { set.name = text.trimmed().toStdString(); });
    });
    grid->add(m_name, 2);
    m_rule = new LabelledChoice(tr("Taper means"),
                                {tr("largest less smallest on one axis"), tr("top less bottom")},
                                [this](int rule) {
                                    (void)change(tr("taper rule"), [&](LimitSet& set) {
                                        set.taperRule = static_cast<TaperRule>(rule);
                                    });
                                });
    grid->add(m_rule, 2);
    const auto near = [this](const Given& size) {
        const auto positive = mustBePositive(size, "A size");
        return positive ? mustBeNear(size, standardSize(m_document.workbook().block)) : positive;
    };
    addLength(
        *grid, tr("Size from"), tr("no lower limit"),
        [this](LimitSet& set) -> Given& { return limitsShown(set).sizeLower; }, near);
    addLength(
        *grid, tr("Size to"), tr("no upper limit"),
        [this](LimitSet& set) -> Given& { return limitsShown(set).sizeUpper; }, near);
    addLength(
        *grid, tr("Out-of-round up to"), tr("not judged"),
        [this](LimitSet& set) -> Given& { return limitsShown(set).outOfRound; }, mustBeSmall);
    addLength(
        *grid, tr("Taper up to"), tr("not judged"),
        [this](LimitSet& set) -> Given& { return limitsShown(set).taper; }, mustBeSmall);
    column->addWidget(grid);
    auto* finish = new FormGrid(4, m_fields);
    m_finishOnly = finish;
    addLength(
        *finish, tr("Oversize"), tr("0 = standard"),
        [](LimitSet& set) -> Given& { return set.oversize; },
        [this](const Given& size) { return mustBeOversize(size, m_document.workbook().block); });
    addLength(
        *finish, tr("Finish size"), tr("standard + oversize"),
        [](LimitSet& set) -> Given& { return set.finishSize; }, near);
    column->addWidget(finish);
    m_contradiction = makeRefusalLabel(m_fields);
    m_contradiction->setAccessibleName(tr("What does not agree in this set"));
    column->addWidget(m_contradiction);
    m_decision = new DecisionForm([this](const DecisionRule& rule) {
        return change(tr("rule of verdicts"), [&](LimitSet& set) { set.decision = rule; });
    });
    column->addWidget(m_decision);
    return m_fields;
}

QWidget* LimitsEditor::makeAim() {
    auto* grid = new FormGrid(4, this);
    m_aim = new CommittedField(tr("Aim: straight within"),
                               [this](const QString& text) { return commitAim(text); });
    m_aim->setHint(tr("no aim"));
    grid->add(m_aim);
    return grid;
}

void LimitsEditor::addLength(FormGrid& grid, const QString& label, const QString& hint, Slot slot,
                             Check check) {
    auto* field = new CommittedField(label, [this, label, slot, check](const QString& text) {
        return commitLength(label, text, slot, check);
    });
    field->setHint(hint);
    grid.add(field);
    m_lengths.push_back({field, std::move(slot)});
}

Result<void> LimitsEditor::commitLength(const QString& label, const QString& text, const Slot& slot,
                                        const Check& check) {
    const LimitSet* set = shown();
    if (set == nullptr) return refuse("First add a set of limits.");
    LimitSet changed = *set;
    Given& place = slot(changed);
    const auto read = readField(text, place, m_document.workbook().block);
    if (!read) return tl::unexpected(read.error());
    if (const auto good = check(*read); !good) return good;
    place = *read;
    if (const auto good = checkLimits(limitsShown(changed)); !good)
        return refuse(good.error().what);
    return change(label.toLower(), [&](LimitSet& now) { now = changed; });
}

Result<void> LimitsEditor::commitAim(const QString& text) {
    const auto read =
        readField(text, m_document.workbook().straightAim, m_document.workbook().block);
    if (!read) return tl::unexpected(read.error());
    if (const auto good = mustBePositive(*read, "An aim"); !good) return good;
    if (const auto good = mustBeSmall(*read); !good) return good;
    return m_document.edit(SetStraightAim{*read}, tr("aim"));
}

Result<void> LimitsEditor::change(const QString& what, const std::function<void(LimitSet&)>& make) {
    std::vector<LimitSet> sets = m_document.workbook().limitSets;
    const auto set = std::ranges::find(sets, m_set, &LimitSet::id);
    if (set == sets.end()) return refuse("First add a set of limits.");
    make(*set);
    const QString name = tr("%1, %2 limits").arg(what, QString::fromStdString(set->name));
    return m_document.edit(SetLimitSets{std::move(sets)}, name);
}

void LimitsEditor::add(LimitPurpose purpose) {
    std::vector<LimitSet> sets = m_document.workbook().limitSets;
    LimitSet set;
    set.id = freshLimitSetId(m_document.workbook());
    set.purpose = purpose;
    set.name = purposeName(purpose).toStdString();
    m_set = set.id;
    m_bore = 0;
    sets.push_back(std::move(set));
    (void)m_document.edit(SetLimitSets{std::move(sets)}, tr("another set of limits"));
    m_name->lineEdit()->setFocus();
    m_name->lineEdit()->selectAll();
}

void LimitsEditor::removeShown() {
    for (const Survey& survey : m_document.workbook().surveys)
        if (survey.header.limitSet == m_set) {
            say(tr("Survey “%1” is judged by this set; choose another for it first.")
                    .arg(QString::fromStdString(survey.header.name)));
            return;
        }
    std::vector<LimitSet> sets = m_document.workbook().limitSets;
    std::erase_if(sets, [this](const LimitSet& set) { return set.id == m_set; });
    (void)m_document.edit(SetLimitSets{std::move(sets)}, tr("set of limits"));
}

void LimitsEditor::sameAsAll() {
    const int bore = std::exchange(m_bore, 0);
    (void)change(tr("limits of bore %1").arg(bore),
                 [bore](LimitSet& set) { set.perBore.erase(bore); });
    refresh();
}

Limits& LimitsEditor::limitsShown(LimitSet& set) const {
    if (m_bore == 0) return set.limits;
    // A bore's own limits begin as those of all.
    return set.perBore.try_emplace(m_bore, set.limits).first->second;
}

const LimitSet* LimitsEditor::shown() const {
    return findLimitSet(m_document.workbook(), m_set);
}

void LimitsEditor::say(const QString& sentence) {
    m_said->setText(sentence);
    m_said->setVisible(!sentence.isEmpty());
}

void LimitsEditor::refreshChoices() {
    const Workbook& workbook = m_document.workbook();
    if (shown() == nullptr) m_set = workbook.limitSets.empty() ? "" : workbook.limitSets.front().id;
    QStringList sets;
    int index = -1;
    for (const LimitSet& set : workbook.limitSets) {
        if (set.id == m_set) index = static_cast<int>(sets.size());
        sets << shownName(set);
    }
    m_which->setChoices(sets, index);
    std::set<int> numbers;
    for (const Bore& bore : workbook.block.bores)
        numbers.insert(bore.number);
    m_bores.assign(numbers.begin(), numbers.end());
    if (!numbers.contains(m_bore)) m_bore = 0;
    QStringList bores{tr("all bores")};
    int chosen = 0;
    for (const int number : m_bores) {
        if (number == m_bore) chosen = static_cast<int>(bores.size());
        const bool own = shown() != nullptr && shown()->perBore.contains(number);
        bores << (own ? tr("bore %1 (its own)") : tr("bore %1")).arg(number);
    }
    m_for->setChoices(bores, chosen);
}

void LimitsEditor::refresh() {
    say({});
    refreshChoices();
    const LimitSet* set = shown();
    m_fields->setVisible(set != nullptr);
    m_remove->setEnabled(set != nullptr);
    m_same->setVisible(set != nullptr && m_bore != 0 && set->perBore.contains(m_bore));
    m_aim->showData(shownLength(m_document.workbook().straightAim));
    if (set == nullptr) return;
    if (std::pair now(m_set, m_bore); std::exchange(m_shownFor, now) != now) {
        m_name->drop(); // what was refused was meant for another set or bore
        for (const Field& field : m_lengths)
            field.field->drop();
    }
    m_finishOnly->setVisible(set->purpose == LimitPurpose::finish);
    m_name->showData(QString::fromStdString(set->name));
    m_rule->showData(static_cast<int>(set->taperRule));
    m_decision->showData(set->decision);
    LimitSet copy = *set;
    for (const Field& field : m_lengths)
        field.field->showData(shownLength(field.slot(copy)));
    sayContradiction(*set);
}

// Told, not refused: a whole set is typed over field by field, in any order.
void LimitsEditor::sayContradiction(const LimitSet& set) {
    const QString words = contradiction(set, limitsFor(set, m_bore), m_document.workbook().block);
    m_contradiction->setText(words);
    m_contradiction->setVisible(!words.isEmpty());
}

} // namespace borewright
