#include "rillwatt/search/parallel_for.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace rillwatt::search {

namespace {

/// Hands out numbers and keeps the first exception.
class Queue {
  public:
    Queue(std::size_t count, const std::function<void(std::size_t)>& work) : count_(count), work_(work) {}

    void serve() {
        for (std::size_t i = next_++; i < count_; i = next_++) {
            try {
                work_(i);
            } catch (...) {
                const std::lock_guard lock(mutex_);
                if (!failure_) failure_ = std::current_exception();
                next_ = count_;
            }
        }
    }

    void raise() const {
        if (failure_) std::rethrow_exception(failure_);
    }

  private:
    std::size_t count_;
    const std::function<void(std::size_t)>& work_;
    std::atomic<std::size_t> next_{0};
    std::mutex mutex_;
    std::exception_ptr failure_;
};

} // namespace

void parallel_for(std::size_t count, const std::function<void(std::size_t)>& work) {
    const std::size_t at_once =
        std::min<std::size_t>(std::max(1u, std::thread::hardware_concurrency()), count);
    parallel_for(count, work, at_once - (count > 0 ? 1 : 0),
                 [](const std::function<void()>& serve) { return std::thread(serve); });
}

void parallel_for(std::size_t count, const std::function<void(std::size_t)>& work, std::size_t helpers,
                  const StartThread& start) {
    Queue queue(count, work);
    std::vector<std::thread> threads;
    threads.reserve(helpers); // so that nothing but the start of a thread can fail while some are running
    try {
        while (threads.size() < helpers)
            threads.push_back(start([&] { queue.serve(); }));
    } catch (const std::system_error&) {
        // the machine has no more to give: those that run, this one at least, do all the work
    }
    queue.serve();
    for (std::thread& thread : threads)
        thread.join();
    queue.raise();
}

} // namespace rillwatt::search
