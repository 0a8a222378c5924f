#include "web/screens/desk_tables.h"

#include <cmath>

#include "core/exchange/csv.h"
#include "core/exchange/group_csv.h"
#include "web/screens/desk_words.h"
#include "web/shell/short_decimal.h"

namespace rehale::screens {

namespace {

std::string percent(double share) { return std::to_string(std::lround(share * 100)); }

std::string in_percent(double share) { return percent(share) + " %"; }

const std::string& head(const App& app, const char* column) {
  return app.say(std::string("desk/col/") + column);
}

std::vector<std::string> heads(const App& app, std::initializer_list<const char*> columns) {
  std::vector<std::string> all;
  for (const char* column : columns) all.push_back(head(app, column));
  return all;
}

const catalog::Family& family_of(const App& app) {
  return app.desk.intake.course(app.desk.filter.family)->family;
}

// "12 of 40, 30 %. Interval 18 to 45 %." with the pattern at `path`.
std::string share_words(const App& app, const char* path, const cohort::Share& share) {
  if (share.hidden) return app.say("desk/hidden");
  const double part = static_cast<double>(share.k) / static_cast<double>(share.n);
  return kit::fill(app.say(path), {{"k", std::to_string(share.k)},
                                   {"n", std::to_string(share.n)},
                                   {"percent", percent(part)},
                                   {"low", percent(share.low)},
                                   {"high", percent(share.high)}});
}

void add_share(kit::BarRow& row, const App& app, const cohort::Share& share) {
  if (share.hidden) {
    row.cells.insert(row.cells.end(), 4, app.say("desk/hidden"));
    return;
  }
  const double part = static_cast<double>(share.k) / static_cast<double>(share.n);
  row.bars.push_back({.share = part, .low = share.low, .high = share.high});
  row.cells.push_back(std::to_string(share.k));
  row.cells.push_back(std::to_string(share.n));
  row.cells.push_back(in_percent(part));
  row.cells.push_back(percent(share.low) + "–" + in_percent(share.high));
}

kit::BarRow teach_row(const App& app, const cohort::TeachRow& row, std::size_t place,
                      const cohort::TechniqueRow& told) {
  kit::BarRow shown{.id = std::to_string(row.technique)};
  shown.label = std::to_string(place) + ". " + technique_name(app, family_of(app), row.technique);
  add_share(shown, app, row.not_yet);
  shown.words.push_back(share_words(app, "desk/not-yet", row.not_yet));
  const std::string key = row.not_yet.hidden ? "–" : shell::short_decimal(row.key, 2);
  const std::string weight = shell::short_decimal(row.weight, 2);
  shown.cells.push_back(key);
  if (told.unclear.hidden) {
    shown.cells.insert(shown.cells.end(), 2, app.say("desk/hidden"));
    return shown;
  }
  shown.words.push_back(share_words(app, "desk/unclear", told.unclear) + ' ' +
                        kit::fill(app.say("desk/gap"), {{"mean", percent(told.lacking)}}));
  if (!row.not_yet.hidden) {
    shown.words.push_back(kit::fill(app.say("desk/by"), {{"weight", weight}, {"key", key}}));
  }
  shown.cells.push_back(std::to_string(told.unclear.k));
  shown.cells.push_back(in_percent(told.lacking));
  return shown;
}

std::string p_words(double p) { return p < .001 ? "< 0.001" : shell::short_decimal(p, 3); }

kit::BarRow change_row(const App& app, const cohort::BeforeAfter& row) {
  kit::BarRow shown{.id = std::to_string(row.technique)};
  shown.label = technique_name(app, family_of(app), row.technique);
  if (row.hidden) {
    shown.words.push_back(app.say("desk/hidden"));
    shown.cells.assign(6, app.say("desk/hidden"));
    return shown;
  }
  const auto before = cohort::share_of(row.lacked_before, row.pairs);
  const auto after = cohort::share_of(row.lack_after, row.pairs);
  const auto pairs = static_cast<double>(row.pairs);
  shown.bars = {{static_cast<double>(before.k) / pairs, before.low, before.high, true},
                {static_cast<double>(after.k) / pairs, after.low, after.high, false}};
  shown.words = {share_words(app, "desk/before", before), share_words(app, "desk/after", after),
                 kit::fill(app.say("desk/moved"), {{"gained", std::to_string(row.gained)},
                                                   {"lost", std::to_string(row.lost)},
                                                   {"p", p_words(row.p)}})};
  for (const std::int64_t number :
       {row.pairs, row.lacked_before, row.lack_after, row.gained, row.lost}) {
    shown.cells.push_back(std::to_string(number));
  }
  shown.cells.push_back(p_words(row.p));
  return shown;
}

// A question by what it asks.
std::string question_name(const App& app, std::size_t question) {
  const catalog::Family& family = family_of(app);
  return app.tell_of(family.id, "questions/" + family.questions[question].id + "/ask");
}

kit::BarRow item_row(const App& app, const cohort::ItemRow& row) {
  kit::BarRow shown{.id = std::to_string(row.question), .label = question_name(app, row.question)};
  add_share(shown, app, row.right);
  shown.words.push_back(share_words(app, "desk/right", row.right));
  const std::string parts = row.discrimination ? shell::short_decimal(*row.discrimination, 2) : "–";
  shown.cells.push_back(row.unsure.hidden ? app.say("desk/hidden") : std::to_string(row.unsure.k));
  shown.cells.push_back(parts);
  if (row.right.hidden) return shown;
  shown.words.push_back(kit::fill(app.say("desk/item"),
                                  {{"unsure", std::to_string(row.unsure.k)}, {"parts", parts}}));
  return shown;
}

std::vector<std::string> technique_names(const App& app) {
  std::vector<std::string> names;
  const catalog::Family& family = family_of(app);
  for (const auto& technique : family.techniques) {
    names.push_back(app.tell_of(family.id, "techniques/" + technique.id + "/name"));
  }
  return names;
}

cohort::TechniqueTable table_of(const App& app) {
  return cohort::technique_table(app.desk.summary(), app.desk.filter);
}

std::vector<cohort::BeforeAfter> changes_of(const App& app) {
  return cohort::before_after(app.desk.summary(), app.desk.filter.family,
                              family_of(app).techniques.size());
}

}  // namespace

kit::BarTable teach_table(const App& app) {
  kit::BarTable shown{.id = "teach", .name = app.say("desk/teach-title")};
  shown.heads =
      heads(app, {"technique", "not-yet", "of", "share", "interval", "key", "unclear", "mean"});
  const auto table = table_of(app);
  for (const auto& row : app.desk.teach_rows(table)) {
    shown.rows.push_back(teach_row(app, row, shown.rows.size() + 1, table.rows[row.technique]));
  }
  return shown;
}

kit::BarTable change_table(const App& app) {
  kit::BarTable shown{.id = "change", .name = app.say("desk/change-title")};
  shown.heads = heads(app, {"technique", "pairs", "lacked", "lack", "gained", "lost", "p"});
  for (const auto& row : changes_of(app)) shown.rows.push_back(change_row(app, row));
  return shown;
}

kit::BarTable items_table(const App& app) {
  kit::BarTable shown{.id = "items", .name = app.say("desk/items-title")};
  shown.heads = heads(app, {"question", "right", "of", "share", "interval", "unsure", "parts"});
  for (const auto& row : cohort::item_table(app.desk.summary(), app.desk.filter.family)) {
    shown.rows.push_back(item_row(app, row));
  }
  return shown;
}

std::string teach_csv(const App& app) {
  exchange::Csv csv;
  for (const auto& name : heads(app, {"place", "technique", "key-step", "weight", "not-yet", "of",
                                      "share", "low", "high", "key"})) {
    csv.text(name);
  }
  csv.end_row();
  const auto names = technique_names(app);
  std::int64_t place = 0;
  for (const auto& row : app.desk.teach_rows(table_of(app))) {
    csv.number(++place).text(names[row.technique]).number(std::int64_t{row.critical ? 1 : 0});
    csv.number(row.weight, 2);
    if (row.not_yet.hidden) {
      for (int n = 0; n < 6; ++n) csv.empty();
    } else {
      csv.number(row.not_yet.k).number(row.not_yet.n);
      csv.number(static_cast<double>(row.not_yet.k) / static_cast<double>(row.not_yet.n), 4);
      csv.number(row.not_yet.low, 4).number(row.not_yet.high, 4).number(row.key, 4);
    }
    csv.end_row();
  }
  return csv.str();
}

std::string techniques_csv(const App& app) {
  return exchange::technique_csv(
      table_of(app),
      heads(app, {"technique", "not-yet", "of", "share", "low", "high", "exact-low", "exact-high",
                  "unclear", "of-all", "mean"}),
      technique_names(app));
}

std::string change_csv(const App& app) {
  return exchange::before_after_csv(
      changes_of(app), heads(app, {"technique", "pairs", "lacked", "lack", "gained", "lost", "p"}),
      technique_names(app));
}

std::string items_csv(const App& app) {
  std::vector<std::string> names;
  for (std::size_t n = 0; n < family_of(app).questions.size(); ++n) {
    names.push_back(question_name(app, n));
  }
  return exchange::item_csv(
      cohort::item_table(app.desk.summary(), app.desk.filter.family),
      heads(app, {"question", "right", "of", "share", "low", "high", "unsure", "parts"}), names);
}

std::string results_csv(const App& app) {
  std::vector<const cohort::Record*> records;
  for (const std::size_t n : app.desk.people()) records.push_back(&app.desk.intake.records()[n]);
  return exchange::checks_csv(
      records, app.desk.filter.family,
      heads(app, {"day", "kind", "language", "again", "helped", "made-up", "right", "of"}),
      technique_names(app));
}

}  // namespace rehale::screens
