// SPDX-License-Identifier: GPL-3.0-or-later
// What the gauge cannot see of the chosen bore: the worn side, what it was made to, its damages.
#pragma once

#include "app/context/page_context.h"

#include <QWidget>

namespace borewright {

class CommittedField;
class DamagesModel;
class LabelledChoice;

class WearForm : public QWidget {
    Q_OBJECT
public:
    explicit WearForm(const PageContext& context, QWidget* parent = nullptr);

private:
    // Changes the chosen bore's wear; one that says nothing is not kept.
    template<class Make>
    Result<void> change(const QString& what, Make make);
    Result<void> commitMadeTo(const QString& text);
    void refresh(bool anew);

    Document& m_document;
    Selection& m_selection;
    DamagesModel* m_model;
    LabelledChoice* m_bore;
    LabelledChoice* m_side;
    CommittedField* m_madeTo;
    QString m_madeToShown;
    int m_boreShown = 0;
};

} // namespace borewright
