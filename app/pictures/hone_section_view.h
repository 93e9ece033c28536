// SPDX-License-Identifier: GPL-3.0-or-later
// The set-up of the chosen bore on screen. Ends of its windows are dragged, or chosen with Tab and
// moved with the arrow keys; Escape takes it back. It tells who listens and writes nothing: until
// that one hands it new data, it shows the window where the hand has it.
#pragma once

#include "app/pictures/hone_section.h"
#include "app/pictures/picture_view.h"

namespace borewright {

class HoneSectionView : public PictureView {
    Q_OBJECT
public:
    HoneSectionView(Document& document, Selection& selection, QWidget* parent = nullptr);

    // What is known of the chosen bore; a bore that it is not of is drawn bare, with `waiting`.
    void setOutlook(std::optional<BoreOutlook> outlook);
    void setOwn(std::optional<HoneOwnDraft> own);
    // Said where there is no outlook: "Reckoning …", or why nothing can be planned.
    void setWaiting(const QString& words);
    [[nodiscard]] const HoneSectionData& data();
    // The end that the keys move: window and 0 = upper, 1 = lower; nothing = none chosen.
    struct Chosen {
        std::size_t window = 0;
        int end = 0;
        friend bool operator==(const Chosen&, const Chosen&) = default;
    };
    [[nodiscard]] const std::optional<Chosen>& chosen() const { return m_chosen; }
    [[nodiscard]] QSize sizeHint() const override { return {560, 560}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {340, 340}; }

signals:
    // The window at that place was moved, and is still in hand; or was let go.
    void windowDragged(int index, borewright::Length from, borewright::Length to);
    void windowCommitted(int index, borewright::Length from, borewright::Length to);

protected:
    void rebuild() override;
    [[nodiscard]] QString describe() const override;
    void paint(QPainter& painter, const QRectF& rect) override;
    bool event(QEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    // What is in the hand.
    struct Held {
        std::size_t window = 0;
        bool upper = false; // which ends move
        bool lower = false;
        double grip_mm = 0; // where the hand took it
        double from_mm = 0; // as it was
        double to_mm = 0;
        double nowFrom_mm = 0;
        double nowTo_mm = 0;
        [[nodiscard]] bool moved() const { return nowFrom_mm != from_mm || nowTo_mm != to_mm; }
    };
    [[nodiscard]] std::optional<Held> heldAt(const QPointF& position);
    [[nodiscard]] double depthAt(double y);
    [[nodiscard]] double snapped(double depth_mm) const;
    void move(double by_mm);
    void tell();
    void letGo();
    void takeBack();
    void paintChosen(QPainter& painter, const QRectF& rect);

    std::optional<BoreOutlook> m_outlook;
    std::optional<HoneOwnDraft> m_own;
    QString m_waiting;
    std::optional<Held> m_held;
    bool m_byKey = false;
    std::optional<Chosen> m_chosen;
    HoneSectionData m_data;
};

} // namespace borewright
