// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/file_system.h"

namespace borewright {

std::string_view inWords(FileFault fault) {
    switch (fault) {
    case FileFault::interrupted:
        return "the computer kept interrupting";
    case FileFault::diskFull:
        return "the disk is full";
    case FileFault::quotaUsed:
        return "the space allowed to you on this disk is used up";
    case FileFault::readOnly:
        return "the disk is write-protected";
    case FileFault::noRight:
        return "no right to write there";
    case FileFault::notFound:
        return "the folder is gone";
    case FileFault::notAFolder:
        return "its folder is not a folder";
    case FileFault::isAFolder:
        return "a folder has that name";
    case FileFault::exists:
        return "a file of that name appeared";
    case FileFault::tooLarge:
        return "the file is larger than this system allows";
    case FileFault::nameTooLong:
        return "the name is too long";
    case FileFault::inputOutput:
        return "the disk or the connection to it fails";
    case FileFault::unsupported:
        return "this kind of disk cannot do it";
    case FileFault::other:
        break;
    }
    return "the system refused";
}

} // namespace borewright
