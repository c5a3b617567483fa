#pragma once

#include "rillwatt/limits/light_limits.hpp"
