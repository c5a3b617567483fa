# Writes OUTPUT, a C++ file that defines `const std::vector<TYPE>& FUNCTION()`: name and text of every file in FILES (a
# list). Names are given below ROOT; HEADER declares TYPE and FUNCTION.
set(entries "")
foreach(file IN LISTS FILES)
  file(READ "${file}" text)
  file(RELATIVE_PATH name "${ROOT}" "${file}")
  string(APPEND entries "        {\"${name}\", R\"embedded(${text})embedded\"},\n")
endforeach()
file(WRITE "${OUTPUT}" "#include \"${HEADER}\"

namespace rillwatt {

const std::vector<${TYPE}>& ${FUNCTION}() {
    static const std::vector<${TYPE}> files{
${entries}    };
    return files;
}

} // namespace rillwatt
")
