// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/skirt_form.h"

#include "app/fields/fold.h"
#include "app/fields/labelled.h"
#include "app/fit/piston_model.h"
#include "app/fit/record_form.h"
#include "app/pictures/reading_words.h"
#include "core/constants.h"

#include <QHBoxLayout>

namespace borewright {

SkirtForm::SkirtForm(Document& document, QWidget* parent)
    : QWidget(parent)
    , m_document(document)
    , m_model(new SkirtModel(document, this))
    , m_expansion(new NumberField(
          tr("Expansion of the piston"),
          {1, 40, false, tr("pistons expand by 1 to 40 millionths a degree")}, this))
    , m_notes(new QLineEdit(this))
    , m_skirt(new RecordForm(*m_model, tr("Skirt at other heights"), tr("height"), this)) {
    m_expansion->setPlaceholder(
        tr("cast aluminium: %1").arg(constants::expansionCastAluminium * 1e6, 0, 'g', 4));
    m_notes->setAccessibleName(tr("Notes on the piston"));
    auto* left = new QVBoxLayout;
    left->addWidget(labelled(tr("Expansion, millionths per °C"), m_expansion));
    left->addWidget(labelled(tr("Notes"), m_notes));
    left->addStretch();
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(24);
    row->addLayout(left, 2);
    row->addWidget(m_skirt, 3);
    connect(m_expansion, &NumberField::committed, this, [this] {
        keep(tr("expansion"), [this](Piston& piston) { piston.expansion = m_expansion->value(); });
    });
    connect(m_notes, &QLineEdit::editingFinished, this, [this] {
        keep(tr("notes"),
             [this](Piston& piston) { piston.notes = m_notes->text().trimmed().toStdString(); });
    });
    refresh();
}

const Piston* SkirtForm::shown() const {
    const auto& pistons = m_document.workbook().fit.pistons;
    if (m_piston < 0 || static_cast<std::size_t>(m_piston) >= pistons.size()) return nullptr;
    return &pistons[static_cast<std::size_t>(m_piston)];
}

void SkirtForm::setPiston(int piston) {
    if (piston == m_piston) return;
    m_piston = piston;
    m_model->setPiston(piston);
    refresh(true);
}

void SkirtForm::keep(const QString& what, const std::function<void(Piston&)>& make) {
    if (shown() == nullptr) return;
    FitRecord fit = m_document.workbook().fit;
    const auto place = static_cast<std::size_t>(m_piston);
    make(fit.pistons[place]);
    if (fit == m_document.workbook().fit) return;
    const auto done =
        m_document.edit(SetFit{fit}, tr("%1 of %2").arg(what, PistonModel::called(fit, place)));
    if (!done) m_expansion->refuse(qs(done.error().what));
}

void SkirtForm::refresh(bool anew) {
    const Piston* piston = shown();
    setEnabled(piston != nullptr);
    if (anew) m_model->forget();
    m_model->refresh();
    if (anew || !m_expansion->edit()->isModified())
        m_expansion->setValue(piston != nullptr ? piston->expansion : std::nullopt);
    const QString notes = piston != nullptr ? qs(piston->notes) : QString();
    if (anew || !m_notes->isModified()) m_notes->setText(notes);
}

} // namespace borewright
