// What main.cpp gives the shell: the app as four functions. Must not know what they do.
#pragma once

#include <string>

namespace rehale::shell {

struct App {
  void (*start)() = nullptr;  // once: Dear ImGui's context, preferences and fonts are there
  void (*frame)() = nullptr;  // between Dear ImGui's NewFrame and Render
  std::string (*export_run)() = nullptr;  // rehale.exportRun(): the event log as JSON, "" if none
  std::string (*content_id)() = nullptr;  // names the content that is loaded, "" before
};

// From main(), once; returns at once. The page then calls the app.
void run(const App& app);

}  // namespace rehale::shell
