// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/start_form.h"

#include "app/shell/start_field.h"
#include "app/shell/theme.h"
#include "app/shell/workbook_name.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QFileInfo>
#include <QFontInfo>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr int widestForm = 980;

QLabel* heading(const QString& text, qreal factor) {
    auto* label = new QLabel(text);
    QFont face = label->font();
    face.setPointSizeF(QFontInfo(face).pointSizeF() * factor);
    face.setWeight(QFont::DemiBold);
    label->setFont(face);
    return label;
}

QLabel* passingWord(const QString& text) {
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QString withUnit(const TypedLength& length) {
    const auto unit = symbol(length.unit());
    return QString::fromStdString(length.text()) + ' ' +
           QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()));
}

QString sentence(const Error& error) {
    QString text = QString::fromStdString(error.what);
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    if (!text.endsWith('.')) text += '.';
    return text;
}

// While he types: what was understood, or nothing where it is not yet anything.
void tellLength(StartField& field, const Result<TypedLength>& length) {
    field.tell(length && !field.text().empty() ? QStringLiteral("= ") + withUnit(*length)
                                               : QString());
}

} // namespace

StartForm::StartForm(Workshop& workshop, QWidget* parent)
    : QWidget(parent)
    , m_workshop(workshop)
    , m_bores(new StartField(tr("Number of bores"), tr("6")))
    , m_size(new StartField(tr("Standard size"), tr("3.42 or 73.2")))
    , m_depth(new StartField(tr("Depth of a bore"), tr("open end to closed end")))
    , m_openEnd(new StartField(tr("The open end is the"), tr("head face")))
    , m_wornSize(new StartField(tr("Worn: size up to"), tr("from the maker's manual")))
    , m_wornRound(new StartField(tr("Worn: out-of-round up to"), tr("3 or 0.003")))
    , m_wornTaper(new StartField(tr("Worn: taper up to"), tr("2 or 0.002")))
    , m_engine(new StartField(tr("Engine"), tr("may stay empty")))
    , m_customer(new StartField(tr("Customer"), tr("may stay empty")))
    , m_arrangement(new QComboBox)
    , m_combustion(new QComboBox)
    , m_blind(new QCheckBox(tr("Blind: a hone cannot pass through")))
    , m_go(new QPushButton(tr("Begin")))
    , m_place(passingWord({})) {
    setAccessibleName(tr("A new block"));
    m_arrangement->addItems({tr("in line"), tr("V of two banks"), tr("opposed")});
    m_combustion->addItems({tr("at the open end"), tr("at the closed end")});
    m_blind->setChecked(true);
    m_blind->setAccessibleName(tr("Closed end: blind, a hone cannot pass through"));
    m_go->setAutoDefault(false);
    auto* row = new QHBoxLayout;
    row->setSpacing(48);
    row->addWidget(buildForm(), 3);
    row->addWidget(buildEarlier(), 1);
    auto* middle = new QWidget;
    middle->setMaximumWidth(widestForm);
    middle->setLayout(row);
    auto* centred = new QWidget;
    auto* centre = new QHBoxLayout(centred);
    centre->setContentsMargins(32, 28, 32, 20);
    centre->addStretch(1);
    centre->addWidget(middle, 100);
    centre->addStretch(1);
    auto* scroll = new QScrollArea;
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(centred);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll);
    connect(m_go, &QPushButton::clicked, this, &StartForm::go);
    connect(m_combustion, &QComboBox::currentIndexChanged, this, &StartForm::followEnds);
    connect(m_openEnd->edit(), &QLineEdit::textEdited, this, [this] { m_openEndTyped = true; });
    followEnds();
    follow();
}

