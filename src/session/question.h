// What the window itself must ask the person.
#pragma once

namespace laywright::cmd {

enum class Question {
  file_to_open,
  file_to_save,
  what_to_compare,
  close_unsaved,
  help,
  setup_sheet,
  sheet_to_save,
  better_settings,
  share_page,
  page_to_save,
  new_plan,
  readings_to_open,
  readings_to_save,
  records,
  order,
  order_to_open,
  order_folder
};

}  // namespace laywright::cmd
