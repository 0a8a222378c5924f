// The colours against the contrast formula of WCAG 2.2 ("relative luminance", "contrast ratio";
// success criteria 1.4.6 and 1.4.11), computed here a second time from the standard's text.
#include "web/kit/theme.h"

#include <gtest/gtest.h>

#include <cmath>

namespace rehale::kit {
namespace {

constexpr Scheme k_schemes[] = {Scheme::light, Scheme::dark, Scheme::light_contrast,
                                Scheme::dark_contrast};

double channel(int value) {
  const double share = value / 255.0;
  if (share <= 0.04045) return share / 12.92;
  return std::exp(2.4 * std::log((share + 0.055) / 1.055));
}

double ratio(Colour front, Colour ground) {
  double low = channel(front.r) * 0.2126 + channel(front.g) * 0.7152 + channel(front.b) * 0.0722;
  double high =
      channel(ground.r) * 0.2126 + channel(ground.g) * 0.7152 + channel(ground.b) * 0.0722;
  if (low > high) std::swap(low, high);
  return (high + 0.05) / (low + 0.05);
}

TEST(Theme, every_text_has_seven_to_one_and_every_edge_three_to_one) {
  for (const Scheme scheme : k_schemes) {
    const Palette& palette = palette_of(scheme);
    for (const ColourPair& pair : colour_pairs()) {
      const double least = pair.need == Need::reading ? 7 : 3;
      EXPECT_GE(ratio(palette.*pair.front, palette.*pair.ground), least)
          << pair.use << ", scheme " << static_cast<int>(scheme);
    }
  }
}

// More than 1.4.11 asks: who wants more contrast gets for edges what others get for words
// (1.4.3: 4.5).
TEST(Theme, with_stronger_contrast_edges_have_four_and_a_half_to_one) {
  for (const Scheme scheme : {Scheme::light_contrast, Scheme::dark_contrast}) {
    const Palette& palette = palette_of(scheme);
    for (const ColourPair& pair : colour_pairs()) {
      if (pair.need == Need::reading) continue;
      EXPECT_GE(ratio(palette.*pair.front, palette.*pair.ground), 4.5)
          << pair.use << ", scheme " << static_cast<int>(scheme);
    }
  }
}

TEST(Theme, contrast_ratio_is_the_standards) {
  // Black on white is 21 by the standard's own text ("Contrast ratios can range from 1 to 21").
  EXPECT_NEAR(contrast_ratio({0, 0, 0}, {255, 255, 255}), 21, 1e-12);
  EXPECT_NEAR(contrast_ratio({9, 9, 9}, {9, 9, 9}), 1, 1e-12);
  for (const Scheme scheme : k_schemes) {
    const Palette& palette = palette_of(scheme);
    for (const ColourPair& pair : colour_pairs()) {
      EXPECT_NEAR(contrast_ratio(palette.*pair.front, palette.*pair.ground),
                  ratio(palette.*pair.front, palette.*pair.ground), 1e-9);
    }
  }
}

// The table in ../shared/look.md, computed by its author and rounded to one place.
TEST(Theme, colours_are_those_of_the_look_with_their_printed_ratios) {
  const Palette& light = palette_of(Scheme::light);
  EXPECT_NEAR(ratio(light.ink, light.paper), 13.8, 0.05);
  EXPECT_NEAR(ratio(light.soft_ink, light.paper), 7.8, 0.05);
  EXPECT_NEAR(ratio(light.main, light.paper), 11.1, 0.06);
  EXPECT_NEAR(ratio(light.well, light.paper), 8.2, 0.05);
  EXPECT_NEAR(ratio(light.mend, light.paper), 8.0, 0.05);
  EXPECT_NEAR(ratio(light.edge, light.paper), 3.4, 0.05);
  EXPECT_NEAR(ratio(light.ink, light.highlight), 11.2, 0.05);
  const Palette& dark = palette_of(Scheme::dark);
  EXPECT_NEAR(ratio(dark.ink, dark.paper), 15.8, 0.05);
  EXPECT_NEAR(ratio(dark.soft_ink, dark.paper), 10.9, 0.05);
  EXPECT_NEAR(ratio(dark.main, dark.paper), 10.9, 0.05);
  EXPECT_NEAR(ratio(dark.well, dark.paper), 11.3, 0.05);
  EXPECT_NEAR(ratio(dark.mend, dark.paper), 10.9, 0.06);
  EXPECT_NEAR(ratio(dark.edge, dark.paper), 4.6, 0.05);
}

TEST(Theme, stronger_contrast_is_stronger_for_every_pair_of_words) {
  for (const ColourPair& pair : colour_pairs()) {
    if (pair.need != Need::reading) continue;
    const auto in = [&](Scheme scheme) {
      return ratio(palette_of(scheme).*pair.front, palette_of(scheme).*pair.ground);
    };
    EXPECT_GE(in(Scheme::light_contrast), in(Scheme::light)) << pair.use;
    EXPECT_GE(in(Scheme::dark_contrast), in(Scheme::dark)) << pair.use;
  }
}

}  // namespace
}  // namespace rehale::kit
