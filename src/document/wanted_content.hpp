#pragma once

#include "rillwatt/document/document_edit.hpp"

#include "document_memory.hpp"
#include <deque>
#include <map>
#include <string>
#include <vector>

namespace rillwatt {

/// What a document will say when keys have been set and text appended. The document must outlive it.
class WantedContent {
  public:
    explicit WantedContent(const Table& root);

    /// Sets a key to the value of a document with one key; false when there is no such part.
    bool set(const KeyChange& change, Document value);
    /// Adds whole tables, and items to lists; false when a table is there already. `more` must outlive this.
    bool append(const Table& more);
    /// The line of the first key of a part; 1 when it is not known.
    int line_of(const std::string& table, const std::string& id) const;
    /// The content so far, of use as long as this lives and is not changed.
    Table root();

  private:
    /// A part: an item of a list of the root, or a table of the root.
    struct Place {
        std::size_t entry;
        std::size_t item;
        bool in_list;
    };

    Value& at(Place place);

    DocumentMemory memory_;
    std::vector<Entry> entries_;
    std::deque<std::vector<Value>> lists_;                       ///< the items of each of them that is a list
    std::map<std::pair<std::string, std::string>, Place> parts_; ///< by table and id
    std::vector<Document> values_;
};

} // namespace rillwatt
