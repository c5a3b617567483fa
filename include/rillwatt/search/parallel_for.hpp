#pragma once

#include <cstddef>
#include <functional>
#include <thread>

namespace rillwatt::search {

/// Does `work(0)` to `work(count - 1)`, several at a time where the machine has several cores. What one does
/// must not depend on another, so that the result is the same however many run at once.
void parallel_for(std::size_t count, const std::function<void(std::size_t)>& work);

/// Starts a thread that does something; throws std::system_error where no more can be had.
using StartThread = std::function<std::thread(const std::function<void()>&)>;

/// The same with at most so many threads beside the caller's own, fewer where no more can be had.
void parallel_for(std::size_t count, const std::function<void(std::size_t)>& work, std::size_t helpers,
                  const StartThread& start);

} // namespace rillwatt::search
