// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/levels_form.h"

#include "app/fields/committed_field.h"
#include "app/fields/refusal_label.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>

namespace borewright {

LevelsForm::LevelsForm(BoreScope& scope, QWidget* parent)
    : QWidget(parent)
    , m_model(new LevelsModel(scope, this))
    , m_table(new QTableView(this))
    , m_refusal(makeRefusalLabel(this)) {
    setUpTable();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(8);
    column->addWidget(m_table);
    column->addWidget(m_refusal);
    column->addWidget(makeButtons());
    connect(m_model, &LevelsModel::refused, this, [this](const QString& sentence) {
        m_refusal->setText(sentence);
        m_refusal->setVisible(!sentence.isEmpty());
    });
    connect(m_model, &QAbstractItemModel::modelReset, this, &LevelsForm::fit);
    fit();
}

void LevelsForm::setUpTable() {
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Levels"));
    m_table->setToolTip(tr("Type a depth; press the space bar on Judged or on an axis to turn it; "
                           "Delete takes a level off."));
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->setShowGrid(false);
    m_table->setAlternatingRowColors(true);
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                             QAbstractItemView::EditKeyPressed);
    m_table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->installEventFilter(this);
    connect(m_table, &QTableView::doubleClicked, this, &LevelsForm::turnJudged);
}

QWidget* LevelsForm::makeButtons() {
    auto* box = new QWidget(this);
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    auto* propose = new QPushButton(tr("Propose levels"), box);
    propose->setToolTip(tr("From the bore map, else spread evenly over the depth"));
    auto* remove = new QPushButton(tr("Take level off"), box);
    for (QPushButton* button : {propose, remove}) {
        button->setAccessibleName(button->text());
        row->addWidget(button);
    }
    row->addStretch();
    connect(propose, &QPushButton::clicked, this, [this] {
        const auto done = m_model->propose();
        if (!done) emit m_model->refused(QString::fromStdString(done.error().what));
    });
    connect(remove, &QPushButton::clicked, this, &LevelsForm::removeChosen);
    return box;
}

void LevelsForm::removeChosen() {
    std::vector<int> rows;
    for (const QModelIndex& index : m_table->selectionModel()->selectedIndexes())
        rows.push_back(index.row());
    m_model->removeLevels(rows);
}

void LevelsForm::turnJudged(const QModelIndex& index) {
    if (index.column() == LevelsModel::judgedColumn) m_model->setData(index, {}, Qt::EditRole);
}

bool LevelsForm::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const QModelIndex current = m_table->currentIndex();
        if (key->key() == Qt::Key_Delete) {
            removeChosen();
            return true;
        }
        if (key->key() == Qt::Key_Space && current.column() == LevelsModel::judgedColumn) {
            turnJudged(current);
            return true;
        }
        if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
            m_table->setCurrentIndex(current.siblingAtRow(
                std::min(current.row() + 1, m_model->rowCount() - 1)));
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void LevelsForm::fit() {
    // The whole table is shown: the page scrolls, not the table within it.
    int height = m_table->horizontalHeader()->sizeHint().height() + 2 * m_table->frameWidth();
    for (int row = 0; row < m_model->rowCount(); ++row)
        height += m_table->rowHeight(row);
    m_table->setFixedHeight(height);
}

} // namespace borewright
