// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/earlier_copies.h"

#include "app/shell/differences_view.h"
#include "core/storage/workbook_file.h"
#include "core/workbook/bring_back.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <functional>

namespace borewright {
namespace {

QString dated(const Timestamp& time) {
    return EarlierCopies::tr("%1, %2").arg(QString::fromStdString(dateInWords(time)),
                                           QString::fromStdString(clockTime(time)));
}

QPushButton* button(const QString& name, QWidget* parent) {
    auto* made = new QPushButton(name, parent);
    made->setAccessibleName(name);
    made->setAutoDefault(false);
    return made;
}

} // namespace

EarlierCopies::EarlierCopies(Workshop& workshop, QWidget* parent)
    : QDialog(parent)
    , m_workshop(workshop)
    , m_list(new QListWidget(this))
    , m_sentence(new QLabel(this))
    , m_table(differencesTable(this))
    , m_surveys(new QComboBox(this))
    , m_beside(button(tr("Open it beside to look"), this))
    , m_one(button(tr("Bring back this survey"), this))
    , m_all(button(tr("Bring back the whole"), this)) {
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Earlier copies"));
    build();
    connect(m_list, &QListWidget::currentRowChanged, this, &EarlierCopies::showCopy);
    connect(m_one, &QPushButton::clicked, this, &EarlierCopies::bringBackOne);
    connect(m_all, &QPushButton::clicked, this, &EarlierCopies::bringBackAll);
    connect(m_beside, &QPushButton::clicked, this, [this] {
        const auto row = static_cast<std::size_t>(m_list->currentRow());
        if (row < m_copies.size()) emit besideAsked(QString::fromStdString(m_copies[row].path));
    });
    // Another workbook has other copies.
    connect(&workshop, &Workshop::opened, this, &QWidget::close);
    connect(&workshop.document(), &Document::changed, this, [this](Change change) {
        if (change != Change::units && change != Change::doubts) compare();
    });
    list();
}

void EarlierCopies::build() {
    m_list->setAccessibleName(tr("Earlier copies, newest first"));
    m_surveys->setAccessibleName(tr("Survey to bring back"));
    m_surveys->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_surveys->setMinimumContentsLength(18);
    m_sentence->setWordWrap(true);
    auto* ways = new QHBoxLayout;
    ways->addWidget(m_beside);
    ways->addStretch(1);
    ways->addWidget(m_surveys);
    ways->addWidget(m_one);
    ways->addWidget(m_all);
    auto* column = new QVBoxLayout;
    column->addWidget(m_sentence);
    column->addWidget(m_table, 1);
    column->addLayout(ways);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(20, 20, 20, 18);
    row->setSpacing(16);
    row->addWidget(m_list);
    row->addLayout(column, 1);
    m_list->setFixedWidth(m_list->fontMetrics().averageCharWidth() * 30);
    resize(1000, 520);
}

void EarlierCopies::list() {
    const auto copies = datedCopies(m_workshop.files(), m_workshop.copyRules(),
                                    m_workshop.autosaver().path().toStdString());
    if (copies) m_copies = *copies;
    const auto before = copiesOfEarlierPlaces(m_workshop.files(), m_workshop.copyRules(),
                                              m_workshop.autosaver().path().toStdString(),
                                              m_workshop.document().workbook().history.id);
    m_copies.insert(m_copies.end(), before.begin(), before.end());
    std::ranges::stable_sort(m_copies, std::ranges::greater(), &DatedCopy::time);
    for (const DatedCopy& copy : m_copies)
        m_list->addItem(dated(copy.time));
    if (!copies)
        m_sentence->setText(tr("The copies cannot be read: %1.")
                                .arg(QString::fromStdString(copies.error().message())));
    else if (m_copies.empty())
        m_sentence->setText(tr("There is no earlier copy of this workbook yet."));
    compare();
    if (!m_copies.empty()) m_list->setCurrentRow(0);
}

void EarlierCopies::showCopy(int row) {
    m_shown.reset();
    if (row < 0) return;
    const auto held =
        loadWorkbook(m_workshop.files(), m_copies.at(static_cast<std::size_t>(row)).path);
    if (held)
        m_shown = *held;
    else
        m_sentence->setText(tr("This copy cannot be read: %1.")
                                .arg(QString::fromStdString(held.error().message())));
    compare();
}

void EarlierCopies::compare() {
    std::vector<Difference> found;
    if (m_shown) {
        Workbook then = *m_shown;
        then.history = m_workshop.document().workbook().history; // only grows; never brought back
        found = differences(then, m_workshop.document().workbook());
        const QString when = m_list->currentItem()->text();
        const int count = static_cast<int>(found.size());
        m_sentence->setText(count == 0 ? tr("On %1 it was as it is now.").arg(when)
                                       : tr("What differs between %1 and now:").arg(when));
    }
    fillDifferences(*m_table, found, {tr("Then"), tr("Now")});
    offerSurveys(found);
    m_beside->setEnabled(m_shown.has_value());
    m_all->setEnabled(!found.empty());
}

// Those that the copy has and that are not as they were.
void EarlierCopies::offerSurveys(const std::vector<Difference>& found) {
    const QVariant chosen = m_surveys->currentData();
    m_surveys->clear();
    for (const Survey& survey : m_shown ? m_shown->surveys : std::vector<Survey>()) {
        const SurveyHeader& header = survey.header;
        if (std::ranges::find(found, header.id, &Difference::survey) == found.end()) continue;
        const std::string name =
            header.name.empty() ? std::string(nameOf(header.kind)) : header.name;
        m_surveys->addItem(QString::fromStdString(name), QString::fromStdString(header.id));
    }
    m_surveys->setCurrentIndex(std::max(0, m_surveys->findData(chosen)));
    m_surveys->setEnabled(m_surveys->count() > 0);
    m_one->setEnabled(m_surveys->count() > 0);
}

void EarlierCopies::bringBackOne() {
    if (!m_shown || m_surveys->currentIndex() < 0) return;
    const std::string id = m_surveys->currentData().toString().toStdString();
    const QString name = m_surveys->currentText();
    keep(bringBackSurvey(m_workshop.document().workbook(), *m_shown, id),
         tr("survey %1 as of %2").arg(name, m_list->currentItem()->text()));
}

void EarlierCopies::bringBackAll() {
    if (!m_shown) return;
    keep(bringBack(m_workshop.document().workbook(), *m_shown),
         tr("workbook as of %1").arg(m_list->currentItem()->text()));
}

void EarlierCopies::keep(const Result<Edit>& edit, const QString& name) {
    auto done =
        edit ? m_workshop.document().edit(*edit, name) : Result<void>(tl::unexpected(edit.error()));
    if (!done)
        m_sentence->setText(
            tr("Not brought back: %1.").arg(QString::fromStdString(done.error().message())));
}

} // namespace borewright
