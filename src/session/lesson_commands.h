// Commands of a lesson that is taken.
#pragma once

#include <cstddef>
#include <string>

#include "session/command.h"

namespace laywright::cmd {

Command open_lesson(const std::string& file);
Command go_in_lesson(int steps);            // below 0: back
Command answer_lesson(std::size_t answer);  // place in the question's answers; the first one counts
Command show_step_again();                  // plays and points once more
Command look_from_afar(bool afar);          // whole spools, or the lesson's place from near
Command take_try_back();                    // the plans as the lesson has them
Command restart_lesson();
Command close_lesson();

}  // namespace laywright::cmd
