// A number between two round buttons: minus, value with its unit, plus. The mirror has one
// input type=number that can be typed into. The caller keeps the value.
#pragma once

#include <string>

#include "web/kit/ui.h"

namespace rehale::kit {

struct Stepper {
  std::string id;
  std::string name;  // "How many days are left?"
  std::string unit;  // "days", drawn after the number; may be empty
  double min = 0, max = 100, step = 1;
  bool locked = false;
  std::string shown;   // instead of the number: "2" for -2 where the unit says "before"
  std::string spoken;  // the value as it is read out; default: number and unit
};

// The new value, inside [min, max] and on a step.
double stepper(Ui& ui, const Stepper& stepper, double value);

}  // namespace rehale::kit
