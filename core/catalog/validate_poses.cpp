#include "core/catalog/validate.h"

namespace rehale::catalog {
namespace {

void expect_drawn(const Check& check, const std::vector<Id>& poses, const std::vector<Id>& drawn,
                  const std::string& pointer) {
  for (std::size_t i = 0; i < poses.size(); ++i)
    expect_known(check, drawn, poses[i], at(pointer, i), "pose");
}

}  // namespace

std::vector<Id> poses_used(const Family& family) {
  std::vector<Id> poses;
  const auto take = [&](const std::vector<Id>& some) {
    poses.insert(poses.end(), some.begin(), some.end());
  };
  for (const auto& action : family.actions) take(action.pose);
  for (const auto& question : family.questions) {
    take(question.pose);
    for (const auto& option : question.options) take(option.pose);
  }
  std::sort(poses.begin(), poses.end());
  poses.erase(std::unique(poses.begin(), poses.end()), poses.end());
  std::erase(poses, Id{});
  return poses;
}

void validate_action_poses(const Check& check, const std::vector<Id>& drawn) {
  const auto& actions = check.family.actions;
  for (std::size_t i = 0; i < actions.size(); ++i)
    expect_drawn(check, actions[i].pose, drawn, at("/actions", i, "/pose"));
}

void validate_question_poses(const Check& check, const std::vector<Id>& drawn) {
  const auto& questions = check.family.questions;
  for (std::size_t i = 0; i < questions.size(); ++i) {
    expect_drawn(check, questions[i].pose, drawn, at("/questions", i, "/pose"));
    for (std::size_t k = 0; k < questions[i].options.size(); ++k) {
      expect_drawn(check, questions[i].options[k].pose, drawn,
                   at(at("/questions", i, "/options"), k, "/pose"));
    }
  }
}

}  // namespace rehale::catalog
