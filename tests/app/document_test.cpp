// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/document.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

class FixedClock final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

TEST(Document, AnEditThatChangesNothingMakesNoUndoStep) {
    FixedClock clock;
    Document document(clock);
    ASSERT_TRUE(document.edit(SetJob{document.workbook().job}, "job"));
    EXPECT_EQ(document.undoStack().count(), 0);
}

} // namespace
} // namespace borewright
