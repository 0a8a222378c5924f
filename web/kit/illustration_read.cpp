// Reads the text of a compiled scene. Trusts nothing in it: a cut or garbled file is an Error.
#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <utility>

#include "web/kit/illustration.h"

namespace rehale::kit {
namespace {

constexpr std::uint32_t k_most_points = 20'000;  // ten times what a full scene has

// Words and whole numbers of one line. The first thing amiss marks it broken; zeros follow.
class Line {
 public:
  explicit Line(std::string_view text) : rest_(text) {}

  std::string_view word() {
    const auto end = rest_.find(' ');
    const auto found = rest_.substr(0, end);
    rest_ = end == std::string_view::npos ? std::string_view{} : rest_.substr(end + 1);
    if (found.empty()) broken_ = true;
    return found;
  }
  int number() {
    const auto found = word();
    int value = 0;
    const auto [end, error] = std::from_chars(found.data(), found.data() + found.size(), value);
    const bool whole = error == std::errc{} && end == found.data() + found.size();
    if (!whole || value < -1'000'000 || value > 1'000'000) broken_ = true;
    return broken_ ? 0 : value;
  }
  std::uint32_t index_below(std::size_t count) {
    const int value = number();
    if (value < 0 || static_cast<std::size_t>(value) >= count) broken_ = true;
    return broken_ ? 0 : static_cast<std::uint32_t>(value);
  }
  float tenth() { return static_cast<float>(number()) / 10.0F; }
  Point point() {
    const float x = tenth();
    return {x, tenth()};
  }
  Rect frame() {
    const Point at = point(), size = point();
    if (size.x <= 0 || size.y <= 0) broken_ = true;
    return {at.x, at.y, size.x, size.y};
  }
  void must(bool holds) { broken_ = broken_ || !holds; }
  bool more() const { return !rest_.empty() && !broken_; }
  bool good() const { return rest_.empty() && !broken_; }

 private:
  std::string_view rest_;
  bool broken_ = false;
};

std::optional<Paint> paint_of(std::string_view letter) {
  constexpr std::string_view k_letters = "-pbdakwris";
  const auto at = letter.size() == 1 ? k_letters.find(letter[0]) : std::string_view::npos;
  if (at == std::string_view::npos) return std::nullopt;
  return static_cast<Paint>(at);
}

class Reader {
 public:
  Result<Scene> read(std::string_view text);

 private:
  bool take(Line& line);
  void take_shape(Line& line);
  void take_pose(Line& line);
  void take_change(Line& line);
  void open_part(Line& line);
  void close_part(Line& line);
  void take_start(Line& line) { scene_.start = line.word(); }

  Scene scene_;
  std::vector<std::uint32_t> open_;
  bool ended_ = false;
};

void Reader::take_shape(Line& line) {
  Scene::Shape shape;
  const auto fill = paint_of(line.word()), stroke = paint_of(line.word());
  line.must(fill && stroke);
  shape.width = static_cast<float>(line.number());
  line.must(shape.width >= 0 && shape.width <= 40);
  const auto kind = line.word();
  line.must(kind == "c" || kind == "k" || kind == "o");
  shape.count = line.index_below(k_most_points);
  line.must(shape.count >= 2 && scene_.points.size() + shape.count <= k_most_points);
  if (!line.more()) return;
  shape.fill = *fill;
  shape.stroke = *stroke;
  shape.closed = kind != "o";
  shape.convex = kind == "c";
  shape.first = static_cast<std::uint32_t>(scene_.points.size());
  int x = 0, y = 0;
  for (std::uint32_t i = 0; i < shape.count && line.more(); ++i) {
    x += line.number();
    y += line.number();
    line.must(std::abs(x) <= 1'000'000 && std::abs(y) <= 1'000'000);
    scene_.points.push_back({static_cast<float>(x) / 10.0F, static_cast<float>(y) / 10.0F});
  }
  line.must(scene_.points.size() == shape.first + shape.count);
  scene_.items.push_back({Scene::Step::shape, static_cast<std::uint32_t>(scene_.shapes.size())});
  scene_.shapes.push_back(shape);
}

void Reader::open_part(Line& line) {
  Scene::Part part;
  part.name = line.word();
  part.hidden = line.index_below(2) == 1;
  part.about = line.point();
  const auto index = static_cast<std::uint32_t>(scene_.parts.size());
  open_.push_back(index);
  scene_.items.push_back({Scene::Step::open_part, index});
  scene_.parts.push_back(std::move(part));
}

void Reader::close_part(Line& line) {
  line.must(!open_.empty());
  if (open_.empty()) return;
  scene_.items.push_back({Scene::Step::close_part, open_.back()});
  open_.pop_back();
}

void Reader::take_pose(Line& line) {
  Scene::NamedPose pose;
  pose.name = line.word();
  if (line.more()) pose.frame = line.frame();
  scene_.poses.push_back(std::move(pose));
}

void Reader::take_change(Line& line) {
  line.must(!scene_.poses.empty());
  Scene::Change change;
  change.part = line.index_below(scene_.parts.size());
  while (line.more()) {
    const auto what = line.word();
    if (what == "m") change.move = line.point();
    else if (what == "a") change.about = line.point();
    else if (what == "r") change.turn_deg = line.tenth();
    else if (what == "h") change.hide = line.index_below(2) == 1;
    else if (what == "z") {
      const float x = static_cast<float>(line.number()) / 1000.0F;
      change.scale = Point{x, static_cast<float>(line.number()) / 1000.0F};
    } else line.must(false);
  }
  if (!scene_.poses.empty()) scene_.poses.back().changes.push_back(change);
}

bool Reader::take(Line& line) {
  const auto what = line.word();
  if (what == "s") take_shape(line);
  else if (what == "(") open_part(line);
  else if (what == ")") close_part(line);
  else if (what == "t") take_change(line);
  else if (what == "pose") take_pose(line);
  else if (what == "start") take_start(line);
  else if (what == "view") scene_.view = line.frame();
  else if (what == "end") {
    line.must(line.number() == static_cast<int>(scene_.parts.size()) && open_.empty());
    line.must(line.number() == static_cast<int>(scene_.poses.size()) && scene_.view.w > 0);
    ended_ = true;
  } else return false;
  return line.good();
}

Result<Scene> Reader::read(std::string_view text) {
  constexpr std::string_view k_head = "rehale-scene 1\n";
  if (!text.starts_with(k_head)) {
    return fail("scene-broken", "line 1", "a scene starts with 'rehale-scene 1'");
  }
  text.remove_prefix(k_head.size());
  for (int number = 2; !ended_; ++number) {
    const auto end = text.find('\n');
    if (end == std::string_view::npos) {
      return fail("scene-cut", "line " + std::to_string(number), "the text ends before 'end'");
    }
    Line line(text.substr(0, end));
    if (!take(line)) {
      return fail("scene-broken", "line " + std::to_string(number),
                  "cannot be read: " + std::string(text.substr(0, std::min<std::size_t>(end, 40))));
    }
    text.remove_prefix(end + 1);
  }
  if (!text.empty()) return fail("scene-broken", "after 'end'", "nothing may follow");
  if (!pose_of(scene_, {scene_.start})) return fail("scene-broken", "start", "names no pose");
  return std::move(scene_);
}

}  // namespace

Result<Scene> parse_scene(std::string_view text) { return Reader{}.read(text); }

}  // namespace rehale::kit
