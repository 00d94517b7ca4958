#pragma once

/// A disk that fails: the calls by which this program changes files (open for writing, write, sync,
/// link, rename, …) are counted, and one of them, or all from one on, fails with an error of the
/// system's.
namespace gw::test {

struct Fault {
    int call = 0;              ///< the first that fails, from 1; 0: none
    int error = 0;             ///< ENOSPC, EIO, …
    bool andAllAfter = true;   ///< false: a passing fault
    bool halfWritten = false;  ///< a write that fails writes half first, as on a full disk
};

/// While it lives. One at a time, one thread.
class FaultyDisk {
public:
    explicit FaultyDisk(const Fault& fault);
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;
    ~FaultyDisk();

    int calls() const;  ///< counted so far
    bool struck() const { return fault_.call > 0 && calls() >= fault_.call; }

private:
    Fault fault_;
};

}  // namespace gw::test
