#pragma once

#include <cstddef>
#include <functional>

namespace rillwatt::sizing {

/// Does `work(0)` to `work(count - 1)`, several at a time where the machine has several cores. What one does
/// must not depend on another, so that the result is the same however many run at once.
void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work);

} // namespace rillwatt::sizing
