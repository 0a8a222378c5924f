// What must hold for every widget on every size: run over the pages of the gallery.
// Sources: WCAG 2.2 1.4.4, 1.4.10, 2.5.3, 2.5.8, 4.1.2; facts/users.md 2.2, 2.3; look.md (60
// characters).
#include <gtest/gtest.h>
#include <imgui.h>

#include <algorithm>
#include <limits>
#include <set>

#include "tests/web/gallery_pages.h"
#include "tests/web/kit_rig.h"
#include "web/kit/type.h"

namespace rehale {
namespace {

using rig::MirrorNode;
using rig::Role;
using rig::Setting;

constexpr Setting k_settings[] = {{.width = 360, .height = 640},
                                  {.width = 320, .height = 480, .scale = 2},
                                  {.width = 320, .height = 256},
                                  {.width = 740, .height = 360, .dark = true},
                                  {.width = 844, .height = 390, .scale = 2},
                                  {.width = 768, .height = 1024, .scale = 1.5F},
                                  {.width = 1920, .height = 1080, .scale = 1.25F},
                                  {.width = 3840, .height = 2160, .scale = 2}};

// Each page on each size; the message says where.
template <class Check>
void everywhere(const Check& check) {
  for (int page = 0; page < gallery::page_count(); ++page) {
    for (const Setting& setting : k_settings) {
      SCOPED_TRACE(gallery::page_name(page) + " at " +
                   std::to_string(static_cast<int>(setting.width)) + " x " +
                   std::to_string(static_cast<int>(setting.height)) + ", scale " +
                   std::to_string(setting.scale));
      gallery::forget();
      rig::open(setting, [page](kit::Ui& ui) { gallery::draw_page(ui, page); });
      gallery::after_start(page);
      rig::settle();
      check(setting, shell::null::mirror().nodes);
    }
  }
}

bool in_dialog(const MirrorNode& node, const std::vector<MirrorNode>& nodes) {
  for (std::string at = node.parent; !at.empty();) {
    const auto parent = std::ranges::find(nodes, at, &MirrorNode::id);
    if (parent == nodes.end()) return false;
    if (parent->role == Role::dialog) return true;
    at = parent->parent;
  }
  return false;
}

TEST(KitEverywhere, nothing_runs_off_the_side) {
  everywhere([](const Setting& setting, const std::vector<MirrorNode>& nodes) {
    for (const MirrorNode& node : nodes) {
      EXPECT_GE(node.rect.x, 0) << node.id;
      EXPECT_LE(node.rect.x + node.rect.w, setting.width) << node.id;
    }
    for (const ImDrawList* list : ImGui::GetDrawData()->CmdLists) {
      for (const ImDrawVert& vertex : list->VtxBuffer) {
        ASSERT_GE(vertex.pos.x, -2);
        ASSERT_LE(vertex.pos.x, setting.width + 2);
      }
    }
  });
}

TEST(KitEverywhere, everything_can_be_brought_into_view) {
  everywhere([](const Setting& setting, const std::vector<MirrorNode>& nodes) {
    std::vector<std::string> ids;
    for (const MirrorNode& node : nodes) {
      if (rig::is_control(node)) ids.push_back(node.id);
    }
    const bool modal = std::ranges::find(nodes, Role::dialog, &MirrorNode::role) != nodes.end();
    for (const std::string& id : ids) {
      if (modal && !in_dialog(rig::find_id(id), shell::null::mirror().nodes)) continue;
      shell::null::act({shell::MirrorAction::Kind::focus, id});
      rig::settle();
      const MirrorNode& node = rig::find_id(id);
      const float top = node.clip.w > 0 ? node.clip.y : 0;
      const float bottom = node.clip.w > 0 ? node.clip.y + node.clip.h : setting.height;
      EXPECT_GE(node.rect.y, top - 0.5F) << id;
      if (node.rect.h <= bottom - top) {
        EXPECT_LE(node.rect.y + node.rect.h, bottom + 0.5F) << id;
      }
    }
  });
}

TEST(KitEverywhere, targets_are_48_px_answers_and_actions_64) {
  everywhere([](const Setting&, const std::vector<MirrorNode>& nodes) {
    for (const MirrorNode& node : nodes) {
      if (!rig::is_control(node)) continue;
      const bool large = rig::is_answer(node) || node.id == "go" || node.id == "unsure";
      EXPECT_GE(node.rect.h, large ? 64 : 48) << node.id;
      EXPECT_GE(node.rect.w, 48) << node.id;
    }
  });
}

float apart(const shell::Rect& a, const shell::Rect& b) {
  const float x = std::max(a.x - b.x - b.w, b.x - a.x - a.w);
  const float y = std::max(a.y - b.y - b.h, b.y - a.y - a.h);
  return std::max(x, y);
}

TEST(KitEverywhere, targets_lie_8_px_apart) {
  everywhere([](const Setting&, const std::vector<MirrorNode>& nodes) {
    for (const MirrorNode& a : nodes) {
      for (const MirrorNode& b : nodes) {
        if (&a >= &b || !rig::is_control(a) || !rig::is_control(b)) continue;
        const bool same_layer = a.clip == b.clip && in_dialog(a, nodes) == in_dialog(b, nodes);
        if (same_layer) {
          EXPECT_GE(apart(a.rect, b.rect), 7.5F) << a.id << " and " << b.id;
        }
      }
    }
  });
}

TEST(KitEverywhere, every_page_rests_when_nobody_does_anything) {
  everywhere([](const Setting&, const std::vector<MirrorNode>&) {
    EXPECT_EQ(shell::null::frames_wanted(), 0);
    if (rig::has("pad") && rig::find_id("pad").name == "Tap to stop")
      return;                      // a timer was started
    if (rig::has("pace")) return;  // so it was here
    EXPECT_EQ(shell::null::next_deadline_ms(), std::numeric_limits<double>::infinity());
    const int publishes = shell::null::publishes();
    shell::redraw(3);
    rig::settle();
    EXPECT_EQ(shell::null::publishes(), publishes) << "an idle frame changes nothing";
  });
}

TEST(KitEverywhere, the_mirror_is_well_formed) {
  everywhere([](const Setting&, const std::vector<MirrorNode>& nodes) {
    std::set<std::string> seen;
    int headings = 0;
    for (const MirrorNode& node : nodes) {
      EXPECT_FALSE(node.id.empty());
      EXPECT_TRUE(node.parent.empty() || seen.contains(node.parent))
          << node.id << " before its parent " << node.parent;
      EXPECT_TRUE(seen.insert(node.id).second) << "twice: " << node.id;
      if (node.role == Role::heading && node.level == 1) ++headings;
      if (rig::is_control(node)) {
        EXPECT_FALSE(node.name.empty()) << node.id;
      }
    }
    EXPECT_EQ(headings, 1);
  });
}

TEST(KitEverywhere, controls_have_names_of_their_own) {
  everywhere([](const Setting&, const std::vector<MirrorNode>& nodes) {
    std::set<std::string> names;
    for (const MirrorNode& node : nodes) {
      if (!rig::is_control(node) || node.name == "Show me how" || in_dialog(node, nodes)) continue;
      if (node.id == "again" || node.id == "text" || node.id == "main" || node.id == "mend")
        continue;
      EXPECT_TRUE(names.insert(node.name).second) << node.name;
    }
  });
}

TEST(KitText, lines_hold_60_characters_at_most_and_lose_none) {
  const std::string text =
      "Shake it well, take the cap off, look inside, breathe out slowly and away from it, then "
      "seal your lips.";
  rig::open({.width = 1920, .height = 1080}, [](kit::Ui& ui) {
    kit::begin_screen(ui, {.id = "s", .title = "S"});
    kit::end_screen(ui);
  });
  for (const float width : {160.0F, 320.0F, 700.0F, 1e5F}) {
    const kit::TypeStyle style = kit::body_type(rig::ui());
    const kit::TextBlock& block = kit::wrapped(rig::ui(), style, text, width);
    std::string whole;
    for (const auto& line : block.lines) {
      EXPECT_LE(line.end - line.begin, 60U);
      EXPECT_LE(line.width, width);
      whole += (whole.empty() ? "" : " ") + text.substr(line.begin, line.end - line.begin);
    }
    EXPECT_EQ(whole, text);
    EXPECT_EQ(block.height, 30 * static_cast<float>(block.lines.size()))
        << "line height 1.5 of 20 px";
  }
}

TEST(KitText, em_size_is_the_css_size) {
  // Advance of "H" in the face's own hmtx table: 694 of 1000 units (read with fontTools 4.38).
  rig::open({}, [](kit::Ui& ui) {
    kit::begin_screen(ui, {.id = "s", .title = "S"});
    kit::end_screen(ui);
  });
  const float wide = kit::text_width(rig::ui(), {kit::Face::regular, 100}, "HHHHHHHHHH");
  EXPECT_NEAR(wide / 10, 69.4F, 0.6F);
}

TEST(KitWords, braces_are_filled_by_name) {
  EXPECT_EQ(kit::fill("{label} is now {place} of {count}.",
                      {{"label", "Shake"}, {"place", "2"}, {"count", "5"}}),
            "Shake is now 2 of 5.");
  EXPECT_EQ(kit::fill("{other} {", {{"label", "x"}}), "{other} {");
}

}  // namespace
}  // namespace rehale
