# Writes the .cpp that holds the page's files: cmake -D FROM=folder -D TO=file.cpp -P embed.cmake
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
  string(APPEND rows "    {\"/${name}\", \"${type}\",\n     R\"page(${body})page\"},\n")
endforeach()
file(WRITE ${TO} "#include \"daemon/panel/assets.hpp\"

namespace tidewright::panel {
namespace {

constexpr Asset all[] = {
${rows}};

}  // namespace

std::span<const Asset> assets() { return all; }

}  // namespace tidewright::panel
")
