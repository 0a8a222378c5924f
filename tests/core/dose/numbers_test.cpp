// Special functions and quadrature against SciPy (tests/reference/dose), and whole puffs against an
// independent NumPy writing of the slice model.
#include "core/dose/numbers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include "core/dose/model.h"
#include "core/dose/mouth_throat.h"
#include "tests/support/files.h"
#include "tests/support/fixture.h"

namespace {

using namespace rehale::dose;

// The numbers of every line that starts with `word`.
std::vector<std::vector<double>> lines(const std::string& word) {
  const auto text =
      rehale::support::read_file(rehale::support::source_path("tests/reference/dose/values.txt"));
  std::vector<std::vector<double>> found;
  if (!text) return found;
  for (std::size_t at = 0; at < text->size(); at = text->find('\n', at) + 1) {
    if (text->compare(at, word.size() + 1, word + " ") != 0) continue;
    const char* here = text->c_str() + at + word.size();
    auto& numbers = found.emplace_back();
    while (*here != '\n') {
      char* end = nullptr;
      numbers.push_back(std::strtod(here, &end));
      here = end;
    }
  }
  return found;
}

Technique technique_of(const std::vector<double>& n) {
  Technique t;
  t.device = static_cast<Device>(static_cast<int>(n[0]));
  t.flow_l_per_min = n[1];
  t.inspired_ml = n[2];
  t.press_s = n[3];
  t.hold_s = n[4];
  t.exhale_l_per_min = n[5];
  t.vents_covered = n[6];
  t.shaken = n[7] != 0;
  t.breathed_into_device = n[8] != 0;
  t.tilted = n[9] != 0;
  return t;
}

TEST(DoseNumbers, the_error_function_is_scipys) {
  const auto all = lines("erf");
  ASSERT_EQ(all.size(), 60U);
  for (const auto& n : all) EXPECT_NEAR(error_function(n[0]), n[1], 1e-15) << n[0];
}

TEST(DoseNumbers, powers_are_numpys) {
  const auto all = lines("power");
  ASSERT_EQ(all.size(), 6U);
  for (const auto& n : all) EXPECT_NEAR(power(n[0], n[1]) / n[2], 1, 1e-14) << n[0];
  EXPECT_EQ(power(0, .5), 0);
}

TEST(DoseNumbers, mass_below_a_size_is_scipys) {
  const auto all = lines("below");
  ASSERT_EQ(all.size(), 6U);
  for (const auto& n : all) EXPECT_NEAR(mass_below(n[0], n[1], n[2]), n[3], 1e-13) << n[0];
}

TEST(DoseNumbers, hatch_choate_is_what_integrating_the_distribution_gives) {
  const auto all = lines("hatch");
  ASSERT_EQ(all.size(), 4U);
  for (const auto& n : all) EXPECT_NEAR(hatch_choate(n[0], n[1], n[2]), n[3], 1e-9) << n[2];
}

TEST(DoseNumbers, still_settling_is_the_overlap_of_two_circles) {
  const auto all = lines("overlap");
  ASSERT_EQ(all.size(), 5U);
  for (const auto& n : all) {
    const double hold_s = n[0] * .05 / (settling_m_s(2) * 100);
    EXPECT_NEAR(settled_still(2, hold_s, .05), n[1], 1e-10) << n[0];
  }
}

TEST(DoseNumbers, forty_one_bins_integrate_like_scipys_quadrature) {
  const auto all = lines("mean");
  ASSERT_EQ(all.size(), 3U);
  for (const auto& n : all) {
    const Bins bins = lognormal_bins(n[0], n[1]);
    double mean = 0;
    for (std::size_t i = 0; i < bins.ln_d.size(); ++i) {
      mean += bins.weight[i] * mouth_stahlhofen(rehale::portable_exp(bins.ln_d[i]), n[2]);
    }
    EXPECT_NEAR(mean, n[3], 3e-6) << n[0];
  }
}

TEST(DoseModel, agrees_with_an_independent_writing_of_it_in_numpy) {
  const auto all = lines("puff");
  ASSERT_EQ(all.size(), 70U);
  for (const auto& n : all) {
    const auto got = estimate(technique_of(n));
    ASSERT_TRUE(got);
    const Fractions& f = got->likely;
    EXPECT_NEAR(f.device, n[10], 1e-12);
    EXPECT_NEAR(f.mouth_throat, n[11], 1e-11);
    EXPECT_NEAR(f.conducting, n[12], 1e-11);
    EXPECT_NEAR(f.alveolar, n[13], 1e-11);
    EXPECT_NEAR(f.exhaled, n[14], 1e-11);
  }
}

TEST(DoseModel, the_grid_of_sizes_and_slices_costs_less_than_half_a_percent_point) {
  const auto all = lines("fine");
  ASSERT_EQ(all.size(), 70U);
  for (const auto& n : all) {
    const auto got = estimate(technique_of(n));
    ASSERT_TRUE(got);
    EXPECT_NEAR(got->likely.lung(), n[10], .005);
  }
}

}  // namespace
