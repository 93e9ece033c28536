// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/labelled_choice.h"

#include <QSignalBlocker>
#include <QWheelEvent>

namespace borewright {
namespace {

// A list that the wheel does not change while the page is scrolled past it.
class QuietComboBox final : public QComboBox {
public:
    using QComboBox::QComboBox;

protected:
    void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

} // namespace

LabelledChoice::LabelledChoice(const QString& label, const QStringList& choices,
                               std::function<void(int)> chosen, QWidget* parent)
    : QWidget(parent)
    , m_box(new QuietComboBox(this)) {
    m_box->addItems(choices);
    m_box->setAccessibleName(label);
    m_box->setPlaceholderText(tr("the bores differ"));
    m_box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_box->setMinimumContentsLength(8);
    auto* name = new QLabel(label, this);
    name->setBuddy(m_box);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(3);
    column->addWidget(name);
    column->addWidget(m_box);
    column->addStretch();
    setFocusProxy(m_box);
    connect(m_box, &QComboBox::activated, this, std::move(chosen));
}

void LabelledChoice::showData(int index) {
    const QSignalBlocker blocker(m_box);
    m_box->setCurrentIndex(index);
}

void LabelledChoice::setChoices(const QStringList& choices, int index) {
    const QSignalBlocker blocker(m_box);
    m_box->clear();
    m_box->addItems(choices);
    m_box->setCurrentIndex(index);
}

} // namespace borewright
