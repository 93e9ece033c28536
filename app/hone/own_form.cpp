// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/hone/own_form.h"

#include "app/fields/fold.h"
#include "app/fields/labelled.h"
#include "app/fields/refusal_label.h"
#include "app/hone/hone_verbs.h"
#include "app/pictures/reading_words.h"

#include <QHBoxLayout>
#include <QShortcut>
#include <QVBoxLayout>

namespace borewright {
namespace {

constexpr double percent = 100;

// A refusal without the name that the pass would have had and the field, which what is said names
// already; which of several windows it is stays.
QString words(const Error& error) {
    const QString where = qs(error.where);
    for (const QString& part : where.split(QStringLiteral(": ")))
        if (part.startsWith(QLatin1String("window ")))
            return part + QStringLiteral(": ") + qs(error.what);
    return qs(error.what);
}

} // namespace

OwnForm::OwnForm(const PageContext& context, QWidget* parent)
    : QWidget(parent)
    , m_context(context)
    , m_forecast(context.document)
    , m_stone(new QComboBox(this))
    , m_windows(new OwnWindows(context.document.units().size, this))
    , m_expected(makePassingWord({}, this))
    , m_refusal(makeRefusalLabel(this))
    , m_log(new QPushButton(tr("Log what was done (Ctrl+Enter)"), this)) {
    build();
    connect(m_stone, &QComboBox::activated, this, &OwnForm::follow);
    connect(m_windows, &OwnWindows::edited, this, &OwnForm::follow);
    connect(m_log, &QPushButton::clicked, this, &OwnForm::logIt);
    connect(&m_forecast, &OwnForecast::reckoned, this, &OwnForm::showExpected);
    connect(&m_forecast, &OwnForecast::refused, this, [this](const QString& why) {
        if (m_draft) m_draft->refused = why.toStdString();
        m_expected->clear();
        sayRefusal(why);
        emit draftChanged();
    });
    for (const int key : {Qt::Key_Return, Qt::Key_Enter}) {
        auto* enter = new QShortcut(QKeySequence(Qt::CTRL | key), this);
        enter->setContext(Qt::WidgetWithChildrenShortcut);
        connect(enter, &QShortcut::activated, this, &OwnForm::logIt);
    }
    refresh();
}

void OwnForm::build() {
    m_stone->setAccessibleName(tr("Stone of this pass"));
    m_stone->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_stone->setMinimumContentsLength(14);
    m_expected->setAccessibleName(tr("What it would do"));
    m_refusal->setAccessibleName(tr("What speaks against it"));
    auto* left = new QVBoxLayout;
    left->setSpacing(8);
    left->addWidget(labelled(tr("Stone"), m_stone));
    left->addWidget(m_log);
    left->addStretch(1);
    auto* middle = new QVBoxLayout;
    middle->setSpacing(8);
    middle->addWidget(m_windows);
    middle->addWidget(makePassingWord(
        tr("Lower end of the abrasive, typed or dragged; a stroke is down and back."), this));
    middle->addStretch(1);
    auto* right = new QVBoxLayout;
    right->setSpacing(8);
    right->addWidget(m_refusal);
    right->addWidget(m_expected);
    right->addStretch(1);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 8, 0, 8);
    row->setSpacing(24);
    row->addLayout(left, 2);
    row->addLayout(middle, 5);
    row->addLayout(right, 4);
}

void OwnForm::refresh() {
    const auto& stones = m_context.document.workbook().hone.stones;
    const QString chosen = m_stone->currentData().toString();
    m_stone->clear();
    for (const Stone& stone : stones)
        m_stone->addItem(qs(stone.name), qs(stone.id));
    m_stone->setCurrentIndex(std::max(0, m_stone->findData(chosen)));
    m_windows->setUnit(m_context.document.units().size);
    m_log->setEnabled(!stones.empty());
    follow();
}

void OwnForm::forget() {
    m_forecast.forget();
    m_windows->show({});
    follow();
}

std::string OwnForm::stone() const {
    return m_stone->currentData().toString().toStdString();
}

bool OwnForm::isEmpty() const {
    const auto windows = m_windows->windows();
    return windows && windows->empty();
}

void OwnForm::begin(const std::optional<PlannedSetUp>& planned) {
    if (planned) {
        m_stone->setCurrentIndex(std::max(0, m_stone->findData(qs(planned->stone))));
        m_windows->show(windowsOf(*planned));
    }
    follow();
}

void OwnForm::focusFirst() {
    m_stone->count() > 1 ? m_stone->setFocus() : m_windows->focusFirst();
}

// A row half typed is no refusal yet: it is said quietly.
void OwnForm::follow() {
    const auto windows = m_windows->windows();
    m_forecast.giveUp();
    sayRefusal({});
    m_draft.reset();
    if (!windows || windows->empty() || stone().empty()) {
        m_expected->setText(windows ? QString() : qs(windows.error().message()));
        return emit draftChanged();
    }
    m_draft = HoneOwnDraft{stone(), *windows, {}, {}};
    m_expected->setText(tr("Reckoning what it would do …"));
    m_forecast.ask(m_context.selection.bore(), stone(), *windows);
    emit draftChanged();
}

void OwnForm::showExpected(const OwnSetUp& expected) {
    if (!m_draft) return;
    m_draft->expected = expected;
    QStringList lines;
    for (const std::string& sentence : expected.sentences)
        lines << qs(sentence);
    m_expected->setText(lines.join(' '));
    const double chance = percent * expected.chanceOver;
    sayRefusal(expected.forbidden
                   ? tr("Never proposed: %1 % chance that some depth goes over size. If it was "
                        "done, log it all the same.")
                         .arg(chance, 0, chance < 10 ? 'g' : 'f', chance < 10 ? 2 : 0)
                   : QString());
    emit draftChanged();
}

void OwnForm::sayRefusal(const QString& why) {
    m_refusal->setText(why);
    m_refusal->setVisible(!why.isEmpty());
}

void OwnForm::logIt() {
    Document& document = m_context.document;
    const int bore = m_context.selection.bore();
    if (!m_windows->commit()) return;
    const auto windows = m_windows->windows();
    Result<void> done;
    if (!windows) {
        done = tl::unexpected(windows.error());
    } else if (windows->empty()) {
        done = refuse("nothing is given: from where to where was it honed, and for how long?");
    } else {
        Pass pass = passNow(document.workbook(), bore, stone(), *windows, document.now());
        done = changeHone(document, tr("pass in bore %1").arg(bore),
                          [&](HoneRecord& record) { record.passes.push_back(std::move(pass)); });
    }
    if (!done) {
        m_context.sounds.refused();
        return sayRefusal(words(done.error()));
    }
    m_windows->show({});
    follow();
    emit logged(tr("Logged. Let it cool, then measure (F8)."));
}

} // namespace borewright
