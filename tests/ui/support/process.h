#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>

/// Other programs, and this one again, as a test needs them.
namespace gw::test {

struct Finished {
    bool started = false;
    int exitCode = -1;
    QByteArray out;
    QByteArray err;
    bool good() const { return started && exitCode == 0; }
};

/// Runs to the end, at most a minute. environment: "NAME=value", added to this program's own but
/// for what tells a test program to run only its share of the tests.
Finished runProgram(const QString& program,
                    const QStringList& arguments,
                    const QStringList& environment = {});

/// This test program, running only the named test.
QString ownProgram();
QString onlyTest(const char* name);

void writeFile(const QString& path, const QByteArray& bytes);
QByteArray readWholeFile(const QString& path);

}  // namespace gw::test
