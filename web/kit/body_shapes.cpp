#include "web/kit/body_shapes.h"

#include <cstdint>
#include <span>
#include <utility>

namespace rehale::kit {
namespace {

bool inside(std::span<const At> shape, At p) {
  bool in = false;
  for (std::size_t i = 0, j = shape.size() - 1; i < shape.size(); j = i++) {
    const At a = shape[i];
    const At b = shape[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
  }
  return in;
}

// Dots keep clear of the edge of their place.
bool well_inside(std::span<const At> shape, At p) {
  constexpr float k_clear = 2;
  return inside(shape, {p.x - k_clear, p.y}) && inside(shape, {p.x + k_clear, p.y}) &&
         inside(shape, {p.x, p.y - k_clear}) && inside(shape, {p.x, p.y + k_clear});
}

bool in_tubes(At p) {
  return inside(k_windpipe, p) || inside(k_branch_left, p) || inside(k_branch_right, p);
}

// Half a dot and its edge away from every tube.
bool clear_of_tubes(At p) {
  constexpr float k_clear = 3.4F;
  return !in_tubes(p) && !in_tubes({p.x - k_clear, p.y}) && !in_tubes({p.x + k_clear, p.y}) &&
         !in_tubes({p.x, p.y - k_clear}) && !in_tubes({p.x, p.y + k_clear});
}

bool belongs(DotPlace place, At p) {
  switch (place) {
    case DotPlace::device:
      return well_inside(k_device, p);
    case DotPlace::mouth:
      return well_inside(k_mouth, p);
    case DotPlace::airways:
      return in_tubes(p);
    case DotPlace::lungs:
      return (well_inside(k_lung_left, p) || well_inside(k_lung_right, p)) && clear_of_tubes(p);
    case DotPlace::air:
      return well_inside(k_air, p);
  }
  return false;
}

// What a place fits into.
constexpr Rect box_of(DotPlace place) {
  switch (place) {
    case DotPlace::device:
      return {4, 82, 53, 58};
    case DotPlace::mouth:
      return {62, 71, 78, 64};
    case DotPlace::airways:
      return {80, 134, 76, 58};
    case DotPlace::lungs:
      return {44, 150, 137, 76};
    case DotPlace::air:
      return {4, 6, 42, 60};
  }
  return {};
}

void seat_row(Seats& seats, DotPlace place, At from, float apart) {
  const Rect box = box_of(place);
  for (float x = from.x; x < box.x + box.w && seats.count < k_most_seats; x += apart) {
    if (belongs(place, {x, from.y})) seats.at[seats.count++] = {x, from.y};
  }
}

// By turns left and right, so that few dots do not all lie in one lung by chance.
void deal_to_both_lungs(Seats& seats) {
  const Seats from = seats;
  std::size_t next[2] = {0, 0};
  const auto take = [&](std::size_t side) -> const At* {
    for (std::size_t& n = next[side]; n < from.count;) {
      const At& seat = from.at[n++];
      if ((seat.x > 119 ? 1U : 0U) == side) return &seat;
    }
    return nullptr;
  };
  for (std::size_t n = 0; n < from.count; ++n) {
    const At* seat = take(n % 2);
    if (seat == nullptr) seat = take(1 - n % 2);
    seats.at[n] = *seat;
  }
}

}  // namespace

Seats seats_of(DotPlace place, std::size_t wanted) {
  const Rect box = box_of(place);
  Seats seats;
  for (float apart = k_apart; apart > 2; apart *= .9F) {
    seats.count = 0;
    int row = 0;
    for (float y = box.y + 2.4F; y < box.y + box.h; y += apart * .87F, ++row) {
      seat_row(seats, place, {box.x + (row % 2 == 0 ? 2.4F : 2.4F + apart / 2), y}, apart);
    }
    if (seats.count >= wanted) break;
  }
  std::uint32_t random = 12345U + static_cast<std::uint32_t>(place);
  for (std::size_t left = seats.count; left > 1; --left) {
    random = random * 1664525U + 1013904223U;  // Numerical Recipes' generator (from memory)
    std::swap(seats.at[left - 1], seats.at[(random >> 8U) % left]);
  }
  if (place == DotPlace::lungs) deal_to_both_lungs(seats);
  return seats;
}

}  // namespace rehale::kit