QWidget* StartForm::buildForm() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(heading(tr("A new block"), 1.7));
    column->addWidget(passingWord(tr("Type what you know and press Enter to move on. The rest can "
                                     "be filled in later.")));
    column->addSpacing(12);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(18);
    grid->setVerticalSpacing(8);
    addFields(*grid);
    column->addLayout(grid);
    auto* last = new QHBoxLayout;
    m_go->setMinimumSize(130, m_go->sizeHint().height() + 10);
    last->addWidget(m_go);
    last->addSpacing(14);
    last->addWidget(m_place, 1);
    column->addLayout(last);
    column->addStretch(1);
    for (QWidget* control :
         {static_cast<QWidget*>(m_arrangement), static_cast<QWidget*>(m_combustion),
          static_cast<QWidget*>(m_blind), static_cast<QWidget*>(m_go)})
        control->installEventFilter(this);
    return box;
}

void StartForm::addFields(QGridLayout& grid) {
    grid.addWidget(m_bores, 0, 0);
    grid.addWidget(labelled(tr("Arrangement"), m_arrangement), 0, 1);
    grid.addWidget(m_size, 1, 0);
    grid.addWidget(m_depth, 1, 1);
    grid.addWidget(labelled(tr("Combustion"), m_combustion), 2, 0);
    grid.addWidget(m_openEnd, 2, 1);
    grid.addWidget(labelled(tr("Closed end"), m_blind), 2, 2);
    grid.addWidget(m_wornSize, 3, 0);
    grid.addWidget(m_wornRound, 3, 1);
    grid.addWidget(m_wornTaper, 3, 2);
    grid.addWidget(m_engine, 4, 0);
    grid.addWidget(m_customer, 4, 1);
    for (int i = 0; i < 3; ++i)
        grid.setColumnStretch(i, 1);
    for (StartField* field : {m_bores, m_size, m_depth, m_openEnd, m_wornSize, m_wornRound,
                              m_wornTaper, m_engine, m_customer}) {
        field->edit()->installEventFilter(this);
        connect(field->edit(), &QLineEdit::textChanged, this, &StartForm::follow);
    }
    const QList<QWidget*> order{
        m_bores->edit(),     m_arrangement,       m_size->edit(),   m_depth->edit(),
        m_combustion,        m_openEnd->edit(),   m_blind,          m_wornSize->edit(),
        m_wornRound->edit(), m_wornTaper->edit(), m_engine->edit(), m_customer->edit()};
    m_order = order;
}

QWidget* StartForm::labelled(const QString& label, QWidget* control) {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    auto* title = new QLabel(label);
    title->setBuddy(control);
    if (control->accessibleName().isEmpty()) control->setAccessibleName(label);
    column->addWidget(title);
    column->addWidget(control);
    column->addStretch(1);
    return box;
}

QWidget* StartForm::buildEarlier() {
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 10, 0, 0);
    column->setSpacing(8);
    column->addWidget(heading(tr("Earlier workbooks"), 1.1));
    auto* open = new QPushButton(tr("Open …"));
    open->setAccessibleName(tr("Open a workbook"));
    open->setAutoDefault(false);
    connect(open, &QPushButton::clicked, this, &StartForm::openAsked);
    column->addWidget(open, 0, Qt::AlignLeft);
    m_earlier = new QVBoxLayout;
    m_earlier->setSpacing(4);
    column->addLayout(m_earlier);
    column->addStretch(1);
    return box;
}

void StartForm::listEarlier() {
    while (QLayoutItem* item = m_earlier->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (const QString& path : m_workshop.preferences().value().recentFiles) {
        auto* button = new QPushButton(QFileInfo(path).completeBaseName());
        button->setFlat(true);
        button->setAutoDefault(false);
        button->setStyleSheet(QStringLiteral("text-align: left; padding: 4px 2px;"));
        button->setToolTip(QDir::toNativeSeparators(path));
        button->setAccessibleName(tr("Open %1").arg(QFileInfo(path).completeBaseName()));
        button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
        connect(button, &QPushButton::clicked, this, [this, path] { emit openRequested(path); });
        m_earlier->addWidget(button);
    }
}

void StartForm::start() {
    listEarlier();
    for (StartField* field :
         {m_bores, m_size, m_depth, m_wornSize, m_wornRound, m_wornTaper, m_engine, m_customer})
        field->edit()->clear();
    m_openEndTyped = false;
    followEnds();
    m_bores->edit()->setFocus();
}

void StartForm::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    m_bores->edit()->setFocus();
}

