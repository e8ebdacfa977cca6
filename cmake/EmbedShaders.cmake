# Writes all shaders into one C++ source: cmake -DSHADERS=a.glsl;b.glsl -DOUTPUT=file.cpp -P EmbedShaders.cmake

set(text "#include \"render/shader_sources.h\"\n\nnamespace laywright {\n\nstd::string_view shader_source(std::string_view name) {\n")
foreach(shader IN LISTS SHADERS)
  get_filename_component(name ${shader} NAME)
  file(READ ${shader} source)
  string(APPEND text "  if (name == \"${name}\") return R\"GLSL(${source})GLSL\";\n")
endforeach()
string(APPEND text "  return {};\n}\n\n}  // namespace laywright\n")
file(WRITE ${OUTPUT} "${text}")
