// JSON of a mirror frame, written by hand: flat, and a JSON library would weigh more than all of
// it.

#include "web/shell/mirror_text.h"

#include <array>
#include <string_view>

#include "web/shell/short_decimal.h"

namespace rehale::shell {
namespace {

void put_text(std::string& out, std::string_view text) {
  out += '"';
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (static_cast<unsigned char>(c) < 0x20) {
      out += "\\u00";
      out += static_cast<char>('0' + c / 16);
      out += "0123456789abcdef"[c % 16];
    } else {
      out += c;
    }
  }
  out += '"';
}

// JSON has no infinity; and a thousandth of a pixel or unit is all that matters here.
void put_number(std::string& out, double number) { out += short_decimal(number, 3); }

void put_key(std::string& out, const char* key) {
  if (out.back() != '{') out += ',';
  out += '"';
  out += key;
  out += "\":";
}

void field(std::string& out, const char* key, const std::string& text) {
  if (text.empty()) return;
  put_key(out, key);
  put_text(out, text);
}

void field(std::string& out, const char* key, bool on) {
  if (!on) return;
  put_key(out, key);
  out += "true";
}

void field(std::string& out, const char* key, double number) {
  if (number == 0) return;
  put_key(out, key);
  put_number(out, number);
}

void field(std::string& out, const char* key, const Rect& rect) {
  put_key(out, key);
  const double sides[] = {rect.x, rect.y, rect.w, rect.h};
  char before = '[';
  for (const double side : sides) {
    out += before;
    put_number(out, side);
    before = ',';
  }
  out += ']';
}

void put_node(std::string& out, const MirrorNode& node) {
  out += "{\"id\":";
  put_text(out, node.id);
  put_key(out, "role");
  put_text(out, role_name(node.role));
  field(out, "parent", node.parent);
  field(out, "name", node.name);
  field(out, "description", node.description);
  field(out, "value", node.value);
  field(out, "language", node.language);
  field(out, "level", static_cast<double>(node.level));
  field(out, "position", static_cast<double>(node.position));
  field(out, "set_size", static_cast<double>(node.set_size));
  if (node.role == Role::spin || node.role == Role::progress) {
    field(out, "number", node.number);
    field(out, "min", node.min);
    field(out, "max", node.max);
    field(out, "step", node.step);
  }
  field(out, "checked", node.checked);
  field(out, "expanded", node.expanded);
  field(out, "disabled", node.disabled);
  field(out, "focusable", node.focusable);
  field(out, "current", node.current);
  field(out, "rect", node.rect);
  if (node.clip.w > 0) field(out, "clip", node.clip);
  out += '}';
}

// As web/js/mirror_roles.js knows them, in the order of Role.
constexpr std::array k_role_names = {
    "group",  "radio_group", "list",  "list_item",   "heading",  "paragraph", "image",    "button",
    "toggle", "disclosure",  "radio", "checkbox",    "spin",     "link",      "progress", "dialog",
    "status", "table",       "row",   "column_head", "row_head", "cell"};
static_assert(k_role_names.size() == static_cast<std::size_t>(Role::cell) + 1);

}  // namespace

const char* role_name(Role role) { return k_role_names[static_cast<std::size_t>(role)]; }

void write_mirror(const MirrorFrame& frame, std::string& out) {
  out.clear();
  out += '{';
  field(out, "screen", frame.screen);
  field(out, "title", frame.title);
  field(out, "language", frame.language);
  field(out, "ground", frame.ground);
  put_key(out, "nodes");
  out += '[';
  for (const MirrorNode& node : frame.nodes) {
    if (out.back() == '}') out += ',';
    put_node(out, node);
  }
  out += "]}";
}

}  // namespace rehale::shell
