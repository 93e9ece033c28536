// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/status_line.h"

#include "app/shell/theme.h"

#include <QComboBox>
#include <QDir>
#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>

namespace borewright {
namespace {

constexpr std::array sizeUnits{Unit::inch, Unit::millimetre};
constexpr std::array smallUnits{Unit::thou, Unit::tenth, Unit::millimetre, Unit::hundredth,
                                Unit::micrometre};

QString named(Unit unit) {
    const auto text = symbol(unit);
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

template<class Units>
void offer(QComboBox& box, const Units& units, const QString& name) {
    for (const Unit unit : units)
        box.addItem(named(unit), static_cast<int>(unit));
    box.setAccessibleName(name);
    box.setToolTip(name);
    box.setFocusPolicy(Qt::TabFocus);
}

} // namespace

QString undoName(Document& document) {
    const QString text = document.undoStack().undoText();
    return text.isEmpty() ? StatusLine::tr("Undo") : StatusLine::tr("Undo %1").arg(text);
}

QString redoName(Document& document) {
    const QString text = document.undoStack().redoText();
    return text.isEmpty() ? StatusLine::tr("Redo") : StatusLine::tr("Redo %1").arg(text);
}

StatusLine::StatusLine(Workshop& workshop, QWidget* parent)
    : QWidget(parent)
    , m_workshop(workshop)
    , m_undo(new QToolButton(this))
    , m_redo(new QToolButton(this))
    , m_place(new QLabel(this))
    , m_state(new QLabel(this))
    , m_ledger(new QLabel(this))
    , m_sizes(new QComboBox(this))
    , m_smalls(new QComboBox(this)) {
    setAccessibleName(tr("Status"));
    build();
    QUndoStack& stack = workshop.document().undoStack();
    connect(m_undo, &QToolButton::clicked, &stack, &QUndoStack::undo);
    connect(m_redo, &QToolButton::clicked, &stack, &QUndoStack::redo);
    connect(&stack, &QUndoStack::indexChanged, this, &StatusLine::refresh);
    connect(&workshop.document(), &Document::changed, this, &StatusLine::refresh);
    connect(&workshop.autosaver(), &Autosaver::stateChanged, this, &StatusLine::refreshPlace);
    connect(&workshop, &Workshop::opened, this, &StatusLine::refresh);
    connect(&workshop.ledger(), &LedgerDesk::wordChanged, this, &StatusLine::refreshLedger);
    connect(m_sizes, &QComboBox::activated, this, &StatusLine::chooseUnits);
    connect(m_smalls, &QComboBox::activated, this, &StatusLine::chooseUnits);
    refreshIcons();
    refresh();
    refreshLedger();
}

// The wheel that scrolls a page must not change its units.
bool StatusLine::eventFilter(QObject* watched, QEvent* event) {
    return event->type() == QEvent::Wheel || QWidget::eventFilter(watched, event);
}

void StatusLine::build() {
    for (QComboBox* box : {m_sizes, m_smalls})
        box->installEventFilter(this);
    offer(*m_sizes, sizeUnits, tr("Unit that sizes are shown in"));
    offer(*m_smalls, smallUnits, tr("Unit that small amounts are shown in"));
    for (QToolButton* button : {m_undo, m_redo}) {
        button->setAutoRaise(true);
        button->setFocusPolicy(Qt::TabFocus);
    }
    m_place->setForegroundRole(QPalette::PlaceholderText);
    m_place->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_state->setTextFormat(Qt::PlainText);
    m_ledger->setTextFormat(Qt::PlainText);
    m_ledger->setForegroundRole(QPalette::PlaceholderText);
    auto* sizes = new QLabel(tr("Sizes in"), this);
    sizes->setBuddy(m_sizes);
    auto* smalls = new QLabel(tr("small amounts in"), this);
    smalls->setBuddy(m_smalls);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 4, 14, 4);
    row->setSpacing(8);
    row->addWidget(m_undo);
    row->addWidget(m_redo);
    row->addSpacing(8);
    row->addWidget(m_place, 1);
    row->addWidget(m_ledger);
    row->addWidget(m_state);
    row->addSpacing(18);
    row->addWidget(sizes);
    row->addWidget(m_sizes);
    row->addWidget(smalls);
    row->addWidget(m_smalls);
}

void StatusLine::setWord(const QString& word) {
    m_word = word;
    refreshPlace();
}

void StatusLine::refresh() {
    QUndoStack& stack = m_workshop.document().undoStack();
    m_undo->setEnabled(stack.canUndo());
    m_redo->setEnabled(stack.canRedo());
    for (const auto& [button, name] : {std::pair(m_undo, undoName(m_workshop.document())),
                                       std::pair(m_redo, redoName(m_workshop.document()))}) {
        button->setToolTip(name);
        button->setAccessibleName(name);
    }
    refreshPlace();
    refreshUnits();
}

void StatusLine::refreshPlace() {
    const Autosaver& autosaver = m_workshop.autosaver();
    const QString path = QDir::toNativeSeparators(autosaver.path());
    const QString text = m_word.isEmpty() ? path : m_word;
    m_place->setText(m_place->fontMetrics().elidedText(text, Qt::ElideMiddle, m_place->width()));
    const QString problem = m_workshop.lockProblem();
    m_place->setToolTip(problem.isEmpty() ? path : path + u'\n' + problem);
    m_place->setAccessibleName(tr("File: %1").arg(text));
    const bool failed = autosaver.state() == Autosaver::State::failed;
    // The whole sentence of a failure stands in the banner; here is room for a word.
    const QString state = failed ? tr("Not saved") : autosaver.sentence();
    QPalette colours = palette();
    if (failed) colours.setColor(QPalette::WindowText, warningColour(palette()));
    m_state->setPalette(colours);
    m_state->setVisible(m_workshop.isOpen());
    m_state->setText(state);
    m_state->setToolTip(autosaver.sentence());
    m_state->setAccessibleName(autosaver.sentence());
}

// Nothing where all is well: the ledger is nobody's concern at the bench.
void StatusLine::refreshLedger() {
    const LedgerDesk& ledger = m_workshop.ledger();
    m_ledger->setText(ledger.word());
    m_ledger->setToolTip(ledger.whyWaiting());
    m_ledger->setAccessibleName(ledger.whyWaiting());
    m_ledger->setVisible(!ledger.word().isEmpty());
}

void StatusLine::refreshUnits() {
    const DisplayUnits& units = m_workshop.document().units();
    m_sizes->setCurrentIndex(m_sizes->findData(static_cast<int>(units.size)));
    m_smalls->setCurrentIndex(m_smalls->findData(static_cast<int>(units.small)));
}

void StatusLine::chooseUnits() {
    m_workshop.document().setUnits({static_cast<Unit>(m_sizes->currentData().toInt()),
                                    static_cast<Unit>(m_smalls->currentData().toInt())});
}

void StatusLine::refreshIcons() {
    m_undo->setIcon(inkedIcon(QStringLiteral("undo"), palette()));
    m_redo->setIcon(inkedIcon(QStringLiteral("redo"), palette()));
}

void StatusLine::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::PaletteChange) return;
    refreshIcons();
    refreshPlace();
}

void StatusLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    refreshPlace();
}

void StatusLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(hairline(palette()));
    painter.drawLine(0, 0, width(), 0);
}

} // namespace borewright