// Enter moves on from any control, as it does at the bench. A number typed at a drop-down or a tick
// box is meant for the field behind it.
bool StartForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const auto* press = static_cast<QKeyEvent*>(event);
    const auto here = m_order.indexOf(static_cast<QWidget*>(watched));
    if (!press->text().isEmpty() && press->text().front().isDigit() && here >= 0 &&
        qobject_cast<QLineEdit*>(watched) == nullptr) {
        for (auto next = here + 1; next < m_order.size(); ++next)
            if (auto* field = qobject_cast<QLineEdit*>(m_order.at(next))) {
                field->setFocus(Qt::TabFocusReason);
                field->insert(press->text());
                return true;
            }
    }
    const int key = press->key();
    if (key != Qt::Key_Return && key != Qt::Key_Enter) return QWidget::eventFilter(watched, event);
    if (here < 0 || here + 1 == m_order.size()) {
        go();
        return true;
    }
    m_order.at(here + 1)->setFocus(Qt::TabFocusReason);
    return true;
}

void StartForm::followEnds() {
    if (m_openEndTyped) return;
    m_openEnd->edit()->setText(m_combustion->currentIndex() == 0 ? tr("head face")
                                                                 : tr("crankcase face"));
}

void StartForm::follow() {
    const auto size = readSize(m_size->text());
    tellLength(*m_size, size);
    const TypedLength beside = size ? *size : TypedLength();
    tellLength(*m_depth, size ? readBeside(m_depth->text(), beside) : size);
    tellLength(*m_wornSize, size ? readBeside(m_wornSize->text(), beside) : size);
    tellLength(*m_wornRound, size ? readAllowance(m_wornRound->text(), beside) : size);
    tellLength(*m_wornTaper, size ? readAllowance(m_wornTaper->text(), beside) : size);
    m_bores->tell({});
    m_place->setText(tr("It is kept on disk from the start, in %1.")
                         .arg(QDir::toNativeSeparators(m_workshop.workbookFolder())));
}

NewBlock StartForm::typed() const {
    NewBlock block;
    block.bores = m_bores->text();
    block.size = m_size->text();
    block.depth = m_depth->text();
    block.openEnd = m_openEnd->text();
    block.wornSize = m_wornSize->text();
    block.wornOutOfRound = m_wornRound->text();
    block.wornTaper = m_wornTaper->text();
    block.engine = m_engine->text();
    block.customer = m_customer->text();
    block.measuredBy = m_workshop.preferences().value().measuredBy.toStdString();
    block.arrangement = static_cast<Arrangement>(m_arrangement->currentIndex());
    block.blind = m_blind->isChecked();
    block.combustionEnd = m_combustion->currentIndex() == 0 ? End::open : End::closed;
    return block;
}

StartField* StartForm::fieldNamed(const std::string& name) const {
    if (name == new_block_field::size) return m_size;
    if (name == new_block_field::depth) return m_depth;
    if (name == new_block_field::wornSize) return m_wornSize;
    if (name == new_block_field::wornOutOfRound) return m_wornRound;
    if (name == new_block_field::wornTaper) return m_wornTaper;
    return m_bores;
}

void StartForm::go() {
    follow();
    auto workbook = makeWorkbook(typed());
    if (!workbook) {
        StartField* field = fieldNamed(workbook.error().where);
        field->refuse(sentence(workbook.error()));
        field->edit()->setFocus();
        field->edit()->selectAll();
        return;
    }
    m_workshop.begin(std::move(*workbook));
    emit began();
}

} // namespace borewright
