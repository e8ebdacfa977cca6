// What a command writes, looked at before it begins to work.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/command_line.h"

namespace laywright {

// An option that names a file, or a folder, to be written.
struct WrittenFiles {
  CommandOption option;
  std::vector<std::string> endings;  // of a file: those that it may have, like ".png"
  bool ending_chooses = false;       // the ending says what is written, even into a pipe
  // Of a folder: the files that it gets, asked after parsing. None: with this command line it is a file.
  std::function<std::vector<std::string>()> names = {};
};

// Lets the command refuse, as a wrong command line: an output without a name; one that is the same file as an input,
// by whatever spelling or link; an ending of another kind of file; one of a file where a folder is due. Something that is there and no plain file, like
// /dev/stdout, may have any name. An input that is not there is left to its reader. Once for each command.
void guard_inputs(CommandLine command, std::vector<CommandOption> inputs, std::vector<WrittenFiles> outputs);

}  // namespace laywright
