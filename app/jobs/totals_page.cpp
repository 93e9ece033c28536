// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/totals_page.h"

#include "app/fit/text_table.h"

#include <QDir>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace borewright {
namespace {

struct Answered {
    LedgerSheet sheet;
    std::size_t all = 0;
};

// A verdict is a shape beside its word.
std::optional<Verdict> verdictNamed(const std::string& name) {
    for (const Verdict verdict : {Verdict::notJudged, Verdict::notMeasured, Verdict::within,
                                  Verdict::outside, Verdict::tooCloseToCall, Verdict::notYet})
        if (nameOf(verdict) == name) return verdict;
    return {};
}

TextModel::Content contentOf(const LedgerSheet& sheet) {
    TextModel::Content content;
    auto rows = sheet.table();
    if (rows.empty()) return content;
    for (const std::string& head : rows.front())
        content.heads += QString::fromStdString(head);
    const std::vector<bool> figures = sheet.figures();
    for (std::size_t i = 0; i < figures.size(); ++i)
        if (!figures[i]) content.words.push_back(static_cast<int>(i));
    for (std::size_t row = 1; row < rows.size(); ++row) {
        std::vector<TextModel::Cell> cells;
        for (std::size_t i = 0; i < rows[row].size(); ++i) {
            TextModel::Cell cell;
            cell.text = QString::fromStdString(rows[row][i]).simplified();
            if (rows.front()[i] == "file") { // the name alone; the pointer tells the rest
                cell.said = QDir::toNativeSeparators(cell.text);
                cell.text = cell.text.section(u'/', -1);
            }
            if (rows.front()[i] == "verdict") cell.mark = verdictNamed(rows[row][i]);
            cells.push_back(std::move(cell));
        }
        content.rows.push_back(std::move(cells));
    }
    return content;
}

} // namespace

std::vector<TotalsQuestion> totalsQuestions() {
    const auto tr = [](const char* text) { return TotalsPage::tr(text); };
    return {{QStringLiteral("needed"), tr("What did this engine need, each time it was here?"),
             tr("Engine"), tr("Words of its name"), tr("No job is of an engine that holds %1."),
             QStringLiteral("bores"), true, neededSheet},
            {QStringLiteral("rates"),
             tr("How fast did my stones cut, on which metal? Of passes with a survey on either "
                "side."),
             tr("In engines"), tr("All of them"),
             tr("No stone was measured in engines that hold %1."), QStringLiteral("stones"), false,
             ratesSheet},
            {QStringLiteral("gauge"), tr("Which jobs did this gauge touch, or what it was set on?"),
             tr("Gauge or master"), tr("Any part of its name"),
             tr("No survey was read with a gauge, or set on a master, "
                "that holds %1."),
             QStringLiteral("surveys"), true, gaugeSheet}};
}

TotalsPage::TotalsPage(TotalsQuestion question, LedgerClerk& clerk, QWidget* parent)
    : QWidget(parent)
    , m_question(std::move(question))
    , m_clerk(clerk)
    , m_field(new QLineEdit(this))
    , m_sentence(new QLabel(this))
    , m_table(new TextTable(m_question.asked, this)) {
    m_field->setPlaceholderText(m_question.hint);
    m_field->setAccessibleName(m_question.field);
    m_field->setClearButtonEnabled(true);
    m_sentence->setWordWrap(true);
    m_sentence->setTextFormat(Qt::PlainText);
    m_table->setChoosable();
    m_table->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    m_table->setMostRows(4); // the least that it asks for; it takes what there is
    auto* label = new QLabel(m_question.field, this);
    label->setBuddy(m_field);
    auto* exported = new QPushButton(tr("&Export …"), this);
    connect(exported, &QPushButton::clicked, this, &TotalsPage::exportAsked);
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    row->addWidget(label);
    row->addWidget(m_field, 1);
    row->addWidget(exported);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 12, 0, 0);
    column->addWidget(new QLabel(m_question.asked, this));
    column->addLayout(row);
    column->addWidget(m_sentence);
    column->addWidget(m_table, 1);
    connect(m_field, &QLineEdit::textChanged, this, &TotalsPage::refresh);
    connect(m_field, &QLineEdit::returnPressed, m_table, [this] { m_table->setFocus(); });
    connect(m_table, &TextTable::rowTaken, this, [this](int taken) {
        if (taken < 0 || static_cast<std::size_t>(taken) >= m_sheet.size()) return;
        const std::string file = m_sheet.textOf(static_cast<std::size_t>(taken), "file");
        if (!file.empty()) emit openAsked(QString::fromStdString(file));
    });
}

void TotalsPage::focusField() {
    m_field->setFocus();
    m_field->selectAll();
}

void TotalsPage::setUnits(const LedgerUnits& units) {
    m_units = units;
}

std::function<Result<LedgerSheet>(LedgerStore&)> TotalsPage::wholeSheet() const {
    return [sheet = m_question.sheet, typed = m_field->text().toStdString(),
            units = m_units](LedgerStore& store) { return sheet(store, typed, units); };
}

void TotalsPage::refresh() {
    if (m_question.wantsText && m_field->text().trimmed().isEmpty()) {
        m_clerk.forget(m_question.kind);
        show({}, 0);
        m_sentence->hide();
        return;
    }
    m_clerk.ask<Answered>(
        m_question.kind,
        [whole = wholeSheet()](LedgerStore& store) -> Result<Answered> {
            auto sheet = whole(store);
            if (!sheet) return tl::unexpected(sheet.error());
            Answered answered{std::move(*sheet), 0};
            answered.all = answered.sheet.size();
            answered.sheet.cut(mostRows);
            return answered;
        },
        [this](const Answered& answered) { show(answered.sheet, answered.all); });
}

void TotalsPage::setObstacle(const QString& sentence) {
    m_sentence->setVisible(!sentence.isEmpty());
    m_sentence->setText(sentence);
}

void TotalsPage::show(const LedgerSheet& sheet, std::size_t all) {
    m_sheet = sheet;
    m_table->show(contentOf(sheet));
    const QString typed = m_field->text().simplified();
    if (all == 0)
        setObstacle(typed.isEmpty() ? tr("No stone was measured yet.")
                                    : m_question.nothing.arg(typed));
    else if (all > sheet.size())
        setObstacle(tr("The first %L1 of %L2; the export has all.").arg(sheet.size()).arg(all));
    else
        setObstacle({});
}

} // namespace borewright
