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

// Flat heads: across, a piston's label over its size; down, the bores.
class MatchHeader final : public QHeaderView {
public:
    MatchHeader(Qt::Orientation orientation, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;

private:
    void paintPiston(QPainter* painter, const QRect& rect, int section) const;
};

class MatchView final : public QTableView {
    Q_OBJECT
public:
    explicit MatchView(MatchModel& model, QWidget* parent = nullptr);
    void fit();
    // How high it may become before it scrolls within; a few rows are always shown.
    void setRoom(int height);

signals:
    void fixWanted(const QModelIndex& index);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    MatchModel& m_model;
    int m_room = 500;
};

} // namespace borewright
