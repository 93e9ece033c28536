// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/posix_file_system.h"

#include <cerrno>
#include <climits>
#include <csignal>
#include <cstdio>
#include <filesystem>
#include <random>

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/xattr.h>
#include <unistd.h>

namespace borewright {
namespace {

constexpr int mostInterruptions = 100; // of reading one file

FileFault faultOf(int code) {
    switch (code) {
    case EINTR:
        return FileFault::interrupted;
    case ENOSPC:
        return FileFault::diskFull;
    case EDQUOT:
        return FileFault::quotaUsed;
    case EROFS:
        return FileFault::readOnly;
    case EACCES:
    case EPERM:
        return FileFault::noRight;
    case ENOENT:
        return FileFault::notFound;
    case ENOTDIR:
        return FileFault::notAFolder;
    case EISDIR:
        return FileFault::isAFolder;
    case EEXIST:
        return FileFault::exists;
    case EFBIG:
    case EOVERFLOW:
        return FileFault::tooLarge;
    case ENAMETOOLONG:
        return FileFault::nameTooLong;
    case EIO:
    case ESTALE:
    case ENXIO:
    case ETIMEDOUT:
        return FileFault::inputOutput;
    case EINVAL:
    case ENOSYS:
    case EOPNOTSUPP:
        return FileFault::unsupported;
    default:
        return FileFault::other;
    }
}

tl::unexpected<FileFault> lastFault() {
    return tl::unexpected(faultOf(errno));
}

FileResult<void> answer(int outcome) {
    if (outcome != 0) return lastFault();
    return {};
}

FileFacts factsFrom(const struct stat& found) {
    FileFacts facts;
    facts.kind = S_ISREG(found.st_mode)   ? FileFacts::Kind::file
                 : S_ISDIR(found.st_mode) ? FileFacts::Kind::folder
                                          : FileFacts::Kind::other;
    facts.size = static_cast<std::uint64_t>(found.st_size);
    facts.modified =
        static_cast<std::int64_t>(found.st_mtim.tv_sec) * 1'000'000'000 + found.st_mtim.tv_nsec;
    facts.id = static_cast<std::uint64_t>(found.st_ino);
    facts.names = static_cast<std::uint64_t>(found.st_nlink);
    return facts;
}

// `folder`/`prefix` and eight random letters: 36⁸ names, so that two savers hardly ever meet.
std::string randomName(const std::string& folder, const std::string& prefix) {
    static constexpr char letters[] = "0123456789abcdefghijklmnopqrstuvwxyz";
    std::random_device source;
    std::uniform_int_distribution<std::size_t> pick(0, sizeof letters - 2);
    std::string name = (std::filesystem::path(folder) / prefix).string();
    for (int i = 0; i < 8; ++i)
        name += letters[pick(source)];
    return name;
}

// A folder given as "" is the current one.
const char* orHere(const std::string& folder) {
    return folder.empty() ? "." : folder.c_str();
}

FileResult<std::string> readWhole(int file, std::size_t most) {
    std::string content;
    char block[65536];
    for (int interruptions = 0;;) {
        const ssize_t count = pread(file, block, sizeof block, static_cast<off_t>(content.size()));
        // A share that answers so for ever must not hold the saver for ever.
        if (count < 0 && errno == EINTR && ++interruptions < mostInterruptions) continue;
        if (count < 0) return lastFault();
        if (count == 0) return content;
        content.append(block, static_cast<std::size_t>(count));
        if (content.size() > most) return tl::unexpected(FileFault::tooLarge);
    }
}

// A disk that is full or failing must be told; that this user or this kind of disk cannot hold an
// attribute must not keep him from saving.
bool mattersForMetadata(int code) {
    return code == ENOSPC || code == EDQUOT || code == EIO || code == EROFS;
}

FileResult<void> copyOwnerAndMode(const struct stat& from, int file) {
    struct stat now {};
    if (fstat(file, &now) != 0) return lastFault();
    if (now.st_uid != from.st_uid || now.st_gid != from.st_gid)
        if (fchown(file, from.st_uid, from.st_gid) != 0 &&
            fchown(file, static_cast<uid_t>(-1), from.st_gid) != 0 && mattersForMetadata(errno))
            return lastFault();
    if (fstat(file, &now) != 0) return lastFault();
    mode_t mode = from.st_mode & 07777;
    // What the old group was allowed must not fall to another group.
    if (now.st_gid != from.st_gid) mode = (mode & 07707U) | ((mode & 07U) << 3U);
    if (now.st_uid != from.st_uid) mode &= 0777U;
    if (fchmod(file, mode) != 0 && mattersForMetadata(errno)) return lastFault();
    return {};
}

FileResult<void> copyAttributes(const std::string& path, int file) {
    std::string names(XATTR_LIST_MAX, '\0');
    const ssize_t length = listxattr(path.c_str(), names.data(), names.size());
    if (length < 0) {
        if (mattersForMetadata(errno)) return lastFault();
        return {};
    }
    names.resize(static_cast<std::size_t>(length));
    std::string value(XATTR_SIZE_MAX, '\0');
    for (std::size_t at = 0; at < names.size();) {
        const char* name = names.c_str() + at;
        at += std::char_traits<char>::length(name) + 1;
        const ssize_t size = getxattr(path.c_str(), name, value.data(), value.size());
        if (size >= 0 &&
            fsetxattr(file, name, value.data(), static_cast<std::size_t>(size), 0) == 0)
            continue;
        if (mattersForMetadata(errno)) return lastFault();
    }
    return {};
}

} // namespace

PosixFileSystem::PosixFileSystem() {
    std::signal(SIGXFSZ, SIG_IGN);
}

FileResult<std::string> PosixFileSystem::resolve(const std::string& path) {
    namespace fs = std::filesystem;
    fs::path at = path;
    for (int links = 0; links < 40; ++links) {
        struct stat found {};
        if (lstat(at.c_str(), &found) != 0) {
            if (errno == ENOENT) return at.string(); // a new file, or a link to where one will be
            return lastFault();
        }
        if (!S_ISLNK(found.st_mode)) return at.string();
        char target[PATH_MAX];
        const ssize_t length = readlink(at.c_str(), target, sizeof target);
        if (length < 0) return lastFault();
        at = at.parent_path() / fs::path(std::string(target, static_cast<std::size_t>(length)));
    }
    return tl::unexpected(FileFault::notFound);
}

FileResult<FileFacts> PosixFileSystem::facts(const std::string& path) {
    struct stat found {};
    if (stat(path.c_str(), &found) != 0) return lastFault();
    FileFacts result = factsFrom(found);
    result.writable = access(path.c_str(), W_OK) == 0;
    return result;
}

FileResult<FileFacts> PosixFileSystem::factsOf(Handle file) {
    struct stat found {};
    if (fstat(file, &found) != 0) return lastFault();
    return factsFrom(found);
}

FileResult<std::vector<std::string>> PosixFileSystem::list(const std::string& folder) {
    DIR* entries = opendir(orHere(folder));
    if (entries == nullptr) return lastFault();
    std::vector<std::string> names;
    errno = 0;
    while (const dirent* entry = readdir(entries)) {
        const std::string name = entry->d_name;
        if (name != "." && name != "..") names.push_back(name);
    }
    const int code = errno;
    closedir(entries);
    if (code != 0) return tl::unexpected(faultOf(code));
    return names;
}

FileResult<std::string> PosixFileSystem::read(const std::string& path, std::size_t most) {
    // Without O_NONBLOCK, a pipe given by mistake would be waited for.
    const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
    if (file < 0) return lastFault();
    auto content = readWhole(file, most);
    ::close(file);
    return content;
}

FileResult<FileSystem::Handle> PosixFileSystem::openUnnamed(const std::string& folder) {
    const int file = open(orHere(folder), O_TMPFILE | O_RDWR | O_CLOEXEC, 0666);
    if (file < 0) return lastFault();
    return file;
}

FileResult<FileSystem::NamedFile> PosixFileSystem::openNamed(const std::string& folder,
                                                             const std::string& prefix) {
    for (int attempt = 0; attempt < 100; ++attempt) {
        std::string path = randomName(folder, prefix);
        const int file = open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (file >= 0) return NamedFile{file, std::move(path)};
        if (errno != EEXIST) return lastFault();
    }
    return tl::unexpected(FileFault::exists);
}

FileResult<std::size_t> PosixFileSystem::write(Handle file, std::string_view bytes) {
    const ssize_t count = ::write(file, bytes.data(), bytes.size());
    if (count < 0) return lastFault();
    return static_cast<std::size_t>(count);
}

FileResult<void> PosixFileSystem::copyMetadata(const std::string& path, Handle file) {
    struct stat from {};
    if (stat(path.c_str(), &from) != 0) return lastFault();
    if (auto done = copyOwnerAndMode(from, file); !done) return done;
    return copyAttributes(path, file);
}

FileResult<void> PosixFileSystem::flush(Handle file) {
    return answer(fsync(file));
}

FileResult<std::string> PosixFileSystem::readBack(Handle file, std::size_t most) {
    // Lets go of what memory holds of it, so that the answer is the disk's own. Only advice.
    (void)posix_fadvise(file, 0, 0, POSIX_FADV_DONTNEED);
    return readWhole(file, most);
}

FileResult<std::string> PosixFileSystem::giveName(Handle file, const std::string& folder,
                                                  const std::string& prefix) {
    const std::string self = "/proc/self/fd/" + std::to_string(file);
    for (int attempt = 0; attempt < 100; ++attempt) {
        std::string path = randomName(folder, prefix);
        if (linkat(AT_FDCWD, self.c_str(), AT_FDCWD, path.c_str(), AT_SYMLINK_FOLLOW) == 0)
            return path;
        if (errno != EEXIST) return lastFault();
    }
    return tl::unexpected(FileFault::exists);
}

FileResult<void> PosixFileSystem::close(Handle file) {
    // Linux closes the file even where it answers EINTR; closing again could hit another's.
    if (::close(file) != 0 && errno != EINTR) return lastFault();
    return {};
}

FileResult<void> PosixFileSystem::rename(const std::string& from, const std::string& to) {
    return answer(std::rename(from.c_str(), to.c_str()));
}

FileResult<void> PosixFileSystem::flushFolder(const std::string& folder) {
    const int opened = open(orHere(folder), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (opened < 0) return lastFault();
    const auto done = answer(fsync(opened));
    ::close(opened);
    return done;
}

FileResult<void> PosixFileSystem::remove(const std::string& path) {
    return answer(unlink(path.c_str()));
}

FileResult<void> PosixFileSystem::makeFolders(const std::string& path) {
    std::error_code code;
    std::filesystem::create_directories(path, code);
    if (code) return tl::unexpected(faultOf(code.value()));
    return {};
}

} // namespace borewright
