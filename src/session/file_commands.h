// Commands about files: plans, set-up sheets, share pages, unsaved work of the last time.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "session/command.h"
#include "session/page_choices.h"

namespace laywright {

struct Drawing;

namespace cmd {

Command open(const std::string& path);  // a plan, or a lesson
Command open_sample();
Command activate(std::size_t document);  // place in Workbench::documents()
Command save();
Command save_as(const std::string& path);
// The set-up sheet into a file, by its ending: .pdf, .svg, .png. It is written in the background; sheet_saving()
// tells what became of it. SVG and PNG hold one page, from 1.
using SheetDrawings = std::shared_ptr<const std::vector<Drawing>>;
Command save_sheet(const std::string& path, const SheetDrawings& pages, int page = 1);
// The share page of the build into a file, *.html, in the background; page_saving() tells what became of it.
Command save_page(const std::string& path);
// How pages are to be from now on.
Command choose_page(const PageChoices& choices);
Command stop_saving_page();
Command revert();
Command keep_mine();                  // instead of what others made of the file
Command close(bool discard = false);  // without it, what is unsaved is asked about first
// `offer`: place in Workbench::recovery_offers().
Command recover(std::size_t offer);
Command drop_recovery(std::size_t offer);

}  // namespace cmd
}  // namespace laywright
