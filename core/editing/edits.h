#pragma once

/// All edits.
#include "editing/conductors.h"
#include "editing/copy.h"
#include "editing/move.h"
#include "editing/place.h"
#include "editing/remove.h"
#include "editing/shape.h"
