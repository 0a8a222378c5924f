#include "core/exchange/group_csv.h"

#include <algorithm>

#include "core/exchange/csv.h"

namespace rehale::exchange {

namespace {

using cohort::Share;

void head(Csv& csv, std::span<const std::string> heads, std::size_t count) {
  for (std::size_t n = 0; n < count; ++n) csv.text(n < heads.size() ? heads[n] : std::string());
}

std::string name_of(std::span<const std::string> names, std::size_t index) {
  return index < names.size() ? names[index] : std::string();
}

void empties(Csv& csv, int count) {
  for (int n = 0; n < count; ++n) csv.empty();
}

// k, n, share, low, high
void share(Csv& csv, const Share& share) {
  if (share.hidden) return empties(csv, 5);
  csv.number(share.k).number(share.n);
  csv.number(static_cast<double>(share.k) / static_cast<double>(share.n), 4);
  csv.number(share.low, 4).number(share.high, 4);
}

void told(Csv& csv, const cohort::Technique& technique) {
  switch (technique.told) {
    case cohort::Told::has_it:
      csv.number(std::int64_t{1});
      return;
    case cohort::Told::not_yet:
      csv.number(std::int64_t{0});
      return;
    default:
      csv.empty();
  }
}

}  // namespace

std::string technique_csv(const cohort::TechniqueTable& table, std::span<const std::string> heads,
                          std::span<const std::string> names) {
  Csv csv;
  head(csv, heads, k_technique_heads);
  csv.end_row();
  for (const auto& row : table.rows) {
    csv.text(name_of(names, row.technique));
    share(csv, row.not_yet);
    if (row.not_yet.hidden) {
      empties(csv, 2);
    } else {
      const auto exact = cohort::clopper_pearson(row.not_yet.k, row.not_yet.n);
      csv.number(exact.low, 4).number(exact.high, 4);
    }
    if (row.unclear.hidden) {
      empties(csv, 3);
    } else {
      csv.number(row.unclear.k).number(row.unclear.n).number(row.lacking, 4);
    }
    csv.end_row();
  }
  return csv.str();
}

std::string before_after_csv(std::span<const cohort::BeforeAfter> rows,
                             std::span<const std::string> heads,
                             std::span<const std::string> names) {
  Csv csv;
  head(csv, heads, k_before_after_heads);
  csv.end_row();
  for (const auto& row : rows) {
    csv.text(name_of(names, row.technique));
    if (row.hidden) {
      empties(csv, 6);
    } else {
      csv.number(row.pairs).number(row.lacked_before).number(row.lack_after);
      csv.number(row.gained).number(row.lost).number(row.p, 6);
    }
    csv.end_row();
  }
  return csv.str();
}

std::string item_csv(std::span<const cohort::ItemRow> rows, std::span<const std::string> heads,
                     std::span<const std::string> names) {
  Csv csv;
  head(csv, heads, k_item_heads);
  csv.end_row();
  for (const auto& row : rows) {
    csv.text(name_of(names, row.question));
    share(csv, row.right);
    if (row.unsure.hidden) csv.empty();
    else csv.number(row.unsure.k);
    if (row.discrimination) csv.number(*row.discrimination, 4);
    else csv.empty();
    csv.end_row();
  }
  return csv.str();
}

std::string checks_csv(std::span<const cohort::Record* const> records, const catalog::Id& family,
                       std::span<const std::string> heads, std::span<const std::string> names) {
  Csv csv;
  head(csv, heads, k_check_heads);
  for (const std::string& name : names) csv.text(name);
  csv.end_row();
  for (const cohort::Record* one : records) {
    const cohort::Record& record = *one;
    if (record.family != family) continue;
    csv.text(iso_date(record.day)).text(record.family).text(record.language);
    for (const bool flag : {record.again, record.helped, record.made_up}) {
      csv.number(std::int64_t{flag ? 1 : 0});
    }
    csv.number(
        static_cast<std::int64_t>(std::ranges::count_if(record.items, &cohort::Item::right)));
    csv.number(static_cast<std::int64_t>(record.items.size()));
    for (std::size_t k = 0; k < names.size(); ++k) {
      if (k < record.techniques.size()) told(csv, record.techniques[k]);
      else csv.empty();
    }
    csv.end_row();
  }
  return csv.str();
}

}  // namespace rehale::exchange
