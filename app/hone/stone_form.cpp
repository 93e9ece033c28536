// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/stone_form.h"

#include "app/fields/form_grid.h"
#include "app/fields/length_text.h"
#include "app/fields/refusal_label.h"
#include "app/hone/hone_verbs.h"
#include "app/pictures/reading_words.h"
#include "core/workbook/hone_names.h"

#include <QVBoxLayout>

#include <algorithm>

namespace borewright {
namespace {

using Given = const std::optional<TypedLength>&;

Result<void> setBegins(Stone& stone, Given length) {
    stone.begins = length.value_or(TypedLength());
    return {};
}

Result<void> setEnds(Stone& stone, Given length) {
    if (!length) return refuse("a stone's abrasive ends somewhere");
    stone.ends = *length;
    return {};
}

} // namespace

StoneForm::StoneForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_wrong(makeRefusalLabel(this)) {
    m_wrong->setAccessibleName(tr("What is wrong with this stone"));
    m_name = new CommittedField(tr("Name"), [this](const QString& text) {
        return commitText(text, tr("name of a stone"), &Stone::name);
    });
    m_grit = new CommittedField(tr("Grit"), [this](const QString& text) {
        return commitText(text, tr("grit of a stone"), &Stone::grit);
    });
    m_kind = new LabelledChoice(tr("For"), {tr("rough work"), tr("finish")}, [this](int kind) {
        (void)change(tr("kind of a stone"),
                     [&](Stone& stone) { stone.kind = static_cast<StoneKind>(kind); });
    });
    auto* grid = new FormGrid(4, this);
    grid->add(m_name);
    grid->add(m_grit);
    grid->add(m_kind);
    grid->nextRow();
    grid->add(addLength(
        tr("Abrasive begins at"), tr("0"),
        [](const Stone& stone) { return std::optional(stone.begins); }, setBegins));
    grid->add(addLength(
        tr("… and ends at"), {}, [](const Stone& stone) { return std::optional(stone.ends); },
        setEnds));
    grid->add(addLength(
        tr("Out of the open end"), tr("a third"),
        [](const Stone& stone) { return stone.outOfOpenEnd; },
        [](Stone& stone, Given length) -> Result<void> {
            stone.outOfOpenEnd = length;
            return {};
        }));
    grid->add(addLength(
        tr("Out of the closed end"), tr("a third"),
        [](const Stone& stone) { return stone.outOfClosedEnd; },
        [](Stone& stone, Given length) -> Result<void> {
            stone.outOfClosedEnd = length;
            return {};
        }));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(grid);
    column->addWidget(m_wrong);
    for (CommittedField* field : findChildren<CommittedField*>())
        field->sayElsewhere([this] { sayWhatIsWrong(); });
    setToolTip(tr("Lengths on the carrier, from its lower end up: what lies below the abrasive is "
                  "guide or dead length and keeps it off the closed end"));
}

CommittedField* StoneForm::addLength(const QString& label, const QString& hint,
                                     std::optional<TypedLength> (*get)(const Stone&),
                                     Result<void> (*set)(Stone&,
                                                         const std::optional<TypedLength>&)) {
    auto* field = new CommittedField(label, [this, label, get, set](const QString& text) {
        const Stone* stone = findStone(m_document.workbook().hone, m_stone);
        if (stone == nullptr) return Result<void>(refuse("choose a stone, or add one"));
        const auto read = readField(text, get(*stone), m_document.workbook().block);
        if (!read) return Result<void>(tl::unexpected(read.error()));
        Result<void> done;
        const auto kept = change(label.toLower().remove(QStringLiteral("… and ")),
                                 [&](Stone& made) { done = set(made, *read); });
        return done ? kept : done;
    });
    field->setHint(hint);
    m_lengths.push_back({field, get});
    return field;
}

// A refused change of a stone names it; the field stands beside its name already.
template<class Make>
Result<void> StoneForm::change(const QString& what, Make make) {
    HoneRecord record = m_document.workbook().hone;
    const auto stone = std::ranges::find(record.stones, m_stone, &Stone::id);
    if (stone == record.stones.end()) return refuse("choose a stone, or add one");
    make(*stone);
    if (auto good = checkStone(*stone); !good) return good;
    return m_document.edit(SetHone{std::move(record)}, what);
}

Result<void> StoneForm::commitText(const QString& text, const QString& what,
                                   std::string Stone::*field) {
    return change(what, [&](Stone& stone) { stone.*field = text.trimmed().toStdString(); });
}

// What was refused; else what was taken and yet can hardly be meant.
void StoneForm::sayWhatIsWrong() {
    QStringList said;
    for (const CommittedField* field : findChildren<CommittedField*>())
        if (!field->refusal().isEmpty()) said << tr("Not taken: %1").arg(field->refusal());
    const Workbook& workbook = m_document.workbook();
    const Stone* stone = findStone(workbook.hone, m_stone);
    if (said.isEmpty() && stone != nullptr)
        if (const std::string why = fitsNowhere(*stone, workbook.block); !why.empty())
            said << tr("%1. Is one of its lengths a slip?").arg(qs(why));
    if (!said.isEmpty()) said.front()[0] = said.front()[0].toUpper();
    m_wrong->setText(said.join('\n'));
    m_wrong->setVisible(!said.isEmpty());
}

void StoneForm::show(const std::string& id, bool anew) {
    anew = anew || id != m_stone;
    m_stone = id;
    const Stone* stone = findStone(m_document.workbook().hone, id);
    setEnabled(stone != nullptr);
    const auto put = [&](CommittedField* field, const QString& text) {
        if (anew) {
            field->lineEdit()->setText(text); // what was being typed was meant for another
            field->refuse({});
        }
        field->showData(text);
    };
    put(m_name, stone != nullptr ? qs(stone->name) : QString());
    put(m_grit, stone != nullptr ? qs(stone->grit) : QString());
    m_kind->showData(stone != nullptr ? static_cast<int>(stone->kind) : -1);
    for (const LengthOf& length : m_lengths)
        put(length.field, stone != nullptr ? shownLength(length.get(*stone)) : QString());
    sayWhatIsWrong();
}

void StoneForm::focusName() {
    m_name->lineEdit()->setFocus();
    m_name->lineEdit()->selectAll();
}

} // namespace borewright
