// Mouth-throat curves, lung filters, the reference worker, single slices: facts/aerosol.md 3 and 4.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/dose/mouth_throat.h"
#include "core/dose/single_breath.h"

namespace {

using namespace rehale::dose;

TEST(DoseMouth, four_curves_agree_with_the_check_values) {
  struct Line {
    double d, l_min, s89, icrp, c03, g04;
  };
  for (const Line& line : std::array<Line, 15>{{
           {1.5, 30, .005, .007, .019, .001},
           {3, 30, .054, .050, .072, .013},
           {5, 30, .244, .180, .188, .080},
           {6, 30, .375, .268, .259, .147},
           {10, 30, .773, .604, .566, .544},
           {1.5, 60, .017, .013, .037, .006},
           {3, 60, .156, .086, .140, .073},
           {5, 60, .512, .282, .341, .347},
           {6, 60, .661, .396, .451, .514},
           {10, 60, .917, .732, .811, .880},
           {1.5, 90, .034, .019, .055, .017},
           {3, 90, .269, .117, .202, .185},
           {5, 90, .676, .356, .465, .606},
           {6, 90, .795, .479, .594, .754},
           {10, 90, .957, .794, .918, .955},
       }}) {
    const double q = line.l_min * k_ml_s_per_l_min;
    EXPECT_NEAR(mouth_stahlhofen(line.d, q), line.s89, 6e-4) << line.d << " " << line.l_min;
    EXPECT_NEAR(mouth_icrp(line.d, q, 2000), line.icrp, 6e-4) << line.d << " " << line.l_min;
    EXPECT_NEAR(mouth_cheng(line.d, q), line.c03, 6e-4) << line.d << " " << line.l_min;
    EXPECT_NEAR(mouth_grgic(line.d, q), line.g04, 6e-4) << line.d << " " << line.l_min;
  }
  EXPECT_NEAR(mouth_stahlhofen(3, 500), .05377, 6e-6);
  EXPECT_NEAR(mouth_stahlhofen(5, 500), .24398, 6e-6);
  EXPECT_NEAR(mouth_stahlhofen(5, 1500), .67626, 6e-6);
  EXPECT_NEAR(mouth_icrp(5, 500, 1000), .21040, 6e-6);
}

TEST(DoseMouth, faster_and_larger_is_more) {
  for (double d = .5; d < 15; d += .5) {
    for (double q = 120; q < 1500; q += 60) {  // 7 to 90 L/min: where S89 was measured
      EXPECT_GT(mouth_stahlhofen(d, q + 60), mouth_stahlhofen(d, q));
      EXPECT_GT(mouth_stahlhofen(d + .5, q), mouth_stahlhofen(d, q));
    }
  }
}

TEST(DoseFilters, single_filters_agree_with_the_check_values) {
  EXPECT_NEAR(bronchi(3, 833, .07, false, 3), .1119, 6e-5);
  EXPECT_NEAR(bronchi(3, 833, .07, true, 3), .0576, 6e-5);
  EXPECT_NEAR(bronchioles(3, .067, 3), .0652, 6e-5);
  EXPECT_NEAR(bronchioles(5, .067, 5), .1966, 6e-5);
  EXPECT_NEAR(alveoli(3, 1.28, 3), .5106, 6e-5);
  EXPECT_NEAR(alveoli(1, 10, 1), .4903, 6e-5);
  EXPECT_NEAR(alveoli(3, 10, 3), .9352, 6e-5);
}

// 31 % of the time sitting, 69 % light work, through the nose, density 3, shape 1.5: air-weighted.
Regions worker(double amad) {
  const double thermo = thermodynamic_um(amad, 3, 1.5);
  const double gsd = 1 + 1.5 * (1 - 1 / (100 * std::pow(thermo, 1.5) + 1));
  const TidalBreath sits{750, 300, true, true, 3, 1.5};
  const TidalBreath works{1250, 833, true, true, 3, 1.5};
  Regions sum;
  double weights = 0;
  for (int i = 0; i < 400; ++i) {
    const double z = -5 + 10 * (i + .5) / 400;
    const double weight = std::exp(-.5 * z * z);
    const double d = amad * std::pow(gsd, z);
    weights += weight;
    const auto add = [&](const TidalBreath& breath, double air) {
      const Regions r = tidal(d, breath);
      const double part = weight * air / 9.6;
      sum.et1 += part * r.et1;
      sum.et2 += part * r.et2;
      sum.bronchi += part * r.bronchi;
      sum.bronchioles += part * r.bronchioles;
      sum.alveoli += part * r.alveoli;
    };
    add(sits, 1.35);
    add(works, 8.25);
  }
  for (double* part : {&sum.et1, &sum.et2, &sum.bronchi, &sum.bronchioles, &sum.alveoli}) {
    *part *= 100 / weights;
  }
  return sum;
}

TEST(DoseFilters, the_reference_worker_gets_what_icrp_66_publishes) {
  // ICRP 66/68, percent (published values from memory), one decimal.
  const Regions five = worker(5);
  EXPECT_NEAR(five.et1, 33.9, .07);
  EXPECT_NEAR(five.et2, 39.9, .06);
  EXPECT_NEAR(five.bronchi, 1.8, .06);
  EXPECT_NEAR(five.bronchioles, 1.1, .06);
  EXPECT_NEAR(five.alveoli, 5.3, .06);
  EXPECT_NEAR(five.deposited(), 82.0, .1);
  const Regions one = worker(1);
  EXPECT_NEAR(one.et1, 16.5, .06);
  EXPECT_NEAR(one.et2, 21.1, .06);
  EXPECT_NEAR(one.bronchi, 1.2, .06);
  EXPECT_NEAR(one.bronchioles, 1.7, .06);
  EXPECT_NEAR(one.alveoli, 10.7, .06);
  EXPECT_NEAR(one.deposited(), 51, .3);
  // The sheet's own two-digit values (independent script).
  EXPECT_NEAR(worker(3).deposited(), 77.94, .006);
  EXPECT_NEAR(worker(10).deposited(), 77.33, .006);
}

TEST(DoseFilters, breathing_by_mouth_agrees_with_the_check_values) {
  struct Line {
    double d, et2, big, small, deep, out;
  };
  for (const Line& line : std::array<Line, 7>{{{.5, .0063, .0030, .0134, .0809, .8965},
                                               {1, .0066, .0071, .0134, .1513, .8216},
                                               {2, .0310, .0305, .0383, .3004, .5998},
                                               {3, .0792, .0672, .0696, .3871, .3968},
                                               {5, .2266, .1527, .1118, .3513, .1576},
                                               {7, .4106, .2124, .1083, .1955, .0732},
                                               {10, .6500, .2172, .0585, .0456, .0287}}}) {
    const Regions r = tidal(line.d, {});
    EXPECT_NEAR(r.et2, line.et2, 6e-5) << line.d;
    EXPECT_NEAR(r.bronchi, line.big, 6e-5) << line.d;
    EXPECT_NEAR(r.bronchioles, line.small, 6e-5) << line.d;
    EXPECT_NEAR(r.alveoli, line.deep, 6e-5) << line.d;
    EXPECT_NEAR(r.exhaled, line.out, 6e-5) << line.d;
  }
}

TEST(DoseBreath, slices_agree_with_the_check_values) {
  struct Line {
    double d, q_in, to_come, inspired, hold, q_out;
    Landed at;
  };
  for (const Line& line : std::array<Line, 5>{{
           {3, 500, 2000, 2500, 10, 500, {.054519, .120177, .812102, .013202}},
           {3, 500, 200, 2500, 10, 500, {.054946, .924333, 0, .020721}},
           {1, 500, 120, 2500, 4, 500, {.002667, .029330, 0, .968002}},
           {5, 1500, 1000, 1500, 0, 500, {.679113, .217755, .094299, .008834}},
           {2, 500, 40, 2500, 10, 500, {.014114, 0, 0, .985886}},
       }}) {
    const Landed got = one_slice(line.d, line.q_in, line.to_come,
                                 {line.inspired, line.q_in, line.hold, line.q_out});
    EXPECT_NEAR(got.mouth_throat, line.at.mouth_throat, 6e-7) << line.d;
    EXPECT_NEAR(got.conducting, line.at.conducting, 6e-7) << line.d;
    EXPECT_NEAR(got.alveolar, line.at.alveolar, 6e-7) << line.d;
    EXPECT_NEAR(got.exhaled, line.at.exhaled, 6e-7) << line.d;
  }
}

TEST(DoseBreath, where_a_short_plume_ends_agrees_with_the_table_of_section_5) {
  // 30 L/min, 2.5 L, two digits: conducting, alveolar, exhaled of what enters the mouth.
  struct Line {
    double d, to_come, hold, conducting, alveolar, exhaled;
  };
  for (const Line& line : std::array<Line, 6>{{{1.5, 80, 10, .12, .00, .87},
                                               {1.5, 250, 4, .04, .45, .50},
                                               {3, 150, 10, .92, .00, .02},
                                               {3, 500, 0, .16, .40, .37},
                                               {3, 2000, 10, .12, .81, .01},
                                               {5, 250, 0, .34, .13, .21}}}) {
    const Landed got = one_slice(line.d, 500, line.to_come, {2500, 500, line.hold, 500});
    EXPECT_NEAR(got.conducting, line.conducting, .0051) << line.d << " " << line.to_come;
    EXPECT_NEAR(got.alveolar, line.alveolar, .0051) << line.d << " " << line.to_come;
    EXPECT_NEAR(got.exhaled, line.exhaled, .0051) << line.d << " " << line.to_come;
  }
}

}  // namespace
