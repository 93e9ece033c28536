#include "core/results/results.h"
namespace borewright {
Results compute(const Workbook&, const DisplayUnits&) { return {}; }
}
