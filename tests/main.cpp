#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <iostream>

// CTest runs each case by its name. One that begins with a dash would be an option instead ("--out writes": all cases run, and
// what they say goes to a file), and one with a semicolon would be cut there.
int main(int argc, char** argv) {
  for (const auto& test : Catch::getRegistryHub().getTestCaseRegistry().getAllTests()) {
    if (test.name.starts_with('-') || test.name.find(';') != std::string::npos) {
      std::cerr << "Give this case another name, without a dash at its head or a semicolon: " << test.name << '\n';
      return 2;
    }
  }
  return Catch::Session().run(argc, argv);
}
