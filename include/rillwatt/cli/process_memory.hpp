#pragma once

namespace rillwatt {

/// Sets the heap up for a process that reads a site, answers and ends: memory once asked of the system is
/// kept for the next need, and comes in large pages where the system has them. Call it first of all. It only
/// saves time; where the system knows nothing of it, it does nothing.
void prepare_memory();

} // namespace rillwatt
