// SPDX-License-Identifier: GPL-3.0-or-later
// The commands behind the command line, a source file each. Each returns its exit status or
// refuses; what it refuses is said on standard error and ends with exitWrong.
#pragma once

#include "app/cli/cli.h"
#include "app/cli/pass_windows.h"
#include "core/result.h"

#include <string>
#include <vector>

namespace borewright {

struct CheckOptions {
    std::string file;
    std::string survey; // name or id; empty = the last
    std::string units;  // "inch", "metric"; empty = the workbook's own
    std::string code;   // of a sheet: which it is; empty = judges
    bool json = false;  // of the code's answer
};
Result<int> checkCommand(const CheckOptions& options, const CliOutside& outside);

// Which sheet of the file has a code.
Result<int> codeCommand(const CheckOptions& options, const CliOutside& outside);

// Which size cleans up the block.
struct SizesOptions {
    std::string file;
    std::string units;
    bool json = false; // on standard output instead of a table
};
Result<int> sizesCommand(const SizesOptions& options, const CliOutside& outside);

// Which piston and ring go where.
struct FitCommandOptions {
    std::string file;
    std::string units;
    bool json = false;
};
Result<int> fitCommand(const FitCommandOptions& options, const CliOutside& outside);

// Who changed what in a workbook, and which sheets were printed, newest first.
struct HistoryOptions {
    std::string file;
    bool json = false;
    bool csv = false;
};
Result<int> historyCommand(const HistoryOptions& options, const CliOutside& outside);

// The dated copies of a workbook.
struct CopiesOptions {
    std::string file;
    std::string folder; // of all copies; empty = where the window keeps them
    bool json = false;
};
Result<int> copiesCommand(const CopiesOptions& options, const CliOutside& outside);

struct ResultsOptions {
    std::string file;
    std::string target;
    std::string survey; // empty = all
    std::string units;
};
Result<int> resultsCommand(const ResultsOptions& options, const CliOutside& outside);

// The shop's stones: with a name, adds that stone, changes it or logs its care; else lists all.
struct StoneOptions {
    std::string file;
    std::string name;
    std::string grit;
    bool rough = false;
    bool finish = false;
    std::string begins; // lengths as typed; without a unit in the workbook's own
    std::string ends;
    std::string outOpen;
    std::string outClosed;
    std::string rate;      // off the diameter a stroke
    std::string rateDoubt; // a factor
    std::string care;      // "dressed", "turned", "reverse"
    std::string time;      // of the care; empty = now
    bool json = false;
    bool anyway = false; // writes though another bench has the workbook open
};
Result<int> stoneCommand(const StoneOptions& options, const CliOutside& outside);

// How the hone is driven, where stones stop, what of a bore is done; what is not given stays, and
// with nothing given it tells how all of it stands.
struct HoneOptions {
    std::string file;
    std::string speed; // turns a minute
    std::string beat;  // strokes a minute
    std::string feed;
    bool oil = false;
    bool dry = false;
    std::string roughStopsAt; // to go, on the diameter; without a unit in the workbook's small one
    std::string closedEndLead;
    std::string nextStopsAt;
    std::string coolBelow;
    int bore = 0;                    // of the ticks
    std::vector<std::string> done;   // "chamfered", "washed"
    std::vector<std::string> undone; // the same, taken back
    bool anyway = false;             // as of a stone
};
Result<int> honeCommand(const HoneOptions& options, const CliOutside& outside);

// Logs what was honed, or strikes a pass out.
struct PassOptions {
    std::string file;
    int bore = 0;
    std::string stone;                // name or id
    std::vector<TypedOption> windows; // --from, --to, --strokes, --seconds, --hold, as they stood
    std::string time;                 // empty = now
    std::string speed;
    std::string after; // name or id of a survey; empty = the last
    std::string note;
    bool simulated = false;
    bool foresee = false; // tell whether it may go over size; it takes longer than the logging
    std::string strike;   // id of a pass that was not so; then `why`, and no other
    std::string why;
    bool anyway = false; // as of a stone
};
Result<int> passCommand(const PassOptions& options, const CliOutside& outside);

// The next set-up of each bore.
struct NextOptions {
    std::string file;
    int bore = 0; // 0 = all
    bool json = false;
    std::string units;
    std::string fitted; // name or id of the stone in the hone; empty = that of the last pass
    bool oneStone = false;
    bool noShort = false;
    bool fewerStops = false;
};
Result<int> planCommand(const NextOptions& options, const CliOutside& outside);

// All jobs of the shop.
struct LedgerOptions {
    enum class Asked { list, find, rebuild, needed, rates, gauge };
    Asked asked = Asked::list;
    std::vector<std::string> words;   // of find
    std::vector<std::string> folders; // of rebuild; empty = those of last time
    std::string engine;               // of needed and rates
    std::string gauge;
    std::string ledger; // a file or a server's address; empty = the user's own
    std::string units;  // empty = as each workbook has it
    bool json = false;
    bool csv = false;
};
Result<int> ledgerCommand(const LedgerOptions& options, const CliOutside& outside);

struct RecordOptions {
    std::string file;
    std::string readings;           // a CSV file; or instead of it
    int bore = 0;                   // with
    std::vector<std::string> typed; // "0.6in,A,3.4381" each
    std::string survey;             // name or id of one that is there, else the name of a new one
    std::string kind;               // of a new one
    // Of a new survey: the size the gauge was set to makes its readings deviations; without it
    // they are diameters.
    std::string setSize;
    std::string larger;     // "plus", "minus"; empty = as the survey before, plus in the first
    bool addLevels = false; // at depths that the plan does not have yet
    bool takeGoodRows = false;
    bool anyway = false; // as of a stone
};
Result<int> recordCommand(const RecordOptions& options, const CliOutside& outside);

struct NewOptions {
    std::string file;
    int bores = 0;
    std::string size;
    std::string depth;
    std::string arrangement = "inline";
    std::string openEnd;
    std::string levels; // "0.5,1.75,3"; empty = as proposed
    std::string wornTo;
    std::string wornOutOfRound;
    std::string wornTaper;
    std::string finishSize;
    std::string finishFrom;
    std::string finishTo;
    std::string aim; // straight within; empty = as usual
    bool blind = false;
};
Result<int> newCommand(const NewOptions& options, const CliOutside& outside);

struct SheetOptions {
    std::string file;
    std::string target;
    std::string paper = "a4";
    std::string units;
    std::string code;    // prints that sheet again; empty = as the file stands now
    bool note = false;   // notes in the workbook that it was printed
    bool anyway = false; // as of a stone
};
Result<int> sheetCommand(const SheetOptions& options, const CliOutside& outside);

struct PicturesOptions {
    std::string file;
    std::string folder;
    std::string survey; // empty = the last
    std::string theme = "both";
};
Result<int> picturesCommand(const PicturesOptions& options, const CliOutside& outside);

} // namespace borewright
