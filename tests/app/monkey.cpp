// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/monkey.h"

#include <QApplication>
#include <QClipboard>
#include <QPointer>

#include <array>
#include <cstdio>

namespace borewright::test {
namespace {

constexpr std::size_t remembered = 40;

QWidget* focused(Window& window) {
    QWidget* focus = QApplication::focusWidget();
    if (focus != nullptr && focus->isVisible()) return focus;
    window.activateWindow(); // a list that closed has left the keys to nobody
    focus = window.focusWidget();
    return focus != nullptr ? focus : &window;
}

std::string nameOf(const QWidget& widget) {
    return std::string(widget.metaObject()->className()) + " '" +
           widget.objectName().toStdString() + "' of " +
           (widget.parentWidget() != nullptr ? widget.parentWidget()->metaObject()->className()
                                             : "nothing");
}

} // namespace

Monkey::Monkey(Shop& shop, unsigned seed)
    : m_shop(shop)
    , m_random(seed) {
    m_tamer.setInterval(300); // only where a dialog holds up the step; else the steps see to it
    QObject::connect(&m_tamer, &QTimer::timeout, [this] { tameDialogs(); });
    m_tamer.start();
}

int Monkey::upTo(int most) {
    return most <= 0 ? 0 : static_cast<int>(m_random() % static_cast<unsigned>(most + 1));
}

void Monkey::tell(const std::string& what) {
    static const bool aloud = qEnvironmentVariableIsSet("BOREWRIGHT_MONKEY_TELLS");
    if (aloud) {
        std::fprintf(stderr, "%s\n", what.c_str());
        std::fflush(stderr);
    }
    m_told.push_back(what);
    if (m_told.size() > remembered) m_told.pop_front();
}

std::string Monkey::lastSteps() const {
    std::string all = "the last steps were:";
    for (const std::string& one : m_told)
        all += "\n  " + one;
    return all;
}

void Monkey::tameDialogs() {
    QWidget* waiting = QApplication::activePopupWidget();
    if (waiting == nullptr) waiting = QApplication::activeModalWidget();
    if (waiting == nullptr) return;
    static constexpr std::array answers{Qt::Key_Down, Qt::Key_Up, Qt::Key_Return, Qt::Key_Escape};
    const Qt::Key answer = oneOf(answers);
    tell("answer " + std::to_string(answer) + " to " + nameOf(*waiting));
    QTest::keyClick(waiting, answer);
}

void Monkey::key() {
    static constexpr std::array others{
        Qt::Key_Return, Qt::Key_Enter, Qt::Key_Tab,    Qt::Key_Backtab,  Qt::Key_Up,
        Qt::Key_Down,   Qt::Key_Left,  Qt::Key_Right,  Qt::Key_Delete,   Qt::Key_Backspace,
        Qt::Key_Escape, Qt::Key_Space, Qt::Key_F2,     Qt::Key_Home,     Qt::Key_End,
        Qt::Key_PageUp, Qt::Key_Enter, Qt::Key_Return, Qt::Key_PageDown, Qt::Key_Insert};
    static const std::string letters = "0123456789012345678901234567890123456789.,-+/ abimntuxyz=";
    QWidget* target = focused(m_shop.window);
    if (upTo(2) == 0) {
        const Qt::Key which = oneOf(others);
        tell("key " + std::to_string(which) + " to " + nameOf(*target));
        QTest::keyClick(target, which);
    } else {
        const char letter = oneOf(letters);
        tell(std::string("type ") + letter + " to " + nameOf(*target));
        QTest::keyClick(target, letter, upTo(1) == 0 ? Qt::KeypadModifier : Qt::NoModifier);
    }
}

void Monkey::number() {
    QWidget* target = focused(m_shop.window);
    std::string text = (upTo(2) == 0 ? "-" : "") + std::to_string(upTo(upTo(3) == 0 ? 99'999 : 9));
    if (upTo(1) == 0) text += (upTo(1) == 0 ? "." : ",") + std::to_string(upTo(999));
    tell("number " + text + " to " + nameOf(*target));
    const QPointer<QWidget> still(target); // a key may end what has the keys
    for (const char c : text)
        if (still) QTest::keyClick(still.data(), c, Qt::KeypadModifier);
    QTest::keyClick(focused(m_shop.window), Qt::Key_Enter, Qt::KeypadModifier);
}

void Monkey::shortcut() {
    static constexpr std::array keys{
        Qt::Key_1, Qt::Key_2, Qt::Key_3, Qt::Key_4, Qt::Key_5, Qt::Key_6,     Qt::Key_7, Qt::Key_Z,
        Qt::Key_Z, Qt::Key_Z, Qt::Key_Y, Qt::Key_A, Qt::Key_C, Qt::Key_X,     Qt::Key_V, Qt::Key_D,
        Qt::Key_S, Qt::Key_O, Qt::Key_E, Qt::Key_I, Qt::Key_B, Qt::Key_Comma, Qt::Key_F, Qt::Key_R};
    const Qt::Key which = oneOf(keys);
    QWidget* target = focused(m_shop.window);
    const Qt::KeyboardModifiers shift = upTo(5) == 0 ? Qt::ShiftModifier : Qt::NoModifier;
    tell("Ctrl+" + std::to_string(which) + " to " + nameOf(*target));
    m_shop.dialogs.answer = upTo(1) == 0 ? QString() : m_shop.folder.filePath("out");
    if (upTo(20) == 0)
        QTest::keyClick(target, Qt::Key_F11);
    else
        QTest::keyClick(target, which, Qt::ControlModifier | shift);
}

void Monkey::click() {
    std::vector<QWidget*> places;
    for (QWidget* top : QApplication::topLevelWidgets()) {
        if (!top->isVisible()) continue;
        for (QWidget* widget : top->findChildren<QWidget*>())
            if (widget->isVisible() && widget->isEnabled() && !widget->visibleRegion().isEmpty())
                places.push_back(widget);
    }
    if (places.empty()) return;
    QWidget* place = oneOf(places);
    const QRect area = place->visibleRegion().boundingRect();
    const QPoint at = area.topLeft() + QPoint(upTo(area.width() - 1), upTo(area.height() - 1));
    const Qt::MouseButton button = upTo(15) == 0 ? Qt::RightButton : Qt::LeftButton;
    const Qt::KeyboardModifiers held = upTo(9) == 0 ? Qt::ShiftModifier : Qt::NoModifier;
    const bool twice = upTo(9) == 0;
    m_shop.dialogs.answer = upTo(1) == 0 ? QString() : m_shop.folder.filePath("out");
    tell(std::string(twice ? "double " : "") + "click " + std::to_string(button) + " at " +
         std::to_string(at.x()) + "," + std::to_string(at.y()) + " on " + nameOf(*place));
    if (twice)
        QTest::mouseDClick(place, button, held, at);
    else
        QTest::mouseClick(place, button, held, at);
}

void Monkey::paste() {
    static const std::array<QString, 12> texts{
        "3.4205",
        "1\t2\n3\t4\n",
        "-1,5\n-1,6\n-1,7\n-1,8\n",
        "=1+1",
        "../../etc",
        QString(400, '7'),
        QString("\x1b[2J\x07\x01"),
        QString::fromUtf8("Ø µ 木 \U0001F600"),
        QString::fromLatin1("a\0b", 3),
        QString(40'000, 'x'), // longer notes are refused, and are a test of their own
        "NaN\tinf\t1e5",
        "\r\n\r\n\t\t\t",
    };
    const QString& text = oneOf(texts);
    QWidget* target = focused(m_shop.window);
    tell("paste '" + text.left(20).toStdString() + "' to " + nameOf(*target));
    QApplication::clipboard()->setText(text);
    QTest::keyClick(target, Qt::Key_V, Qt::ControlModifier);
}

void Monkey::resize() {
    const QSize size(200 + upTo(1600), 150 + upTo(1000));
    tell("resize to " + std::to_string(size.width()) + " x " + std::to_string(size.height()));
    m_shop.window.resize(size);
}

void Monkey::unwind() {
    QUndoStack& stack = m_shop.workshop.document().undoStack();
    const int to = upTo(stack.count());
    tell("undo or redo to step " + std::to_string(to) + " of " + std::to_string(stack.count()));
    stack.setIndex(to);
}

void Monkey::open() {
    const QString path = m_shop.folder.filePath(upTo(1) == 0 ? "out.borebook" : "start.borebook");
    tell("open " + path.toStdString());
    m_shop.window.openPath(path);
}

void Monkey::step() {
    // Closed by a key or a click: started again.
    if (!m_shop.window.isVisible()) m_shop.window.show();
    if (upTo(3) == 0) tameDialogs();
    const int what = upTo(199);
    if (what < 50)
        key();
    else if (what < 90)
        number();
    else if (what < 160)
        click();
    else if (what < 180)
        shortcut();
    else if (what < 190)
        paste();
    else if (what < 194)
        resize();
    else if (what < 198)
        unwind();
    else if (upTo(9) == 0)
        open();
    QCoreApplication::processEvents();
}

} // namespace borewright::test
