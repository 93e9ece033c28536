// SPDX-License-Identifier: GPL-3.0-or-later
// What one bore, or all alike, are: size, depth, ends, and folded away what few need. And where
// along the depth what lies: the bore map.
#pragma once

#include "app/block/bore_scope.h"
#include "app/fields/committed_field.h"
#include "app/fields/labelled_choice.h"

#include <vector>

namespace borewright {

class Fold;
class FormGrid;

class BoreDetails : public QWidget {
    Q_OBJECT
public:
    explicit BoreDetails(BoreScope& scope, QWidget* parent = nullptr);

private:
    using Slot = std::function<std::optional<TypedLength>&(Bore&)>;
    // Refuses a length that cannot be, knowing the bore it is for.
    using Check = std::function<Result<void>(const std::optional<TypedLength>&, const Bore&)>;

    QWidget* makeMain();
    QWidget* makeMore();
    QWidget* makeMap();
    void addLength(FormGrid& grid, const QString& label, const QString& hint, Slot slot,
                   Check check);
    Result<void> commitLength(const QString& label, const QString& text, const Slot& slot,
                              const Check& check);
    void refresh();
    void refreshSummaries(const Bore& bore);

    struct LengthField {
        CommittedField* field;
        Slot slot;
        QString hint;
    };
    BoreScope& m_scope;
    int m_boreShown = 0;
    LabelledChoice* m_which;
    std::vector<LengthField> m_lengths;
    CommittedField* m_openEnd = nullptr;
    LabelledChoice* m_combustion = nullptr;
    LabelledChoice* m_surface = nullptr;
    Fold* m_more = nullptr;
    Fold* m_map = nullptr;
};

// What a surface is, for people, in the order of the enumeration.
QStringList surfaceNames();

} // namespace borewright
