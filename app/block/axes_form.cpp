// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/block_form.h"
#include "app/block/block_verbs.h"
#include "app/fields/fold.h"

#include <QHBoxLayout>
#include <QPushButton>

namespace borewright {

AxesForm::AxesForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(makePassingWord(
        tr("Each bore is read on every axis. The angle is counted from the crankshaft's line."),
        this));
    m_rows = new QWidget(this);
    new QVBoxLayout(m_rows);
    column->addWidget(m_rows);
    auto* add = new QPushButton(tr("Add an axis"), this);
    add->setAccessibleName(add->text());
    column->addWidget(add, 0, Qt::AlignLeft);
    connect(add, &QPushButton::clicked, this, &AxesForm::addAxis);
    connect(&document, &Document::changed, this, &AxesForm::refresh);
    refresh();
}

void AxesForm::addRow(std::size_t index) {
    const Axis& axis = m_document.workbook().block.axes[index];
    const QString id = QString::fromStdString(axis.id);
    auto* label = new CommittedField(tr("Axis %1").arg(id), [this, index](const QString& text) {
        return commitLabel(index, text);
    });
    auto* angle = new CommittedField(tr("Angle, degrees"), [this, index](const QString& text) {
        return commitAngle(index, text);
    });
    angle->setSpokenName(tr("Angle of axis %1, degrees").arg(id));
    angle->setFixedWidth(110);
    auto* row = new QWidget(m_rows);
    auto* line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(16);
    line->addWidget(label, 1);
    line->addWidget(angle);
    m_rows->layout()->addWidget(row);
    m_fields.emplace_back(label, angle);
}

void AxesForm::rebuild() {
    while (QLayoutItem* item = m_rows->layout()->takeAt(0)) {
        item->widget()->hide();
        item->widget()->deleteLater();
        delete item;
    }
    m_fields.clear();
    m_rows->layout()->setContentsMargins(0, 0, 0, 0);
    for (std::size_t i = 0; i < m_document.workbook().block.axes.size(); ++i)
        addRow(i);
}

void AxesForm::refresh() {
    const auto& axes = m_document.workbook().block.axes;
    if (axes.size() != m_fields.size()) rebuild();
    for (std::size_t i = 0; i < axes.size(); ++i) {
        m_fields[i].first->showData(QString::fromStdString(axes[i].label));
        m_fields[i].second->showData(QString::number(axes[i].angleDegrees));
    }
}

void AxesForm::addAxis() {
    Block block = m_document.workbook().block;
    block.axes.push_back(nextAxis(block.axes));
    (void)m_document.edit(SetBlock{std::move(block)}, tr("another axis"));
}

Result<void> AxesForm::commitLabel(std::size_t index, const QString& text) {
    Block block = m_document.workbook().block;
    block.axes.at(index).label = text.trimmed().toStdString();
    return m_document.edit(SetBlock{std::move(block)}, tr("label of an axis"));
}

Result<void> AxesForm::commitAngle(std::size_t index, const QString& text) {
    const auto angle = readDecimal(text.toStdString());
    if (!angle) return tl::unexpected(angle.error());
    const double degrees = toDouble(*angle);
    if (degrees < 0 || degrees > 180) return refuse("An angle lies between 0 and 180 degrees.");
    Block block = m_document.workbook().block;
    block.axes.at(index).angleDegrees = degrees;
    return m_document.edit(SetBlock{std::move(block)}, tr("angle of an axis"));
}

} // namespace borewright
