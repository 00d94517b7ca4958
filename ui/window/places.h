#pragma once

#include <QString>

namespace gw::ui {

/// Where the program keeps what is its user's but no layout. A part that is empty: nowhere, and
/// nothing is kept or found there.
struct Places {
    QString settings;  ///< file of settings
    QString recovery;  ///< folder of unsaved work
    QString samples;   ///< folder of sample layouts, one folder each
};

/// Of who runs the program. The environment variable GUTTERWRIGHT_HOME names a folder that takes
/// the place of the desktop's own for settings and recovery.
Places usersPlaces();

}  // namespace gw::ui
