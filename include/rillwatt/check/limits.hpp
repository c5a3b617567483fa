#pragma once

#include "rillwatt/limits/standing.hpp"
#include "rillwatt/mains/code_limits.hpp"
