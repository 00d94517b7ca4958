#pragma once

#include <QProcess>
#include <QString>
#include <QStringList>

/// This program run again by a test, as another user of the same files: `ui_tests --role NAME …`.
namespace gw::test {

/// The exit status, or -1 where the arguments ask for no role.
int playRole(const QStringList& arguments);

/// By a clock that all processes share.
qint64 monotonicMilliseconds();

/// A player of a role, killed when it goes.
class Player {
public:
    Player(const QString& role, const QStringList& arguments);
    Player(const Player&) = delete;
    Player& operator=(const Player&) = delete;
    ~Player() { kill(); }

    qint64 process() const { return process_.processId(); }
    /// The next line it says, without its end; empty when it says no more.
    QString line();
    /// Lines said and not read yet, after its death.
    QStringList rest();
    /// At once, as by a power cut of its own; returns when it is gone.
    void kill();
    /// Asks it to end; its exit status.
    int finish();

private:
    QProcess process_;
};

}  // namespace gw::test
