// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/decision_form.h"

#include "core/length/number_text.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace borewright {
namespace {

QString explained(const DecisionRule& rule) {
    if (rule.kind == DecisionRule::Kind::plain)
        return DecisionForm::tr("Each value is compared with its limit as it stands, whatever its "
                                "doubt: right at a limit every second verdict is wrong.");
    const double percent = 100 * riskOf(rule);
    return DecisionForm::tr("A bore is called within or outside only where the chance of being "
                            "wrong is at most %1 in 100; nearer to a limit it is too close to "
                            "call. It takes effect where the gear's doubt is known.")
        .arg(percent, 0, 'g', 4);
}

} // namespace

DecisionForm::DecisionForm(Keep keep, QWidget* parent)
    : QWidget(parent)
    , m_keep(std::move(keep))
    , m_kind(new LabelledChoice(
          tr("Verdicts are called by"),
          {tr("plain comparison"), tr("5 % risk (usual)"), tr("2.5 % risk"), tr("own risk")},
          [this](int kind) { choose(static_cast<DecisionRule::Kind>(kind)); }))
    , m_own(new CommittedField(tr("Own risk, %"),
                               [this](const QString& text) { return commitOwn(text); }))
    , m_words(new QLabel(this)) {
    m_words->setWordWrap(true);
    m_words->setAccessibleName(tr("What the rule means"));
    auto* row = new QHBoxLayout;
    row->setSpacing(16);
    row->addWidget(m_kind, 1, Qt::AlignTop);
    row->addWidget(m_own, 1, Qt::AlignTop);
    row->addStretch(2);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(row);
    column->addWidget(m_words);
    showData({});
}

void DecisionForm::showData(const DecisionRule& rule) {
    m_shown = rule;
    m_kind->showData(static_cast<int>(rule.kind));
    m_own->setVisible(rule.kind == DecisionRule::Kind::own);
    m_own->showData(QString::number(rule.ownPercent, 'g', 6));
    m_words->setText(explained(rule));
}

void DecisionForm::choose(DecisionRule::Kind kind) {
    DecisionRule rule = m_shown;
    rule.kind = kind;
    if (const auto kept = m_keep(rule); !kept) return showData(m_shown);
    showData(rule);
    if (kind == DecisionRule::Kind::own) m_own->lineEdit()->setFocus();
}

Result<void> DecisionForm::commitOwn(const QString& text) {
    QString number = text.trimmed();
    if (number.endsWith('%')) number = number.chopped(1).trimmed();
    const auto read = readDecimal(number.toStdString());
    if (!read) return refuse("A risk is a number of per cent, such as 1 or 2.5.");
    const double percent = toDouble(*read);
    if (percent <= 0) return refuse("A risk of nothing is never reached; it is more than 0 %.");
    if (percent > 50) return refuse("Beyond 50 % a verdict would rather be wrong than right.");
    DecisionRule rule = m_shown;
    rule.ownPercent = percent;
    if (const auto sound = checkDecision(rule); !sound) return sound;
    return m_keep(rule);
}

} // namespace borewright
