// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/shim/disk_shim.h"

#include <array>
#include <atomic>
#include <cerrno>
#include <cstdarg>
#include <cstdlib>
#include <cstring>
#include <ctime>

#include <dlfcn.h>
#include <sys/types.h>

// The system's headers are left out on purpose: they would declare these calls with attributes of
// their own.
namespace {

constexpr int createFlag = 0100;       // O_CREAT
constexpr int unnamedFlag = 020000000; // O_TMPFILE's own bit
constexpr std::size_t mostDescriptors = 4096;

std::array<char, 512> folder{};
std::atomic<int> failing = -1;
std::atomic<int> fromThenOn = 0;
std::atomic<int> error = 0;
std::atomic<bool> share = false;
std::atomic<int> milliseconds = 0;
std::atomic<int> calls = 0;
std::array<std::atomic<bool>, mostDescriptors> watched{};

template<class Call>
Call systems(const char* name) {
    return reinterpret_cast<Call>(dlsym(RTLD_NEXT, name));
}

bool isWatched(const char* path) {
    return folder[0] != '\0' && path != nullptr &&
           std::strncmp(path, folder.data(), std::strlen(folder.data())) == 0;
}

bool isWatched(int file) {
    return file >= 0 && static_cast<std::size_t>(file) < mostDescriptors &&
           watched[static_cast<std::size_t>(file)];
}

// Whether this call is one that goes wrong.
bool due() {
    const int call = calls++;
    const int first = failing;
    return first >= 0 && (call == first || (call > first && fromThenOn != 0));
}

// Whether it fails; errno is set then.
bool fails() {
    if (!due() || error == 0) return false;
    errno = error;
    return true;
}

void dawdle(int ms) {
    if (ms <= 0) return;
    const timespec pause{ms / 1000, ms % 1000 * 1'000'000L};
    nanosleep(&pause, nullptr);
}

int watch(int file) {
    if (file >= 0 && static_cast<std::size_t>(file) < mostDescriptors)
        watched[static_cast<std::size_t>(file)] = true;
    return file;
}

int openBy(const char* name, const char* path, int flags, mode_t mode) {
    using Open = int (*)(const char*, int, ...);
    const auto real = systems<Open>(name);
    if (!isWatched(path)) return real(path, flags, mode);
    dawdle(-milliseconds);
    if (fails()) return -1;
    if (share && (flags & unnamedFlag) != 0) {
        errno = EOPNOTSUPP;
        return -1;
    }
    return watch(real(path, flags, mode));
}

} // namespace

extern "C" {

void diskShimOrder(const char* of, const DiskShimOrders* orders) {
    std::strncpy(folder.data(), of, folder.size() - 1);
    error = orders->error;
    share = orders->share != 0;
    fromThenOn = orders->fromThenOn;
    milliseconds = orders->milliseconds;
    failing = orders->call;
    calls = 0;
}

int diskShimCalls() {
    return calls;
}

int open(const char* path, int flags, ...) {
    mode_t mode = 0;
    if ((flags & (createFlag | unnamedFlag)) != 0) {
        va_list rest;
        va_start(rest, flags);
        mode = va_arg(rest, mode_t);
        va_end(rest);
    }
    return openBy("open", path, flags, mode);
}

int open64(const char* path, int flags, ...) {
    mode_t mode = 0;
    if ((flags & (createFlag | unnamedFlag)) != 0) {
        va_list rest;
        va_start(rest, flags);
        mode = va_arg(rest, mode_t);
        va_end(rest);
    }
    return openBy("open64", path, flags, mode);
}

int close(int file) {
    if (isWatched(file)) watched[static_cast<std::size_t>(file)] = false;
    return systems<int (*)(int)>("close")(file);
}

ssize_t write(int file, const void* bytes, std::size_t count) {
    const auto real = systems<ssize_t (*)(int, const void*, std::size_t)>("write");
    if (!isWatched(file) || !due()) return real(file, bytes, count);
    if (error == 0) return real(file, bytes, (count + 1) / 2);
    errno = error;
    return -1;
}

ssize_t pread(int file, void* bytes, std::size_t count, off_t at) {
    if (isWatched(file) && fails()) return -1;
    return systems<ssize_t (*)(int, void*, std::size_t, off_t)>("pread")(file, bytes, count, at);
}

ssize_t pread64(int file, void* bytes, std::size_t count, off_t at) {
    if (isWatched(file) && fails()) return -1;
    return systems<ssize_t (*)(int, void*, std::size_t, off_t)>("pread64")(file, bytes, count, at);
}

int fsync(int file) {
    if (isWatched(file)) {
        dawdle(std::abs(milliseconds));
        if (fails()) return -1;
    }
    return systems<int (*)(int)>("fsync")(file);
}

int linkat(int from, const char* old, int to, const char* path, int flags) {
    if (isWatched(path) && fails()) return -1;
    return systems<int (*)(int, const char*, int, const char*, int)>("linkat")(from, old, to, path,
                                                                               flags);
}

int rename(const char* from, const char* to) {
    if (isWatched(to)) {
        dawdle(std::abs(milliseconds));
        if (fails()) return -1;
    }
    return systems<int (*)(const char*, const char*)>("rename")(from, to);
}

int unlink(const char* path) {
    if (isWatched(path) && fails()) return -1;
    return systems<int (*)(const char*)>("unlink")(path);
}
}
