# Writes the .cpp that holds the page's files, and a library of Debian's in gzip:
# cmake -D FROM=folder -D LIBRARY=file.js -D TO=file.cpp -P embed.cmake
set(types .css "text/css; charset=utf-8" .js "text/javascript; charset=utf-8"
  .svg "image/svg+xml")
set(rows "")
file(GLOB files ${FROM}/*.css ${FROM}/*.js ${FROM}/*.svg)
foreach(file ${files})
  cmake_path(GET file FILENAME name)
  cmake_path(GET file EXTENSION LAST_ONLY extension)
  list(FIND types "${extension}" at)
  math(EXPR at "${at} + 1")
  list(GET types ${at} type)
  file(READ ${file} body)
  string(APPEND rows "    {\"/${name}\", \"${type}\", \"\",\n     R\"page(${body})page\"},\n")
endforeach()

cmake_path(GET LIBRARY FILENAME name)
execute_process(COMMAND gzip -9nc ${LIBRARY} OUTPUT_FILE ${TO}.gz COMMAND_ERROR_IS_FATAL ANY)
file(SIZE ${TO}.gz size)
file(READ ${TO}.gz bytes HEX)
string(REGEX REPLACE "(..)" "\\\\x\\1" bytes "${bytes}")
string(APPEND rows "    {\"/${name}\", \"text/javascript; charset=utf-8\", \"gzip\",\n"
  "     {\"${bytes}\", ${size}}},\n")
file(WRITE ${TO} "#include \"daemon/panel/assets.hpp\"

namespace tidewright::panel {
namespace {

constexpr Asset all[] = {
${rows}};

}  // namespace

std::span<const Asset> assets() { return all; }

}  // namespace tidewright::panel
")
