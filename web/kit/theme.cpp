#include "web/kit/theme.h"

#include <algorithm>
#include <cmath>

namespace rehale::kit {
namespace {

constexpr Colour hex(unsigned rgb) {
  return {static_cast<std::uint8_t>(rgb >> 16), static_cast<std::uint8_t>(rgb >> 8 & 255U),
          static_cast<std::uint8_t>(rgb & 255U)};
}

constexpr Palette k_light{.paper = hex(0xFBF7EF),
                          .card = hex(0xFFFCF6),
                          .ink = hex(0x1E2A2E),
                          .soft_ink = hex(0x425055),
                          .main = hex(0x4B2A5A),
                          .on_main = hex(0xFFFCF6),
                          .main_wash = hex(0xF4ECF5),
                          .main_hover = hex(0x5A346B),
                          .main_press = hex(0x3A1F47),
                          .row_hover = hex(0xF8F2E7),
                          .row_press = hex(0xF4ECDE),
                          .well = hex(0x23552A),
                          .well_wash = hex(0xE9F2E3),
                          .mend = hex(0x8A2C0D),
                          .mend_wash = hex(0xFBEBE0),
                          .highlight = hex(0xF4DFA3),
                          .edge = hex(0x8C8577),
                          .rule = hex(0xE3DACA),
                          .device = hex(0xECE5D8),
                          .device_shade = hex(0xCFC6B6),
                          .skin = hex(0xE9C9AE),
                          .air = hex(0x9DB4BC)};

constexpr Palette k_dark{.paper = hex(0x171418),
                         .card = hex(0x1F1B21),
                         .ink = hex(0xF3EEE4),
                         .soft_ink = hex(0xCFC7BC),
                         .main = hex(0xDDBDEB),
                         .on_main = hex(0x25142E),
                         .main_wash = hex(0x33263A),
                         .main_hover = hex(0xE8CFF2),
                         .main_press = hex(0xC9A2DB),
                         .row_hover = hex(0x262129),
                         .row_press = hex(0x302A34),
                         .well = hex(0xA3D9A3),
                         .well_wash = hex(0x1F2E20),
                         .mend = hex(0xF4BC95),
                         .mend_wash = hex(0x3A251A),
                         .highlight = hex(0x4A3B12),
                         .edge = hex(0x857C8A),
                         .rule = hex(0x3A343E),
                         .device = hex(0x4A444E),
                         .device_shade = hex(0x625A68),
                         .skin = hex(0x8A6650),
                         .air = hex(0x7F98A1)};

constexpr Palette k_light_contrast{.paper = hex(0xFFFFFF),
                                   .card = hex(0xFFFFFF),
                                   .ink = hex(0x000000),
                                   .soft_ink = hex(0x1E2A2E),
                                   .main = hex(0x35154A),
                                   .on_main = hex(0xFFFFFF),
                                   .main_wash = hex(0xF4ECF5),
                                   .main_hover = hex(0x4B2A5A),
                                   .main_press = hex(0x1F0A2E),
                                   .row_hover = hex(0xF2F2F2),
                                   .row_press = hex(0xE6E6E6),
                                   .well = hex(0x0F3D18),
                                   .well_wash = hex(0xE9F2E3),
                                   .mend = hex(0x661D05),
                                   .mend_wash = hex(0xFBEBE0),
                                   .highlight = hex(0xFFE9A8),
                                   .edge = hex(0x3A3A3A),
                                   .rule = hex(0x6A6A6A),
                                   .device = hex(0xF2F2F2),
                                   .device_shade = hex(0xC8C8C8),
                                   .skin = hex(0xF0D4BC),
                                   .air = hex(0x4F6A74)};

constexpr Palette k_dark_contrast{.paper = hex(0x000000),
                                  .card = hex(0x000000),
                                  .ink = hex(0xFFFFFF),
                                  .soft_ink = hex(0xEDE8E0),
                                  .main = hex(0xEBD3F5),
                                  .on_main = hex(0x000000),
                                  .main_wash = hex(0x2A1D31),
                                  .main_hover = hex(0xF6E9FB),
                                  .main_press = hex(0xD8B4E8),
                                  .row_hover = hex(0x1C1C1C),
                                  .row_press = hex(0x2A2A2A),
                                  .well = hex(0xBFF0BF),
                                  .well_wash = hex(0x152416),
                                  .mend = hex(0xFFD3B5),
                                  .mend_wash = hex(0x2E1C12),
                                  .highlight = hex(0x40320A),
                                  .edge = hex(0xC9C2CF),
                                  .rule = hex(0x8A8290),
                                  .device = hex(0x3A363E),
                                  .device_shade = hex(0x6A6270),
                                  .skin = hex(0x8A6650),
                                  .air = hex(0xA8C2CC)};

using P = Palette;
constexpr ColourPair k_pairs[] = {
    {"words on the page", &P::ink, &P::paper, Need::reading},
    {"second-rank words on the page", &P::soft_ink, &P::paper, Need::reading},
    {"words on a card or answer", &P::ink, &P::card, Need::reading},
    {"second-rank words on a card", &P::soft_ink, &P::card, Need::reading},
    {"answer under a mouse", &P::ink, &P::row_hover, Need::reading},
    {"answer under a finger", &P::ink, &P::row_press, Need::reading},
    {"note of an answer under a mouse", &P::soft_ink, &P::row_hover, Need::reading},
    {"note of an answer under a finger", &P::soft_ink, &P::row_press, Need::reading},
    {"chosen answer", &P::ink, &P::main_wash, Need::reading},
    {"second-rank words of a chosen answer", &P::soft_ink, &P::main_wash, Need::reading},
    {"main button", &P::on_main, &P::main, Need::reading},
    {"main button under a mouse", &P::on_main, &P::main_hover, Need::reading},
    {"main button under a finger", &P::on_main, &P::main_press, Need::reading},
    {"quiet button", &P::main, &P::paper, Need::reading},
    {"quiet button on a card", &P::main, &P::card, Need::reading},
    {"quiet button under a mouse", &P::main, &P::row_hover, Need::reading},
    {"quiet button under a finger", &P::main, &P::row_press, Need::reading},
    {"toggle that is on", &P::main, &P::main_wash, Need::reading},
    {"You have this, on a card", &P::well, &P::card, Need::reading},
    {"You have this, on its wash", &P::well, &P::well_wash, Need::reading},
    {"words on the moss wash", &P::ink, &P::well_wash, Need::reading},
    {"second-rank words on the moss wash", &P::soft_ink, &P::well_wash, Need::reading},
    {"link on the moss wash", &P::main, &P::well_wash, Need::reading},
    {"To mend, on a card", &P::mend, &P::card, Need::reading},
    {"To mend, on its wash", &P::mend, &P::mend_wash, Need::reading},
    {"words on the rust wash", &P::ink, &P::mend_wash, Need::reading},
    {"second-rank words on the rust wash", &P::soft_ink, &P::mend_wash, Need::reading},
    {"link on the rust wash", &P::main, &P::mend_wash, Need::reading},
    {"words on saffron", &P::ink, &P::highlight, Need::reading},
    {"edge of a control on the page", &P::edge, &P::paper, Need::shape},
    {"edge of a control on a card", &P::edge, &P::card, Need::shape},
    {"edge of a control under a mouse", &P::edge, &P::row_hover, Need::shape},
    {"mark of an answer under a finger", &P::edge, &P::row_press, Need::shape},
    {"edge of a control on the moss wash", &P::edge, &P::well_wash, Need::shape},
    {"edge of a control on the rust wash", &P::edge, &P::mend_wash, Need::shape},
    {"number of a card", &P::main, &P::main_wash, Need::reading},
    {"edge of a chosen answer", &P::main, &P::paper, Need::shape},
    {"mark of a chosen answer", &P::main, &P::main_wash, Need::shape},
    {"edge of a picked card", &P::main, &P::highlight, Need::shape},
    {"a time beside what is wanted", &P::main, &P::highlight, Need::shape},
    {"bar of a table", &P::main, &P::row_press, Need::shape},
    {"edge of a table's bar", &P::edge, &P::row_press, Need::shape},
    {"range of a table's bar", &P::ink, &P::paper, Need::shape},
    {"ground of a range on its bar", &P::paper, &P::main, Need::shape},
    {"line of times", &P::edge, &P::paper, Need::shape},
    {"circle of the pace guide", &P::main, &P::main_wash, Need::shape},
    {"number in the pace guide", &P::ink, &P::main_wash, Need::reading},
    {"edge of going well", &P::well, &P::paper, Need::shape},
    {"edge of to mend", &P::mend, &P::paper, Need::shape},
    {"focus ring", &P::ink, &P::paper, Need::shape},
    {"focus ring on a card", &P::ink, &P::card, Need::shape},
    {"stepping stone ahead", &P::edge, &P::paper, Need::shape},
    {"scroll mark", &P::edge, &P::paper, Need::shape},
    {"outline of a picture", &P::ink, &P::device, Need::shape},
    {"outline of a picture's shade", &P::ink, &P::device_shade, Need::shape},
    {"outline of a hand or face", &P::ink, &P::skin, Need::shape},
};

double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour c) {
  return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

}  // namespace

const Palette& palette_of(Scheme scheme) {
  switch (scheme) {
    case Scheme::light:
      return k_light;
    case Scheme::dark:
      return k_dark;
    case Scheme::light_contrast:
      return k_light_contrast;
    case Scheme::dark_contrast:
      return k_dark_contrast;
  }
  return k_light;
}

std::span<const ColourPair> colour_pairs() { return k_pairs; }

double contrast_ratio(Colour a, Colour b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

}  // namespace rehale::kit
