// SPDX-License-Identifier: GPL-3.0-or-later
// What sizes there are: the list, how to fill it in quickly, the engine maker's greatest.
#pragma once

#include "app/document/document.h"

#include <QWidget>

namespace borewright {

class CommittedField;
class SizesModel;

class SizesForm : public QWidget {
    Q_OBJECT
public:
    explicit SizesForm(Document& document, QWidget* parent = nullptr);

private:
    Result<void> commitGreatest(const QString& text);
    void refresh(bool anew);

    Document& m_document;
    SizesModel* m_model;
    CommittedField* m_greatest;
    QString m_greatestShown;
};

} // namespace borewright
