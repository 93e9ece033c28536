// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/damages_model.h"

#include "app/fields/length_text.h"
#include "app/pictures/reading_words.h"

#include <algorithm>

namespace borewright {
namespace {

QString feltWord(bool felt) {
    return felt ? DamagesModel::tr("felt") : DamagesModel::tr("measured");
}

const std::vector<Damage> none;

} // namespace

DamagesModel::DamagesModel(Document& document, QObject* parent)
    : EntryModel(document, parent) {
    refresh();
}

void DamagesModel::setBore(int bore) {
    if (bore == m_bore) return;
    m_bore = bore;
    forget();
    refresh();
}

const std::vector<Damage>& DamagesModel::damages() const {
    const auto wear = plan().bores.find(m_bore);
    return wear == plan().bores.end() ? none : wear->second.damages;
}

int DamagesModel::count() const {
    return static_cast<int>(damages().size());
}

std::vector<EntryModel::Column> DamagesModel::columns() const {
    return {{tr("At depth"), tr("depth")},
            {tr("Axis"), tr("axis")},
            {tr("Deep"), tr("how deep it goes")},
            {tr("Known by"), tr("how it is known")},
            {tr("What"), tr("what it is")}};
}

QString DamagesModel::nameOf(int row) const {
    return tr("damage at %1, bore %2")
        .arg(shownLength(damages().at(static_cast<std::size_t>(row)).depth))
        .arg(m_bore);
}

QString DamagesModel::kind() const {
    return tr("damage");
}

QString DamagesModel::textAt(int row, int column) const {
    const Damage& damage = damages().at(static_cast<std::size_t>(row));
    switch (column) {
    case depth:
        return shownLength(damage.depth);
    case axis:
        return qs(damage.axis);
    case deep:
        return shownLength(damage.deep);
    case felt:
        return feltWord(damage.felt);
    default:
        return qs(damage.what);
    }
}

QString DamagesModel::hintAt(int, int column) const {
    return column == axis ? tr("not said") : column == what ? tr("score, pit …") : QString();
}

QString DamagesModel::textOfNew(int column) const {
    return m_begun.at(static_cast<std::size_t>(column));
}

// The axes one after another, then "not said"; felt and measured.
QString DamagesModel::turned(int row, int column) const {
    const bool last = row >= entries();
    const QString now = last ? textOfNew(column) : textAt(row, column);
    if (column == felt) return feltWord(now != feltWord(true));
    if (column != axis || block().axes.empty()) return {};
    const auto& axes = block().axes;
    const auto at = std::ranges::find(axes, now.toStdString(), &Axis::id);
    if (at == axes.end()) return qs(axes.front().id);
    return at + 1 == axes.end() ? tr("not said") : qs((at + 1)->id);
}

Result<void> DamagesModel::writeDepth(Damage& damage, const QString& text) const {
    const Bore* bore = findBore(block(), m_bore);
    const auto like = damages().empty() ? std::nullopt : std::optional(damages().front().depth);
    const auto read = readField(text, like, block());
    if (!read) return tl::unexpected(read.error());
    if (!*read) return refuse("a damage lies at a depth; “Take damage off” takes the whole row");
    const Length value = (*read)->value();
    const bool beyond = bore != nullptr && bore->depth && value > bore->depth->value();
    if (value < Length() || beyond)
        return refuse(
            beyond ? tr("the bore is only %1 deep").arg(shownLength(bore->depth)).toStdString()
                   : std::string("depth is counted from the open end (0) down"));
    damage.depth = **read;
    return {};
}

Result<void> DamagesModel::writeDeep(Damage& damage, const QString& text) const {
    const auto like = damages().empty() ? std::nullopt : std::optional(damages().front().deep);
    const auto read = readField(text, like, block());
    if (!read) return tl::unexpected(read.error());
    if (!*read)
        return refuse(
            "how far it goes into the wall is needed; “Take damage off” takes the whole row");
    if ((*read)->value() <= Length())
        return refuse("how far it goes into the wall is more than zero");
    const Bore* bore = findBore(block(), m_bore);
    if (bore != nullptr && bore->standardSize &&
        20 * (*read)->value() > bore->standardSize->value())
        return refuse(
            tr("%1 into the wall can only be a slip; for a small unit write %2 %3")
                .arg(shownLength(*read), qs((*read)->text()),
                     isInchFamily((*read)->unit()) ? QStringLiteral("thou") : QStringLiteral("µm"))
                .toStdString());
    damage.deep = **read;
    return {};
}

Result<void> DamagesModel::writeAxis(Damage& damage, const QString& text) const {
    if (text.isEmpty() || text == tr("not said")) {
        damage.axis.clear();
        return {};
    }
    QStringList known;
    for (const Axis& each : block().axes) {
        known << qs(each.id);
        if (known.last().compare(text, Qt::CaseInsensitive) != 0) continue;
        damage.axis = each.id;
        return {};
    }
    return refuse(
        tr("there is no such axis, only %1").arg(known.join(QStringLiteral(", "))).toStdString());
}

Result<void> DamagesModel::write(Damage& damage, int column, const QString& text) const {
    switch (column) {
    case depth:
        return writeDepth(damage, text);
    case deep:
        return writeDeep(damage, text);
    case axis:
        return writeAxis(damage, text);
    case felt:
        for (const bool byHand : {true, false})
            if (!text.isEmpty() && feltWord(byHand).startsWith(text, Qt::CaseInsensitive)) {
                damage.felt = byHand;
                return {};
            }
        return refuse("it is either felt or measured");
    default:
        damage.what = text.toStdString();
        return {};
    }
}

Result<int> DamagesModel::put(SizingPlan& plan, int row, int column, const QString& text) const {
    auto& damage = plan.bores[m_bore].damages.at(static_cast<std::size_t>(row));
    return write(damage, column, text).map([row] { return row; });
}

void DamagesModel::clearNew() {
    m_begun = {};
}

Result<int> DamagesModel::begin(SizingPlan& plan, int column, const QString& text) {
    if (findBore(block(), m_bore) == nullptr) return refuse("the block has no such bore");
    Damage damage;
    if (!text.isEmpty())
        if (const auto good = write(damage, column, text); !good)
            return tl::unexpected(good.error());
    m_begun.at(static_cast<std::size_t>(column)) = text == tr("not said") ? QString() : text;
    if (m_begun[depth].isEmpty() || m_begun[deep].isEmpty()) return entries();
    for (int each = 0; each < columnsOfAll; ++each)
        if (const QString& begun = m_begun.at(static_cast<std::size_t>(each)); !begun.isEmpty())
            if (const auto good = write(damage, each, begun); !good)
                return tl::unexpected(good.error());
    plan.bores[m_bore].damages.push_back(std::move(damage));
    return entries();
}

void DamagesModel::erase(SizingPlan& plan, int row) const {
    auto& all = plan.bores[m_bore].damages;
    all.erase(all.begin() + row);
    if (plan.bores[m_bore] == BoreWear()) plan.bores.erase(m_bore);
}

} // namespace borewright
