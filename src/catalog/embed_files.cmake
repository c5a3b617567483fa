# Writes OUTPUT, a C++ file that holds the text of every file in FILES (a list) as the program's built-in catalogs.
# Names are given below ROOT.
set(entries "")
foreach(file IN LISTS FILES)
  file(READ "${file}" text)
  file(RELATIVE_PATH name "${ROOT}" "${file}")
  string(APPEND entries "        {\"${name}\", R\"catalog(${text})catalog\"},\n")
endforeach()
file(WRITE "${OUTPUT}" "#include \"rillwatt/catalog/read_catalog.hpp\"

namespace rillwatt {

const std::vector<BuiltInFile>& built_in_files() {
    static const std::vector<BuiltInFile> files{
${entries}    };
    return files;
}

} // namespace rillwatt
")
