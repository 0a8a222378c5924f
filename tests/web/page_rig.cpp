#include "tests/web/page_rig.h"

#include <gtest/gtest.h>

#include "web/shell/host_null.h"

namespace rehale::rig {

namespace null = shell::null;

void open_page(const Opening& opening) {
  const auto prepare = [&opening] {
    null::set_option("lang", opening.language);
    null::set_option("family", opening.family);
    null::set_option("seed", "5");
    null::set_option(shell::k_option_care, opening.care);
    null::set_option(shell::k_option_code, opening.result);
    if (!opening.no_storage) null::set_reply("kept", opening.kept);
  };
  open_with(prepare, opening.today);
}

void press_id(const std::string& id) {
  ASSERT_NE(null::find_id(id), nullptr) << id;
  null::press(id);
  null::settle();
}

void type(const std::string& id, double number) {
  ASSERT_NE(null::find_id(id), nullptr) << id;
  null::act({shell::MirrorAction::Kind::set_number, id, number});
  null::settle();
}

std::string all_told() {
  std::string all;
  for (const auto& node : null::mirror().nodes) all += node.name + "\n";
  return all;
}

}  // namespace rehale::rig
