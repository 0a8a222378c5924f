// Answers: one of several (radio), several of several (checkbox), one of several pictures.
// The caller keeps what is chosen; calls take it and give the new one back.
#pragma once

#include <string>
#include <vector>

#include "web/kit/ui.h"

namespace rehale::kit {

// What a revealed answer is told to be: always word + shape + colour.
enum class Mark : unsigned char { none, going_well, to_mend, missed };

struct Choice {
  std::string id;
  std::string label;
  Mark mark = Mark::none;
  std::string mark_words;  // instead of the kit's words for the mark
  std::string note;        // a sentence below the label, after the reveal
  std::string language;    // BCP 47, where the label is not in the screen's own
};

struct Choices {
  std::string id;
  std::string name;  // of the group, not drawn: the question itself
  std::vector<Choice> options;
  bool locked = false;  // answered: rows stay, nothing can change
};

// -1: nothing chosen yet. A chosen row stays chosen when pressed again.
int one_of(Ui& ui, const Choices& choices, int chosen);

// chosen.size() == options.size(); one press flips one.
std::vector<bool> several_of(Ui& ui, const Choices& choices, std::vector<bool> chosen);

struct PictureChoice {
  std::string id;
  std::string label;  // drawn below the picture
  DrawPicture draw;
  Mark mark = Mark::none;
  std::string mark_words;
};

struct PictureChoices {
  std::string id;
  std::string name;
  std::vector<PictureChoice> options;  // 2…4
  bool locked = false;
};

int one_picture_of(Ui& ui, const PictureChoices& choices, int chosen);

}  // namespace rehale::kit
