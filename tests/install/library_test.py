"""The installed library, moved to where nobody expected it, used from outside: the small program in samples/library
prints what `laywright lay` prints, and one that includes every header links with all of it.

    library_test.py BUILD SOURCES CONFIGURATION [SANITIZERS]
"""

import pathlib
import sys

from installed import folder, installed, outer_diameters, ran

# Their headers are not needed to use the others.
NEED_MORE = {"advise/response.h": "Eigen", "advise/fit_search.h": "Eigen", "advise/fit_untold.h": "Eigen",
             "figures/document_text.h": "nlohmann", "answers/outcome_json.h": "nlohmann",
             "figures/takeup_json.h": "nlohmann", "figures/verdict_json.h": "nlohmann"}


def built(source, out, prefix, configuration, sanitizers):
    flags = [f"-DCMAKE_CXX_FLAGS=-fsanitize={sanitizers}"] if sanitizers else []
    ran("cmake", "-G", "Ninja", "-S", source, "-B", out, f"-DCMAKE_PREFIX_PATH={prefix}",
        f"-DCMAKE_BUILD_TYPE={configuration}", *flags)
    ran("cmake", "--build", out)


def every_header(where, prefix):
    """A program on the whole library; what it prints is of no matter."""
    headers = prefix / "include/laywright"
    names = sorted(str(path.relative_to(headers)) for path in headers.glob("**/*.h"))
    assert {"base/result.h", "lay/lay.h", "figures/summary.h"} <= set(names) and set(NEED_MORE) <= set(names), names
    for name, library in NEED_MORE.items():
        assert f"#include <{library}" in (headers / name).read_text(encoding="utf-8"), name
    lines = [f"#include <{name}>" for name in names if name not in NEED_MORE]
    lines += ["#include <cstdio>", "int main() {", "  const auto text = &laywright::summary_text;",
              "  const auto search = &laywright::improve;", "  const auto page = &laywright::to_pdf;",
              '  std::printf("%d\\n", text != nullptr && search != nullptr && page != nullptr);', "}"]
    where.mkdir()
    (where / "main.cpp").write_text("\n".join(lines) + "\n", encoding="utf-8")
    (where / "CMakeLists.txt").write_text(
        "cmake_minimum_required(VERSION 3.25)\nproject(whole LANGUAGES CXX)\nfind_package(Laywright 0.1 REQUIRED)\n"
        "add_executable(whole main.cpp)\ntarget_link_libraries(whole PRIVATE Laywright::paper)\n", encoding="utf-8")


def main():
    build, sources, configuration = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), sys.argv[3]
    sanitizers = sys.argv[4] if len(sys.argv) > 4 else ""
    with installed(build, "library") as first, folder() as other:
        prefix = first.rename(other / "moved")
        first.mkdir()  # its own clean-up looks for it

        built(sources / "samples/library", other / "small", prefix, configuration, sanitizers)
        plan = sources / "samples/parallel.lay.toml"
        printed = ran(other / "small/outer_diameter", plan).strip()
        program = build / "src/app/laywright"
        assert printed == outer_diameters(ran(program, "lay", plan)), printed
        ran(other / "small/outer_diameter", plan.with_name("none.lay.toml"), code=1)

        every_header(other / "whole", prefix)
        built(other / "whole", other / "whole/build", prefix, configuration, sanitizers)
        assert ran(other / "whole/build/whole").strip() == "1"


main()
