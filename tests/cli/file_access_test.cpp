#include "rillwatt/cli/file_access.hpp"

#include <catch2/catch.hpp>

#include "support/temporary_folder.hpp"
#include <sys/stat.h>

namespace rillwatt {

using test::file_text;
using test::put_file;
using test::TemporaryFolder;

TEST_CASE("a new file is written with the text given and nothing is left beside it") {
    const TemporaryFolder folder;
    CHECK(write_file(folder.file("bill.csv"), "a,b\r\n").empty());
    CHECK(file_text(folder.file("bill.csv")) == "a,b\r\n");
    CHECK(folder.entries() == 1);
}

TEST_CASE("an existing file keeps its mode") {
    const TemporaryFolder folder;
    const std::string path = folder.file("site.toml");
    put_file(path, "old");
    REQUIRE(chmod(path.c_str(), 0640) == 0);
    CHECK(write_file(path, "new").empty());
    struct stat facts {};
    REQUIRE(stat(path.c_str(), &facts) == 0);
    CHECK((facts.st_mode & 07777) == 0640);
    CHECK(file_text(path) == "new");
}

TEST_CASE("a symbolic link stays a link and the file behind it is replaced") {
    const TemporaryFolder folder;
    std::filesystem::create_directory(folder.path() / "real");
    put_file(folder.file("real/site.toml"), "old");
    std::filesystem::create_symlink("real/site.toml", folder.path() / "link.toml");
    CHECK(write_file(folder.file("link.toml"), "new").empty());
    CHECK(std::filesystem::is_symlink(folder.path() / "link.toml"));
    CHECK(file_text(folder.file("real/site.toml")) == "new");
}

TEST_CASE("a folder that does not exist is said and nothing is made") {
    const TemporaryFolder folder;
    CHECK(write_file(folder.file("nowhere/site.toml"), "x") == "No such file or directory");
    CHECK(folder.entries() == 0);
}

TEST_CASE("a folder is never replaced by a file") {
    const TemporaryFolder folder;
    std::filesystem::create_directory(folder.path() / "plan.svg");
    CHECK(write_file(folder.file("plan.svg"), "x") == "is no regular file");
    CHECK(folder.entries() == 1);
}

TEST_CASE("a new file never replaces one that is there") {
    const TemporaryFolder folder;
    put_file(folder.file("site.toml"), "mine");
    CHECK(write_new_file(folder.file("site.toml"), "theirs") == "the file exists already");
    CHECK(file_text(folder.file("site.toml")) == "mine");
    CHECK(write_new_file(folder.file("other.toml"), "theirs").empty());
    CHECK(file_text(folder.file("other.toml")) == "theirs");
    CHECK(folder.entries() == 2);
}

TEST_CASE("a file is replaced only while it says what it said when it was read") {
    const TemporaryFolder folder;
    const std::string path = folder.file("site.toml");
    std::string problem;
    put_file(path, "mine, saved since");
    CHECK(replace_file(path, "mine", "theirs", problem) == Replacing::changed);
    CHECK(file_text(path) == "mine, saved since");
    CHECK(replace_file(path, "mine, saved since", "theirs", problem) == Replacing::done);
    CHECK(file_text(path) == "theirs");
    std::filesystem::remove(path);
    CHECK(replace_file(path, "theirs", "others", problem) == Replacing::failed);
    CHECK(problem == "No such file or directory");
    CHECK(folder.entries() == 0);
}

TEST_CASE("a dangling link cannot be used to write a new file elsewhere") {
    const TemporaryFolder folder;
    std::filesystem::create_symlink("elsewhere.toml", folder.path() / "site.toml");
    CHECK(write_new_file(folder.file("site.toml"), "x") == "the file exists already");
    CHECK_FALSE(std::filesystem::exists(folder.path() / "elsewhere.toml"));
}

TEST_CASE("reading tells why it could not") {
    const TemporaryFolder folder;
    CHECK(read_file(folder.file("none.toml")).problem == "No such file or directory");
    CHECK(read_file(folder.path().string()).problem == "it is a folder");
    put_file(folder.file("site.toml"), std::string("a\0b", 3));
    CHECK(read_file(folder.file("site.toml")).text == std::string("a\0b", 3));
}

} // namespace rillwatt
