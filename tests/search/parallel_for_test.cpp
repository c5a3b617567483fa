#include "rillwatt/search/parallel_for.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <stdexcept>
#include <system_error>
#include <vector>

using rillwatt::search::parallel_for;

namespace {

/// Starts so many threads and then no more.
rillwatt::search::StartThread starter(int most) {
    return [most, started = 0](const std::function<void()>& serve) mutable {
        if (started++ == most)
            throw std::system_error(std::make_error_code(std::errc::resource_unavailable_try_again));
        return std::thread(serve);
    };
}

} // namespace

TEST_CASE("all work is done once however few threads can be had") {
    for (const int most : {0, 1, 2, 3}) {
        CAPTURE(most);
        std::vector<std::atomic<int>> done(50);
        parallel_for(
            done.size(), [&](std::size_t i) { ++done[i]; }, 3, starter(most));
        for (const std::atomic<int>& times : done)
            CHECK(times == 1);
    }
}

TEST_CASE("an exception of the work comes out when every thread has ended") {
    const auto fail = [](std::size_t i) {
        if (i == 7) throw std::runtime_error("seven");
    };
    CHECK_THROWS_AS(parallel_for(50, fail, 3, starter(1)), std::runtime_error);
}
