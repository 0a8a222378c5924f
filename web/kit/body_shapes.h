// The body of "Where it goes" in drawing units: its shapes, and the seats of dots in each place.
// For files of web/kit only. Must not know drawing.
#pragma once

#include <array>
#include <cstddef>

#include "web/kit/body_dots.h"

namespace rehale::kit {

// Drawing units: a body is 200 wide and 232 high.
inline constexpr float k_width = 200, k_height = 232, k_dot = 2.7F, k_apart = 6;

struct At {
  float x, y;
};

inline constexpr At k_outline[] = {
    {29, 250},  {29, 232},  {30, 206},  {32, 180},  {38, 162},  {54, 150},  {80, 143},  {90, 137},
    {92, 129},  {78, 126},  {67, 121},  {63, 113},  {65, 108},  {60, 104},  {62, 99},   {58, 95},
    {60, 90},   {48, 86},   {47, 82},   {57, 64},   {58, 44},   {66, 24},   {84, 10},   {108, 6},
    {132, 12},  {148, 30},  {153, 54},  {151, 78},  {147, 96},  {146, 114}, {148, 130}, {156, 142},
    {172, 150}, {184, 162}, {189, 180}, {191, 206}, {192, 232}, {192, 250}};
inline constexpr At k_mouth[] = {{63, 93},   {70, 80},   {92, 72},   {118, 73},
                                 {134, 86},  {139, 106}, {132, 134}, {110, 134},
                                 {108, 120}, {96, 114},  {78, 113},  {66, 106}};
inline constexpr At k_windpipe[] = {{113, 134}, {125, 134}, {125, 166}, {113, 166}};
inline constexpr At k_branch_left[] = {{113, 160}, {119, 168}, {84, 192}, {80, 186}};
inline constexpr At k_branch_right[] = {{156, 186}, {152, 192}, {119, 168}, {125, 160}};
inline constexpr At k_lung_left[] = {{106, 214}, {94, 226}, {70, 222}, {44, 226}, {46, 208},
                                     {58, 180},  {76, 160}, {94, 150}, {106, 152}};
inline constexpr At k_lung_right[] = {{132, 152}, {144, 150}, {160, 160}, {172, 180}, {180, 206},
                                      {181, 226}, {158, 222}, {140, 226}, {132, 214}};
inline constexpr At k_device[] = {{4, 82},   {40, 82},  {40, 92},  {57, 92},
                                  {57, 106}, {40, 106}, {40, 140}, {4, 140}};
inline constexpr At k_air[] = {{4, 6}, {46, 6}, {46, 66}, {4, 66}};

// Seats of a place, shuffled by a fixed seed: the same for every number of dots, so that a dot more
// moves no other.
inline constexpr std::size_t k_most_seats = 400;
struct Seats {
  std::array<At, k_most_seats> at;
  std::size_t count = 0;
};

// Staggered rows; closer ones where fewer than `wanted` would find room.
Seats seats_of(DotPlace place, std::size_t wanted);

}  // namespace rehale::kit
