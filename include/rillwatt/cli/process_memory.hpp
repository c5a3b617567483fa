#pragma once

#include <cstddef>

namespace rillwatt {

/// Sets the heap up for a process that reads a site, answers and ends: memory once asked of the system is
/// kept for the next need. Call it first of all. Like the other it only saves time; where the system knows
/// nothing of it, it does nothing.
void prepare_memory();

/// Has what the heap gives from here on come in large pages, where the system has them and the input is large
/// enough to fill one: they are had for the price of a hundred small ones.
void prepare_memory_for(std::size_t input_bytes);

} // namespace rillwatt
