#pragma once

#include <algorithm>
#include <cstddef>
#include <functional>

namespace rillwatt::search {

/// Counts what a search examines and says when to stop. The count depends on the input alone, so the same
/// input stops at the same place; only the optional clock does not.
class Effort {
  public:
    Effort(std::size_t limit, std::function<bool()> out_of_time)
        : limit_(limit), out_of_time_(std::move(out_of_time)) {}

    void spend(std::size_t count) {
        used_ += count;
        if (out_of_time_ && used_ >= next_look_) {
            next_look_ = used_ + look_every;
            late_ = late_ || out_of_time_();
        }
    }

    /// An even part of what is left, to be spent by one of several.
    Effort share(std::size_t among) const {
        return Effort(used_ >= limit_ ? 0 : (limit_ - used_) / among, out_of_time_);
    }

    /// At most so much of what is left, for one stage.
    Effort part(std::size_t most) const {
        Effort part = share(1);
        part.limit_to(most);
        return part;
    }

    /// The first pass of a search too keeps to it, even if it finds nothing then.
    void make_firm() { firm_ = true; }
    bool firm() const { return firm_; }

    void limit_to(std::size_t most) { limit_ = std::min(limit_, most); }

    bool spent() const { return used_ >= limit_ || late_; }
    std::size_t limit() const { return limit_; }
    std::size_t left() const { return limit_ - std::min(limit_, used_); }
    std::size_t used() const { return used_; }

  private:
    static constexpr std::size_t look_every = 2000;

    std::size_t limit_;
    std::function<bool()> out_of_time_;
    std::size_t used_ = 0;
    std::size_t next_look_ = 0;
    bool late_ = false;
    bool firm_ = false;
};

} // namespace rillwatt::search
