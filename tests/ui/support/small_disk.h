#pragma once

#include <QString>

/// Places that are small or may not be written, each for one test: the test runs itself again
/// inside. A mount lies in a namespace of its own and ends with its process.
namespace gw::test {

/// Where the test, running inside, finds its disk. Empty outside.
QString smallDisk();
/// Outside: runs the named test inside, with a disk of `size` ("1m", "64k"), and takes over its
/// outcome; skips loudly where it cannot be mounted.
void runOnSmallDisk(const char* testName, const char* size);
/// Inside. From here on nothing on it can be written.
void makeSmallDiskReadOnly();
/// Inside: writes a file that takes all that is left but `bytes`.
void fillSmallDisk(qint64 bytesLeft = 0);

/// Permission bits do not stop root: whether this process is another user.
bool isPlainUser();
/// Runs the named test again as a user with no rights; skips loudly where that cannot be.
void runAsPlainUser(const char* testName);

}  // namespace gw::test
