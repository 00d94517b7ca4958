#pragma once

/// All edits.
#include "editing/conductors.h"
#include "editing/move.h"
#include "editing/place.h"
#include "editing/remove.h"
#include "editing/settle.h"
#include "editing/shape.h"
