// SPDX-License-Identifier: GPL-3.0-or-later
// The view of bore × piston. The choice is framed and bold, a pair fixed by the user has a pin, a
// clearance outside its limits its mark: none by colour alone. Arrows go about, Enter fixes.
#pragma once

#include "app/fit/match_model.h"

#include <QHeaderView>
#include <QStyledItemDelegate>
#include <QTableView>

namespace borewright {

class MatchDelegate final : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

// A piston's label over its size.
class PistonHeader final : public QHeaderView {
public:
    explicit PistonHeader(QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;
};

class MatchTable final : public QTableView {
    Q_OBJECT
public:
    explicit MatchTable(MatchModel& model, QWidget* parent = nullptr);
    void fit();

signals:
    void fixWanted(const QModelIndex& index);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    MatchModel& m_model;
};

} // namespace borewright
