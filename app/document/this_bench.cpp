// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/this_bench.h"

#include "core/storage/hash.h"

#include <QCoreApplication>
#include <QSysInfo>

#include <fmt/format.h>

#include <sstream>

namespace borewright {
namespace {

constexpr std::size_t largest = 64UL * 1024;

// Of a process's "stat", whose second figure is a name in brackets that may hold anything
// (proc(5)): the letter of its state, which is the third.
char stateIn(const std::string& stat) {
    const std::size_t name = stat.rfind(") ");
    return name == std::string::npos || name + 2 >= stat.size() ? '?' : stat[name + 2];
}

// When it began, in ticks since the machine did: the 22nd.
std::string beganIn(const std::string& stat) {
    const std::size_t name = stat.rfind(')');
    if (name == std::string::npos) return {};
    std::istringstream rest(stat.substr(name + 1));
    std::string figure;
    for (int place = 3; place <= 22; ++place)
        if (!(rest >> figure)) return {};
    return figure;
}

} // namespace

Processes::Found MachineProcesses::find(std::int64_t process) {
    const auto boot = m_files.read("/proc/sys/kernel/random/boot_id", largest);
    if (!boot) return {};
    const auto stat = m_files.read("/proc/" + std::to_string(process) + "/stat", largest);
    if (!stat) return {true, stat.error() != FileFault::notFound, {}};
    // Ended, but whoever started it has not taken note of that yet.
    if (stateIn(*stat) == 'Z' || stateIn(*stat) == 'X') return {true, false, {}};
    const std::string began = beganIn(*stat);
    if (began.empty()) return {true, true, {}};
    return {true, true, boot->substr(0, boot->find('\n')) + ' ' + began};
}

LockHolder thisBench(Processes& processes) {
    LockHolder me;
    me.person = qEnvironmentVariable("USER", qEnvironmentVariable("USERNAME")).toStdString();
    me.machine = QSysInfo::machineHostName().toStdString();
    // Only its hash: the number itself is the machine's own affair.
    me.machineId = fmt::format("{:016x}", fnv1a(QSysInfo::machineUniqueId().toStdString()));
    me.process = QCoreApplication::applicationPid();
    me.began = processes.find(me.process).began;
    return me;
}

} // namespace borewright
