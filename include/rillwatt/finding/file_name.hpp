#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace rillwatt {

/// The name of a file, shared by everything that was written in it. Empty by default.
class FileName {
  public:
    FileName() = default;
    FileName(std::string name) : name_(std::make_shared<const std::string>(std::move(name))) {}
    FileName(std::string_view name) : FileName(std::string(name)) {}
    FileName(const char* name) : FileName(std::string(name)) {}

    std::string_view view() const { return name_ != nullptr ? std::string_view(*name_) : std::string_view(); }
    std::string text() const { return std::string(view()); }
    bool empty() const { return view().empty(); }
    operator std::string_view() const { return view(); }

    friend bool operator==(const FileName& a, const FileName& b) {
        return a.name_ == b.name_ || a.view() == b.view();
    }

  private:
    std::shared_ptr<const std::string> name_;
};

/// A file named in another one: meant from the folder of that one unless it is absolute.
std::string beside(std::string_view file, const std::string& name);

} // namespace rillwatt
