// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/differences_view.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace borewright {
namespace {

QString told(const std::optional<std::string>& value) {
    if (!value) return DifferencesView::tr("not there");
    return value->empty() ? DifferencesView::tr("empty") : QString::fromStdString(*value);
}

} // namespace

QTableWidget* differencesTable(QWidget* parent) {
    auto* table = new QTableWidget(0, 4, parent);
    table->setAccessibleName(DifferencesView::tr("What differs"));
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setWordWrap(true);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setStretchLastSection(true);
    return table;
}

void fillDifferences(QTableWidget& table, const std::vector<Difference>& list, const Sides& sides) {
    table.setHorizontalHeaderLabels(
        {DifferencesView::tr("Where"), DifferencesView::tr("What"), sides.was, sides.is});
    table.setRowCount(static_cast<int>(list.size()));
    int row = 0;
    for (const Difference& one : list) {
        const QString place = one.place.empty() ? DifferencesView::tr("the workbook")
                                                : QString::fromStdString(one.place);
        int column = 0;
        for (const QString& text :
             {place, QString::fromStdString(one.what), told(one.was), told(one.is)})
            table.setItem(row, column++, new QTableWidgetItem(text));
        ++row;
    }
    constexpr int mostMeasured = 200; // of thousands of rows a few tell how wide columns are
    table.horizontalHeader()->setResizeContentsPrecision(mostMeasured);
    table.resizeColumnsToContents();
}

DifferencesView::DifferencesView(const QString& sentence, const std::vector<Difference>& list,
                                 const Sides& sides, const std::vector<BannerAction>& ways,
                                 QWidget* parent)
    : QDialog(parent) {
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("What differs"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 20, 24, 18);
    auto* label = new QLabel(sentence, this);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    column->addWidget(label);
    QTableWidget* table = differencesTable(this);
    fillDifferences(*table, list, sides);
    column->addWidget(table, 1);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    for (const BannerAction& way : ways) {
        auto* button = new QPushButton(way.name, this);
        button->setAccessibleName(way.name);
        button->setAutoDefault(false); // none of them by a stray Enter
        row->addWidget(button);
        connect(button, &QPushButton::clicked, this, [this, action = way.action] {
            const auto todo = action;
            close();
            todo();
        });
    }
    column->addLayout(row);
    resize(900, 480);
}

} // namespace borewright
