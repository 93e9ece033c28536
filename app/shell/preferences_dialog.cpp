// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/preferences_dialog.h"

#include "app/fields/refusal_label.h"
#include "app/shell/preferences_file.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

namespace borewright {

PreferencesDialog::PreferencesDialog(PreferencesStore& store, Dialogs& dialogs, QWidget* parent)
    : QDialog(parent)
    , m_store(store)
    , m_dialogs(dialogs)
    , m_shopName(new QLineEdit(this))
    , m_shopAddress(new QPlainTextEdit(this))
    , m_shopPicture(new QLineEdit(this))
    , m_measuredBy(new QLineEdit(this))
    , m_theme(new QComboBox(this))
    , m_paper(new QComboBox(this))
    , m_order(new QComboBox(this))
    , m_soundKept(new QCheckBox(tr("A tick when a reading is kept"), this))
    , m_soundOdd(new QCheckBox(tr("Another when it looks odd"), this))
    , m_copiesFolder(new QLineEdit(this))
    , m_copiesRefused(makeRefusalLabel(this))
    , m_copiesLatest(new QSpinBox(this))
    , m_copiesDays(new QSpinBox(this))
    , m_copiesMonths(new QSpinBox(this)) {
    setWindowTitle(tr("Preferences"));
    build();
    fill();
    connectParts();
    resize(520, sizeHint().height());
}

// QDialog hides itself as it goes, and the field that loses the focus by it calls keep(): that must
// happen while there still is something to call.
PreferencesDialog::~PreferencesDialog() {
    if (!isVisible()) return;
    hide();
    keep();
}

void PreferencesDialog::build() {
    m_theme->addItems({tr("as the desk has it"), tr("light"), tr("dark")});
    m_paper->addItems({tr("A4"), tr("Letter")});
    m_order->addItems({tr("down one axis, up the other"), tr("down each axis"),
                       tr("level by level in a bore"), tr("one level across the block")});
    m_shopAddress->setTabChangesFocus(true);
    m_shopAddress->setFixedHeight(m_shopAddress->fontMetrics().lineSpacing() * 3 + 14);
    auto* choose = new QPushButton(tr("Choose …"), this);
    choose->setAccessibleName(tr("Choose the shop's picture"));
    choose->setAutoDefault(false);
    connect(choose, &QPushButton::clicked, this, &PreferencesDialog::choosePicture);
    auto* picture = new QHBoxLayout;
    picture->addWidget(m_shopPicture, 1);
    picture->addWidget(choose);

    auto* form = new QFormLayout;
    form->setVerticalSpacing(10);
    const auto add = [form](const QString& label, QWidget* control) {
        control->setAccessibleName(label);
        form->addRow(label, control);
    };
    add(tr("Shop"), m_shopName);
    add(tr("Address"), m_shopAddress);
    m_shopPicture->setAccessibleName(tr("Picture for the sheet"));
    form->addRow(tr("Picture for the sheet"), picture);
    add(tr("Measured by"), m_measuredBy);
    add(tr("Paper"), m_paper);
    add(tr("Look"), m_theme);
    add(tr("Order of readings"), m_order);
    addSounds(*form);
    addCopies(*form);
    addLedger(*form);
    auto* close = new QPushButton(tr("Close"), this);
    close->setAccessibleName(tr("Close the preferences"));
    close->setDefault(true);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(24, 20, 24, 18);
    column->addLayout(form);
    column->addSpacing(10);
    column->addWidget(close, 0, Qt::AlignRight);
}

void PreferencesDialog::addSounds(QFormLayout& form) {
    form.addRow(tr("Sounds"), m_soundKept);
    form.addRow(QString(), m_soundOdd);
}

// Where earlier states of each workbook go, and how many are kept.
void PreferencesDialog::addCopies(QFormLayout& form) {
    m_copiesFolder->setAccessibleName(tr("Folder of dated copies"));
    m_copiesFolder->setPlaceholderText(tr("your own data folder"));
    form.addRow(tr("Dated copies in"), m_copiesFolder);
    form.addRow(QString(), m_copiesRefused);
    m_copiesRefused->hide();
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    const auto add = [&](QSpinBox* box, const QString& words) {
        box->setRange(0, 999);
        box->setAccessibleName(tr("Dated copies kept: %1").arg(words));
        row->addWidget(box);
        row->addWidget(new QLabel(words, this));
    };
    add(m_copiesLatest, tr("last"));
    add(m_copiesDays, tr("one a day"));
    add(m_copiesMonths, tr("one a month"));
    row->addStretch(1);
    form.addRow(tr("Kept of them"), row);
}

void PreferencesDialog::addLedger(QFormLayout& form) {
    auto* place = new QPushButton(tr("Where it lies …"), this);
    place->setAccessibleName(tr("Where the ledger lies"));
    place->setAutoDefault(false);
    connect(place, &QPushButton::clicked, this, &PreferencesDialog::ledgerPlaceAsked);
    auto* row = new QHBoxLayout; // or else the button would be as wide as the form
    row->addWidget(place);
    row->addStretch(1);
    form.addRow(tr("Ledger of jobs"), row);
}

void PreferencesDialog::connectParts() {
    for (QSpinBox* box : {m_copiesLatest, m_copiesDays, m_copiesMonths})
        connect(box, &QSpinBox::editingFinished, this, &PreferencesDialog::keep);
    for (QLineEdit* edit : {m_shopName, m_shopPicture, m_measuredBy, m_copiesFolder})
        connect(edit, &QLineEdit::editingFinished, this, &PreferencesDialog::keep);
    for (QComboBox* box : {m_theme, m_paper, m_order})
        connect(box, &QComboBox::currentIndexChanged, this, &PreferencesDialog::keep);
    for (QCheckBox* box : {m_soundKept, m_soundOdd})
        connect(box, &QCheckBox::toggled, this, &PreferencesDialog::keep);
    connect(this, &QDialog::finished, this, &PreferencesDialog::keep);
    connect(&m_store, &PreferencesStore::changed, this, &PreferencesDialog::fill);
}

void PreferencesDialog::fill() {
    const Preferences& p = m_store.value();
    m_filling = true;
    m_shopName->setText(p.shopName);
    if (m_shopAddress->toPlainText() != p.shopAddress) m_shopAddress->setPlainText(p.shopAddress);
    m_shopPicture->setText(p.shopPicture);
    m_measuredBy->setText(p.measuredBy);
    m_theme->setCurrentIndex(static_cast<int>(p.theme));
    m_paper->setCurrentIndex(static_cast<int>(p.paper));
    m_order->setCurrentIndex(static_cast<int>(p.order));
    m_soundKept->setChecked(p.soundKept);
    m_soundOdd->setChecked(p.soundOdd);
    if (m_copiesRefused->isHidden()) m_copiesFolder->setText(p.copiesFolder);
    m_copiesLatest->setValue(p.copiesLatest);
    m_copiesDays->setValue(p.copiesDays);
    m_copiesMonths->setValue(p.copiesMonths);
    m_filling = false;
}

void PreferencesDialog::keep() {
    if (m_filling) return;
    Preferences p = m_store.value();
    p.shopName = m_shopName->text().trimmed();
    p.shopAddress = m_shopAddress->toPlainText();
    p.shopPicture = m_shopPicture->text().trimmed();
    p.measuredBy = m_measuredBy->text().trimmed();
    p.theme = static_cast<Preferences::Theme>(m_theme->currentIndex());
    p.paper = static_cast<Preferences::Paper>(m_paper->currentIndex());
    p.order = static_cast<Order>(m_order->currentIndex());
    p.soundKept = m_soundKept->isChecked();
    p.soundOdd = m_soundOdd->isChecked();
    // Part of a name would mean another folder each time the program is started elsewhere.
    const QString folder = m_copiesFolder->text().trimmed();
    const bool whole = isWholePath(folder);
    m_copiesRefused->setText(
        tr("Copies still go where they went: give the folder's whole name, such as %1.")
            .arg(QDir::toNativeSeparators(QDir::home().filePath(tr("copies")))));
    if (m_copiesRefused->isHidden() != whole) {
        m_copiesRefused->setHidden(whole);
        // Or else the line, broken in two, would press the others together.
        layout()->activate();
        resize(width(), layout()->totalHeightForWidth(width()));
    }
    if (whole) p.copiesFolder = folder;
    p.copiesLatest = m_copiesLatest->value();
    p.copiesDays = m_copiesDays->value();
    p.copiesMonths = m_copiesMonths->value();
    m_store.set(p);
}

void PreferencesDialog::choosePicture() {
    const QString file = m_dialogs.fileToOpen(this, tr("Choose the shop's picture"),
                                              tr("Pictures (*.png *.jpg *.jpeg *.svg)"));
    if (file.isEmpty()) return;
    m_shopPicture->setText(file);
    keep();
}

} // namespace borewright
