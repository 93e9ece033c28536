// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/ports_form.h"

#include "app/fields/length_text.h"

#include <QHBoxLayout>
#include <QSignalBlocker>

#include <algorithm>

namespace borewright {

PortsForm::PortsForm(BoreScope& scope, QWidget* parent)
    : QWidget(parent)
    , m_scope(scope)
    , m_column(new QVBoxLayout) {
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addLayout(m_column);
    auto* add = new QPushButton(tr("Add a port band"), this);
    add->setAccessibleName(add->text());
    whole->addWidget(add, 0, Qt::AlignLeft);
    connect(add, &QPushButton::clicked, this, &PortsForm::addBand);
    connect(&scope, &BoreScope::changed, this, &PortsForm::refresh);
    refresh();
}

void PortsForm::addBand() {
    if (!m_typing) {
        m_typing = true;
        m_from.reset();
        m_to.reset();
        refresh();
    }
    m_rows.back().from->setFocus();
}

CommittedField* PortsForm::makeDepth(std::size_t index, bool upper) {
    auto* field =
        new CommittedField(upper ? tr("Ports from") : tr("to"), [=, this](const QString& text) {
            return commitDepth(index, upper, text);
        });
    const int number = static_cast<int>(index) + 1;
    field->setSpokenName(upper ? tr("Port band %1 from").arg(number)
                               : tr("Port band %1 to").arg(number));
    field->setFixedWidth(110);
    return field;
}

void PortsForm::addAxes(Row& row, std::size_t index, QLayout& layout) {
    for (const Axis& axis : m_scope.document().workbook().block.axes) {
        const QString id = QString::fromStdString(axis.id);
        auto* box = new QCheckBox(tr("cuts %1").arg(id), row.box);
        box->setAccessibleName(
            tr("Port band %1 cuts the wall on axis %2").arg(index + 1).arg(id));
        box->setToolTip(QString::fromStdString(axis.label));
        connect(box, &QCheckBox::toggled, this,
                [this, index, id = axis.id](bool cut) { setAxis(index, id, cut); });
        row.axes.push_back(box);
        layout.addWidget(box);
    }
}

PortsForm::Row PortsForm::makeRow(std::size_t index) {
    Row row{new QWidget(this), makeDepth(index, true), makeDepth(index, false), {}};
    auto* line = new QHBoxLayout(row.box);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(12);
    line->addWidget(row.from);
    line->addWidget(row.to);
    addAxes(row, index, *line);
    auto* gone = new QPushButton(tr("Remove"), row.box);
    gone->setAccessibleName(tr("Remove port band %1").arg(index + 1));
    line->addWidget(gone);
    line->addStretch();
    connect(gone, &QPushButton::clicked, this, [this, index] { remove(index); },
            Qt::QueuedConnection);
    return row;
}

void PortsForm::rebuild(std::size_t bands) {
    for (const Row& row : m_rows) {
        row.box->hide();
        row.box->deleteLater();
    }
    m_rows.clear();
    for (std::size_t i = 0; i < bands; ++i) {
        m_rows.push_back(makeRow(i));
        m_column->addWidget(m_rows.back().box);
    }
}

void PortsForm::refresh() {
    const Bore* bore = m_scope.shown();
    if (bore == nullptr) m_typing = false;
    const std::size_t kept = bore == nullptr ? 0 : bore->map.ports.size();
    std::vector<std::string> axes;
    for (const Axis& axis : m_scope.document().workbook().block.axes)
        axes.push_back(axis.id);
    if (kept + (m_typing ? 1 : 0) != m_rows.size() || axes != m_axes) {
        m_axes = axes;
        rebuild(kept + (m_typing ? 1 : 0));
    }
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const Row& row = m_rows[i];
        const PortBand* band = i < kept ? &bore->map.ports[i] : nullptr;
        row.from->showData(shownLength(band ? std::optional(band->from) : m_from));
        row.to->showData(shownLength(band ? std::optional(band->to) : m_to));
        for (std::size_t a = 0; a < row.axes.size(); ++a) {
            const QSignalBlocker blocker(row.axes[a]);
            row.axes[a]->setEnabled(band != nullptr);
            row.axes[a]->setChecked(band != nullptr &&
                                    std::ranges::find(band->axes, m_axes[a]) != band->axes.end());
        }
    }
}

Result<void> PortsForm::commitDepth(std::size_t index, bool upper, const QString& text) {
    const Bore* bore = m_scope.shown();
    if (bore == nullptr) return refuse("First say how many bores the block has.");
    const bool isNew = index >= bore->map.ports.size();
    PortBand band = isNew ? PortBand() : bore->map.ports[index];
    const auto before = isNew ? (upper ? m_from : m_to)
                              : std::optional(upper ? band.from : band.to);
    const auto length = readField(text, before, m_scope.document().workbook().block);
    if (!length) return tl::unexpected(length.error());
    if (!*length) return refuse("A port band needs both depths; Remove takes it away.");
    if (bore->depth && (*length)->value() > bore->depth->value())
        return refuse("That is below the bore.");
    if (isNew) {
        (upper ? m_from : m_to) = *length;
        if (!m_from || !m_to) {
            (upper ? m_rows[index].from : m_rows[index].to)->showData(shownLength(*length));
            return {};
        }
        band.from = *m_from;
        band.to = *m_to;
    } else {
        (upper ? band.from : band.to) = **length;
    }
    return commitBand(index, band);
}

Result<void> PortsForm::commitBand(std::size_t index, const PortBand& band) {
    if (band.from.value() >= band.to.value())
        return refuse("A port band begins nearer the open end than it ends.");
    auto ports = m_scope.shown()->map.ports;
    if (index < ports.size()) {
        ports[index] = band;
    } else {
        ports.push_back(band);
        m_typing = false;
    }
    return m_scope.change(tr("port band"), [&](Bore& bore) { bore.map.ports = ports; });
}

void PortsForm::setAxis(std::size_t index, const std::string& axis, bool cut) {
    auto ports = m_scope.shown()->map.ports;
    if (index >= ports.size()) return;
    std::erase(ports[index].axes, axis);
    if (cut) ports[index].axes.push_back(axis);
    std::ranges::sort(ports[index].axes);
    (void)m_scope.change(tr("sides cut by the ports"),
                         [&](Bore& bore) { bore.map.ports = ports; });
}

void PortsForm::remove(std::size_t index) {
    auto ports = m_scope.shown()->map.ports;
    if (index >= ports.size()) {
        m_typing = false;
        refresh();
        return;
    }
    ports.erase(ports.begin() + static_cast<std::ptrdiff_t>(index));
    (void)m_scope.change(tr("port band"), [&](Bore& bore) { bore.map.ports = ports; });
}

} // namespace borewright
