#include "ui/support/faulty_disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>

namespace gw::test {
namespace {

Fault current;  // the calls below have C's shape and can be handed nothing
bool armed = false;
int counted = 0;

bool strikes() {
    if (!armed) {
        return false;
    }
    ++counted;
    const bool now = current.call > 0 &&
                     (current.andAllAfter ? counted >= current.call : counted == current.call);
    if (now) {
        errno = current.error;
    }
    return now;
}

ssize_t reallyWrite(int file, const void* bytes, size_t count) {
    return syscall(SYS_write, file, bytes, count);
}

}  // namespace

FaultyDisk::FaultyDisk(const Fault& fault) : fault_(fault) {
    current = fault;
    counted = 0;
    armed = true;
}

FaultyDisk::~FaultyDisk() {
    armed = false;
}

int FaultyDisk::calls() const {
    return counted;
}

}  // namespace gw::test

// The program's own definitions go before the C library's, for the toolkit's library as well.
extern "C" {

ssize_t write(int file, const void* bytes, size_t count) {
    struct stat status {};
    const bool onDisk = fstat(file, &status) == 0 && S_ISREG(status.st_mode);
    if (!onDisk || !gw::test::strikes()) {
        return gw::test::reallyWrite(file, bytes, count);
    }
    if (gw::test::current.halfWritten && count > 1) {
        return gw::test::reallyWrite(file, bytes, count / 2);
    }
    return -1;
}

int open64(const char* path, int flags, ...) {
    mode_t mode = 0;
    if ((flags & (O_CREAT | O_TMPFILE)) != 0) {
        va_list arguments;
        va_start(arguments, flags);
        mode = va_arg(arguments, mode_t);
        va_end(arguments);
    }
    const bool forWriting = (flags & O_ACCMODE) != O_RDONLY;
    if (forWriting && gw::test::strikes()) {
        return -1;
    }
    return static_cast<int>(syscall(SYS_openat, AT_FDCWD, path, flags, mode));
}

int fdatasync(int file) {
    return gw::test::strikes() ? -1 : static_cast<int>(syscall(SYS_fdatasync, file));
}

int linkat(int fromFolder, const char* from, int toFolder, const char* to, int flags) {
    return gw::test::strikes()
               ? -1
               : static_cast<int>(syscall(SYS_linkat, fromFolder, from, toFolder, to, flags));
}

int rename(const char* from, const char* to) noexcept {
    return gw::test::strikes()
               ? -1
               : static_cast<int>(syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0));
}

int fchmod(int file, mode_t mode) noexcept {
    return gw::test::strikes() ? -1 : static_cast<int>(syscall(SYS_fchmod, file, mode));
}
}
