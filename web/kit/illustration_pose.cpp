// Where every part of a drawing stands: in a pose, in several laid over one another, in between.
#include <algorithm>
#include <utility>

#include "web/kit/illustration.h"

namespace rehale::kit {
namespace {

Rect around(const Rect& a, const Rect& b) {
  const float x = std::min(a.x, b.x), y = std::min(a.y, b.y);
  return {x, y, std::max(a.x + a.w, b.x + b.w) - x, std::max(a.y + a.h, b.y + b.h) - y};
}

void lay_over(Pose& pose, const Scene::NamedPose& named) {
  for (const auto& change : named.changes) {
    Placement& at = pose.parts[change.part];
    at.move = change.move.value_or(at.move);
    at.about = change.about.value_or(at.about);
    at.scale = change.scale.value_or(at.scale);
    at.turn_deg = change.turn_deg.value_or(at.turn_deg);
    if (change.hide) at.shown = !*change.hide;
  }
}

float mix(float a, float b, float t) { return a + (b - a) * t; }
Point mix(Point a, Point b, float t) { return {mix(a.x, b.x, t), mix(a.y, b.y, t)}; }

}  // namespace

Result<Pose> pose_of(const Scene& scene, const std::vector<std::string>& names) {
  Pose pose{.frame = scene.view, .parts = {}};
  pose.parts.reserve(scene.parts.size());
  for (const auto& part : scene.parts) {
    pose.parts.push_back({.about = part.about, .shown = !part.hidden});
  }
  const auto find = [&](std::string_view name) {
    return std::find_if(scene.poses.begin(), scene.poses.end(),
                        [&](const auto& pose_here) { return pose_here.name == name; });
  };
  if (const auto rest = find(scene.start); rest != scene.poses.end()) {
    lay_over(pose, *rest);
    pose.frame = rest->frame.value_or(scene.view);
  }
  std::optional<Rect> frame;
  for (const auto& name : names) {
    const auto found = find(name);
    if (found == scene.poses.end())
      return fail("unknown-pose", name, "the drawing has no such pose");
    lay_over(pose, *found);
    if (found->frame) frame = frame ? around(*frame, *found->frame) : *found->frame;
  }
  if (frame) pose.frame = *frame;
  return pose;
}

Pose between(const Pose& from, const Pose& to, float t) {
  Pose pose = to;
  pose.frame = {mix(from.frame.x, to.frame.x, t), mix(from.frame.y, to.frame.y, t),
                mix(from.frame.w, to.frame.w, t), mix(from.frame.h, to.frame.h, t)};
  for (std::size_t i = 0; i < std::min(from.parts.size(), to.parts.size()); ++i) {
    const Placement &a = from.parts[i], &b = to.parts[i];
    pose.parts[i] = {.move = mix(a.move, b.move, t),
                     .about = mix(a.about, b.about, t),
                     .scale = mix(a.scale, b.scale, t),
                     .turn_deg = mix(a.turn_deg, b.turn_deg, t),
                     .shown = t < 0.5F ? a.shown : b.shown};
  }
  return pose;
}

}  // namespace rehale::kit
